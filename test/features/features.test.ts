import { describe, expect, test } from 'vitest';
import { completionsAt } from '../../server/src/features/completion.ts';
import { mendsIn } from '../../server/src/features/fixes.ts';
import { formattingOf } from '../../server/src/features/formatting.ts';
import { symbolsOf, type DocumentSymbol } from '../../server/src/features/symbols.ts';
import { snapshotOf } from '../../server/src/snapshot.ts';
import { documentOf, replaceRange } from '../../server/src/text/document.ts';
import { rangeOf, type Range } from '../../server/src/text/place.ts';
import { hostOf, snapshotOfText } from '../harness/snapshot.ts';
import { checkCases } from './cases.ts';

describe('symbols', () => {
  checkCases('symbols.txt', ({ snapshot }) => {
    const show = ({ name, kind, detail, place, selection, children }: DocumentSymbol, indent: string): string => {
      const [whole, chosen] = [rangeOf(snapshot.document, place), rangeOf(snapshot.document, selection)];
      expect(whole && chosen && inside(chosen, whole)).toBe(true);
      return [`${indent}${kind} ${name}${detail === '' ? '' : ` (${detail})`}`, ...children.map((child) => show(child, `${indent}  `))].join('\n');
    };
    return symbolsOf(snapshot).map((symbol) => show(symbol, '')).join('\n');
  });
});

describe('mends', () => {
  checkCases('mends.txt', ({ snapshot, range }) =>
    mendsIn(snapshot, range)
      .map(({ title, edits, certain }) => {
        const text = edits.toReversed().reduce((document, edit) => {
          const at = rangeOf(snapshot.document, edit.place);
          return at ? replaceRange(document, at.start, at.end, edit.text) : document;
        }, documentOf('x', snapshot.document.text)).text;
        const changed = text.split('\n').filter((line, number) => line !== snapshot.document.lines[number]?.text);
        return [`${title}${certain ? ' (certain)' : ''}`, ...changed.map((line) => `  ${line}`)].join('\n');
      })
      .join('\n'),
  );
});

describe('completions', () => {
  checkCases('completions.txt', ({ snapshot, position }) => {
    const { columns, items } = completionsAt(snapshot, position);
    return [`columns ${columns.from} to ${columns.to}`, ...Map.groupBy(items, ({ kind }) => kind)].map((group) => (typeof group === 'string' ? group : `${group[0]}: ${group[1].map(({ text }) => text).join(' ')}`)).join('\n');
  });
});

describe('the path of an import', () => {
  const files = ['file:///w/a.quilt', 'file:///w/quilts/b.quilt', 'file:///w/quilts/my lib.quilt', 'file:///w/quilts/lib/c.quilt', 'file:///w/quilts/own.quilt', 'file:///w/b.quilt'];
  const paths = { files: () => files, shelf: ['traditional'] };
  const at = (text: string): string => {
    const { columns, items } = completionsAt(snapshotOf(documentOf('file:///w/quilts/own.quilt', text), 1, hostOf()), { line: 0, character: text.length }, paths);
    return `${columns.from} to ${columns.to}: ${items.map((item) => item.text).join(', ')}`;
  };

  test('is a library, or a file from here', () => {
    expect(at('import "')).toBe('8 to 8: traditional, b.quilt, my lib.quilt, ../a.quilt, ../b.quilt, lib/c.quilt');
    expect(at('import "li')).toBe('8 to 10: traditional, b.quilt, my lib.quilt, ../a.quilt, ../b.quilt, lib/c.quilt');
  });

  test('is asked for nowhere else', () => {
    expect(at('import "a.quilt" ')).not.toContain('.quilt');
    expect(at('fabric ink #22345c "')).toBe('20 to 20: ');
  });
});

describe('formatting', () => {
  const messy = 'fabric   ink #22345c "Night"\nblock A 6" {\n      ink    ink\n   ink ink\n}\n\n\n\nquilt {\nstraight 1 by 1\nplace { A }\n}\n';

  test('edits give a text that needs no more edits', () => {
    const snapshot = snapshotOfText(messy);
    const edits = formattingOf(snapshot);
    expect(edits.length).toBeGreaterThan(2);
    const after = edits.toReversed().reduce((document, { range, text }) => replaceRange(document, range.start, range.end, text), snapshot.document);
    expect(formattingOf(snapshotOfText(after.text))).toEqual([]);
    expect(after.text).toContain('\n  ink');
  });

  test('edits do not overlap and stand in order', () => {
    const edits = formattingOf(snapshotOfText(messy));
    for (const [index, { range }] of edits.entries()) {
      const next = edits[index + 1];
      if (next) expect(inside({ start: range.end, end: next.range.start }, { start: range.end, end: next.range.start })).toBe(true);
      if (next) expect(range.end.line < next.range.start.line || (range.end.line === next.range.start.line && range.end.character <= next.range.start.character)).toBe(true);
    }
  });

  test('a range keeps to its lines', () => {
    const edits = formattingOf(snapshotOfText(messy), { start: { line: 2, character: 0 }, end: { line: 3, character: 3 } });
    expect(edits.map(({ range }) => range.start.line)).toEqual([2, 3]);
  });
});

function inside(inner: Range, outer: Range): boolean {
  const before = (a: Range['start'], b: Range['start']): boolean => a.line < b.line || (a.line === b.line && a.character <= b.character);
  return before(outer.start, inner.start) && before(inner.end, outer.end) && before(inner.start, inner.end);
}
