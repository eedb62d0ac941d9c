/** Reads lines and remembers them: a text is cut up once, and read once for each kind of braces it stands in. */
import type { Columns } from '../text/place.ts';
import { fault, moved } from './fault.ts';
import { Memo } from './memo.ts';
import { readStatement } from './read.ts';
import { junkReading } from './reading.ts';
import type { Reading } from './reading.ts';
import { readByShape } from './shape.ts';
import { isAllBlank, scanLine } from './scan.ts';
import type { Scan } from './scan.ts';
import type { StatementNode, Text } from './tree.ts';
import { rewritten, shifted } from './walk.ts';
import type { Context } from './words.ts';

/** Nested parentheses the grammar may go into. */
const MAX_PARENTHESES = 32;

/** Steps of one calculation, or seams in one pair of parentheses. */
const MAX_STEPS = 200;

/** Kept for texts that no longer stand in the document: enough for undo. */
const MEMORY = 20_000;

/** A line cut up, and what its pieces were read as: by the braces they stand in and their column. */
export interface KnownLine {
  readonly scan: Scan;
  readonly readings: Map<string, Reading>;
}

export class LineReader {
  readonly #lines = new Memo<KnownLine>(MEMORY);
  readonly #whole = readByShape(MEMORY);

  /** Makes room for the lines of a document. */
  reserve(lines: number): void {
    this.#lines.reserve(2 * lines);
  }

  /** A line, cut up; lines with one text are one. */
  line(text: string): KnownLine {
    return this.#lines.get(text, () => knownLine(scanLine(text)));
  }

  /** The statement in these columns of a line: one node for all lines with this text, in these braces. */
  read({ scan, readings }: KnownLine, { from, to }: Columns, context: Context): Reading {
    const start = isAllBlank(scan.text.slice(0, from)) ? 0 : from;
    const key = start === 0 ? context : `${context} ${start}`;
    const known = readings.get(key);
    if (known) return known;
    const mended = [...scan.mended].filter(([column]) => column >= from && column < to);
    const reading = withTexts(this.#readAt(scan.text.slice(start, to), start, context), mended);
    readings.set(key, reading);
    return reading;
  }

  #readAt(text: string, start: number, context: Context): Reading {
    const message = tooMuch(text);
    if (message !== undefined) return movedReading(junkOf(text, message), start);
    return movedReading(readStatement(text, context, this.#whole), start);
  }
}

/** A line that is not remembered. */
export function knownLine(scan: Scan): KnownLine {
  return { scan, readings: new Map() };
}

function junkOf(text: string, message: string): Reading {
  const { node } = junkReading(text);
  return { node, faults: [{ ...fault(node, message), rule: 'too-large' }] };
}

function movedReading({ node, faults }: Reading, by: number): Reading {
  return by === 0 ? { node, faults } : { node: shifted(node, by), faults: faults.map((each) => moved(each, by)) };
}

/** What the mended texts of a line really say. */
function withTexts({ node, faults }: Reading, mended: readonly (readonly [number, string])[]): Reading {
  return { node: mended.reduce<StatementNode>((read, [column, value]) => withText(read, column, (text) => ({ ...text, value })), node), faults };
}

/** The node with the text that begins at a column replaced. */
export function withText(node: StatementNode, column: number, change: (text: Text) => Text): StatementNode {
  return rewritten(node, (part) => (part.kind === 'text' && part.from === column ? change(part as Text) : undefined));
}

/** What is too much in a statement for those who go through it part by part, or undefined. */
function tooMuch(text: string): string | undefined {
  if (!text.includes('(') && text.length < 2 * MAX_STEPS) return undefined;
  const steps = [/^\s*let\b/.test(text) ? 0 : -Infinity];
  for (const character of text) {
    const depth = steps.length - 1;
    if (character === '(') steps.push(0);
    else if (character === ')' && depth > 0) steps.pop();
    else if ('+-*/'.includes(character)) steps[depth] = (steps[depth] ?? 0) + 1;
    if (steps.length - 1 > MAX_PARENTHESES) return `more than ${MAX_PARENTHESES} parentheses in one another`;
    if ((steps.at(-1) ?? 0) > MAX_STEPS) return `a calculation of more than ${MAX_STEPS} steps`;
  }
  return undefined;
}
