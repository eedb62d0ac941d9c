/**
 * Blocks with their arguments. An instance is made once for each definition and arguments, in the file the block comes from,
 * and taken over from the version before when everything it was made from is unchanged.
 */
import { fillIn, keyOf, nameOf, type Defaults } from './arguments.ts';
import { bodyOf } from './body.ts';
import { flippedCorners } from './centre.ts';
import type { Context } from './context.ts';
import { standInFor } from './fabrics.ts';
import type { Finding } from './finding.ts';
import { finishedSize } from './measures.ts';
import { costOf, homeOf, spentOn } from './memo.ts';
import { methodsOf } from './methods.ts';
import { MOST_LEVELS, insideBy, obstacle } from './nesting.ts';
import type { Argument, BlockDefinition, BlockInstance, KnownNames, Meaning, Obstacle, Pattern, Remembered } from './pattern.ts';
import { ofKind } from './statements.ts';
import type { Builder, Given, Use } from './uses.ts';

/** The most cells and statements in all the blocks of a pattern together, each block counted with each of its arguments. */
export const MOST_CELLS = 1_000_000;

/**
 * The block with the arguments given by name; parameters without one have their defaults. What is missing is reported at the
 * use, and the block is made without it. Undefined when blocks within blocks have no end, which is reported too.
 */
export function instantiate(pattern: Pattern, definition: BlockDefinition, given: Given, use?: Use): BlockInstance | undefined {
  return made({ root: pattern, steps: [] }, definition, given, use)?.instance;
}

/** The block with all its defaults; undefined when a parameter has none. */
export function defaultInstance(pattern: Pattern, definition: BlockDefinition): BlockInstance | undefined {
  return definition.parameters.every((parameter) => parameter.hasDefault) ? instantiate(pattern, definition, new Map()) : undefined;
}

/**
 * The block as it can be looked at by itself: with its defaults, and grey fabrics (`standsFor: 'parameter'`) for parameters
 * without one. Undefined when such a parameter has to be a number or a block, which nothing can stand in for.
 */
export function sampleInstance(pattern: Pattern, definition: BlockDefinition): BlockInstance | undefined {
  const given = new Map<string, Argument>();
  const { units } = homeOf(pattern, definition).rules;
  for (const [index, { name, kind, hasDefault, place }] of definition.parameters.entries()) {
    if (hasDefault) continue;
    if (kind === 'number' || kind === 'block') return undefined;
    given.set(name, { kind: 'fabric', fabric: standInFor(units, name, index, place) });
  }
  const sample = made({ root: pattern, steps: [] }, definition, given, undefined);
  return sample?.incomplete ? undefined : sample?.instance;
}

/** A context that can make the pattern's blocks, outside of blocks. */
export function quiltBuilder(pattern: Pattern, context: Context): Builder {
  return {
    ...context,
    admits: () => true,
    make: (definition, given, use) => instantiate(pattern, definition, given, use),
  };
}

/** Where an instance is being made: the pattern, and the blocks being made around it. */
interface World {
  readonly root: Pattern;
  readonly steps: readonly Draft[];
}

/** An instance in the making, with everything it is made from. */
interface Draft {
  readonly definition: BlockDefinition;
  readonly home: Pattern;
  readonly arguments: Map<string, Argument>;
  readonly findings: Finding[];
  readonly lookups: Set<string>;
  readonly nested: Set<BlockInstance>;
  /** Known once the arguments are. */
  key: string;
  hasUnknown: boolean;
  incomplete: boolean;
  passing: boolean;
}

function made(world: World, named: BlockDefinition, given: Given, use: Use | undefined): Remembered | undefined {
  const { memo, called } = world.root.workings;
  const definition = called.get(named.statement) ?? named;
  const usual = given.size === 0 ? memo.defaults.get(definition) : undefined;
  if (usual) return noted(world, usual);
  const draft = draftOf(definition, homeOf(world.root, definition));
  const builder = builderFor(world, draft);
  const defaults = fillIn(builder, definition, given, draft.arguments, use);
  draft.key = keyOf(definition, draft.arguments);
  const known = memo.instances.get(draft.key);
  if (!known && hasNoEnd(world, draft, use)) return undefined;
  const result = known ?? build(world, draft, builder, defaults);
  if (!known) {
    memo.instances.set(draft.key, result);
    memo.spent.cells += spentOn(result.instance);
  }
  if (given.size === 0 && definition.parameters.every((parameter) => parameter.hasDefault)) memo.defaults.set(definition, result);
  return noted(world, result);
}

function noted({ root }: World, result: Remembered): Remembered {
  root.workings.memo.asked.add(result.instance.key);
  return result;
}

function draftOf(definition: BlockDefinition, home: Pattern): Draft {
  return { definition, home, arguments: new Map(), findings: [], lookups: new Set(), nested: new Set(), key: '', hasUnknown: false, incomplete: false, passing: false };
}

