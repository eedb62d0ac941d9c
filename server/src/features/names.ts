/**
 * Every name of a file and what it stands for: where it is declared, in this file or another. Definitions, references, renaming
 * and colours are read from this one list.
 */
import type { Snapshot } from '../snapshot.ts';
import { walkStatements } from '../syntax/find.ts';
import type { Argument, BlockNode, ExpectNode, Name, Reference, Statement, StatementNode } from '../syntax/tree.ts';
import { partsOf, type Part } from '../syntax/walk.ts';
import type { Position } from '../text/document.ts';
import { holds, placeIn, type Columns, type Place } from '../text/place.ts';
import { placeholdersOf } from './placeholders.ts';

export type TargetKind = 'fabric' | 'block' | 'number' | 'parameter' | 'size' | 'colorway' | 'import';

/** What a name stands for. Two targets are the same when their places are (`isSameTarget`). */
export interface Target {
  readonly kind: TargetKind;
  /** As it is declared, in its own file. */
  readonly name: string;
  /** The name in its declaration. */
  readonly place: Place;
}

export interface Occurrence {
  readonly target: Target;
  readonly place: Place;
  readonly as: 'declaration' | 'use';
  /** The statement it stands in. */
  readonly statement: Statement;
}

/** In the order of the text. Names that stand for nothing are left out. */
export function occurrencesIn(snapshot: Snapshot): readonly Occurrence[] {
  const known = made.get(snapshot) ?? find(snapshot);
  made.set(snapshot, known);
  return known;
}

/** Of two names that touch at a position, the one that begins there. */
export function occurrenceAt(snapshot: Snapshot, position: Position): Occurrence | undefined {
  const line = snapshot.document.lines[position.line];
  return occurrencesIn(snapshot).filter(({ place }) => place.line === line && holds(snapshot.document, place, position)).at(-1);
}

/** What a name stands for where a statement stands: a parameter of its block, a declaration, an imported or a library name. */
export function targetOf(snapshot: Snapshot, statement: Statement | undefined, name: string): Target | undefined {
  return lookUp(snapshot, statement && parametersAround(statement), name);
}

export function isSameTarget(a: Target, b: Target): boolean {
  return a.place.line === b.place.line && a.place.from === b.place.from;
}

/** The block that a statement stands in, or is. */
export function blockAround(statement: Statement): Statement<BlockNode> | undefined {
  let outer = statement;
  while (outer.parent) outer = outer.parent;
  return isBlock(outer) ? outer : undefined;
}

export function isBlock(statement: Statement): statement is Statement<BlockNode> {
  return statement.node.kind === 'block';
}

const made = new WeakMap<Snapshot, readonly Occurrence[]>();

type Parameters = ReadonlyMap<string, Target>;

/** Where names are looked up while a statement is gone through. */
interface Finder {
  readonly snapshot: Snapshot;
  readonly statement: Statement;
  readonly parameters: Parameters | undefined;
  readonly found: Occurrence[];
}

function find(snapshot: Snapshot): readonly Occurrence[] {
  const found: Occurrence[] = [];
  let block: { readonly outer: Statement | undefined; readonly parameters: Parameters | undefined } = { outer: undefined, parameters: undefined };
  for (const statement of walkStatements(snapshot.tree)) {
    const outer = blockAround(statement);
    if (outer !== block.outer || !outer) block = { outer, parameters: parametersAround(statement) };
    const own: Occurrence[] = [];
    visitStatement({ snapshot, statement, parameters: block.parameters, found: own });
    if (statement.node.kind !== 'wording') own.sort((a, b) => a.place.from - b.place.from);
    for (const each of own) found.push(each);
  }
  return found;
}

function parametersAround(statement: Statement): Parameters | undefined {
  const block = blockAround(statement);
  if (!block) return undefined;
  const named = block.node.parameters.map(({ name }): [string, Target] => [name.text, { kind: 'parameter', name: name.text, place: placeIn(block.line, name) }]);
  return new Map(named.toReversed());
}

// ---------------------------------------------------------------------------------------------- statements

