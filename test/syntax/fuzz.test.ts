import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contextAt, pathAt, walkStatements } from '../../server/src/syntax/find.ts';
import { format, formatTree } from '../../server/src/syntax/format.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import type { Statement, Tree } from '../../server/src/syntax/tree.ts';
import { ALL_STATEMENT_WORDS, OPTION_WORDS } from '../../server/src/syntax/words.ts';
import { documentOf, replaceRange } from '../../server/src/text/document.ts';
import type { Document, Position } from '../../server/src/text/document.ts';
import { rangeOf } from '../../server/src/text/place.ts';
import { meaning, plain } from './plain.ts';
import { FIRST_PATTERN } from '../harness/first-pattern.ts';

const folder = new URL('../cases/syntax/', import.meta.url);
const base = readFileSync(new URL('base.quilt', folder), 'utf8');
const options = { seed: Number(process.env['FUZZ_SEED'] ?? 20_240_229), numRuns: Number(process.env['FUZZ_RUNS'] ?? 200) };

// ---------------------------------------------------------------------------------------------- what is thrown at it

const signs = ['{', '}', '(', ')', '"', '"""', '“', '”', '//', '/', '\\', '|', '-', '*', '@', '@90', '<', '^', '=', ':', ',', '%', '#', '#22345c', '[', ']', '.'];
const numbers = ['1', '2 1/2', '7 1/2"', '2-1/2', '2½', '1/0', '2 5/4', '71/2', '.5', '1,5 cm', '3 yd', '2 inch', '99999999999999999999'];
const odd = ['\u0000', '\uFEFF', '\u200F', '\u00A0', '\u3000', '\uD800', '\uDC00', '😀', 'é', 'e\u0301', 'Ω', 'कि', '\t'];
const breaks = ['\n', '\n\n', '\r\n', '\r', ' ', '  ', ''];
const word = fc.constantFrom(...ALL_STATEMENT_WORDS, ...new Set(Object.values(OPTION_WORDS).flat()), 'ink', 'a', 'b', 'Capstan', 'lib.Star', 'unit', 'sqrt', 'cut', 'x');
const token = fc.oneof({ weight: 5, arbitrary: word }, { weight: 3, arbitrary: fc.constantFrom(...signs) }, { weight: 3, arbitrary: fc.constantFrom(...numbers) }, fc.constantFrom(...odd), fc.constantFrom('"text"', '"9\\" text"', '// allow gap', '"""a\nb"""'));
const text = fc.array(fc.tuple(token, fc.constantFrom(...breaks)), { maxLength: 60 }).map((parts) => parts.flat().join(''));
const anything = fc.oneof(text, fc.string({ unit: 'binary', maxLength: 200 }), fc.string({ maxLength: 200 }));

interface Edit {
  readonly start: number;
  readonly length: number;
  readonly text: string;
}

const edit: fc.Arbitrary<Edit> = fc.record({ start: fc.nat(2000), length: fc.oneof(fc.constant(0), fc.nat(3), fc.nat(80)), text: fc.oneof(token, text, fc.constantFrom(...breaks)) });

function edited(document: Document, { start, length, text: fresh }: Edit): Document {
  const whole = document.text;
  const from = start % (whole.length + 1);
  return replaceRange(document, positionAt(whole, from), positionAt(whole, Math.min(whole.length, from + length)), fresh);
}

