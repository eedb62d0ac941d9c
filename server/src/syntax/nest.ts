/**
 * Lines to statements: nesting from the braces, texts that span lines. A chunk is the lines of one top-level statement (or
 * one line that is none); nothing in it depends on other lines, but for what `following` says.
 */
import type { Line } from '../text/document.ts';
import { placeIn, spanning } from '../text/place.ts';
import type { Columns, Place } from '../text/place.ts';
import { RULE_IDS } from '../text/problem.ts';
import type { Problem, RuleId } from '../text/problem.ts';
import { nearestWord } from '../text/nearest.ts';
import { fault, problemOf } from './fault.ts';
import type { Fault } from './fault.ts';
import { followed } from './follow.ts';
import type { Following } from './follow.ts';
import { longTextFrom } from './long-text.ts';
import { knownLine, withText } from './reader.ts';
import type { KnownLine, LineReader } from './reader.ts';
import { indentOf, scanLine } from './scan.ts';
import type { Piece, Scan } from './scan.ts';
import { didYouMean } from './suggest.ts';
import type { Statement, StatementNode } from './tree.ts';
import { BRACES, bracesOf, contextName, isReserved, isTopLevelWord, ruleOf } from './words.ts';
import type { Context } from './words.ts';

export interface Chunk {
  readonly lines: readonly Line[];
  readonly statements: readonly Statement[];
  /** In the order of the text. */
  readonly problems: readonly Problem[];
  readonly allowed: readonly (readonly [Line, readonly RuleId[]])[];
  /** What the lines behind were taken to be; `anything`: it ended only because of them, or a message has a line number. */
  readonly following?: Following | 'anything';
}

/** Past these, `too-large`. */
const MAX_DEPTH = 64;
const MAX_LINE = 10_000;

/** Reads the chunk that begins at line number `at`. */
export function readChunk(lines: readonly Line[], at: number, reader: LineReader): Chunk {
  return new ChunkReader(lines, at, reader).read();
}

/** A statement while it is being put together. */
interface Draft {
  node: StatementNode;
  readonly line: Line;
  place: Place;
  body?: { readonly open: Place; close?: Place; readonly statements: Draft[] };
  readonly parent?: Draft;
}

/** Braces that are open: `{` of a statement, or what stands for it where it is missing. */
interface Open {
  readonly owner: Draft;
  readonly context: Context;
  readonly missing: boolean;
  readonly indent: number;
}

class ChunkReader {
  readonly #lines: readonly Line[];
  readonly #start: number;
  readonly #reader: LineReader;
  readonly #top: Draft[] = [];
  readonly #open: Open[] = [];
  readonly #problems: Problem[] = [];
  readonly #allowed: [Line, readonly RuleId[]][] = [];
  #at: number;
  #following: Following | 'anything' | undefined;
  /** Braces past the depth limit that are open: what stands in them is not read. */
  #tooDeep = 0;

  constructor(lines: readonly Line[], at: number, reader: LineReader) {
    this.#lines = lines;
    this.#start = at;
    this.#at = at;
    this.#reader = reader;
  }

  read(): Chunk {
    do {
      this.#readLine();
      this.#at++;
    } while (this.#open.length > 0 && this.#at < this.#lines.length && !this.#isClosedByNext());
    this.#closeRest();
    const lines = this.#lines.slice(this.#start, this.#at);
    return { lines, statements: this.#top, problems: inOrder(this.#problems, lines), allowed: this.#allowed, following: this.#following };
  }

  // ------------------------------------------------------------------------------------------- a line

  #readLine(): void {
    const line = this.#line();
    if (line.text.length > MAX_LINE) this.#tooLong(line);
    else this.#readPieces(this.#reader.line(line.text));
  }

  #readPieces(known: KnownLine): void {
    const { scan } = known;
    const first = scan.pieces[0];
    if (first?.kind === 'code' && this.#tooDeep === 0) this.#closeMissed(first);
    this.#report(scan.faults);
    this.#noteAllowed(scan);
    let last: Draft | undefined;
    for (const [index, piece] of scan.pieces.entries()) {
      if (this.#tooDeep > 0) this.#tooDeep += piece.kind === '{' ? 1 : piece.kind === '}' ? -1 : 0;
      else if (piece.kind === 'code') last = this.#code(known, index, last);
      else if (piece.kind === '{') last = this.#openBrace(piece, scan.pieces[index - 1]?.kind === 'code' ? last : undefined);
      else last = this.#closeBrace(piece);
    }
    if (scan.opens !== undefined && last) this.#longText(last, scan.opens);
    else if (last && scan.pieces.at(-1)?.kind === 'code') this.#expectBrace(last);
  }

  /** A piece of code: a statement; behind a `}`, options of the statement that it closes. */
  #code(known: KnownLine, index: number, last: Draft | undefined): Draft {
    const { pieces } = known.scan;
    const piece = pieces[index] ?? { from: 0, to: 0 };
    if (last && pieces[index - 1]?.kind === '}') {
      if (last.line === this.#line() && last.node.kind === 'border' && last.body) return this.#continued(last, known.scan, piece);
      this.#problem(fault(piece, 'a statement begins in a line of its own'));
    }
    return this.#statement(known, piece);
  }

  #statement(known: KnownLine, piece: Columns): Draft {
    const line = this.#line();
    const context = this.#context();
    const { node, faults } = this.#reader.read(known, piece, context);
    const parent = this.#open.at(-1)?.owner;
    const draft: Draft = { node, line, place: placeIn(line, { from: node.from, to: node.to }), ...(parent ? { parent } : {}) };
    this.#siblings().push(draft);
    if (context !== 'unknown') this.#report(faults.filter((each) => !known.scan.faults.some((other) => touches(each, other))));
    return draft;
  }

  /** `border pieced { A B } corner C`: the line is read again without the braces. */
  #continued(draft: Draft, scan: Scan, { to }: Columns): Draft {
    const { open, close } = draft.body ?? {};
    if (!open || !close) return draft;
    const text = scan.text.slice(0, open.from) + ' '.repeat(close.to - open.from) + scan.text.slice(close.to);
    const { node, faults } = this.#reader.read(knownLine({ ...scan, text }), { from: draft.place.from, to }, this.#context());
    draft.node = node;
    draft.place = { ...draft.place, to };
    this.#report(faults);
    return draft;
  }

