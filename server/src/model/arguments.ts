/** The arguments of an instance, defaults filled in; what tells instances apart; what a maker calls one. */
import { key } from '../exact/number.ts';
import { onLine } from './context.ts';
import { textOf } from './evaluate.ts';
import { unknownFabric } from './fabrics.ts';
import { sameMeaning } from './memo.ts';
import type { Argument, BlockDefinition, ParameterDefinition } from './pattern.ts';
import { argumentOf, type Builder, type Given, type Use } from './uses.ts';

/** The values of the defaults, by the names of the parameters. */
export type Defaults = ReadonlyMap<string, Argument>;

/**
 * Fills in what is not given, in `filled`, in the order of the parameters, so that a default may name an earlier one; the
 * builder looks names up there. What is wrong in a default that counts goes to the builder, what is missing to the use.
 */
export function fillIn(builder: Builder, definition: BlockDefinition, given: Given, filled: Map<string, Argument>, use: Use | undefined): Defaults {
  const defaults = new Map<string, Argument>();
  for (const parameter of definition.parameters) {
    const own = given.get(parameter.name);
    const usual = defaultOf(own ? { ...builder, report: () => undefined } : builder, definition, parameter);
    if (usual) defaults.set(parameter.name, usual);
    filled.set(parameter.name, own ?? usual ?? missing(builder, definition, parameter, use));
  }
  return defaults;
}

/** A text that is the same for the same block with the same arguments, and no other, within a pattern. */
export function keyOf({ name }: BlockDefinition, filled: ReadonlyMap<string, Argument>): string {
  return filled.size === 0 ? name : `${name}(${[...filled].map(([parameter, value]) => `${parameter}=${argumentKey(value)}`).join(', ')})`;
}

/** `Nine(rust)`: arguments that equal the defaults are left out, those after a gap have their names. */
export function nameOf(builder: Builder, { name, parameters }: BlockDefinition, filled: ReadonlyMap<string, Argument>, defaults: Defaults): string {
  const texts: string[] = [];
  let hasGap = false;
  for (const parameter of parameters) {
    const value = filled.get(parameter.name);
    if (!value || sameMeaning(value, defaults.get(parameter.name))) hasGap = true;
    else texts.push(`${hasGap ? `${parameter.name}: ` : ''}${argumentText(builder, value)}`);
  }
  return texts.length === 0 ? name : `${name}(${texts.join(', ')})`;
}

function defaultOf(builder: Builder, { statement }: BlockDefinition, parameter: ParameterDefinition): Argument | undefined {
  const node = statement.node.parameters.find((each) => each.name.text === parameter.name);
  if (!node?.default) return undefined;
  return argumentOf(onLine(builder, statement.line), node.default, parameter.kind === 'number' ? 'number' : 'fabric or block') ?? { kind: 'broken' };
}

/** An unknown fabric lets the block lie where it lies; nothing does that for a number or a block. */
function missing(builder: Builder, definition: BlockDefinition, { name, kind, place }: ParameterDefinition, use: Use | undefined): Argument {
  use?.report({ rule: 'wrong-argument', place: use.place, problem: `\`${definition.name}\` needs \`${name}\``, related: place });
  return kind === 'number' || kind === 'block' ? { kind: 'broken' } : { kind: 'fabric', fabric: unknownFabric(builder.units, name, place) };
}

/** Fabrics and blocks have names of their own within a pattern; stand-ins are marked. */
function argumentKey(value: Argument): string {
  switch (value.kind) {
    case 'fabric':
      return value.fabric.standsFor ? `?${value.fabric.name}` : value.fabric.name;
    case 'number':
      return key(value.value.number) + (value.value.isLength ? '"' : '');
    case 'block':
      return [value.given?.key ?? `${value.definition.name}…`, ...value.turns].join('@');
    case 'broken':
      return '!';
  }
}

function argumentText(builder: Builder, value: Argument): string {
  switch (value.kind) {
    case 'fabric':
      return value.fabric.name;
    case 'number':
      return textOf(value.value, builder.units);
    case 'block':
      return [value.given?.name ?? value.definition.name, ...value.turns].join('@');
    case 'broken':
      return '…';
  }
}
