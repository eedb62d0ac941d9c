/** What is wrong with a cell that could not be read. Columns are those of the text it stands in. */
import type { Columns } from '../text/place.ts';
import { fault } from './fault.ts';
import type { Fault } from './fault.ts';
import { isBlank } from './scan.ts';
import { shown } from './suggest.ts';

const SEAMS = '/\\|-';

/** The faults of the cell that stands in these columns; at least one. */
export function cellFaults(text: string, { from, to }: Columns): Fault[] {
  const found = parenthesisFault(text, from, to) ?? commentFault(text, from, to) ?? splitFault(text, from, to, false);
  return [found ?? fault({ from, to }, `\`${shown(text.slice(from, to))}\` is no cell: a cell is a fabric, a block, or parts with seams between them`)];
}

/** Cells joined by seams that have blanks around them. */
export function looseSeamFaults(text: string, { from, to }: Columns): Fault[] {
  return seamsOf(text, from, to).flatMap(({ at }) => {
    let start = at;
    let end = at + 1;
    while (isBlank(text[start - 1])) start--;
    while (isBlank(text[end])) end++;
    if (start === at && end === at + 1) return [];
    const edits = [{ from: start, to: at, text: '' }, { from: at + 1, to: end, text: '' }].filter((edit) => edit.from < edit.to);
    return [fault({ from: at, to: at + 1 }, `a seam touches both names: a${text[at]}b`, { title: 'Remove the blanks', edits })];
  });
}

function parenthesisFault(text: string, from: number, to: number): Fault | undefined {
  const open: number[] = [];
  for (let at = from; at < to; at++) {
    if (text[at] === '(') open.push(at);
    else if (text[at] === ')' && open.pop() === undefined) return fault({ from: at, to: at + 1 }, 'this ) closes nothing');
  }
  const last = open.at(-1);
  return last === undefined ? undefined : fault({ from: last, to: last + 1 }, 'this ( is not closed');
}

function commentFault(text: string, from: number, to: number): Fault | undefined {
  const at = text.slice(from, to).indexOf('//');
  return at < 0 ? undefined : fault({ from: from + at, to: from + at + 2 }, 'a comment begins behind a blank: // is no seam');
}

/** What is wrong with parts and seams; in parentheses blanks are free. */
function splitFault(text: string, from: number, to: number, inside: boolean): Fault | undefined {
  const seams = seamsOf(text, from, to);
  const ends = [...seams.map(({ at }) => at), to];
  let start = from;
  for (const [index, end] of ends.entries()) {
    const columns = trimmed(text, start, end);
    if (columns.from >= columns.to) return emptyFault(text, seams, index);
    start = end + 1;
  }
  return mixedFault(text, from, to, seams) ?? diagonalFault(seams) ?? partsFault(text, from, to, ends, inside);
}

function emptyFault(text: string, seams: readonly Seam[], index: number): Fault {
  const before = seams[index - 1];
  const seam = before ?? seams[index];
  const columns = seam ? { from: seam.at, to: seam.at + 1 } : { from: 0, to: text.length };
  return fault(columns, `the seam ${seam?.seam ?? ''} has nothing ${before ? 'after' : 'before'} it: expected a name or (`);
}

function mixedFault(text: string, from: number, to: number, seams: readonly Seam[]): Fault | undefined {
  const [first] = seams;
  const index = seams.findIndex(({ seam }) => seam !== first?.seam);
  const second = seams[index];
  const before = seams[index - 1];
  if (!second || !before) return undefined;
  const cell = text.slice(from, to);
  const left = `(${text.slice(from, second.at)})${text.slice(second.at, to)}`;
  const right = `${text.slice(from, before.at + 1)}(${text.slice(before.at + 1, to)})`;
  const example = seams.length === 2 && cell.length < 60 ? `: ${left} or ${right}` : '';
  return fault({ from: second.at, to: second.at + 1 }, `two kinds of seam in one cell: put one of them in parentheses${example}`);
}

