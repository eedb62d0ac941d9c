/** The other views: mirrors against folding by hand, blocks, sizes against pattern.json, sewing against steps.md, and what all views share. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { patternJson } from '../../../server/src/booklet/pattern-json.ts';
import { stepsMarkdown } from '../../../server/src/booklet/steps.ts';
import { svgOf } from '../../../server/src/drawing/svg.ts';
import { shapesAt } from '../../../server/src/features/shapes.ts';
import { blockIn, sceneIn, textsIn, viewNamed, viewOf } from '../../../server/src/features/views/make.ts';
import { lookedAt } from '../../../server/src/features/views/looked-at.ts';
import { paperOf } from '../../../server/src/features/views/paper.ts';
import { VIEWS } from '../../../server/src/features/views/view.ts';
import type { Scene } from '../../../server/src/drawing/scene.ts';
import { rangeOf } from '../../../server/src/text/place.ts';
import { elements, parseXml } from '../../drawing/read-svg.ts';
import { quilts, textOf } from '../../geometry/random-quilt.ts';
import { colourAt, shapeAt } from './looks.ts';
import { SAMPLES, sampleText, snapshotBeside } from './samples.ts';

const NAMES = VIEWS.map(({ name }) => name);
const BUOYS = 'fabric ink #22345c "Night"\nfabric sand #eadfc8 "Dry"\nfabric rust #a4502e "Rust"\n\nblock Inner {\n  ink/sand sand\n  rust     ink\n}\n\nblock Buoy 4" {\n  Inner@90 sand/ink\n  rust     Inner\n}\n\nblock Mark 4" { rust|ink }\n\nquilt {\n  straight 2 by 2\n  place { Buoy Mark }\n}\n\nsize crib 2 by 2\nsize twin 4 by 6\n';

describe.each(SAMPLES)('%s', (name) => {
  const snapshot = snapshotBeside(sampleText(name));

  test.each(NAMES)('%s is drawn, and again the same', (view) => {
    const first = viewOf(snapshot, { view });
    expect(first.scene && first.scene.items.length > 0).toBe(true);
    const again = viewOf(snapshotBeside(sampleText(name)), { view });
    expect(svgOf(again.scene ?? EMPTY_SCENE)).toBe(svgOf(first.scene ?? EMPTY_SCENE));
    expect(again).toMatchObject({ notes: first.notes, tiles: first.tiles, table: first.table, labels: first.labels, step: first.step });
    for (const { x, y, width, height } of first.tiles) {
      expect(x >= -1e-9 && y >= -1e-9 && x + width <= (first.scene?.width ?? 0) + 1e-9 && y + height <= (first.scene?.height ?? 0) + 1e-9).toBe(true);
    }
  });

  test.each(NAMES)('%s leads from shapes to the text', (view) => {
    const scene = sceneIn(snapshot, { view });
    if (!scene) return;
    const found = Array.from({ length: 60 }, (_, i) => ({ x: ((i * 0.618034) % 1) * scene.width, y: ((i * 0.754878) % 1) * scene.height })).flatMap(({ x, y }) => textsIn(snapshot, x, y, { view }));
    expect(found.length).toBeGreaterThan(0);
    const own = found.filter(({ line }) => line.source === snapshot.document.source);
    expect(own.every((place) => rangeOf(snapshot.document, place) !== undefined)).toBe(true);
  });

  test.each(NAMES)('%s on paper is well formed, with every name in it', (view) => {
    const made = viewOf(snapshot, { view });
    const paper = paperOf(made, `${name} <&>`);
    const root = parseXml(paper?.svg ?? '');
    const texts = elements(root).filter(({ tagName }) => tagName === 'text').map(({ textContent }) => textContent);
    for (const { text } of made.labels) expect(texts).toContain(text);
    expect(paper?.html).toContain(`<title>${name} &lt;&amp;&gt;</title>`);
    expect(paper?.html).not.toMatch(/https?:(?!\/\/www\.w3\.org)/);
    for (const cell of made.table?.rows.flat() ?? []) expect(paper?.html).toContain(cell.replaceAll('"', '&quot;'));
  });

  test('the steps are those of steps.md, in their order', () => {
    const { shown, pattern, quilts: made } = snapshot;
    if (!shown) return;
    const markdown = stepsMarkdown({ pattern, quilts: made }, shown).replace(/\*\*|`/g, '').replace(/\\(.)/g, '$1');
    const count = viewOf(snapshot, { view: 'sewing' }).step?.count ?? 0;
    expect(count).toBeGreaterThan(10);
    let at = 0;
    for (let step = 1; step <= count; step++) {
      const { step: found, scene } = viewOf(snapshot, { view: 'sewing', step });
      expect(found?.number).toBe(step);
      expect(scene?.items.length).toBeGreaterThan(0);
      const next = markdown.indexOf((found?.text ?? '').replace(/\.$/, ''), at);
      expect(next, found?.text).toBeGreaterThanOrEqual(0);
      at = next;
    }
    expect(viewOf(snapshot, { view: 'sewing', step: count + 99 }).step?.number).toBe(count);
    expect(viewOf(snapshot, { view: 'sewing', step: -3 }).step?.number).toBe(1);
  });

  test('the table of sizes says what pattern.json says', () => {
    const { sizes } = JSON.parse(patternJson(snapshot)) as { sizes: { width: { text: string }; height: { text: string }; blocks: { name: string; count: number }[]; fabrics: { name: string; buy: { in: number } }[] }[] };
    const rows = new Map(viewOf(snapshot, { view: 'sizes' }).table?.rows.map(([head = '', ...cells]) => [head, cells]));
    sizes.forEach(({ width, height, blocks }, i) => {
      expect(rows.get('Finished')?.[i]).toBe(`${width.text} by ${height.text}`);
      for (const { name: block, count } of blocks) expect(rows.get(`${block}: blocks`)?.[i]).toBe(`${count}`);
    });
  });

  test('what is cut for one block is as much as its patches', () => {
    const { table, scene } = viewOf(snapshot, { view: 'block' });
    const patches = table?.rows.map((row) => Number(row.at(-1))) ?? [];
    expect(patches.reduce((sum, count) => sum + count, 0)).toBe(scene?.items.length);
  });
});

test('words on patches stand in their own patch', () => {
  const { scene } = viewOf(snapshotBeside(BUOYS), { view: 'block' });
  expect(scene?.labels?.length).toBeGreaterThan(4);
  for (const { text, x, y, size } of scene?.labels ?? []) {
    const half = (text.length * 0.5 * size) / 2;
    const [left, middle, right] = [x - half, x, x + half].map((at) => shapeAt(scene, at / (scene?.width ?? 1), y / (scene?.height ?? 1)));
    expect(left).toBe(middle);
    expect(right).toBe(middle);
  }
});

test('cloth that is bought by the piece is named beside the yards, not added to them', () => {
  const text = 'fabric ink #22345c "Night" from fat_quarters\nfabric sand #eadfc8 "Dry"\nblock Buoy 8" {\n  ink sand\n  sand ink\n}\nquilt {\n  straight 4 by 4\n  place { Buoy }\n  backing sand\n}\n';
  const rows = viewOf(snapshotBeside(text), { view: 'sizes' }).table?.rows ?? [];
  const said = (head: string): string => rows.find(([first]) => first === head)?.[1] ?? '';
  // 32 squares of 4 1/2": three across and four down the usable 17 1/2" by 20" of a fat quarter, twelve from each.
  expect(said('ink: to buy')).toBe('3 fat quarters');
  const yards = (text: string): number => [...text.replace(/ yd.*$/, '').matchAll(/(\d+)\/(\d+)|\d+/g)].reduce((total, [whole, over, under]) => total + (over === undefined ? Number(whole) : Number(over) / Number(under)), 0);
  expect(yards(said('Cloth in all'))).toBe(yards(said('sand: to buy')) + yards(said('Backing')));
  expect(said('Cloth in all')).toMatch(/ yd, 3 fat quarters$/);
});

describe('mirrors', () => {
  const fold = (x: number, y: number, times: number): readonly [number, number] => {
    const wedge = (2 * Math.PI) / times;
    const angle = ((Math.atan2(y, x) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    const [round, rest] = [Math.floor(angle / wedge), angle % wedge];
    const own = round % 2 === 0 ? rest : wedge - rest;
    return [Math.hypot(x, y) * Math.cos(own), Math.hypot(x, y) * Math.sin(own)];
  };

  test('what one sees between two mirrors is the block, folded up', () => {
    fc.assert(fc.property(quilts, fc.constantFrom(4, 6, 8), fc.double({ min: 0.02, max: 0.97, noNaN: true }), fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (quilt, times, radius, angle) => {
      const snapshot = snapshotBeside(textOf(quilt));
      const block = lookedAt(snapshot, {});
      const sheet = viewOf(snapshot, { view: 'mirrors' });
      if (!block || !sheet.scene) return;
      const { width } = block.scene;
      // Within the triangle that the mirrors hold: no farther from the hinge than the side between them.
      const reach = times === 4 ? 1 : Math.cos(Math.PI / times);
      const [x, y] = [Math.cos(angle) * radius * reach * width, Math.sin(angle) * radius * reach * width];
      const [foldedX, foldedY] = fold(x, y, times);
      const label = sheet.labels.find(({ text }) => text.endsWith(`${times}-fold`));
      const scale = 10 / (2 * width);
      const [sheetX, sheetY] = [(label?.x ?? 0) + x * scale, (label?.y ?? 0) - 5 + y * scale];
      // Around the point: a corner of a wedge is rounded when it is drawn.
      const around = (scene: Scene, px: number, py: number, by: number): (string | undefined)[] =>
        [-by, by].flatMap((dx) => [-by, by].map((dy) => colourAt(scene, (px + dx) / scene.width, (py + dy) / scene.height)));
      const [held, seen] = [around(block.scene, foldedX, foldedY, 1e-4), around(sheet.scene, sheetX, sheetY, 1e-4 * scale)];
      expect(held.some((colour) => colour !== undefined && seen.includes(colour)), `${held.join()} beside ${seen.join()}`).toBe(true);
    }), { numRuns: 150 });
  });
});

describe('the block looked at', () => {
  const snapshot = snapshotBeside(BUOYS);
  const lineOf = (text: string): number => snapshot.document.lines.findIndex((line) => line.text.includes(text));

  test('is the one that the cursor is in or at, else the one before, else the first', () => {
    const at = (text: string, character: number): string | undefined => blockIn(snapshot, { view: 'block', block: 'Mark', position: { line: lineOf(text), character } });
    expect(at('Inner@90', 4)).toBe('Buoy');
    expect(at('rust     ink', 3)).toBe('Inner');
    expect(at('place { Buoy Mark', 12)).toBe('Buoy');
    expect(at('place { Buoy Mark', 16)).toBe('Mark');
    expect(at('size crib', 2)).toBe('Mark');
    expect(blockIn(snapshot, { view: 'block' })).toBe('Buoy');
    expect(blockIn(snapshot, { view: 'whole' })).toBeUndefined();
  });

  test('a cell of it is outlined wherever it stands, in turned and nested blocks too', () => {
    const position = { line: lineOf('ink/sand sand'), character: 3 };
    const outlines = (view: string, block: string): number => shapesAt(snapshot, position, { view, block }).match(/M/g)?.length ?? 0;
    // `Inner` stands twice in `Buoy`, which stands twice in the quilt.
    expect(outlines('block', 'Buoy')).toBe(2);
    expect(outlines('whole', '')).toBe(4);
    expect(outlines('sizes', '')).toBe(4 + 24);
  });

  test('an unknown view is the whole quilt', () => {
    expect(viewNamed('nonsense')).toBe('whole');
    expect(viewNamed(undefined)).toBe('whole');
    expect(sceneIn(snapshot, { view: 'nonsense' })).toBe(sceneIn(snapshot, {}));
  });
});

test('no text makes any view fail', () => {
  const words = ['quilt {', 'straight 2 by 2', '}', 'block A 4" {', 'ink sand', 'place { A }', 'on_point 2 by 2', 'fabric ink #22345c', 'edges A', 'sashing 1" ink', 'rows 10"', 'row A', 'block B(x) { x A }', 'size s 1 by 1', 'colorway c {', 'ink #123456', 'place turned 4 { A@90 }', 'let a = 1"'];
  fc.assert(fc.property(fc.array(fc.constantFrom(...words), { maxLength: 14 }), fc.constantFrom(...NAMES), fc.nat(20), (lines, view, line) => {
    const snapshot = snapshotBeside(lines.join('\n'));
    const made = viewOf(snapshot, { view, position: { line, character: 3 }, step: line, size: 's', colorway: 'c' });
    if (made.scene) expect(svgOf(made.scene)).not.toMatch(/NaN|Infinity|undefined/);
  }), { numRuns: 250 });
});

test('20,000 patches: a view uses each distinct block as often as it stands, and draws it once', () => {
  const snapshot = snapshotBeside(sampleText('harbour-mail.quilt').replace('size crib  3 by 4', 'size crib  24 by 25').replace('expect crib.width at most 45"', ''));
  for (const view of ['whole', 'values', 'settings', 'sizes']) {
    const { scene } = viewOf(snapshot, { view, size: 'crib' });
    const svg = svgOf(scene ?? EMPTY_SCENE);
    const paths = svg.match(/<path/g)?.length ?? 0;
    const uses = svg.match(/<use/g)?.length ?? 0;
    expect(uses, view).toBeGreaterThan(1000);
    expect(paths, view).toBeLessThan(300);
  }
});

const EMPTY_SCENE: Scene = { width: 0, height: 0, title: '', blocks: [], items: [], sources: [] };
