/** Block declarations as they can be named: parameters, their kinds, and the names used inside. Nothing is resolved yet. */
import type { BlockNode, Parameter, Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import type { Finding } from './finding.ts';
import { mentionsIn, type Mention } from './mentions.ts';
import type { BlockDefinition, ParameterDefinition, ParameterKind } from './pattern.ts';

/** The definition of a block statement that has a name. It depends on the statement alone. */
export function defineBlock(statement: Statement<BlockNode>, name: NonNullable<BlockNode['name']>): BlockDefinition {
  const names = new Set(statement.node.parameters.map((parameter) => parameter.name.text));
  const mentions = mentionsIn([statement]);
  return {
    name: name.text,
    origin: 'file',
    statement,
    parameters: distinct(statement.node.parameters).map((parameter) => defineParameter(statement, parameter, mentions)),
    place: placeIn(statement.line, name),
    mentions: new Set([...mentionsOutside(statement), ...mentions.map((mention) => mention.name).filter((each) => !names.has(each))]),
    weight: weightOf([statement]),
  };
}

/** Parameters of one name: the first one counts. */
export function duplicateParameters({ line, node }: Statement<BlockNode>): readonly Finding[] {
  return node.parameters.flatMap(({ name }, index): Finding[] => {
    const first = node.parameters.findIndex((other) => other.name.text === name.text);
    const before = node.parameters[first];
    if (first === index || !before) return [];
    return [{ rule: 'duplicate-name', place: placeIn(line, name), name: name.text, what: 'parameters', first: placeIn(line, before.name) }];
  });
}

function distinct(parameters: readonly Parameter[]): readonly Parameter[] {
  return parameters.filter(({ name }, index) => parameters.findIndex((other) => other.name.text === name.text) === index);
}

function defineParameter(statement: Statement<BlockNode>, parameter: Parameter, mentions: readonly Mention[]): ParameterDefinition {
  const name = parameter.name.text;
  const kind = kindByDefault(parameter.default) ?? mentions.map((mention) => (mention.name === name ? kindByUse(mention.as) : undefined)).find((each) => each !== undefined);
  return { name, place: placeIn(statement.line, parameter.name), hasDefault: parameter.default !== undefined, ...(kind ? { kind } : {}) };
}

/** A default that is arithmetic is a number; a name may be anything. */
function kindByDefault(value: Parameter['default']): ParameterKind | undefined {
  if (value?.kind === 'reference') return 'turns' in value && value.arguments ? 'block' : undefined;
  return value && 'number';
}

function kindByUse(as: Mention['as']): ParameterKind | undefined {
  return as === 'argument' || as === 'path' ? undefined : as;
}

/** `Star(dark = dark)`: a default names what is declared outside, even when a parameter has that name. */
function mentionsOutside({ node }: Statement<BlockNode>): readonly string[] {
  return node.parameters.flatMap(({ default: value }, index) => {
    if (value?.kind !== 'reference') return [];
    const earlier = node.parameters.slice(0, index).some((other) => other.name.text === value.name.text);
    return earlier ? [] : [value.name.text];
  });
}

/** Statements, and the cells of rows, whatever braces they stand in. */
function weightOf(statements: readonly Statement[]): number {
  let weight = 0;
  const waiting = [...statements];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    weight += 1 + (next.node.kind === 'row_of_cells' ? next.node.cells.length : 0);
    for (const inner of next.body?.statements ?? []) waiting.push(inner);
  }
  return weight;
}
