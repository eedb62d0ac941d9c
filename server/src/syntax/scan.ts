/**
 * A line cut up before it is read: texts, braces, the comment. By hand, because it is done for every line; the rule `line`
 * of grammar/quilt.ohm says the same, and a test holds the two together.
 *
 * A `"` that touches the number before it is an inch mark. Texts that are not closed, or stand in curly quotes, are mended
 * in a copy of the line of the same length, so that the rest of the line is read as it was meant.
 */
import type { Columns } from '../text/place.ts';
import { fault } from './fault.ts';
import type { Fault } from './fault.ts';

export interface Scan {
  readonly pieces: readonly Piece[];
  /** Where the `//` of the comment stands. */
  readonly comment?: number;
  /** Where a `"""` stands that is not closed in this line. */
  readonly opens?: number;
  /** The line as it is to be read: mended, and of the same length. */
  readonly text: string;
  /** What the mended texts say, by the column they start in. */
  readonly mended: ReadonlyMap<number, string>;
  readonly faults: readonly Fault[];
}

/** Code between braces, or a brace. */
export interface Piece extends Columns {
  readonly kind: 'code' | '{' | '}';
}

const ODD_BLANKS = '\u1680\u2000-\u200A\u202F\u205F\u3000\uFEFF\u200E\u200F\u202A-\u202E\u2066-\u2069';
const BLANK = new RegExp(`[ \\t\\u00A0${ODD_BLANKS}]`);
const ALL_BLANK = new RegExp(`^[ \\t\\u00A0${ODD_BLANKS}]*$`);

/** Whether a character (or a missing one) is a blank of the language. */
export function isBlank(character: string | undefined): boolean {
  return character !== undefined && BLANK.test(character);
}

/** Whether a text has nothing but blanks. */
export function isAllBlank(text: string): boolean {
  return ALL_BLANK.test(text);
}

/** Blanks at the start of a text. */
export function indentOf(text: string): number {
  let indent = 0;
  while (isBlank(text[indent])) indent++;
  return indent;
}

/** Cuts up a line from column `start`. */
export function scanLine(line: string, start = 0): Scan {
  return new Scanner(line, start).scan();
}

/** The column behind the `"""` that ends a text which came in from the line before, or −1. */
export function endOfLongText(line: string, from = 0): number {
  for (let at = from; at < line.length; at++) {
    if (line[at] === '\\') at++;
    else if (line.startsWith('"""', at)) return at + 3;
  }
  return -1;
}