function visitStatement(finder: Finder): void {
  const { node } = finder.statement;
  switch (node.kind) {
    case 'junk':
      return;
    case 'block':
      return visitBlock(finder, node);
    case 'import':
      return node.as && declared(finder, 'import', node.as);
    case 'colorway':
      return node.name && declared(finder, 'colorway', node.name);
    case 'size':
      if (node.name) declared(finder, 'size', node.name);
      return node.count && visit(finder, node.count);
    case 'fabric':
    case 'assorted':
    case 'let':
      return visitDeclaration(finder, node);
    case 'expect':
      return visitExpectation(finder, node);
    case 'about':
    case 'wording':
      return placeholdersOf(finder.snapshot.document, finder.statement).forEach(({ parts, line }) => visitPath({ ...finder, statement: { ...finder.statement, line } }, parts));
    default:
      return namedParts(node).forEach((part) => visit(finder, part));
  }
}

function visitBlock(finder: Finder, node: BlockNode): void {
  if (node.name) declared(finder, 'block', node.name);
  for (const parameter of node.parameters) {
    const target = finder.parameters?.get(parameter.name.text);
    if (target) finder.found.push({ target, place: placeIn(finder.statement.line, parameter.name), as: 'declaration', statement: finder.statement });
    if (parameter.default) visit(finder, parameter.default);
  }
  if (node.size) visit(finder, node.size);
}

/** A `let` of a size gives another value to the number of that name. */
function visitDeclaration(finder: Finder, node: Extract<StatementNode, { readonly kind: 'fabric' | 'assorted' | 'let' }>): void {
  const outer = finder.statement.parent && node.name ? lookUp(finder.snapshot, undefined, node.name.text) : undefined;
  if (outer && node.name) used(finder, node.name, outer);
  else if (node.name) declared(finder, node.kind === 'let' ? 'number' : 'fabric', node.name);
  for (const part of partsOf(node)) if (part !== node.name) visit(finder, part);
}

function visitExpectation(finder: Finder, node: ExpectNode): void {
  visitPath(finder, node.path);
  for (const part of [node.value, node.by]) if (part) visit(finder, part);
}

/**
 * `throw.Capstan.count`: a size, a block or fabric, a quantity of it; `Capstan.ink`, `setting.ink`: a use and its fabric. Any of the
 * names may come from an import: `lib.Star.lib.moss`.
 */
function visitPath(finder: Finder, path: readonly Name[]): void {
  const [first] = path;
  const size = first && sizeNamed(finder.snapshot, first.text);
  if (first && size) used(finder, first, size);
  const rest = size ? path.slice(1) : path;
  const start = visitPathName(finder, rest, 0);
  // A fabric has quantities and no further names.
  if (start.target?.kind !== 'fabric') visitPathName(finder, rest, start.next, 'fabric');
}

/** The name that begins at an index of a path, of one kind if that is said, and the index behind it. */
function visitPathName(finder: Finder, path: readonly Name[], index: number, kind?: TargetKind): { readonly target?: Target; readonly next: number } {
  const [name, inner] = [path[index], path[index + 1]];
  if (!name) return { next: index };
  const isWanted = (found: Target | undefined): found is Target => found !== undefined && found.kind !== 'number' && (kind === undefined || found.kind === kind);
  const prefix = importNamed(finder.snapshot, name.text);
  const imported = prefix && inner && lookUp(finder.snapshot, undefined, `${name.text}.${inner.text}`);
  if (prefix && inner && isWanted(imported)) {
    used(finder, name, prefix);
    used(finder, inner, imported);
    return { target: imported, next: index + 2 };
  }
  const target = lookUp(finder.snapshot, undefined, name.text);
  if (!isWanted(target)) return { next: index + 1 };
  used(finder, name, target);
  return { target, next: index + 1 };
}

// ---------------------------------------------------------------------------------------------- parts of a line

function visit(finder: Finder, part: Part): void {
  if (isName(part)) return visitName(finder, part);
  if (isReference(part)) return visitReference(finder, part);
  for (const each of partsOf(part)) visit(finder, each);
}

/** The names and references of a line, outermost only. A line that is as it was keeps its node, and so what was found in it. */
function namedParts(node: StatementNode): readonly Part[] {
  const known = named.get(node);
  if (known) return known;
  const found: Part[] = [];
  const gather = (part: Part): void => (isName(part) || isReference(part) ? void found.push(part) : partsOf(part).forEach(gather));
  partsOf(node).forEach(gather);
  named.set(node, found);
  return found;
}

