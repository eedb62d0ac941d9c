/** `import`: which files a pattern brings in, and which it cannot. */
import type { Statement, Tree } from '../syntax/tree.ts';
import { placeIn, type Place } from '../text/place.ts';
import type { Context } from './context.ts';
import type { Import, Pattern } from './pattern.ts';
import { ofKind } from './statements.ts';

/** The tool's own library files that a pattern may import by name: `import "traditional"`. */
export interface Shelf {
  readonly names: readonly string[];
  /** The same tree each time; undefined for a name that is not in `names`. */
  readonly file: (name: string) => Tree | undefined;
}

/** The outside world as the model sees it. */
export interface ModelHost {
  /** The blocks that are always there. */
  readonly library: readonly Tree[];
  readonly shelf?: Shelf;
  /** The file at a path relative to the document `from`; the same tree as before when it has not changed. Never asked for a name of the shelf. */
  import(path: string, from: string): Tree | 'missing' | 'outside' | 'unreadable';
}

/** The imports of a file, in the order of the text. `load` makes the pattern of a file, or nothing for one that is being made. */
export function importsOf(context: Context, tree: Tree, host: ModelHost, load: (tree: Tree) => Pattern | undefined): readonly Import[] {
  const names = new Map<string, Place>();
  return ofKind(tree.statements, 'import').flatMap(({ node, line }): Import[] => {
    if (!node.path) return [];
    const place = placeIn(line, node.path);
    const path = node.path.value;
    const as = node.as?.text;
    if (node.as && as !== undefined) {
      const first = names.get(as);
      if (first) context.report({ rule: 'duplicate-name', place: placeIn(line, node.as), name: as, what: 'imports', first });
      names.set(as, first ?? placeIn(line, node.as));
    }
    const found = readFile(context, host, { path, from: tree.document.source, place });
    const pattern = found && load(found);
    return [{ path, ...(as === undefined ? {} : { as }), ...(found ? { tree: found } : {}), ...(pattern ? { pattern } : {}), place }];
  });
}

/** The name of the first file on the shelf that has a block of this name. */
export function libraryOf({ shelf }: ModelHost, block: string): string | undefined {
  return shelf?.names.find((name) => ofKind(shelf.file(name)?.statements ?? [], 'block').some(({ node }) => node.name?.text === block));
}

interface Wanted {
  readonly path: string;
  readonly from: string;
  readonly place: Place;
}

function readFile(context: Context, host: ModelHost, { path, from, place }: Wanted): Tree | undefined {
  const found = fileAt(host, path, from);
  if (typeof found === 'string') {
    const shelf = isOnShelf(path) ? { shelf: host.shelf?.names ?? [] } : {};
    context.report({ rule: 'import-missing', place, path, why: found, ...shelf });
    return undefined;
  }
  const chain = ringIn(host, [{ source: from }, { source: found.document.source, path }], found, new Set());
  if (chain) context.report({ rule: 'import-cycle', place, chain });
  return found;
}

function fileAt(host: ModelHost, path: string, from: string): Tree | 'missing' | 'outside' | 'unreadable' {
  return isOnShelf(path) ? (host.shelf?.file(path) ?? 'missing') : host.import(path, from);
}

/** A path without a dot, a slash or a backslash is a name of the shelf: files of patterns end in `.quilt`. */
function isOnShelf(path: string): boolean {
  return path !== '' && !/[./\\]/.test(path);
}

interface Step {
  readonly source: string;
  /** As the import writes it; the first file of all is nowhere written. */
  readonly path?: string;
}

/** The first ring of imports that following `tree` comes into, as the paths it goes through. */
function ringIn(host: ModelHost, way: readonly Step[], tree: Tree, seen: Set<string>): readonly string[] | undefined {
  const last = way.at(-1);
  const back = way.slice(0, -1).findIndex(({ source }) => source === last?.source);
  if (back >= 0) return way.slice(back).map(({ path }) => path ?? last?.path ?? '');
  if (seen.has(tree.document.source)) return undefined;
  seen.add(tree.document.source);
  for (const path of pathsIn(tree.statements)) {
    const next = fileAt(host, path, tree.document.source);
    const ring = typeof next === 'string' ? undefined : ringIn(host, [...way, { source: next.document.source, path }], next, seen);
    if (ring) return ring;
  }
  return undefined;
}

function pathsIn(statements: readonly Statement[]): readonly string[] {
  return ofKind(statements, 'import').flatMap(({ node }) => node.path?.value ?? []);
}
