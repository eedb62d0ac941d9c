/** A document of lines behaves as a text, and untouched lines stay the same objects. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { documentOf, replaceRange, type Document, type Position } from '../../server/src/text/document.ts';
import { rangeOf, spanning } from '../../server/src/text/place.ts';

const piece = fc.stringMatching(/^(a|b|\r|\n|\r\n|😀|\ud83d|"| ){0,8}$/);

describe('a document', () => {
  test('gives back its text, line ends as they were', () => {
    fc.assert(
      fc.property(piece, (text) => {
        expect(documentOf('x', text).text).toBe(text);
      }),
    );
  });

  test('edited by ranges is the edited text (vscode-languageserver-textdocument as judge)', () => {
    const edit = fc.record({ text: piece, from: fc.nat(12), to: fc.nat(12) });
    fc.assert(
      fc.property(piece, fc.array(edit, { maxLength: 6 }), (start, edits) => {
        let ours = documentOf('x', start);
        const judge = TextDocument.create('x', 'quilt', 0, start);
        for (const { text, from, to } of edits) {
          const [a, b] = [judge.positionAt(Math.min(from, to)), judge.positionAt(Math.max(from, to))];
          if (splitsLineEnd(judge.getText(), judge.offsetAt(a)) || splitsLineEnd(judge.getText(), judge.offsetAt(b))) continue;
          TextDocument.update(judge, [{ range: { start: a, end: b }, text }], judge.version + 1);
          ours = replaceRange(ours, a, b, text);
          expect(ours.text).toBe(judge.getText());
          expect(ours.lines.length).toBe(judge.lineCount);
        }
      }),
      { numRuns: 3000 },
    );
  });

  test('keeps the line objects that an edit does not touch', () => {
    const before = documentOf('x', 'one\ntwo\nthree\nfour');
    const after = replaceRange(before, { line: 1, character: 1 }, { line: 2, character: 2 }, '\n\n');
    expect(after.text).toBe('one\nt\n\nree\nfour');
    expect(after.lines[0]).toBe(before.lines[0]);
    expect(after.lines.at(-1)).toBe(before.lines.at(-1));
    expect(after.numberOf(linesOf(after, 3))).toBe(3);
    expect(after.numberOf(linesOf(before, 1))).toBe(-1);
  });

  test('knows the number of every line after many edits, and of none that is gone', () => {
    const edit = fc.record({ text: piece, line: fc.nat(9), character: fc.nat(3), more: fc.nat(2) });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 40 }), fc.nat(40), (edits, asked) => {
        let document = documentOf('x', 'one\ntwo\nthree\nfour\nfive');
        const seen = new Set(document.lines);
        for (const [turn, { text, line, character, more }] of edits.entries()) {
          document = replaceRange(document, at(line, character), at(line + more, character), text);
          document.lines.forEach((each) => seen.add(each));
          if (turn === asked) document.numberOf(linesOf(document, 0));
        }
        for (const each of seen) expect(document.numberOf(each)).toBe(document.lines.indexOf(each));
      }),
    );
  });

  test('takes positions beyond its ends as its ends', () => {
    const document = documentOf('x', 'one\ntwo');
    expect(replaceRange(document, at(9, 9), at(9, 9), '!').text).toBe('one\ntwo!');
    expect(replaceRange(document, at(0, 99), at(0, 99), '!').text).toBe('one!\ntwo');
    expect(replaceRange(document, at(1, 1), at(0, 1), '-').text).toBe('o-wo');
  });
});

test('a place has a range as long as its line stands', () => {
  const before = documentOf('x', 'one\ntwo\nthree');
  const two = linesOf(before, 1);
  const place = { line: two, from: 0, to: 3 };
  const moved = replaceRange(before, at(0, 0), at(0, 0), 'zero\n');
  expect(rangeOf(moved, place)).toEqual({ start: at(2, 0), end: at(2, 3) });
  expect(rangeOf(replaceRange(before, at(1, 0), at(1, 1), 'T'), place)).toBeUndefined();
  expect(rangeOf(before, spanning(place, { line: linesOf(before, 2), from: 0, to: 5 }))).toEqual({ start: at(1, 0), end: at(2, 5) });
});

function at(line: number, character: number): Position {
  return { line, character };
}

function linesOf(document: Document, number: number) {
  const line = document.lines[number];
  if (!line) throw new Error(`no line ${number}`);
  return line;
}

function splitsLineEnd(text: string, offset: number): boolean {
  return text[offset - 1] === '\r' && text[offset] === '\n';
}
