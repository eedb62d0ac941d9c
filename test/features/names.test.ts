import { expect, test } from 'vitest';
import { describe } from 'vitest';
import { importEdits, movedTo } from '../../server/src/features/moved.ts';
import { occurrenceAt, occurrencesIn } from '../../server/src/features/names.ts';
import { definitionAt, highlightsAt } from '../../server/src/features/references.ts';
import { renamable, renaming } from '../../server/src/features/rename.ts';
import { workspaceSymbols } from '../../server/src/features/workspace-symbols.ts';
import type { Snapshot } from '../../server/src/snapshot.ts';
import { rangeOf, type Place } from '../../server/src/text/place.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { checkCases } from './cases.ts';

/** `3:7` in this file, from 1; `blocks.quilt: text` of another. */
function spot(snapshot: Snapshot, place: Place): string {
  const range = rangeOf(snapshot.document, place);
  const text = place.line.text.slice(place.from, place.to);
  return range ? `${range.start.line + 1}:${range.start.character + 1} ${text}` : `${place.line.source} ${place.line.text.trim() === '' ? '' : place.line.text.trim()}`;
}

describe('definitions and uses', () => {
  checkCases('names.txt', ({ snapshot, position }) => {
    const place = definitionAt(snapshot, position);
    const here = occurrenceAt(snapshot, position);
    const uses = highlightsAt(snapshot, position).map(({ place: each, as }) => `${as} ${spot(snapshot, each)}`);
    return [here ? `${here.target.kind} ${here.target.name}` : '(no name)', place ? `declared ${spot(snapshot, place)}` : '(no declaration)', ...uses].join('\n');
  });
});

describe('renaming', () => {
  checkCases('rename.txt', ({ snapshot, position }) => {
    const name = /\/\/ to (\S+)/.exec(snapshot.document.text)?.[1] ?? 'renamed';
    const here = renamable(snapshot, position);
    if (!here) return '(nothing to rename)';
    if ('refused' in here) return here.refused;
    const others = snapshot.pattern.imports.flatMap(({ tree }) => (tree ? [snapshotOfText(tree.document.text)] : []));
    const files = [snapshot, ...snapshot.pattern.imports.flatMap(({ pattern, tree }) => (pattern && tree ? [{ ...others[0], tree, document: tree.document, pattern } as Snapshot] : []))];
    const result = renaming(files, here.target, name);
    if ('refused' in result) return result.refused;
    return result.edits.map(({ snapshot: file, place, text }) => `${file === snapshot ? '' : 'other '}${spot(file, place)} → ${text}`).join('\n');
  });
});

test('every name of every kind is found once, in order', () => {
  const snapshot = snapshotOfText('let u = 1"\nfabric a #112233 "x"\nblock B(p = a, n = 2) (u) {\n p/a (p|p)@90 B2(q: a)\n}\nblock B2(q) { q }\nquilt {\n straight 2 by 3\n place { B }\n}\nexpect cut B.a 1" by 1"\n');
  const all = occurrencesIn(snapshot);
  const places = all.map(({ place }) => [snapshot.document.numberOf(place.line), place.from] as const);
  expect(places).toEqual(places.toSorted((x, y) => x[0] - y[0] || x[1] - y[1]));
  expect(new Set(places.map(String)).size).toBe(places.length);
  expect(all.map(({ target, as }) => `${target.kind} ${target.name} ${as[0] ?? ''}`).join(', ')).toBe(
    'number u d, fabric a d, block B d, parameter p d, fabric a u, parameter n d, number u u, parameter p u, fabric a u, parameter p u, parameter p u, block B2 u, parameter q u, fabric a u, block B2 d, parameter q d, parameter q u, block B u, block B u, fabric a u',
  );
});

describe('moved files', () => {
  const text = 'import "blocks/stars.quilt" as stars\nimport "./plain.quilt"\nimport "../else/far.quilt"\n';
  const here = 'file:///w/quilts/a.quilt';
  const snapshot = snapshotOfText(text);
  const file = { ...snapshot, document: Object.assign(Object.create(Object.getPrototypeOf(snapshot.document) as object) as Snapshot['document'], snapshot.document, { source: here }), tree: snapshot.tree };
  const resolve = (path: string): string => new URL(path, here).href;
  const paths = (from: string, to: string): readonly string[] => importEdits(file, [{ from, to }], resolve).map((edit) => edit.text);

  test('an imported file that moves is followed', () => {
    expect(paths('file:///w/quilts/blocks/stars.quilt', 'file:///w/quilts/blocks/new%20stars.quilt')).toEqual(['"blocks/new stars.quilt"']);
    expect(paths('file:///w/quilts/plain.quilt', 'file:///w/lib/plain.quilt')).toEqual(['"../lib/plain.quilt"']);
  });
  test('a folder takes its files along', () => {
    expect(paths('file:///w/quilts/blocks', 'file:///w/quilts/shapes')).toEqual(['"shapes/stars.quilt"']);
    expect(paths('file:///w/quilts', 'file:///w/patterns')).toEqual([]);
    expect(movedTo('file:///w/quilts/blocks2/x.quilt', [{ from: 'file:///w/quilts/blocks', to: 'file:///w/other' }])).toBe('file:///w/quilts/blocks2/x.quilt');
  });
  test('a file that moves takes its paths along', () => {
    expect(paths(here, 'file:///w/quilts/deep/a.quilt')).toEqual(['"../blocks/stars.quilt"', '"../plain.quilt"', '"../../else/far.quilt"']);
  });
  test('nothing to follow, nothing to edit', () => {
    expect(paths('file:///w/other.quilt', 'file:///w/another.quilt')).toEqual([]);
  });
});

test('names of the workspace are found by letters in their order', () => {
  const snapshot = snapshotOfText('pattern "Harbour Mail" {\n}\nfabric ink #22345c "Night"\nblock Capstan 6" { ink }\nquilt {\n  straight 1 by 1\n  place { Capstan }\n}\n');
  const names = (query: string): readonly string[] => workspaceSymbols([snapshot], query).map(({ symbol }) => symbol.name);
  expect(names('')).toEqual(['Harbour Mail', 'ink', 'Capstan']);
  expect(names('cpt')).toEqual(['Capstan']);
  expect(names('tpc')).toEqual([]);
});
