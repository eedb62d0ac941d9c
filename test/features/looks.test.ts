import { describe, expect, test } from 'vitest';
import { blockCard } from '../../server/src/features/block-card.ts';
import { colourParts, coloursIn, colourText } from '../../server/src/features/colours.ts';
import { completionsAt } from '../../server/src/features/completion.ts';
import { foldsIn } from '../../server/src/features/folding.ts';
import { inlaysIn } from '../../server/src/features/inlays.ts';
import { lensesIn } from '../../server/src/features/lenses.ts';
import { linksIn } from '../../server/src/features/links.ts';
import { selectionsAt } from '../../server/src/features/selection.ts';
import { signatureAt } from '../../server/src/features/signature.ts';
import { tokensIn } from '../../server/src/features/tokens.ts';
import { formattingAfter } from '../../server/src/features/typing.ts';
import { replaceRange } from '../../server/src/text/document.ts';
import { rangeOf, type Range } from '../../server/src/text/place.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { checkCases } from './cases.ts';

const ALL: Range = { start: { line: 0, character: 0 }, end: { line: 1e6, character: 0 } };

describe('colours of names', () => {
  checkCases('tokens.txt', ({ snapshot }) =>
    tokensIn(snapshot).map(({ line, from, to, type, modifiers }) => `${line + 1}:${from + 1} ${snapshot.document.lines[line]?.text.slice(from, to) ?? ''} ${[type, ...modifiers].join('.')}`).join('\n'));
});

describe('folds', () => {
  checkCases('folding.txt', ({ snapshot }) => foldsIn(snapshot).map(({ from, to, kind }) => `${from + 1} to ${to + 1} ${kind}`).join('\n'));
});

describe('selections', () => {
  checkCases('selection.txt', ({ snapshot, position }) => {
    const ranges = selectionsAt(snapshot, position);
    return ranges.map(({ start, end }) => `${start.line + 1}:${start.character + 1} to ${end.line + 1}:${end.character + 1}${start.line === end.line ? ` ${snapshot.document.lines[start.line]?.text.slice(start.character, end.character) ?? ''}` : ''}`.trimEnd()).join('\n');
  });
});

describe('what a block is given', () => {
  checkCases('signature.txt', ({ snapshot, position }) => {
    const found = signatureAt(snapshot, position);
    if (!found) return '(nothing)';
    return [found.label, ...found.parameters.map(({ from, to, says }, index) => `${index === found.active ? '>' : ' '} ${found.label.slice(from, to)}: ${says}`), ...(found.active >= found.parameters.length ? ['(too many)'] : [])].join('\n');
  });
});

describe('swatches', () => {
  checkCases('colours.txt', ({ snapshot }) => coloursIn(snapshot).map(({ place, colour }) => `${snapshot.document.numberOf(place.line) + 1}:${place.from + 1} ${colour}`).join('\n'));
  test('a colour goes through the picker unchanged', () => {
    for (let value = 0; value < 256; value += 1) {
      const colour = `#${[value, 255 - value, (value * 7) % 256].map((part) => part.toString(16).padStart(2, '0')).join('')}`;
      expect(colourText(colourParts(colour))).toBe(colour);
    }
  });
});

describe('links', () => {
  checkCases('links.txt', ({ snapshot }) =>
    linksIn(snapshot).map(({ place, to }) => `${place.line.text.slice(place.from, place.to)} → ${to.kind === 'file' ? to.start.line.source : to.rule}`).join('\n'));
});

describe('figures beside and above the text', () => {
  checkCases('annotations.txt', ({ snapshot }) => {
    const lines = snapshot.document.lines.map(({ text }) => text);
    for (const { line, column, text } of inlaysIn(snapshot, ALL).toReversed().toSorted((a, b) => b.line - a.line || b.column - a.column)) {
      lines[line] = `${lines[line]?.slice(0, column) ?? ''}‹${text}›${lines[line]?.slice(column) ?? ''}`;
    }
    const lenses = lensesIn(snapshot).map(({ place, text }) => `${(rangeOf(snapshot.document, place)?.start.line ?? -2) + 1}: ${text}`);
    return [...lines, ...lenses].join('\n').trim();
  });
});