/** What a text says: `\"` and `\\` undone, anything else after a `\` kept as it is. */
export function unescape(text: string): string {
  return text.replace(/\\(["\\])/g, '$1');
}

class Scanner {
  readonly #line: string;
  readonly #start: number;
  readonly #pieces: Piece[] = [];
  readonly #faults: Fault[] = [];
  readonly #texts: Columns[] = [];
  readonly #mended = new Map<number, string>();
  #text: string;
  #at: number;
  #codeFrom = -1;

  constructor(line: string, start: number) {
    this.#line = line;
    this.#text = line;
    this.#start = start;
    this.#at = start;
  }

  scan(): Scan {
    let comment: number | undefined;
    let opens: number | undefined;
    const line = this.#line;
    for (; this.#at < line.length; this.#at++) {
      const character = line[this.#at];
      if (character === '{' || character === '}') this.#brace(character);
      else if (character === '/' && this.#isComment()) {
        comment = this.#at;
        break;
      } else {
        if (this.#codeFrom < 0 && !isBlank(character)) this.#codeFrom = this.#at;
        if (character === '"' && this.#beginsLongText()) {
          const end = endOfLongText(line, this.#at + 3);
          if (end < 0) {
            opens = this.#at;
            this.#mendText(opens, line.length, '');
            break;
          }
          this.#pass(end);
        } else if (character === '"') {
          this.#quote();
        } else if (character === '“' || character === '”' || character === '„') this.#curly();
      }
    }
    this.#endCode(comment ?? line.length);
    return { pieces: this.#pieces, comment, opens, text: this.#text, mended: this.#mended, faults: this.#faults };
  }

  #brace(kind: '{' | '}'): void {
    this.#endCode(this.#at);
    this.#pieces.push({ kind, from: this.#at, to: this.#at + 1 });
  }

  /** Ends a piece of code before `end`, blanks before it left out. */
  #endCode(end: number): void {
    if (this.#codeFrom < 0) return;
    let to = end;
    while (isBlank(this.#line[to - 1])) to--;
    this.#pieces.push({ kind: 'code', from: this.#codeFrom, to });
    this.#codeFrom = -1;
  }

  /** `//` at the start, after a blank or after a brace. */
  #isComment(): boolean {
    if (this.#line[this.#at + 1] !== '/') return false;
    const before = this.#line[this.#at - 1];
    return this.#at === this.#start || isBlank(before) || before === '{' || before === '}';
  }

  #beginsLongText(): boolean {
    return this.#line.startsWith('"""', this.#at) && !touchesNumber(this.#line, this.#at);
  }

  /** Goes to the last character of the text that stands here and ends before `end`. */
  #pass(end: number): void {
    this.#texts.push({ from: this.#at, to: end });
    this.#at = end - 1;
  }

  #quote(): void {
    if (touchesNumber(this.#line, this.#at)) return;
    const end = endOfText(this.#line, this.#at + 1);
    if (end < 0) this.#unclosed();
    else this.#pass(end);
  }

  /** A `"` that nothing closes: an inch mark apart from its number, an inch mark inside a text, or a forgotten quote. */
  #unclosed(): void {
    const from = this.#at;
    const before = this.#line.slice(0, from);
    const number = /#[\da-f]*[ \t]+$/i.test(before) ? null : /[\d¼-¾⅐-⅞)][ \t]+$/.exec(before);
    const inner = this.#texts.findLast((text) => /\d"$/.test(this.#line.slice(text.from, text.to)));
    if (inner) this.#inchMarkInside(inner);
    else if (number) this.#inchMarkApart(number.index + 1);
    else this.#forgottenQuote();
  }

  #inchMarkApart(numberEnd: number): void {
    const at = this.#at;
    const edits = [{ from: numberEnd, to: at, text: '' }];
    this.#faults.push(fault({ from: at, to: at + 1 }, 'the inch mark touches its number (as it stands, a text begins here and is not closed)', {
      title: 'Remove the blank before the inch mark', edits,
    }));
    this.#mend(numberEnd, `"${this.#line.slice(numberEnd, at)}`);
  }

  #inchMarkInside(first: Columns): void {
    const end = this.#at + 1;
    const inner = first.to - 1;
    const edits: { from: number; to: number; text: string }[] = [];
    for (let at = first.from + 1; at < end - 1; at++) {
      if (this.#line[at] === '\\') at++;
      else if (this.#line[at] === '"') edits.push({ from: at, to: at, text: '\\' });
    }
    this.#faults.push(fault({ from: inner, to: inner + 1 }, 'this " ends the text: an inch mark inside a text is written \\" or ″', { title: 'Write \\" inside the text', edits }));
    this.#mendText(first.from, end, this.#line.slice(first.from + 1, end - 1));
  }

  #forgottenQuote(): void {
    const from = this.#at;
    let to = this.#line.length;
    const tail = /[ \t]*(?:[{}][ \t]*|[ \t]\/\/.*)$/.exec(this.#line.slice(from + 1));
    if (tail && (tail[0].includes('{') || tail[0].includes('//') || this.#isOpenHere())) to = from + 1 + tail.index;
    while (to > from + 1 && isBlank(this.#line[to - 1])) to--;
    this.#faults.push(fault({ from, to }, 'this text is not closed: " is missing', { title: 'Close the text', edits: [{ from: to, to, text: '"' }] }));
    this.#mendText(from, to, this.#line.slice(from + 1, to));
    this.#at = to - 1;
  }

  /** Whether a brace was opened in this line and is still open. */
  #isOpenHere(): boolean {
    return this.#pieces.filter(({ kind }) => kind === '{').length > this.#pieces.filter(({ kind }) => kind === '}').length;
  }

  #curly(): void {
    const from = this.#at;
    if (touchesNumber(this.#line, from)) {
      this.#faults.push(fault({ from, to: from + 1 }, 'a curly quote: the inch mark is the straight "', { title: 'Write "', edits: [{ from, to: from + 1, text: '"' }] }));
      this.#mend(from, '"');
      return;
    }
    const close = /[“”"]/.exec(this.#line.slice(from + 1));
    const to = close ? from + close.index + 2 : this.#line.length;
    const edits = [{ from, to: from + 1, text: '"' }, close ? { from: to - 1, to, text: '"' } : { from: to, to, text: '"' }];
    this.#faults.push(fault({ from, to: from + 1 }, 'a curly quote: texts stand in straight quotes "…"', { title: 'Write straight quotes', edits }));
    this.#mendText(from, to, this.#line.slice(from + 1, close ? to - 1 : to));
    this.#at = to - 1;
  }

  /** Makes columns `from` to `to` one closed text for the reader. */
  #mendText(from: number, to: number, value: string): void {
    this.#mended.set(from, unescape(value));
    this.#mend(from, to - from < 2 ? '"' : `"${this.#line.slice(from + 1, to - 1).replace(/["\\]/g, "'")}"`);
    this.#texts.push({ from, to });
  }

  #mend(from: number, text: string): void {
    this.#text = this.#text.slice(0, from) + text + this.#text.slice(from + text.length);
  }
}

/** The column behind the `"` that closes a text begun before `from`, or −1. */
export function endOfText(line: string, from: number): number {
  for (let at = from; at < line.length; at++) {
    if (line[at] === '\\') at++;
    else if (line[at] === '"') return at + 1;
  }
  return -1;
}

/** Whether the mark at `at` touches a number: digits (of no name and no colour), a fraction sign or a `)` before it. */
export function touchesNumber(line: string, at: number): boolean {
  let start = at;
  while (isDigit(line[start - 1])) start--;
  const before = line[start - 1];
  if (start < at) return before === undefined || !/[\p{L}\p{M}_#]/u.test(before);
  return before !== undefined && /[¼-¾⅐-⅞)]/.test(before);
}

function isDigit(character: string | undefined): boolean {
  return character !== undefined && character >= '0' && character <= '9';
}
