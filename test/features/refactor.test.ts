import { describe, expect, test } from 'vitest';
import { looksLike, withEdits } from '../../server/src/features/refactor/edit.ts';
import { refactoringsAt } from '../../server/src/features/refactor/list.ts';
import { blocksOf } from '../../server/src/features/blocks.ts';
import type { Snapshot } from '../../server/src/snapshot.ts';
import { readFileSync, readdirSync } from 'node:fs';
import traditional from '../../server/library/traditional.quilt';
import { snapshotOfText } from '../harness/snapshot.ts';
import { checkCases } from './cases.ts';

describe('refactorings', () => {
  checkCases('refactorings.txt', ({ snapshot, range }) =>
    refactoringsAt(snapshot, range).map(({ title, kind, edits }) => {
      const after = withEdits(snapshot, edits);
      const before = new Set(snapshot.document.lines.map(({ text }) => text));
      const changed = after.document.lines.map(({ text }) => text).filter((text) => !before.has(text));
      return [`${kind}: ${title}`, ...changed.map((text) => `  | ${text}`)].join('\n');
    }).join('\n'));
});

/** Errors, without the lines they are at. */
function errors({ problems }: Snapshot): readonly string[] {
  return problems.filter(({ rule }) => !/^(unused|low-contrast|bulky|partial|set-in|bias)/.test(rule)).map(({ rule, message }) => `${rule}: ${message}`);
}

/** Takes every refactoring at every third column of a text, and judges the outcome anew from its text. */
function takeAll(text: string): Readonly<Record<string, number>> {
  const snapshot = snapshotOfText(text);
  const taken: Record<string, number> = {};
  const tried = new Set<string>();
  for (const [line, { text: written }] of snapshot.document.lines.entries()) {
    for (let character = 0; character <= written.length; character += 3) {
      for (const { title, edits } of refactoringsAt(snapshot, { start: { line, character }, end: { line, character } })) {
        const after = snapshotOfText(withEdits(snapshot, edits).document.text);
        const id = title + after.document.text;
        if (tried.has(id)) continue;
        tried.add(id);
        taken[title.replace(/`.*?`|\b(half|quarter)\b/g, '…')] = (taken[title.replace(/`.*?`|\b(half|quarter)\b/g, '…')] ?? 0) + 1;
        expect(errors(after), `${title}\n${after.document.text}`).toEqual(errors(snapshot));
        if (/^(Exchange|Add)/.test(title)) continue;
        const now = new Map(blocksOf(after).map(({ definition, layout }) => [definition.name, layout]));
        for (const { definition, layout } of blocksOf(snapshot)) {
          const other = now.get(definition.name);
          expect(other && looksLike(layout, other), `${title}: ${definition.name}\n${after.document.text}`).toBe(true);
        }
      }
    }
  }
  return taken;
}

test('what a refactoring writes is what was there, in every block of the libraries', { timeout: 120_000 }, () => {
  const head = 'fabric ink #22345c "Night"\nfabric sand #eadfc8 "Dry"\n';
  const blocks = traditional.split(/\n(?=(?:\/\/.*\n)*block )/).slice(0, 40);
  const total: Record<string, number> = {};
  for (const block of blocks) for (const [title, count] of Object.entries(takeAll(head + block))) total[title] = (total[title] ?? 0) + count;
  expect(total['Turn the grid into patches']).toBeGreaterThan(8);
  expect(total['Extract a block']).toBeGreaterThan(8);
});

test('and in the samples', { timeout: 120_000 }, () => {
  const folder = new URL('../../samples/', import.meta.url);
  for (const file of readdirSync(folder).filter((name) => /^harbour-mail\.quilt$/.test(name))) takeAll(readFileSync(new URL(file, folder), 'utf8'));
});

test('grid to patches to grid comes back to the same look', () => {
  const text = 'fabric ink #22345c "Night"\nfabric sand #eadfc8 "Dry"\nblock A 7 1/2" {\n  grid 2 1 2 by 2 1 2\n  sand/ink (sand|ink) ink\\sand\n  sand|ink*2 sand ink-sand-ink\n  sand (ink\\sand)/(sand\\ink) ink\n}\n';
  const at = { start: { line: 2, character: 7 }, end: { line: 2, character: 7 } };
  const snapshot = snapshotOfText(text);
  const out = refactoringsAt(snapshot, at).find(({ title }) => title === 'Turn the grid into patches');
  const patches = withEdits(snapshot, out?.edits ?? []);
  const back = refactoringsAt(patches, at).find(({ title }) => title === 'Turn the patches into a grid');
  const again = withEdits(patches, back?.edits ?? []);
  const [before, after] = [blocksOf(snapshot)[0]?.layout, blocksOf(again)[0]?.layout];
  expect(again.document.text).toMatch(/grid .* by/);
  expect(before && after && looksLike(before, after)).toBe(true);
});