function diagonalFault(seams: readonly Seam[]): Fault | undefined {
  const [first, second] = seams;
  if (!first || !second || first.seam === '|' || first.seam === '-') return undefined;
  return fault({ from: second.at, to: second.at + 1 }, `a ${first.seam} cuts its box in two: put two of the parts in parentheses`);
}

function partsFault(text: string, from: number, to: number, ends: readonly number[], inside: boolean): Fault | undefined {
  let start = from;
  for (const end of ends) {
    const columns = inside ? trimmed(text, start, end) : { from: start, to: end };
    const found = partFault(text, columns, ends.length > 1 ? text[ends[0] ?? to] : undefined);
    if (found) return found;
    start = end + 1;
  }
  return undefined;
}

/** What is wrong with one part, `seam` being the seam it stands at. */
function partFault(text: string, { from, to }: Columns, seam: string | undefined): Fault | undefined {
  const part = text.slice(from, to);
  const weight = outside(text, from, to, '*');
  const turn = /@(?!(?:90|180|270|mirror|flip)(?![\p{L}\d_]))[^@*()]*/u.exec(part);
  if (turn) return fault({ from: from + turn.index, to: from + turn.index + turn[0].length }, `\`${turn[0]}\` is no turn: @90, @180, @270, @mirror or @flip`);
  if (weight >= 0 && weight + 1 === to) return fault({ from: weight, to: to }, 'the * has no weight after it');
  if (weight >= 0 && seam !== '|' && seam !== '-') return fault({ from: weight, to }, 'a weight stands where parts lie beside or above each other: a*2|b');
  if (part.startsWith('(')) return groupFault(text, { from, to });
  const name = /^[\p{L}][\p{L}\p{M}\d_.]*/u.exec(part)?.[0];
  if (name === undefined) return fault({ from, to }, `\`${shown(part)}\` is no cell: expected a name or (`);
  const blank = outside(text, from, to, ' ');
  if (blank >= 0) return fault({ from, to }, `\`${shown(part)}\` has no seam in it: in parentheses there is one cell`);
  if (part[name.length] === '(') return fault({ from, to }, 'arguments are names, numbers, or NAME = VALUE, with commas between them');
  return undefined;
}

function groupFault(text: string, { from, to }: Columns): Fault | undefined {
  const close = closeOf(text, from, to);
  if (close < 0) return undefined;
  return splitFault(text, from + 1, close, true);
}

interface Seam {
  readonly at: number;
  readonly seam: string;
}

/** The seams that stand outside parentheses; a hyphen between digits belongs to a number. */
function seamsOf(text: string, from: number, to: number): Seam[] {
  const seams: Seam[] = [];
  let depth = 0;
  for (let at = from; at < to; at++) {
    const seam = text[at] ?? '';
    if (seam === '(') depth++;
    else if (seam === ')') depth--;
    else if (depth === 0 && SEAMS.includes(seam) && !isInNumber(text, at)) seams.push({ at, seam });
  }
  return seams;
}

function isInNumber(text: string, at: number): boolean {
  return /\d/.test(text[at - 1] ?? '') && /[\d¼-¾⅐-⅞]/.test(text[at + 1] ?? '') && /\*[\d./-]*$/.test(text.slice(0, at));
}

function outside(text: string, from: number, to: number, wanted: string): number {
  let depth = 0;
  for (let at = from; at < to; at++) {
    if (text[at] === '(') depth++;
    else if (text[at] === ')') depth--;
    else if (depth === 0 && text[at] === wanted) return at;
  }
  return -1;
}

function closeOf(text: string, from: number, to: number): number {
  let depth = 0;
  for (let at = from; at < to; at++) {
    if (text[at] === '(') depth++;
    else if (text[at] === ')' && --depth === 0) return at;
  }
  return -1;
}

function trimmed(text: string, from: number, to: number): Columns {
  let start = from;
  let end = to;
  while (start < end && isBlank(text[start])) start++;
  while (end > start && isBlank(text[end - 1])) end--;
  return { from: start, to: end };
}
