/** One line in canonical layout: blanks as the language's own examples have them. Texts and comments are kept as they are. */
import type { Columns } from '../text/place.ts';
import { endOfLongText, endOfText, isBlank, touchesNumber } from './scan.ts';
import type { Piece, Scan } from './scan.ts';
import type { Cell, Statement, StatementNode } from './tree.ts';
import { visitParts } from './walk.ts';

/** A line without its indent: texts that stand in columns, and how far apart. Lines of one family that follow each other share columns. */
export interface Row {
  readonly family?: string;
  readonly columns: readonly string[];
  /** Blanks between the columns. */
  readonly gap: number;
  /** The same, where the line stands by itself. */
  readonly alone?: number;
}

/** Blanks between cells, where one of them is more than a name. */
const WIDE = 3;

/** The layout of a line with these pieces, whose first statement (if any) is given. */
export function tidied(scan: Scan, line: string, first: Statement | undefined, seams: ReadonlySet<number>): Row {
  const texts = scan.pieces.map((piece) => (piece.kind === 'code' ? code(line, piece, seams, scan.opens) : piece.kind));
  const rest = scan.comment === undefined ? '' : commentWith(line, scan.comment);
  const whole = texts.join(' ') + rest;
  const [piece] = scan.pieces;
  if (!first || piece?.kind !== 'code' || scan.opens !== undefined) return { columns: [whole], gap: 1 };
  const behind = texts.slice(1).map((text) => ` ${text}`).join('') + rest;
  return inColumns(first.node, line, piece, seams, behind, scan) ?? { columns: [whole], gap: 1 };
}

/** The columns of the seams in a statement: blanks beside them (in parentheses they may be) go. */
export function seamsIn(node: StatementNode): number[] {
  const seams: number[] = [];
  visitParts(node, (part) => {
    if (part.kind === 'split') seams.push(...(part as Extract<Cell, { kind: 'split' }>).seams.map(({ from }) => from));
  });
  return seams;
}

// ---------------------------------------------------------------------------------------------- columns

function inColumns(node: StatementNode, line: string, piece: Piece, seams: ReadonlySet<number>, behind: string, scan: Scan): Row | undefined {
  const text = (columns: Columns): string => code(line, columns, seams, undefined);
  const split = (end: number, family: string, rest: string): Row => (
    { family, columns: [text({ from: piece.from, to: end }), rest === '' ? behind.trimStart() : rest + behind], gap: 1 });
  const upTo = (end: number, family: string): Row => split(end, family, text({ from: end, to: piece.to }));
  switch (node.kind) {
    case 'fabric':
      return node.name && { ...upTo(node.name.to, node.kind), gap: 2, alone: 1 };
    case 'recolour':
      return node.fabric && { ...upTo(node.fabric.to, node.kind), gap: 2, alone: 1 };
    case 'size':
      return node.name && upTo(node.name.to, node.kind);
    case 'by': case 'about': case 'units': case 'seam': case 'round_up': case 'yardage': case 'spare': case 'layers': case 'paper': case 'level': case 'language':
      return upTo(node.word.to, 'pattern');
    case 'place': case 'between':
      return node.word.to === piece.to && scan.pieces.at(-1)?.kind === '}' ? upTo(node.word.to, 'tile') : undefined;
    case 'patch':
      return node.fabric && split(node.fabric.to, 'patch', corners(line, node.fabric.to, piece.to, [...node.corners, ...node.arcs]));
    case 'row_of_cells':
      return { family: 'cells', columns: cells(node.cells, text, '', behind), gap: gapOf(node.cells) };
    case 'row':
      return node.cells.length === 0 ? undefined : { family: 'row', columns: cells(node.cells, text, 'row ', behind), gap: gapOf(node.cells) };
    default:
      return undefined;
  }
}

function cells(all: readonly Cell[], text: (columns: Columns) => string, before: string, behind: string): string[] {
  const texts = all.map(text);
  return texts.map((each, index) => (index === 0 ? before : '') + each + (index === texts.length - 1 ? behind : ''));
}

function gapOf(all: readonly Cell[]): number {
  const plain = all.every((cell) => cell.kind === 'goes_on' || (cell.kind === 'reference' && !cell.arguments && cell.turns.length === 0));
  return plain ? 1 : WIDE;
}

/** Two blanks before each corner and each arc but the first. */
function corners(line: string, from: number, to: number, parts: readonly Columns[]): string {
  const starts = parts.map((part) => part.from).sort((a, b) => a - b).slice(1);
  const ends = [...starts, to];
  return [from, ...starts].map((start, index) => code(line, { from: start, to: ends[index] ?? to }, new Set(), undefined)).join('  ');
}

function commentWith(line: string, at: number): string {
  let start = at;
  while (isBlank(line[start - 1])) start--;
  return (start === 0 ? '' : line.slice(start, at) || ' ') + line.slice(at).trimEnd();
}

// ---------------------------------------------------------------------------------------------- blanks

/** Code with its blanks put right; from column `raw` on (an open `"""`) it is kept as it is. */
function code(line: string, { from, to }: Columns, seams: ReadonlySet<number>, raw = to): string {
  let out = '';
  let before: Token | undefined;
  for (const token of tokensOf(line, from, raw < from ? from : raw < to ? raw : to, seams)) {
    out += (before ? blankBetween(before, token) : '') + token.text;
    before = token;
  }
  return raw < to ? `${out === '' ? '' : `${out} `}${line.slice(raw, to)}` : out;
}

interface Token {
  readonly text: string;
  readonly kind: 'seam' | 'plain';
  /** Inside parentheses. */
  readonly inside: boolean;
  readonly blankBefore: boolean;
}

function* tokensOf(line: string, from: number, to: number, seams: ReadonlySet<number>): Generator<Token> {
  let depth = 0;
  let blankBefore = false;
  for (let at = from; at < to; ) {
    if (isBlank(line[at])) {
      blankBefore = true;
      at++;
      continue;
    }
    const end = tokenEnd(line, at, to, seams);
    const text = line.slice(at, end);
    if (text === ')') depth--;
    yield { text, kind: seams.has(at) ? 'seam' : 'plain', inside: depth > 0, blankBefore };
    if (text === '(') depth++;
    blankBefore = false;
    at = end;
  }
}

function tokenEnd(line: string, at: number, to: number, seams: ReadonlySet<number>): number {
  const isSign = (column: number): boolean => '(),=:%'.includes(line[column] ?? '') || seams.has(column);
  if (isSign(at)) return at + 1;
  const text = textEnd(line, at);
  if (text > at) return text;
  let end = at + 1;
  while (end < to && !isBlank(line[end]) && !isSign(end) && textEnd(line, end) === end) end++;
  return end;
}

/** The blank that belongs between two tokens. */
function blankBetween(left: Token, right: Token): string {
  if (left.kind === 'seam' || right.kind === 'seam' || left.text === '(' || right.text === ')' || right.text === '%' || right.text === ':') return '';
  if (right.text === ',' && right.inside) return '';
  if (left.text === ':' || left.text === '=' || right.text === '=' || (left.text === ',' && left.inside)) return ' ';
  return right.blankBefore ? ' ' : '';
}

/** The column behind the text that begins here; the same column where none does. */
function textEnd(line: string, at: number): number {
  if (line[at] !== '"' || touchesNumber(line, at)) return at;
  const end = line.startsWith('"""', at) ? endOfLongText(line, at + 3) : endOfText(line, at + 1);
  return end < 0 ? at : end;
}
