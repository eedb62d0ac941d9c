/**
 * What has been made, and what of it still holds in a new version: an instance whose definition, arguments, rules, names and
 * blocks inside are all as they were.
 */
import type { Statement } from '../syntax/tree.ts';
import type { Line } from '../text/document.ts';
import { MOST_LEVELS } from './nesting.ts';
import type { Argument, BlockDefinition, BlockInstance, Fabric, Meaning, Memo, Pattern, Remembered } from './pattern.ts';
import { isSame } from './same.ts';

/** How many versions an instance is kept that nobody asks for. */
const OLDEST = 16;

/** A memory for `fresh`, with what still holds of that of an older version. */
export function memoAfter(older: Pattern | undefined, fresh: Pattern): Memo {
  const memo = emptyMemo(older?.workings.memo.variants);
  if (!older) return memo;
  const asked = askedIn(older.workings.memo);
  // A version of which little was asked (what is said at once after a keystroke) tells nothing about what is wanted.
  const grows = asked.size * 2 < older.workings.memo.instances.size ? 0 : 1;
  const holds = holdsIn(older, fresh);
  for (const [key, remembered] of older.workings.memo.instances) {
    const age = asked.has(key) ? 0 : remembered.age + grows;
    if (age <= OLDEST && holds(remembered)) memo.instances.set(key, age === remembered.age ? remembered : { ...remembered, age });
  }
  for (const [definition, { instance }] of older.workings.memo.defaults) {
    const kept = memo.instances.get(instance.key);
    if (kept?.instance === instance) memo.defaults.set(definition, kept);
  }
  for (const { instance } of memo.instances.values()) memo.spent.cells += spentOn(instance);
  return memo;
}

export function emptyMemo(variantsBefore: ReadonlyMap<string, Pattern> = new Map()): Memo {
  return { instances: new Map(), defaults: new Map(), asked: new Set(), spent: { cells: 0 }, variants: new Map(), variantsBefore };
}

/** What making a block costs, in cells: its own, and something for itself. */
export function costOf({ weight = 1 }: BlockDefinition): number {
  return weight + EACH;
}

/** What a block that was made has cost: one that was refused stays empty, and leaves its cells to others. */
export function spentOn({ definition, body }: BlockInstance): number {
  return body.kind === 'empty' ? EACH : costOf(definition);
}

const EACH = 50;

/** The file a block is declared in: its names and units are the ones that count inside it. */
export function homeOf(root: Pattern, { statement }: BlockDefinition): Pattern {
  return fileIn(root, statement.line.source) ?? root;
}

/** Whether two names stand for the same. Fabrics, definitions and instances are kept as objects while nothing about them changes. */
export function sameMeaning(a: Meaning | undefined, b: Meaning | undefined): boolean {
  if (a === b) return true;
  if (a?.kind === 'fabric') return b?.kind === 'fabric' && a.fabric === b.fabric;
  if (a?.kind === 'number') return b?.kind === 'number' && isSame(a.value, b.value);
  if (a?.kind === 'block') return b?.kind === 'block' && a.definition === b.definition && a.given === b.given && isSame(a.turns, b.turns);
  return a?.kind === b?.kind;
}

/** The keys asked for, and those of the blocks inside: these come first in the memory, so it is read from its end. */
function askedIn({ asked, instances }: Memo): ReadonlySet<string> {
  const all = new Set(asked);
  for (const [key, { instance }] of [...instances].reverse()) {
    if (all.has(key)) for (const inner of instance.nested ?? []) all.add(inner.key);
  }
  return all;
}

/** Asked of every instance of the older version, blocks inside first. */
function holdsIn(older: Pattern, fresh: Pattern): (remembered: Remembered) => boolean {
  const changes = new Map<string, Changes | undefined>();
  const changesIn = (source: string): Changes | undefined => {
    if (!changes.has(source)) changes.set(source, changesBetween(fileIn(older, source), fileIn(fresh, source)));
    return changes.get(source);
  };
  const known = currentIn(fresh);
  const kept = new Set<BlockInstance>();
  const argumentHolds = (value: Argument): boolean => {
    if (value.kind === 'fabric') return known.fabrics.has(value.fabric) || (value.fabric.standsFor !== undefined && known.lines.has(value.fabric.place.line));
    if (value.kind === 'block') return known.definitions.has(value.definition) && (!value.given || kept.has(value.given));
    return true;
  };
  return (remembered) => {
    const { definition, nested } = remembered.instance;
    const inFile = changesIn(definition.statement.line.source);
    const holds =
      !remembered.passing && inFile !== undefined && known.definitions.has(definition) && !inFile.statements.has(definition.statement) &&
      !(remembered.hasUnknown && inFile.known) && (nested?.every((inner) => kept.has(inner)) ?? true) &&
      !touches(remembered.lookups, inFile.names) && all(remembered.arguments.values(), argumentHolds);
    if (holds) kept.add(remembered.instance);
    return holds;
  };
}

interface Current {
  readonly fabrics: ReadonlySet<Fabric>;
  readonly definitions: ReadonlySet<BlockDefinition>;
  /** The first lines of all blocks. */
  readonly lines: ReadonlySet<Line>;
}

function currentIn(pattern: Pattern): Current {
  const { files, called } = pattern.workings;
  const definitions = new Set([...called.values(), ...pattern.blocks.values()]);
  return {
    fabrics: new Set([pattern, ...files.values()].flatMap((file) => [...file.fabrics.values()])),
    definitions,
    lines: new Set([...definitions].map(({ statement }) => statement.line)),
  };
}

/** What is different about a file for the blocks in it. */
interface Changes {
  /** The names that stand for something else. */
  readonly names: ReadonlySet<string>;
  /** The blocks that are in a ring, or were. */
  readonly statements: ReadonlySet<Statement>;
  /** Whether other names would be suggested. */
  readonly known: boolean;
}

/** The changes of a file; undefined when everything in it has to be made anew. */
function changesBetween(older: Pattern | undefined, fresh: Pattern | undefined): Changes | undefined {
  if (!older || older.rules !== fresh?.rules) return undefined;
  if (older.workings.names === fresh.workings.names) return { names: new Set(), statements: new Set(), known: false };
  const names = new Set<string>();
  for (const [name, meaning] of fresh.workings.names) if (!sameMeaning(older.workings.names.get(name), meaning)) names.add(name);
  for (const name of older.workings.names.keys()) if (!fresh.workings.names.has(name)) names.add(name);
  for (const [name, { statement }] of fresh.blocks) if (!isAsDeep(older, fresh, statement)) names.add(name);
  const statements = new Set([...older.workings.nesting.rings.keys(), ...fresh.workings.nesting.rings.keys()]);
  return { names, statements, known: older.workings.known !== fresh.workings.known };
}

/** Whether a block could stand in others before as now: rings aside, only blocks at the limit cannot. */
function isAsDeep(older: Pattern, fresh: Pattern, statement: Statement): boolean {
  const [before, now] = [older, fresh].map(({ workings }) => (workings.nesting.levels.get(statement) ?? 1) >= MOST_LEVELS);
  return before === now;
}

function fileIn(root: Pattern, source: string): Pattern | undefined {
  return source === root.tree.document.source ? root : root.workings.files.get(source);
}

function touches(names: ReadonlySet<string>, changed: ReadonlySet<string>): boolean {
  if (changed.size === 0) return false;
  for (const name of names) if (changed.has(name)) return true;
  return false;
}

function all<T>(items: Iterable<T>, holds: (item: T) => boolean): boolean {
  for (const item of items) if (!holds(item)) return false;
  return true;
}