const named = new WeakMap<StatementNode, readonly Part[]>();

/** `lib.Star` is two names: that of the import, and that of the block in its file. */
function visitName(finder: Finder, name: Name): void {
  const target = lookUp(finder.snapshot, finder.parameters, name.text);
  const dot = name.text.indexOf('.');
  if (dot < 0) return target && used(finder, name, target);
  const prefix = importNamed(finder.snapshot, name.text.slice(0, dot));
  if (prefix) used(finder, { from: name.from, to: name.from + dot }, prefix);
  if (target) used(finder, { from: name.from + dot + 1, to: name.to }, target);
}

function visitReference(finder: Finder, reference: Reference): void {
  visitName(finder, reference.name);
  const definition = finder.snapshot.pattern.blocks.get(reference.name.text);
  for (const argument of reference.arguments ?? []) {
    if (argument.name) visitArgumentName(finder, argument.name, definition?.parameters.find((each) => each.name === argument.name?.text)?.place);
    visit(finder, argument.value);
  }
}

function visitArgumentName(finder: Finder, name: NonNullable<Argument['name']>, place: Place | undefined): void {
  if (place) used(finder, name, { kind: 'parameter', name: name.text, place });
}

function declared({ snapshot, statement, found }: Finder, kind: TargetKind, name: Name): void {
  const place = placeIn(statement.line, name);
  const first = kind === 'size' ? sizeNamed(snapshot, name.text) : kind === 'import' ? importNamed(snapshot, name.text) : undefined;
  found.push({ target: first ?? { kind, name: name.text, place }, place, as: 'declaration', statement });
}

function used({ statement, found }: Finder, columns: Columns, target: Target): void {
  found.push({ target, place: placeIn(statement.line, columns), as: 'use', statement });
}

// ---------------------------------------------------------------------------------------------- looking up

function lookUp(snapshot: Snapshot, parameters: Parameters | undefined, name: string): Target | undefined {
  return parameters?.get(name) ?? declarationsOf(snapshot).get(name) ?? resolved(snapshot, name);
}

/** Names that the file declares itself; the first of each. */
export function declarationsOf({ tree }: Snapshot): ReadonlyMap<string, Target> {
  const known = own.get(tree);
  if (known) return known;
  const declarations = tree.statements.flatMap(({ node, line }): [string, Target][] => {
    if (node.kind !== 'fabric' && node.kind !== 'assorted' && node.kind !== 'let' && node.kind !== 'block') return [];
    const kind = node.kind === 'let' ? 'number' : node.kind === 'block' ? 'block' : 'fabric';
    return node.name ? [[node.name.text, { kind, name: node.name.text, place: placeIn(line, node.name) }]] : [];
  });
  const found = new Map(declarations.toReversed());
  own.set(tree, found);
  return found;
}

const own = new WeakMap<Snapshot['tree'], ReadonlyMap<string, Target>>();

/** What imports and the library bring in. */
function resolved({ pattern }: Snapshot, name: string): Target | undefined {
  const meaning = pattern.workings.names.get(name);
  if (!meaning || meaning.kind === 'broken') return undefined;
  const place = meaning.kind === 'fabric' ? meaning.fabric.place : meaning.kind === 'block' ? meaning.definition.place : meaning.place;
  return place && { kind: meaning.kind, name: place.line.text.slice(place.from, place.to), place };
}

function sizeNamed({ tree }: Snapshot, name: string): Target | undefined {
  const statement = tree.statements.find(({ node }) => node.kind === 'size' && node.name?.text === name);
  return statement?.node.kind === 'size' && statement.node.name ? { kind: 'size', name, place: placeIn(statement.line, statement.node.name) } : undefined;
}

function importNamed({ tree }: Snapshot, name: string): Target | undefined {
  const statement = tree.statements.find(({ node }) => node.kind === 'import' && node.as?.text === name);
  return statement?.node.kind === 'import' && statement.node.as ? { kind: 'import', name, place: placeIn(statement.line, statement.node.as) } : undefined;
}

function isName(part: Part): part is Name {
  return part.kind === 'name';
}

function isReference(part: Part): part is Reference {
  return part.kind === 'reference' && 'turns' in part;
}
