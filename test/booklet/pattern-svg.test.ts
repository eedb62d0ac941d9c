/** pattern.svg read back: millimetres, a layer a fabric, every piece once, within the usable width, nothing over anything else. */
import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, test } from 'vitest';
import { patternSvg } from '../../server/src/booklet/pattern-svg.ts';
import { toNumber } from '../../server/src/exact/number.ts';
import type { QuiltView } from '../../server/src/snapshot.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import traditional from '../../server/library/traditional.quilt';
import { sample } from './sample.ts';

const STAR = `pattern "Sea mail" {
  by "a"
}
fabric ink #22345c "Night <ferry> & \\"print\\""
fabric rust #a4502e "Rusted chain" directional
fabric sand #eadfc8 "Dry sand"
import "traditional.quilt"
block Star 12" {
  le_moyne_star(ink, rust, sand)
}
block Path 12" {
  drunkards_path(ink, sand) drunkards_path(rust, sand)
  rail(ink, sand, rust) ink/sand
}
quilt {
  on_point 3 by 3
  place { Star }
  between { Path }
  edges sand
  border 3" ink
  binding cut 2 1/4" rust
}
`;

describe('a quilt with everything', () => {
  const snapshot = snapshotOfText(STAR, { 'traditional.quilt': traditional });
  const [quilt] = snapshot.quilts;
  if (!quilt || snapshot.hasErrors) throw new Error(snapshot.problems.map(({ message }) => message).join('\n'));
  const text = patternSvg({ pattern: snapshot.pattern, quilts: snapshot.quilts }, quilt);
  const layers = layersOf(text);

  test('is in millimetres', () => {
    const root = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
    const [width, height] = [root?.getAttribute('width') ?? '', root?.getAttribute('height') ?? ''];
    expect(width).toMatch(/^[\d.]+mm$/);
    expect(root?.getAttribute('viewBox')).toBe(`0 0 ${width.replace('mm', '')} ${height.replace('mm', '')}`);
  });

  test('has a layer for each fabric, called by its name and label', () => {
    expect(layers.map(({ label }) => label)).toEqual(['ink: Night <ferry> & "print"', 'rust: Rusted chain', 'sand: Dry sand']);
  });

  test('holds every piece of the plan, at its size', () => {
    for (const { id, paths } of layers) {
      const pieces = quilt.plan.pieces.filter(({ fabric }) => id === `layer-${fabric.name}`);
      expect(paths).toHaveLength(pieces.reduce((sum, piece) => sum + drawnOf(piece), 0));
      for (const piece of pieces.filter(({ method }) => method === 'plain')) {
        const area = toNumber(piece.cut.width) * toNumber(piece.cut.height);
        expect(paths.filter(({ corners }) => Math.abs(areaOf(corners) / 25.4 ** 2 - area) < 1e-3).length).toBeGreaterThanOrEqual(piece.cutCount);
      }
      for (const piece of pieces.filter(({ method }) => method.endsWith('on the diagonal'))) {
        const area = (toNumber(piece.cut.width) ** 2) / piece.piecesPerCut;
        expect(paths.filter(({ corners }) => corners.length === 3 && Math.abs(areaOf(corners) / 25.4 ** 2 - area) < 1e-3).length).toBeGreaterThanOrEqual(piece.pieces);
      }
    }
  });

  test('nothing leaves the usable width, and no two boxes overlap but the halves of one square', () => {
    for (const { paths } of layers) {
      const boxes = paths.map(({ corners }) => boxOf(corners)).sort((a, b) => a.top - b.top);
      const left = Math.min(...boxes.map((box) => box.left));
      const isTooWide = boxes.filter((box) => box.right - left > 40 * 25.4 + 0.01);
      expect(isTooWide).toEqual([]);
      for (const [i, one] of boxes.entries()) {
        for (const other of boxes.slice(i + 1)) {
          if (other.top >= one.bottom) break;
          const overlap = Math.min(one.right, other.right) - Math.max(one.left, other.left);
          const [first, second] = [paths.find(({ corners }) => isSame(boxOf(corners), one)), paths.find(({ corners }) => isSame(boxOf(corners), other))];
          if (overlap > 0.01 && Math.min(one.bottom, other.bottom) - other.top > 0.01) expect([first?.corners.length, second?.corners.length]).toEqual([3, 3]);
        }
      }
    }
  });

  test('halves of a square are apart', () => {
    const triangles = layers.flatMap(({ paths }) => paths.filter(({ corners }) => corners.length === 3).map(({ corners }) => corners));
    expect(triangles.length).toBeGreaterThan(10);
    for (const [i, one] of triangles.entries()) for (const other of triangles.slice(i + 1)) expect(one.some((corner) => holds(other, corner)) || other.some((corner) => holds(one, corner))).toBe(false);
  });

  test('is the same twice', () => {
    expect(patternSvg({ pattern: snapshot.pattern, quilts: snapshot.quilts }, quilt)).toBe(text);
  });
});