describe('layout while one types', () => {
  checkCases('typing.txt', ({ snapshot, position }) =>
    formattingAfter(snapshot, position, '\n').toReversed().reduce((document, { range, text }) => replaceRange(document, range.start, range.end, text), snapshot.document).text);
});

describe('more completions', () => {
  checkCases('completions-more.txt', ({ snapshot, position }) => {
    const { columns, items } = completionsAt(snapshot, position);
    return [`columns ${columns.from} to ${columns.to}`, ...items.map(({ text, kind, detail, snippet, colour }) => [`${kind} ${text}`, detail, colour ?? '', snippet === undefined ? '' : `⇒ ${snippet.replaceAll('\n', '⏎')}`].filter((part) => part !== '').join(' · '))].slice(0, 24).join('\n');
  });
});

test('every snippet of a statement is one that the language reads', () => {
  const places = [['', ''], ['pattern "A" {\n', '}\n'], ['block A 6" {\n', '}\n'], ['quilt {\n', '}\n']] as const;
  let tried = 0;
  for (const [before, after] of places) {
    const line = before.split('\n').length - 1;
    for (const { text, kind, snippet } of completionsAt(snapshotOfText(`${before}\n${after}`), { line, character: 0 }).items) {
      if (kind !== 'statement' || snippet === undefined) continue;
      const filled = snippet.replace(/\$\{\d+:([^}]*)\}/g, '$1').replace(/\$\{\d+\|([^,|]*)[^}]*\}/g, '$1').replaceAll('$0', FILLING[text] ?? '');
      expect(snapshotOfText(`${before}${filled}\n${after}`).tree.problems.map(({ message }) => `${text}: ${message}`)).toEqual([]);
      tried += 1;
    }
  }
  expect(tried).toBeGreaterThan(30);
});

/** What one has to write oneself. */
const FILLING: Readonly<Record<string, string>> = { expect: 'width 3"', strip: 'ink', round: 'a b c d', row: '3" ink', method: 'singles' };

test('a block is drawn on its card, and what a maker wrote is not read as Markdown', () => {
  const snapshot = snapshotOfText('fabric ink #22345c "Night"\nblock Four(a_b = ink) 6" {\n  a_b ink/a_b\n}\n');
  const card = blockCard(snapshot, 'Four') ?? '';
  const [, data = ''] = /^!\[Four\]\(data:image\/svg\+xml;base64,([^)]*)\)/.exec(card) ?? [];
  expect(Buffer.from(data, 'base64').toString()).toMatch(/^<svg [^>]*width="96" height="\d+"/);
  expect(card).toContain('**Four(a\\_b = ink)**');
  expect(card).toContain('3 patches');
  expect(blockCard(snapshot, 'nine_patch')).toContain('9 patches');
  expect(blockCard(snapshot, 'lost')).toBeUndefined();
});

test('whatever is written, every position has an answer', () => {
  const text = 'pattern "A" {\n units cm\n}\nlet u = (1" + 2 cm)\nfabric a #112233 "x" // allow x\nblock B(p = a) (u) {\n p/p (p|p)@90 <\n corner a 1" top_left\n}\nquilt {\n on_point 2 by 3\n place { B B(q) }\n edges a\n border (u u\n}\nexpect width at most 3"\nsteps {\n "{a.b" {\n}\nsize x 1 by';
  const snapshot = snapshotOfText(text);
  for (const [line, { text: written }] of snapshot.document.lines.entries()) {
    for (let character = 0; character <= written.length; character++) {
      const { columns } = completionsAt(snapshot, { line, character });
      expect(columns.from).toBeLessThanOrEqual(columns.to);
      signatureAt(snapshot, { line, character });
      selectionsAt(snapshot, { line, character });
      formattingAfter(snapshot, { line, character }, '\n');
    }
  }
  expect(foldsIn(snapshot).length + lensesIn(snapshot).length + inlaysIn(snapshot, ALL).length + tokensIn(snapshot).length).toBeGreaterThan(10);
});
