/**
 * Columns as the editor counts them. Inside, a column is UTF-16 units; an editor may count bytes of UTF-8 or code points, which
 * is agreed on in the first message. Everything that comes and goes is recoded here, at the edge, and nowhere else.
 */
import type { Position } from '../text/document.ts';

export type Encoding = 'utf-8' | 'utf-16' | 'utf-32';

export interface Recoder {
  readonly encoding: Encoding;
  /** The column of ours that the editor means. */
  readonly ours: (line: string, column: number) => number;
  /** The column that the editor counts for ours. */
  readonly theirs: (line: string, column: number) => number;
  /** A message from the editor in our columns; places stand in the text of `uri` where the message names no other. */
  readonly decode: <T>(message: T, uri: string, textOf: TextOf) => T;
  /** An answer in the editor's columns. */
  readonly encode: <T>(message: T, uri: string, textOf: TextOf) => T;
}

/** A line of a text; undefined where there is none. */
export type TextOf = (uri: string, line: number) => string | undefined;

/** The first that the editor names and we can count in; without a word, UTF-16. */
export function agreedEncoding(offered: readonly string[] | undefined): Encoding {
  return offered?.find((each): each is Encoding => each === 'utf-8' || each === 'utf-16' || each === 'utf-32') ?? 'utf-16';
}

export function recoderFor(encoding: Encoding): Recoder {
  const same = <T>(message: T): T => message;
  if (encoding === 'utf-16') return { encoding, ours: (_, column) => column, theirs: (_, column) => column, decode: same, encode: same };
  const ours: Recoder['ours'] = (line, column) => unitsIn(line, column, encoding);
  const theirs: Recoder['theirs'] = (line, column) => widthOf(line.slice(0, column), encoding) + Math.max(0, column - line.length);
  const through = (count: Recoder['ours']) => <T>(message: T, uri: string, textOf: TextOf): T => recoded(message, uri, (at, { line, character }) => {
    const text = textOf(at, line);
    return { line, character: text === undefined ? character : count(text, character) };
  }) as T;
  return { encoding, ours, theirs, decode: through(ours), encode: through(theirs) };
}

/** UTF-16 units up to a column; past the end of the line the rest is counted on. */
function unitsIn(line: string, column: number, encoding: Encoding): number {
  let counted = 0;
  let units = 0;
  for (const character of line) {
    if (counted >= column) return units;
    counted += widthOf(character, encoding);
    units += character.length;
  }
  return units + Math.max(0, column - counted);
}

function widthOf(text: string, encoding: Encoding): number {
  let width = 0;
  for (const character of text) {
    const point = character.codePointAt(0) ?? 0;
    width += encoding === 'utf-32' || point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
  }
  return width;
}

/** The same message with every position in it changed. An object that names a file is about that file. */
function recoded(value: unknown, uri: string, change: (uri: string, position: Position) => Position): unknown {
  if (Array.isArray(value)) return typeof value[0] === 'number' ? value : value.map((each) => recoded(each, uri, change));
  if (typeof value !== 'object' || value === null) return value;
  if (isPosition(value)) return change(uri, value);
  const about = fileOf(value) ?? uri;
  return Object.fromEntries(Object.entries(value).map(([name, field]: [string, unknown]) => [name, name === 'changes' ? recodedChanges(field, about, change) : recoded(field, about, change)]));
}

/** `changes` of a workspace edit names the files in its keys. */
function recodedChanges(value: unknown, uri: string, change: (uri: string, position: Position) => Position): unknown {
  if (Array.isArray(value) || typeof value !== 'object' || value === null) return recoded(value, uri, change);
  return Object.fromEntries(Object.entries(value).map(([file, edits]: [string, unknown]) => [file, recoded(edits, file, change)]));
}

function isPosition(value: object): value is Position {
  return 'line' in value && 'character' in value && typeof value.line === 'number' && typeof value.character === 'number';
}

function fileOf(value: object): string | undefined {
  if ('uri' in value && typeof value.uri === 'string') return value.uri;
  const inner = 'textDocument' in value ? value.textDocument : undefined;
  return typeof inner === 'object' && inner !== null && 'uri' in inner && typeof inner.uri === 'string' ? inner.uri : undefined;
}
