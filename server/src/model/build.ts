/**
 * From a tree to a pattern: declarations read, names and numbers resolved, imports brought in. Blocks and the quilt are
 * resolved when they are asked for (`instantiate.ts`, `quilt.ts`). An older pattern lends what has not changed.
 */
import type { Tree } from '../syntax/tree.ts';
import { adopt } from './adopt.ts';
import { declare } from './declare.ts';
import type { Context } from './context.ts';
import type { Finding } from './finding.ts';
import { importsOf, libraryOf, type ModelHost } from './imports.ts';
import type { Import, Pattern } from './pattern.ts';
import { unitsOf, usualSeam } from './rules.ts';
import { isSame } from './same.ts';

export type { ModelHost } from './imports.ts';

/** The pattern of a tree. `previous`, an older pattern of the same document, lends what has not changed. */
export function buildPattern(tree: Tree, host: ModelHost, previous?: Pattern): Pattern {
  const session: Session = { host, library: [], way: [], built: new Map() };
  const library = host.library.map((each, index) => build(session, each, previous?.workings.library[index]));
  const older = previous?.workings.plain ?? previous;
  const plain = build({ ...session, library }, tree, older);
  if (previous && older && plain.workings === older.workings) return { ...previous, tree, imports: plain.imports };
  return adopt(plain, previous);
}

/** One building of a pattern and of all it imports. */
interface Session {
  readonly host: ModelHost;
  readonly library: readonly Pattern[];
  /** The files being built around this one, by their sources. */
  readonly way: readonly string[];
  readonly built: Map<Tree, Pattern>;
}

function build(session: Session, tree: Tree, older: Pattern | undefined): Pattern {
  const found: Finding[] = [];
  const context = bareContext(tree, session.host, (finding) => void found.push(finding));
  const imports = importsOf(context, tree, session.host, (file) => load(session, tree, file, older));
  if (older && isUnchanged(older, { tree, imports, library: session.library, found })) return older.tree === tree ? older : { ...older, tree, imports };
  const pattern = declare(context, { tree, imports, library: session.library, older });
  return { ...pattern, findings: [...found] };
}

/** The pattern of an imported file; undefined for one that is being built around this one. */
function load(session: Session, tree: Tree, file: Tree, older: Pattern | undefined): Pattern | undefined {
  const { source } = file.document;
  const way = [...session.way, tree.document.source];
  if (way.includes(source)) return undefined;
  const known = session.built.get(file);
  if (known) return known;
  const before = older?.imports.find((one) => one.tree?.document.source === source)?.pattern;
  const built = build({ ...session, way }, file, before);
  session.built.set(file, built);
  return built;
}

/** Before anything is declared no name is known, and the seam is the usual one. */
function bareContext(tree: Tree, host: ModelHost, report: Context['report']): Context {
  const [line = { text: '', eol: '', source: tree.document.source }] = tree.document.lines;
  const units = unitsOf(tree.statements);
  const known = { fabrics: [], blocks: [], numbers: [], unread: [] };
  return { line, units, seam: usualSeam(units), known: () => known, meaning: () => undefined, libraryOf: (name) => libraryOf(host, name), report };
}

interface Sources {
  readonly tree: Tree;
  readonly imports: readonly Import[];
  readonly library: readonly Pattern[];
  readonly found: readonly Finding[];
}

/** Whether the same statements meet the same files: then everything is as it was. */
function isUnchanged(older: Pattern, { tree, imports, library, found }: Sources): boolean {
  const aboutImports = (findings: readonly Finding[]): readonly Finding[] => findings.filter(({ rule }) => rule === 'import-missing' || rule === 'import-cycle');
  return (
    sameItems(older.tree.statements, tree.statements) &&
    sameItems(older.imports.map(({ pattern }) => pattern?.workings), imports.map(({ pattern }) => pattern?.workings)) &&
    sameItems(older.workings.library.map(({ workings }) => workings), library.map(({ workings }) => workings)) &&
    isSame(aboutImports(older.findings), aboutImports(found))
  );
}

function sameItems<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((each, index) => each === b[index]);
}