test('has nothing but lines to cut', () => {
  const source = sample();
  const [quilt] = source.quilts;
  if (!quilt) throw new Error('no quilt');
  expect(new Set([...patternSvg(source, quilt).matchAll(/<(\w+)/g)].map(([, name]) => name))).toEqual(new Set(['svg', 'title', 'g', 'path']));
});

type Piece = QuiltView['plan']['pieces'][number];
type Corner = readonly [number, number];

function drawnOf({ method, pieces, cutCount }: Piece): number {
  return method === 'template' || method.endsWith('on the diagonal') ? pieces : cutCount;
}

interface Layer {
  readonly id: string;
  readonly label: string;
  readonly paths: readonly { readonly corners: readonly Corner[] }[];
}

function layersOf(text: string): readonly Layer[] {
  const root = new DOMParser().parseFromString(text, 'image/svg+xml');
  return Array.from(root.getElementsByTagName('g')).map((group) => ({
    id: group.getAttribute('id') ?? '',
    label: group.getAttribute('inkscape:label') ?? '',
    paths: Array.from(group.getElementsByTagName('path')).map((path) => ({ corners: cornersOf(path.getAttribute('d') ?? '') })),
  }));
}

/** Of closed paths of M, L, H, V and A; of arcs the ends. */
function cornersOf(d: string): readonly Corner[] {
  expect(d).toMatch(/^M[^MZ]*Z$/);
  let [x, y] = [0, 0];
  return [...d.matchAll(/([MLHVA])([^MLHVAZ]*)/g)].map(([, kind = '', said = '']) => {
    const numbers = said.trim().split(/[ ,]+/).map(Number);
    if (kind === 'H') x = numbers[0] ?? x;
    else if (kind === 'V') y = numbers[0] ?? y;
    else [x, y] = [numbers.at(-2) ?? x, numbers.at(-1) ?? y];
    return [x, y] as const;
  });
}

function areaOf(corners: readonly Corner[]): number {
  return Math.abs(corners.reduce((sum, [x, y], i) => sum + (x * (corners[(i + 1) % corners.length]?.[1] ?? y) - (corners[(i + 1) % corners.length]?.[0] ?? x) * y) / 2, 0));
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function boxOf(corners: readonly Corner[]): Box {
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

function isSame(one: Box, other: Box): boolean {
  return one.left === other.left && one.top === other.top && one.right === other.right && one.bottom === other.bottom;
}

/** Strictly inside a triangle. */
function holds([a, b, c]: readonly Corner[], p: Corner): boolean {
  if (!a || !b || !c) return false;
  const side = (q: Corner, r: Corner): number => (r[0] - q[0]) * (p[1] - q[1]) - (r[1] - q[1]) * (p[0] - q[0]);
  const sides = [side(a, b), side(b, c), side(c, a)];
  return sides.every((each) => each > 0.01) || sides.every((each) => each < -0.01);
}