/** Names of the texts cannot go round (`admits` sees to that); blocks handed on as arguments can. */
function hasNoEnd({ steps }: World, { key, definition }: Draft, use: Use | undefined): boolean {
  const back = steps.findIndex((step) => step.key === key);
  if (back < 0 && steps.length < MOST_LEVELS) return false;
  const [around] = steps.slice(-1);
  if (around) around.passing = true;
  if (use) use.report(back < 0 ? tooDeep(use) : ringFinding(use, [...steps.slice(back), { definition }].map((step) => step.definition.name)));
  return true;
}

function build(world: World, draft: Draft, builder: Builder, defaults: Defaults): Remembered {
  const instance = isTooMuch(world, draft) ? emptyInstance(draft) : instanceOf(draft, builder, defaults);
  const { lookups, hasUnknown, incomplete, passing } = draft;
  return { instance, arguments: draft.arguments, lookups, hasUnknown, incomplete, passing, age: 0 };
}

function instanceOf(draft: Draft, builder: Builder, defaults: Defaults): BlockInstance {
  const { definition, key, findings } = draft;
  const { node, line, body } = definition.statement;
  const statements = body?.statements ?? [];
  const size = node.size && finishedSize(builder, node.size, 'the size of a block');
  return {
    key,
    name: nameOf(builder, definition, draft.arguments, defaults),
    definition,
    ...(size && node.size ? { size: { ...size, place: { line, from: node.size.from, to: node.size.to } } } : {}),
    body: bodyOf(builder, statements),
    corners: flippedCorners(builder, statements),
    methods: methodsOf(builder, statements),
    templates: ofKind(statements, 'templates').length > 0,
    foundation: ofKind(statements, 'foundation').length > 0,
    findings,
    nested: [...draft.nested],
    arguments: draft.arguments,
  };
}

/** Blocks that multiply by their arguments would never end: past the limit they are empty, which is said at their names. */
function isTooMuch({ root }: World, draft: Draft): boolean {
  const { definition } = draft;
  if (root.workings.memo.spent.cells + costOf(definition) <= MOST_CELLS) return false;
  draft.passing = true;
  draft.findings.push({ rule: 'too-large', place: definition.place, found: 'what the blocks of this pattern are made of', limit: '1,000,000 cells' });
  return true;
}

function emptyInstance({ key, definition, findings }: Draft): BlockInstance {
  return { key, name: definition.name, definition, body: { kind: 'empty' }, corners: [], methods: {}, templates: false, foundation: false, findings };
}

/** The context a block is made in: its parameters, then the names of its file. Everything looked up is noted in the draft. */
function builderFor(world: World, draft: Draft): Builder {
  const { home, definition } = draft;
  const inner: World = { root: world.root, steps: [...world.steps, draft] };
  return {
    line: definition.statement.line,
    units: home.rules.units,
    seam: home.rules.seam,
    report: (finding) => void draft.findings.push(finding),
    known: () => {
      draft.hasUnknown = true;
      return withParameters(home.workings.known, definition);
    },
    meaning: (name) => draft.arguments.get(name) ?? lookUp(draft, name),
    libraryOf: home.workings.libraryOf,
    lacks: () => void (draft.incomplete = true),
    admits: (block, use) => {
      const found = obstacleIn(draft, block);
      if (found) use.report(found.kind === 'ring' ? ringFinding(use, found.chain) : tooDeep(use));
      return !found;
    },
    make: (block, given, use) => {
      const result = made(inner, block, given, use);
      if (result) draft.nested.add(result.instance);
      draft.incomplete ||= result?.incomplete ?? false;
      draft.passing ||= result?.passing ?? true;
      return result?.instance;
    },
  };
}

function lookUp({ home, lookups }: Draft, name: string): Meaning | undefined {
  lookups.add(name);
  return home.workings.names.get(name);
}

function obstacleIn({ home, definition }: Draft, inner: BlockDefinition): Obstacle | undefined {
  return obstacle(home.workings.nesting, definition, inner, insideBy(home.workings.names));
}

function withParameters(known: KnownNames, { parameters }: BlockDefinition): KnownNames {
  const named = (isNumber: boolean): readonly string[] => parameters.filter(({ kind }) => (kind === 'number') === isNumber).map(({ name }) => name);
  return { ...known, fabrics: [...named(false), ...known.fabrics], numbers: [...named(true), ...known.numbers] };
}

function ringFinding({ place }: Pick<Use, 'place'>, chain: readonly string[]): Finding {
  return { rule: 'wrong-argument', place, problem: `\`${chain[0] ?? ''}\` stands inside itself: ${chain.join(' → ')}` };
}

function tooDeep({ place }: Pick<Use, 'place'>): Finding {
  return { rule: 'too-large', place, found: 'this block within blocks', limit: `${MOST_LEVELS} levels` };
}

