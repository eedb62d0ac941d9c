/**
 * Names where they are used in a block or the quilt: a patch of fabric, another block with its arguments, a parameter that
 * stands for either. What cannot be resolved is reported once and comes back undefined, or as an unknown fabric where a patch
 * must lie all the same.
 */
import type { Argument as ArgumentNode, Name, Quantity, Reference } from '../syntax/tree.ts';
import type { Columns, Place } from '../text/place.ts';
import { at, describe, isStandIn, meaningOf, refuse, type Context } from './context.ts';
import { evaluate } from './evaluate.ts';
import { unknownFabric } from './fabrics.ts';
import type { Wanted } from './finding.ts';
import type { Argument, BlockDefinition, BlockInstance, BlockUse, Fabric, FabricUse, ParameterDefinition } from './pattern.ts';

/** Where cells are resolved: a context that can also make blocks. */
export interface Builder extends Context {
  /** The block with the arguments given by name, or undefined when it cannot be made; what it lacks is reported at the use. */
  readonly make: (definition: BlockDefinition, given: Given, use: Use) => BlockInstance | undefined;
  /** Whether a block may stand here; what keeps it from that is reported at the use. */
  readonly admits: (definition: BlockDefinition, use: Use) => boolean;
}

/** Where a block is used, and where what it lacks is reported. */
export interface Use {
  readonly place: Place;
  readonly report: Context['report'];
}

export type Given = ReadonlyMap<string, Argument>;

/** The patch or block a reference stands for. */
export function useOf(builder: Builder, reference: Reference): FabricUse | BlockUse | undefined {
  const meaning = meaningOf(builder, reference.name, reference.arguments ? 'block' : 'fabric or block');
  const place = at(builder, reference);
  const turns = reference.turns.map((turn) => turn.by);
  if (!meaning || meaning.kind === 'broken') return undefined;
  if (meaning.kind === 'block') {
    const block = madeFrom(builder, meaning, reference);
    return block && { kind: 'block', block, turns: [...meaning.turns, ...turns], place };
  }
  if (reference.arguments) return isStandIn(builder, meaning) ? undefined : refuse(builder, reference.name, `\`${reference.name.text}\` is ${describe(meaning)} and takes no arguments`);
  if (meaning.kind === 'fabric') return { kind: 'fabric', fabric: meaning.fabric, ...(turns.length > 0 ? { turns } : {}), place };
  return refuse(builder, reference.name, `\`${reference.name.text}\` is ${describe(meaning)}, and a fabric or a block is needed here`);
}

/** The same where only a block will do. */
export function blockUseOf(builder: Builder, reference: Reference, what: string): BlockUse | undefined {
  const use = useOf(builder, reference);
  if (!use || use.kind === 'block') return use;
  if (isStandIn(builder, use)) return undefined;
  return refuse(builder, reference.name, `${what} is a block, and \`${reference.name.text}\` is a fabric`);
}

/** The fabric of a name; an unknown one when there is none, so that what is cut from it still has its place. */
export function fabricFor(builder: Context, name: Name): Fabric {
  const meaning = meaningOf(builder, name, 'fabric');
  if (meaning?.kind === 'fabric') return meaning.fabric;
  if (meaning && meaning.kind !== 'broken') refuse(builder, name, `\`${name.text}\` is ${describe(meaning)}, and a fabric is needed here`);
  return unknownFabric(builder.units, name.text, at(builder, name));
}

/** What an argument or a default stands for. */
export function argumentOf(builder: Builder, value: Reference | Quantity, wanted: Wanted): Argument | undefined {
  if ('turns' in value) return namedArgument(builder, value, wanted);
  // A single name may be anything, also where a broken line gives it as a number.
  if (value.kind === 'reference') return namedArgument(builder, { ...value, turns: [] }, wanted);
  return numberArgument(builder, value);
}

