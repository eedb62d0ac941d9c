import { describe, expect, test } from 'vitest';
import { hoverAt } from '../../server/src/features/hover.ts';
import { escapeMarkdown, markdownOf, plainOf } from '../../server/src/features/hover-text.ts';
import { holds, rangeOf } from '../../server/src/text/place.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { checkCases } from './cases.ts';

describe('what a hover says', () => {
  checkCases('hover.txt', ({ snapshot, position }) => {
    const hover = hoverAt(snapshot, position);
    if (!hover) return '(nothing)';
    expect(holds(snapshot.document, hover.place, position)).toBe(true);
    return plainOf(hover);
  });
});

test('a hover marks what it is about', () => {
  const snapshot = snapshotOfText('fabric ink #22345c "Night"\nblock A 6" { ink }\nquilt { straight 1 by 1\nplace { A } }\n');
  const hover = hoverAt(snapshot, { line: 1, character: 14 });
  expect(hover && rangeOf(snapshot.document, hover.place)).toEqual({ start: { line: 1, character: 13 }, end: { line: 1, character: 16 } });
});

test('what a maker wrote is not read as Markdown', () => {
  const label = '[a](http://x) <b>`*_| #1 ![](x) \\';
  const snapshot = snapshotOfText(`fabric ink #22345c "${label.replaceAll('\\', '\\\\')}"\n`);
  const hover = hoverAt(snapshot, { line: 0, character: 8 });
  expect(hover && markdownOf(hover)).toContain(`Label: **${escapeMarkdown(label)}**`);
  expect(escapeMarkdown(label)).toBe('\\[a\\](http\\://x) \\<b\\>\\`\\*\\_\\| \\#1 \\!\\[\\](x) \\\\');
});

test('every position of a text has a hover or none, and none throws', () => {
  const text = 'pattern "A" {\n units cm\n}\nlet u = (1" + 2 cm)\nfabric a #112233 "x"\nblock B(p = a) (u) {\n p/p (p|p)@90 <\n corner a 1" top_left\n}\nquilt {\n on_point 2 by 3\n place { B B(q) }\n edges a\n border (u u\n}\nexpect width at most 3"\nsize x 1 by';
  const snapshot = snapshotOfText(text);
  let found = 0;
  for (const [line, { text: written }] of snapshot.document.lines.entries()) {
    for (let character = 0; character <= written.length; character++) if (hoverAt(snapshot, { line, character })) found += 1;
  }
  expect(found).toBeGreaterThan(20);
});