function positionAt(whole: string, offset: number): Position {
  const lines = whole.slice(0, offset).split(/\r\n|\n|\r/);
  return { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
}

// ---------------------------------------------------------------------------------------------- what must hold

function checkTree(tree: Tree): void {
  const { document } = tree;
  for (const problem of tree.problems) {
    for (const place of [problem.place, ...(problem.fix?.edits ?? []).map((each) => each.place)]) {
      expect(rangeOf(document, place)).toBeDefined();
      expect(place.from).toBeGreaterThanOrEqual(0);
      expect(place.to).toBeLessThanOrEqual((place.endLine ?? place.line).text.length);
      if (!place.endLine) expect(place.to).toBeGreaterThanOrEqual(place.from);
    }
    expect(problem.message).not.toMatch(/undefined|[a-z]\.$|: expected $/);
  }
  for (const statement of walkStatements(tree)) {
    expect(rangeOf(document, statement.place)).toBeDefined();
    expect(statement.node.to).toBeLessThanOrEqual(statement.line.text.length);
    expect(statement.node.from).toBeLessThanOrEqual(statement.node.to);
    for (const inner of statement.body?.statements ?? []) expect(inner.parent).toBe(statement);
  }
  for (const line of [0, document.lines.length >> 1, document.lines.length - 1]) {
    pathAt(tree, { line, character: 3 });
    contextAt(tree, { line, character: 3 });
  }
}

describe('any text', () => {
  test('gives a tree whose places are in the document', () => {
    fc.assert(fc.property(anything, (written) => checkTree(parse(documentOf('fuzz', written)))), options);
  });

  test('every beginning of the first pattern', () => {
    for (let end = 0; end <= base.length; end += 3) checkTree(parse(documentOf('fuzz', base.slice(0, end))));
  });

  test('is formatted once and for all, and means the same', () => {
    fc.assert(fc.property(fc.oneof(text, fc.array(edit, { maxLength: 4 }).map((edits) => edits.reduce(edited, documentOf('fuzz', base)).text)), (written) => {
      const document = documentOf('fuzz', written);
      const tree = parse(document);
      const once = formatTree(tree);
      const again = parse(documentOf('fuzz', once));
      expect(meaning(again)).toBe(meaning(tree));
      expect(formatTree(again)).toBe(once);
      const byEdits = format(tree).reduceRight((now, { place, text: fresh }) => {
        const range = rangeOf(document, place);
        return range ? replaceRange(now, range.start, range.end, fresh) : now;
      }, document);
      expect(byEdits.text).toBe(once);
    }), options);
  });
});

describe('edits', () => {
  test('a tree with a previous one is the tree without', () => {
    fc.assert(fc.property(fc.constantFrom(FIRST_PATTERN, base, ''), fc.array(edit, { minLength: 1, maxLength: 6 }), (start, edits) => {
      let document = documentOf('fuzz', start);
      let tree = parse(document);
      for (const each of edits) {
        document = edited(document, each);
        tree = parse(document, tree);
        expect(plain(tree) === plain(parse(document))).toBe(true);
      }
      checkTree(tree);
    }), { ...options, numRuns: 150 });
  });

  test('statements whose lines stand are the same objects', () => {
    const before = parse(documentOf('fuzz', base));
    fc.assert(fc.property(fc.nat(), fc.constantFrom('x', ' ', 'border', '7'), (at, fresh) => {
      const document = edited(before.document, { start: at, length: 0, text: fresh });
      const after = parse(document, before);
      const touched = (statement: (typeof after.statements)[number]): boolean => {
        const range = rangeOf(before.document, statement.place);
        const now = rangeOf(document, statement.place);
        return !range || !now || document.lines.slice(now.start.line, now.end.line + 1).some((line) => before.document.numberOf(line) < 0);
      };
      const kept = before.statements.filter((statement) => rangeOf(document, statement.place) && !touched(statement));
      expect(kept.filter((statement) => !after.statements.includes(statement)).length).toBeLessThanOrEqual(1);
    }), options);
  });

  test('a character typed into one line leaves the statements of the others', () => {
    const before = parse(documentOf('fuzz', base));
    fc.assert(fc.property(fc.nat(), fc.constantFrom('x', '7', '/', '-', ',', '@', '(', ')', ' '), (at, fresh) => {
      const document = edited(before.document, { start: at, length: 0, text: fresh });
      const line = before.document.lines.find((each) => document.numberOf(each) < 0)?.text ?? '';
      if (/[{}]|"""|Two blocks/.test(line)) return;
      const now = new Set([...walkStatements(parse(document, before))].map(nodeOf));
      const lost = [...walkStatements(before)].filter((statement) => document.numberOf(statement.line) >= 0 && !now.has(nodeOf(statement)));
      expect(lost.map((statement) => statement.line.text)).toEqual([]);
    }), options);
  });
});

function nodeOf({ node, line }: Statement): string {
  return line.text + JSON.stringify(node, (name, value: unknown) => (name === 'line' || name === 'endLine' ? undefined : typeof value === 'bigint' ? `${value}` : value));
}

describe('limits', () => {
  test('a line of 1 MiB, 5,000 nested braces, 5,000 nested parentheses and many statements in a line answer quickly', () => {
    const texts = ['a'.repeat(1 << 20), 'block A 3" { a '.repeat(660), '{'.repeat(5000), 'a{'.repeat(5000), 'a{\n'.repeat(5000), `${'{ '.repeat(5000)}${'} '.repeat(5000)}`,
      `quilt { place { ${'('.repeat(5000)} } }`, `block A 3" {\n  ${'a/'.repeat(4900)}\n}`, `block A 3" {\n  ${'a '.repeat(4900)}\n}`, 'a {} '.repeat(1900), '"""\n'.repeat(2000), `let a = ${'1+'.repeat(4000)}1`, `let a = ${'-'.repeat(9000)}1`, `let a = ${'9'.repeat(9000)}`];
    for (const written of texts) {
      const start = performance.now();
      const tree = parse(documentOf('fuzz', written));
      checkTree(tree);
      formatTree(tree);
      expect(performance.now() - start, written.slice(0, 20)).toBeLessThan(3000);
    }
  });

  test('past them `too-large` is said at the statement, and the rest is read', () => {
    const said = (written: string): readonly string[] => parse(documentOf('fuzz', written)).problems.map(({ rule, place }) => `${rule} ${place.from}`);
    expect(said(`let a = ${'('.repeat(33)}1${')'.repeat(33)}`)).toEqual(['too-large 0']);
    expect(said(`let a = ${'('.repeat(32)}1${')'.repeat(32)}`)).toEqual([]);
    expect(said(`let a = 1 // ${'x'.repeat(10_000)}`)).toEqual(['too-large 0']);
    expect(said(`block A 3" { ${'turned 4 { '.repeat(64)} a ${'} '.repeat(65)}`)).toEqual(['too-large 706']);
    expect(said(`block A 3" { ${'turned 4 { '.repeat(63)} a ${'} '.repeat(64)}`)).toEqual([]);
  });
});