/** The arguments of a use by the names of the parameters. One that does not match is reported and `broken`. */
export function bind(builder: Builder, definition: BlockDefinition, values: readonly ArgumentNode[]): Given {
  const given = new Map<string, Argument>();
  for (const [index, value] of values.entries()) {
    const parameter = parameterFor(builder, definition, value, index);
    if (!parameter) continue;
    if (given.has(parameter.name)) {
      refuse(builder, value, `\`${parameter.name}\` of \`${definition.name}\` is given twice`, parameter.place);
      continue;
    }
    const meant = argumentOf(builder, value.value, parameter.kind === 'number' ? 'number' : 'fabric or block');
    given.set(parameter.name, meant && suits(builder, definition, parameter, value, meant) ? meant : { kind: 'broken' });
  }
  return given;
}

type BlockMeaning = Extract<Argument, { readonly kind: 'block' }>;

function madeFrom(builder: Builder, meaning: BlockMeaning, reference: Reference): BlockInstance | undefined {
  const { definition, given } = meaning;
  if (given) return reference.arguments ? refuse(builder, reference.name, `\`${reference.name.text}\` is \`${given.name}\` here and has its arguments already`) : given;
  const use = useAt(builder, reference.name);
  if (!builder.admits(definition, use)) return undefined;
  return builder.make(definition, bind(builder, definition, reference.arguments ?? []), use);
}

function useAt(builder: Builder, name: Name): Use {
  return { place: at(builder, name), report: builder.report };
}

function namedArgument(builder: Builder, value: Reference, wanted: Wanted): Argument | undefined {
  const meaning = meaningOf(builder, value.name, value.arguments ? 'block' : wanted);
  const turns = value.turns.map((turn) => turn.by);
  if (!meaning || meaning.kind === 'broken') return undefined;
  if (meaning.kind !== 'block') {
    return value.arguments ? refuse(builder, value.name, `\`${value.name.text}\` is ${describe(meaning)} and takes no arguments`) : plain(meaning);
  }
  if (!value.arguments && meaning.given) return { ...meaning, turns: [...meaning.turns, ...turns] };
  if (!builder.admits(meaning.definition, useAt(builder, value.name))) return undefined;
  if (!value.arguments) return { ...meaning, turns: [...meaning.turns, ...turns] };
  const given = madeFrom(builder, meaning, value);
  return given && { kind: 'block', definition: meaning.definition, given, turns: [...meaning.turns, ...turns] };
}

function numberArgument(builder: Builder, quantity: Quantity): Argument | undefined {
  const value = evaluate(builder, quantity);
  return value && { kind: 'number', value };
}

/** A number handed on leaves the place of its `let` behind: the instance may outlive it. */
function plain(meaning: Argument): Argument {
  return meaning.kind === 'number' ? { kind: 'number', value: meaning.value } : meaning;
}

function parameterFor(builder: Builder, definition: BlockDefinition, { name, ...value }: ArgumentNode, index: number): ParameterDefinition | undefined {
  const { parameters } = definition;
  if (name) {
    const found = parameters.find((parameter) => parameter.name === name.text);
    if (!found) builder.report({ rule: 'unknown-name', place: at(builder, name), name: name.text, wanted: 'parameter', known: parameters.map((parameter) => parameter.name) });
    return found;
  }
  const count = parameters.length === 0 ? 'no arguments' : parameters.length === 1 ? '1 argument' : `at most ${parameters.length} arguments`;
  return parameters[index] ?? refuse(builder, value, `\`${definition.name}\` takes ${count}, and this is number ${index + 1}`, definition.place);
}

/** Whether an argument is of the parameter's kind. */
function suits(builder: Builder, definition: BlockDefinition, parameter: ParameterDefinition, columns: Columns, meant: Argument): boolean {
  const { kind } = parameter;
  if (kind === undefined || kind === meant.kind || meant.kind === 'broken' || (kind === 'cell' && meant.kind !== 'number') || isStandIn(builder, meant)) return true;
  const needed = { number: 'a number', fabric: 'a fabric', block: 'a block', cell: 'a fabric or a block' }[kind];
  refuse(builder, columns, `\`${parameter.name}\` of \`${definition.name}\` is ${needed}, and this is ${describe(meant)}`, parameter.place);
  return false;
}

