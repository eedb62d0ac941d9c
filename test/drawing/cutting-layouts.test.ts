/** Cutting layouts, read back from their SVG: every piece once, none over another, all on the cloth, waste what is left. */
import { describe, expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import { cuttingDrawing, cuttingLayouts, WASTE } from '../../server/src/drawing/cutting-layouts.ts';
import { svgOf } from '../../server/src/drawing/svg.ts';
import type { QuiltView, Snapshot } from '../../server/src/snapshot.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { area, drawnIn, parseXml } from './read-svg.ts';

const SOURCES = ['', 'from fat_quarters', 'from strips 2 1/2"', 'from squares 5"', 'from piece 9" by 22" times 9', 'directional'];

/** A quilt with pieces stacked in tall strips, triangles, strips to be joined and every kind of cloth. */
function snapshotWith(source: string): Snapshot {
  return snapshotOfText(`fabric ink #22345c\nfabric odd #a4502e ${source}\nblock Buoy 6" {\n  ink/odd odd ink\n  odd     odd ink\n  odd     ink odd\n}\nquilt {\n  straight 4 by 5\n  place { Buoy }\n  border 3" ink lengthwise\n  binding cut 2 1/4" ink\n}\n`);
}

describe.each(SOURCES)('a fabric %s', (source) => {
  const snapshot = snapshotWith(source);
  const [quilt] = snapshot.quilts as [QuiltView];
  const { fabrics, pieces } = quilt.settled.plan;

  test('pieces cover what they are cut to, and lie on the cloth', () => {
    for (const plan of fabrics) {
      const layouts = cuttingLayouts(plan, pieces, 'inches');
      plan.cloths.forEach((cloth, i) => {
        const scene = layouts[i]?.scene;
        if (!scene) throw new Error('no scene');
        const drawn = drawnIn(svgOf(scene)).filter(({ fill }) => fill !== WASTE);
        const cut = cloth.strips.reduce((total, strip) => total + strip.count * strip.subcuts.reduce((sum, { piece, count }) => sum + count * sizeOf(pieces[piece]), 0), 0);
        expect(drawn.reduce((total, { points }) => total + Math.abs(area(points)), 0)).toBeCloseTo(cut, 2);
        for (const { points } of drawn) {
          for (const [x, y] of points) expect([x >= -1e-3, x <= toNumber(cloth.across) + 1e-3, y >= -1e-3, y <= toNumber(cloth.down) + 1e-3]).toEqual([true, true, true, true]);
        }
        expect(overlapping(drawn.map(({ points }) => boxOf(points)))).toBe(0);
      });
    }
  });

  test('the picture of a fabric is one whole file with a letter for each kind of piece', () => {
    for (const plan of fabrics) {
      const svg = svgOf(cuttingDrawing(plan, pieces, 'inches'));
      const texts = [...svg.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map(([, text]) => text);
      expect(() => parseXml(svg)).not.toThrow();
      const letters = new Set(plan.strips.flatMap(({ subcuts }) => subcuts.map(({ piece }) => String.fromCharCode(65 + piece))));
      expect(new Set(texts.filter((text) => /^[A-Z]$/.test(text ?? '')))).toEqual(letters);
    }
  });
});

function sizeOf(piece: QuiltView['plan']['pieces'][number] | undefined): number {
  return piece ? toNumber(piece.cut.width) * toNumber(piece.cut.height) : 0;
}

type Box = readonly [left: number, top: number, right: number, bottom: number, area: number];

function boxOf(points: readonly (readonly [number, number])[]): Box {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys), Math.abs(area(points))];
}

/** Rectangles that share more than an edge; the halves of a square are told by their area. */
function overlapping(boxes: readonly Box[]): number {
  const whole = boxes.filter(([left, top, right, bottom, covered]) => Math.abs((right - left) * (bottom - top) - covered) < 1e-3);
  return whole.reduce((total, a, i) => total + whole.slice(i + 1).filter((b) => Math.min(a[2], b[2]) - Math.max(a[0], b[0]) > 1e-3 && Math.min(a[3], b[3]) - Math.max(a[1], b[1]) > 1e-3).length, 0);
}
