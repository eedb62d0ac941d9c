/** What is drawn, measured in the PDF: corners of shapes and of blocks that are used often, arcs on their circles, labels as text. */
import { describe, expect, test } from 'vitest';
import { fontFiles } from '../../server/src/disk/fonts.ts';
import type { Scene } from '../../server/src/drawing/scene.ts';
import { closePdf, element, mark, newPage, openPdf, PAPER } from '../../server/src/print/pdf.ts';
import { drawOutline, drawScene } from '../../server/src/print/picture.ts';
import { readPaths } from './read-paths.ts';

async function drawn(draw: Parameters<typeof mark>[1] | ((pdf: ReturnType<typeof openPdf>) => void)): Promise<Awaited<ReturnType<typeof readPaths>>[number]> {
  const pdf = openPdf({ title: 'Pictures', language: 'en', page: PAPER.letter, fonts: fontFiles(), scaling: 'none' });
  newPage(pdf);
  mark(element(pdf, pdf.root, 'Figure', { alt: 'a picture' }), () => draw(pdf));
  const [page] = await readPaths(closePdf(pdf));
  if (!page) throw new Error('no page');
  return page;
}

const shape = (points: readonly number[], fill = '#22345c'): Scene['blocks'][number]['shapes'][number] => ({ kind: 'shape', points, fill, fabric: 'ink', source: 0 });

const scene: Scene = {
  width: 12,
  height: 6,
  title: 'two blocks',
  blocks: [{ id: 'b0', name: 'Sail', width: 6, height: 6, shapes: [shape([0, 0, 6, 0, 0, 6]), shape([6, 0, 6, 6, 0, 6], '#eadfc8')] }],
  items: [
    { kind: 'use', block: 0, matrix: [1, 0, 0, 1, 0, 0], source: 0 },
    // Turned by a quarter: x' = 12 - y, y' = x.
    { kind: 'use', block: 0, matrix: [0, 1, -1, 0, 12, 0], source: 0 },
    shape([5, 2, 7, 2, 7, 4, 5, 4], '#a4502e'),
  ],
  labels: [{ text: '2 1/2"', x: 6, y: 3, from: 'middle', size: 0.5, fill: '#000000' }],
  sources: [],
};

describe('a scene', () => {
  test('is as large as it is asked to be, every corner where it belongs', async () => {
    const { paths, texts } = await drawn((pdf) => drawScene(pdf, scene, { x: 72, y: 144, scale: 36 }));
    const at = (x: number, y: number): readonly [number, number] => [72 + 36 * x, 144 + 36 * y];
    const corners = paths.map((path) => path.corners);
    const expected = [
      [at(0, 0), at(6, 0), at(0, 6)], [at(6, 0), at(6, 6), at(0, 6)],
      [at(12, 0), at(12, 6), at(6, 0)], [at(12, 6), at(6, 6), at(6, 0)],
      [at(5, 2), at(7, 2), at(7, 4), at(5, 4)],
    ];
    expect(corners).toHaveLength(expected.length);
    expected.forEach((wanted, i) => wanted.forEach(([x, y], j) => {
      expect(corners[i]?.[j]?.[0]).toBeCloseTo(x, 2);
      expect(corners[i]?.[j]?.[1]).toBeCloseTo(y, 2);
    }));
    expect(texts.map(({ text }) => text)).toEqual(['2½″']);
    expect(texts[0]?.y).toBeCloseTo(144 + 36 * 3, -1);
  });

  test('draws a block once however often it is used', () => {
    const pdf = openPdf({ title: 'Often', language: 'en', page: PAPER.letter, fonts: fontFiles() });
    for (let page = 0; page < 3; page += 1) {
      newPage(pdf);
      mark(element(pdf, pdf.root, 'Figure', { alt: 'a picture' }), () => drawScene(pdf, scene, { x: 72, y: 144, scale: 36 }));
    }
    expect([...Buffer.from(closePdf(pdf)).toString('latin1').matchAll(/\/Subtype \/Form/g)]).toHaveLength(1);
  });
});

describe('an arc', () => {
  test.each([[1, 1], [-1, 1], [1, 3], [-1, 0.7072]])('that bulges %d with a radius of %d lies on its circle', async (side, radius) => {
    // From (0, 0) to (1, 1): y runs down, so what bulges to the left of the way bulges up and to the right.
    const { paths } = await drawn((pdf) => drawOutline(pdf, { points: [0, 0, 1, 1, 0, 1], arcs: [side * radius, 0, 0] }, [72, 0, 0, 72, 100, 100], { stroke: '#000000' }));
    const corners = paths[0]?.corners ?? [];
    const middle = [136, 136] as const;
    const apart = Math.sqrt(radius * radius - 0.5) * 72;
    const centre = [middle[0] - (side * apart) / Math.SQRT2, middle[1] + (side * apart) / Math.SQRT2] as const;
    expect(paths[0]?.isCurved).toBe(true);
    for (const [x, y] of corners.slice(0, -1)) expect(Math.hypot(x - centre[0], y - centre[1])).toBeCloseTo(radius * 72, 2);
    expect(corners.at(-1)?.[0]).toBeCloseTo(100, 2);
  });
});
