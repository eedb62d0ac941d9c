/** Text to tree. Lines are read by themselves and remembered; nesting comes from the braces; unchanged statements are shared. */
import type { Document, Line } from '../text/document.ts';
import { placeIn } from '../text/place.ts';
import type { Problem, RuleId } from '../text/problem.ts';
import { followed } from './follow.ts';
import { readChunk } from './nest.ts';
import type { Chunk } from './nest.ts';
import { LineReader } from './reader.ts';
import type { Statement, Tree } from './tree.ts';

/** A file goes on being read up to this many UTF-16 units; what stands behind is `too-large`. */
const MAX_FILE = 10 * 1024 * 1024;
/** Likewise: as many lines as are read in a second or two. */
const MAX_LINES = 100_000;

/**
 * The tree of a document. Any text gives a tree; what cannot be read is a problem. With the tree of an earlier version, a
 * top-level statement whose lines are the same objects is the same object, and equal lines have equal nodes.
 */
export function parse(document: Document, previous?: Tree): Tree {
  const before = previous && ReadTree.workOf(previous);
  const reader = before?.reader ?? new LineReader();
  const { lines, problems } = withinLimit(document);
  reader.reserve(lines.length);
  return new ReadTree(document, { chunks: readChunks(lines, reader, before?.chunks ?? []), reader }, problems);
}

/** What a tree remembers for the next one. */
interface Work {
  readonly chunks: readonly Chunk[];
  readonly reader: LineReader;
}

class ReadTree implements Tree {
  readonly document: Document;
  readonly statements: readonly Statement[];
  readonly problems: readonly Problem[];
  readonly allowed: ReadonlyMap<Line, readonly RuleId[]>;
  readonly #work: Work;

  constructor(document: Document, work: Work, problems: readonly Problem[]) {
    this.document = document;
    this.statements = work.chunks.flatMap((chunk) => chunk.statements);
    this.problems = [...work.chunks.flatMap((chunk) => chunk.problems), ...problems];
    this.allowed = new Map(work.chunks.flatMap((chunk) => chunk.allowed));
    this.#work = work;
  }

  static workOf(tree: Tree): Work | undefined {
    return tree instanceof ReadTree ? tree.#work : undefined;
  }
}

function readChunks(lines: readonly Line[], reader: LineReader, before: readonly Chunk[]): Chunk[] {
  const chunks: Chunk[] = [];
  let next = 0;
  for (let at = 0; at < lines.length; ) {
    const known = chunkFrom(before, lines[at], next);
    const old = before[known];
    const chunk = old && stillStands(old, lines, at) ? old : readChunk(lines, at, reader);
    chunks.push(chunk);
    at += chunk.lines.length;
    if (old) next = known + 1;
  }
  return chunks;
}

/** The index of the chunk that begins with a line, looked for from an index on: where it stood, but for what is new. */
function chunkFrom(chunks: readonly Chunk[], line: Line | undefined, from: number): number {
  for (let index = from; index < chunks.length; index++) if (chunks[index]?.lines[0] === line) return index;
  return -1;
}

/** Whether a chunk may be taken over: its lines are these, and what it took for granted behind them is still so. */
function stillStands({ lines: own, following }: Chunk, lines: readonly Line[], at: number): boolean {
  if (following === 'anything' || own.some((line, index) => lines[at + index] !== line)) return false;
  return following === undefined || followed(lines, at + own.length - 1) === following;
}

function withinLimit(document: Document): { readonly lines: readonly Line[]; readonly problems: readonly Problem[] } {
  let size = 0;
  for (const [number, line] of document.lines.entries()) {
    size += line.text.length + line.eol.length;
    if ((size <= MAX_FILE && number < MAX_LINES) || number === 0) continue;
    const message = `the file ${size > MAX_FILE ? 'is larger than 10 MiB' : 'has more than 100,000 lines'}: it is read up to here`;
    return { lines: document.lines.slice(0, number), problems: [{ rule: 'too-large', place: placeIn(line, { from: 0, to: line.text.length }), message }] };
  }
  return { lines: document.lines, problems: [] };
}