  // ------------------------------------------------------------------------------------------- braces

  #openBrace(brace: Piece, before: Draft | undefined): Draft {
    const owner = before ?? this.#ownerAbove(brace) ?? this.#strayBrace(brace);
    const line = this.#line();
    const place = placeIn(line, brace);
    const context = bracesOf(owner.node);
    if (context === undefined && owner.node.kind !== 'junk') this.#problem(fault(brace, `${wordOf(owner)} takes no { }${didYouMean(nearestWord(wordOf(owner), Object.keys(BRACES)))}`));
    if (this.#open.length >= MAX_DEPTH) {
      this.#problems.push({ rule: 'too-large', place: owner.place, message: `braces stand more than ${MAX_DEPTH} deep in one another` });
      this.#tooDeep = 1;
      return owner;
    }
    owner.body = { open: place, statements: [] };
    owner.place = spanning(owner.place, place);
    this.#open.push({ owner, context: context ?? 'unknown', missing: false, indent: indentOf(owner.line.text) });
    return owner;
  }

  /** The statement in the line before that lacks the `{` which stands here. */
  #ownerAbove(brace: Piece): Draft | undefined {
    const open = this.#open.at(-1);
    if (open?.missing === true && open.owner.body?.statements.length === 0) {
      this.#open.pop();
      this.#problem(fault(brace, `the { stands in the line of its statement, behind ${wordOf(open.owner)}`));
      return open.owner;
    }
    return undefined;
  }

  #strayBrace(brace: Piece): Draft {
    this.#problem(fault(brace, 'a { with no statement before it'));
    const line = this.#line();
    const parent = this.#open.at(-1)?.owner;
    const node: StatementNode = { kind: 'junk', word: brace, broken: true, from: brace.from, to: brace.to };
    const draft: Draft = { node, line, place: placeIn(line, brace), ...(parent ? { parent } : {}) };
    this.#siblings().push(draft);
    return draft;
  }

  #closeBrace(brace: Piece): Draft | undefined {
    const open = this.#open.pop();
    if (!open) {
      const columns = { from: brace.from, to: brace.to };
      this.#problem(fault(columns, 'a } with nothing open', { title: 'Remove the }', edits: [{ ...columns, text: '' }] }));
      return undefined;
    }
    const close = placeIn(this.#line(), brace);
    if (open.owner.body) open.owner.body.close = close;
    open.owner.place = spanning(open.owner.place, close);
    return open.owner;
  }

  /** At the end of a line: a statement that is nothing without braces has none. */
  #expectBrace(draft: Draft): void {
    const { node } = draft;
    const braces = node.kind === 'border' ? undefined : BRACES[node.kind];
    const pieced = node.kind === 'border' && node.form === 'pieced' && !node.unit;
    if (draft.body || (!braces && !pieced) || this.#problems.some(({ place }) => place.line === draft.line)) return;
    const following = followed(this.#lines, this.#at);
    if (this.#open.length === 0) this.#following ??= following;
    if (following === 'level' && !(braces?.must ?? pieced)) return;
    const end = { from: node.to, to: node.to };
    if (following !== 'brace') this.#problem(fault(end, missingBrace(draft), { title: 'Write {', edits: [{ ...end, text: ' {' }] }));
    if (following === 'level' && this.#open.length > 0) return;
    draft.body = { open: placeIn(draft.line, end), statements: [] };
    this.#open.push({ owner: draft, context: braces?.context ?? 'pieced', missing: true, indent: indentOf(draft.line.text) });
  }

  // ------------------------------------------------------------------------------------------- braces that are never closed

  /** Whether the next line begins, at the left edge, with a word that can only stand at the top level. */
  #isClosedByNext(): boolean {
    const text = this.#line().text;
    const word = /^[a-z]+/.exec(text)?.[0] ?? '';
    if (!isTopLevelWord(word) || ruleOf(this.#context(), word) !== undefined) return false;
    this.#following = 'anything';
    this.#closeDownTo(0, `${word} begins at the left edge, line ${this.#at + 1}`);
    return true;
  }

  /** Closes braces that this statement cannot stand in, where it can stand in those around them and is indented no further. */
  #closeMissed({ from, to }: Piece): void {
    const word = /^[a-z_]+/.exec(this.#line().text.slice(from, to))?.[0] ?? '';
    if (!isReserved(word) || ruleOf(this.#context(), word) !== undefined) return;
    const index = this.#open.findLastIndex(({ context }) => ruleOf(context, word) !== undefined);
    const inner = this.#open[index + 1];
    if (index < 0 || !inner || from > inner.indent) return;
    this.#following = 'anything';
    this.#closeDownTo(index + 1, `${word} cannot stand in ${contextName(this.#context())}, line ${this.#at + 1}`);
  }

  #closeRest(): void {
    if (this.#open.length === 0) return;
    this.#following = 'anything';
    this.#closeDownTo(0, undefined);
  }

  #closeDownTo(depth: number, because: string | undefined): void {
    for (const { owner, missing } of this.#open.splice(depth)) {
      const last = owner.body?.statements.at(-1);
      if (last) owner.place = spanning(owner.place, last.place);
      if (missing || !owner.body) continue;
      const { open } = owner.body;
      const place = spanning(placeIn(owner.line, owner.node), open);
      this.#problems.push({ rule: 'syntax', place, message: `this { is never closed${because === undefined ? '' : ` (${because})`}` });
    }
    this.#tooDeep = 0;
  }

  // ------------------------------------------------------------------------------------------- the rest

  /** A `"""` text: the lines it spans are taken in, and what stands behind its end is read. */
  #longText(draft: Draft, column: number): void {
    const { endLine, end, value, endedBy } = longTextFrom(this.#lines, this.#at, column, this.#reader);
    const last = this.#lines[endLine] ?? draft.line;
    const place = spanning(placeIn(draft.line, { from: column, to: draft.line.text.length }), placeIn(last, { from: 0, to: end }));
    draft.node = withText(draft.node, column, (text) => ({ ...text, value, place }));
    draft.place = spanning(draft.place, place);
    this.#at = endLine;
    if (!endedBy) {
      this.#behindText(scanLine(last.text, end));
      return;
    }
    const because = endedBy === 'end' ? '' : ` (a statement begins at the left edge, line ${endedBy.line + 1})`;
    this.#following = 'anything';
    this.#problems.push({
      rule: 'syntax', place: placeIn(draft.line, { from: draft.node.from, to: column + 3 }), message: `this text is never closed: """ is missing${because}`,
    });
  }

  #behindText(scan: Scan): void {
    const [first] = scan.pieces;
    if (first?.kind === 'code') this.#problem(fault(first, 'behind """ the line ends'));
    this.#readPieces(knownLine({ ...scan, pieces: first?.kind === 'code' ? scan.pieces.slice(1) : scan.pieces, opens: undefined }));
  }

  #tooLong(line: Line): void {
    const columns = { from: indentOf(line.text), to: line.text.length };
    const node: StatementNode = { kind: 'junk', word: columns, broken: true, ...columns };
    const parent = this.#open.at(-1)?.owner;
    this.#siblings().push({ node, line, place: placeIn(line, columns), ...(parent ? { parent } : {}) });
    this.#problem({ ...fault(columns, `a line has at most ${MAX_LINE} characters`), rule: 'too-large' });
  }

  #noteAllowed({ comment }: Scan): void {
    if (comment === undefined) return;
    const words = /^\/\/\s*allow\s+(.*)$/.exec(this.#line().text.slice(comment))?.[1]?.split(/[\s,]+/) ?? [];
    const rules = words.filter((word): word is RuleId => (RULE_IDS as readonly string[]).includes(word));
    if (rules.length > 0) this.#allowed.push([this.#line(), rules]);
  }

  #line(): Line {
    return this.#lines[this.#at] ?? { text: '', eol: '', source: '' };
  }

  #context(): Context {
    return this.#open.at(-1)?.context ?? 'top';
  }

  #siblings(): Draft[] {
    return this.#open.at(-1)?.owner.body?.statements ?? this.#top;
  }

  #report(faults: readonly Fault[]): void {
    for (const each of faults) this.#problem(each);
  }

  #problem(each: Fault): void {
    this.#problems.push(problemOf(this.#line(), each));
  }
}

/** What a mended text says is not said again of what was read in its place. */
function touches(a: Columns, b: Columns): boolean {
  return a.from <= b.to && b.from <= a.to;
}

function wordOf({ line, node }: Draft): string {
  return line.text.slice(node.word.from, node.word.to);
}

function missingBrace(draft: Draft): string {
  return `${wordOf(draft)} has no {`;
}

function inOrder(problems: readonly Problem[], lines: readonly Line[]): readonly Problem[] {
  if (problems.length < 2) return problems;
  const number = new Map(lines.map((line, index) => [line, index]));
  return [...problems].sort((a, b) => (number.get(a.place.line) ?? 0) - (number.get(b.place.line) ?? 0) || a.place.from - b.place.from);
}
