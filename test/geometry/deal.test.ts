/** Assorted prints: equal counts, no two alike side by side where that can be, the same each time; drawn and cut as dealt. */
import { describe, expect, test } from 'vitest';
import { planCutting } from '../../server/src/cutting/build.ts';
import { faultsOf } from '../../server/src/cutting/verify.ts';
import { sceneOfQuilt } from '../../server/src/drawing/build.ts';
import { svgOf } from '../../server/src/drawing/svg.ts';
import { toNumber } from '../../server/src/exact/number.ts';
import { clockwise } from '../../server/src/exact/polygon.ts';
import { applyToAll } from '../../server/src/exact/transform.ts';
import { dealInBlock, dealOf, inPrint } from '../../server/src/geometry/deal.ts';
import { dealtInTurn } from '../../server/src/geometry/deal-turns.ts';
import type { QuiltLayout } from '../../server/src/geometry/layout.ts';
import { specifyQuilt } from '../../server/src/model/quilt.ts';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import { areasByFill } from '../drawing/read-svg.ts';
import { blockOf, patternOf } from './text.ts';

const COLOURS = ['#c0392b', '#e67e22', '#f1c40f', '#7f4f24', '#2255aa', '#3a7d5d', '#884488'];

function text(prints: number, by: 'block' | 'patch', quilt: string): string {
  const names = COLOURS.slice(0, prints).map((_, i) => `p${i}`);
  return `${names.map((name, i) => `fabric ${name} ${COLOURS[i] ?? ''}`).join('\n')}
fabric sand #eadfc8
assorted warm = ${names.join(' ')} by ${by}
block Nine 6" {\n  warm sand warm\n  sand warm sand\n  warm sand warm\n}
block Four 6" {\n  warm warm\n  warm warm\n}
quilt {\n${quilt}\n}\n`;
}

interface Dealt {
  readonly print: string;
  readonly unit: string;
  readonly outline: readonly (readonly [number, number])[];
}

/** Every patch of the role with its print and where it lies, in doubles. */
function dealtIn(layout: QuiltLayout): Dealt[] {
  const deal = dealOf(layout);
  const outlineOf = (outline: Parameters<typeof clockwise>[0]): Dealt['outline'] => clockwise(outline).map(({ x, y }) => [toNumber(x), toNumber(y)] as const);
  const blocks = layout.placements.flatMap(({ block, transform }, i) =>
    block.patches.flatMap((patch, j) => (patch.fabric.assorted ? [{ print: inPrint(patch, deal?.placements[i]?.[j]).fabric.name, unit: `block ${i}`, outline: outlineOf(applyToAll(patch.outline, transform)) }] : [])),
  );
  const loose = layout.patches.flatMap((patch, i) => (patch.fabric.assorted ? [{ print: inPrint(patch, deal?.patches[i]).fabric.name, unit: `loose ${i}`, outline: outlineOf(patch.outline) }] : []));
  return [...blocks, ...loose];
}

/** By comparing every edge with every other, in doubles. */
function alikePairs(patches: readonly Dealt[], apart: (a: Dealt, b: Dealt) => boolean): number {
  const edges = patches.flatMap((of) => of.outline.map((from, i) => ({ of, from, to: of.outline[(i + 1) % of.outline.length] ?? from })));
  let count = 0;
  edges.forEach((a, i) => {
    for (const b of edges.slice(i + 1)) if (a.of !== b.of && a.of.print === b.of.print && apart(a.of, b.of) && overlap(a, b) > 1e-6) count += 1;
  });
  return count;
}

interface Segment {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

function overlap(a: Segment, b: Segment): number {
  const [dx, dy] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const length = Math.hypot(dx, dy);
  const [along, off] = [b.from, b.to].map((p) => [((p[0] - a.from[0]) * dx + (p[1] - a.from[1]) * dy) / length, ((p[0] - a.from[0]) * dy - (p[1] - a.from[1]) * dx) / length] as const).reduce<[number[], number[]]>(([s, t], [u, v]) => [[...s, u], [...t, v]], [[], []]);
  if (Math.max(...off.map(Math.abs)) > 1e-6) return 0;
  return Math.min(length, Math.max(...along)) - Math.max(0, Math.min(...along));
}

const QUILTS = {
  straight: '  straight 5 by 6\n  place { Nine }',
  'with a fabric beside': '  straight 5 by 6\n  place {\n    Nine Four\n    warm Nine\n  }',
  sashed: '  straight 4 by 5\n  place { Nine }\n  sashing 1" sand',
  'on point': '  on_point 3 by 4\n  place { Four }\n  between { Nine }\n  edges warm',
  bordered: '  straight 3 by 3\n  place { Four }\n  border 2" warm\n  border 1" sand corners squares warm\n  binding cut 2 1/4" warm',
};

describe.each(Object.entries(QUILTS))('%s', (name, quilt) => {
  describe.each([2, 3, 5, 7])('%d prints', (prints) => {
    test.each(['block', 'patch'] as const)('by %s', (by) => {
      const source = text(prints, by, quilt);
      const pattern = patternOf(source);
      const layout = layoutQuilt(specifyQuilt(pattern), pattern.rules);
      const dealt = dealtIn(layout);
      const units = by === 'patch' ? dealt : [...new Map(dealt.map((each) => [each.unit, each])).values()];
      const counts = COLOURS.slice(0, prints).map((_, i) => units.filter(({ print }) => print === `p${i}`).length);
      expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
      if (by === 'block' && new Set(dealt.map(({ unit }) => unit)).size === layout.placements.length) for (const unit of units) expect(new Set(dealt.filter((each) => each.unit === unit.unit).map(({ print }) => print)).size).toBe(1);
      if (prints >= 5) expect(alikePairs(dealt, (a, b) => by === 'patch' || a.unit !== b.unit), name).toBe(0);
      const again = layoutQuilt(specifyQuilt(pattern), pattern.rules);
      expect(dealOf(again)).toEqual(dealOf(layout));
      expectCut(layout, pattern, dealt);
      expectDrawn(layout, dealt);
    });
  });
});

function expectCut(layout: QuiltLayout, pattern: ReturnType<typeof patternOf>, dealt: readonly Dealt[]): void {
  const plan = planCutting(layout, pattern);
  expect(faultsOf(plan, pattern.rules)).toEqual([]);
  const [role] = plan.roles;
  for (const { fabric, pieces } of role?.prints ?? []) {
    const bound = plan.pieces.filter((piece) => piece.for === 'binding' && piece.fabric.name === fabric.name).reduce((sum, piece) => sum + piece.pieces, 0);
    expect(pieces - bound).toBe(dealt.filter(({ print }) => print === fabric.name).length);
  }
  expect(plan.fabrics.some(({ fabric }) => fabric.assorted)).toBe(false);
}

function expectDrawn(layout: QuiltLayout, dealt: readonly Dealt[]): void {
  const drawn = areasByFill(svgOf(sceneOfQuilt(layout)));
  COLOURS.forEach((colour, i) => {
    const area = dealt.filter(({ print }) => print === `p${i}`).reduce((sum, { outline }) => sum + areaOf(outline), 0);
    expect(drawn[colour] ?? 0).toBeCloseTo(area, 2);
  });
}

function areaOf(outline: Dealt['outline']): number {
  return outline.reduce((sum, [x, y], i) => sum + x * (outline[(i + 1) % outline.length]?.[1] ?? y) - (outline[(i + 1) % outline.length]?.[0] ?? x) * y, 0) / 2;
}

test('across a sash two blocks are side by side', () => {
  const pattern = patternOf(text(3, 'block', QUILTS.sashed));
  const layout = layoutQuilt(specifyQuilt(pattern), pattern.rules);
  const deal = dealOf(layout);
  const at = new Map(layout.placements.map(({ row, column }, i) => [`${row} ${column}`, deal?.placements[i]?.[0]]));
  for (const { row, column } of layout.placements) for (const other of [`${row} ${column + 1}`, `${row + 1} ${column}`]) expect(at.get(`${row} ${column}`)).not.toBe(at.get(other));
});

test('a block by itself shows its prints: by block one, by patch in turn', () => {
  const blockIn = (by: 'block' | 'patch'): (number | undefined)[] => [...(dealInBlock(blockOf(text(3, by, QUILTS.straight), 'Four')) ?? [])];
  expect(blockIn('block')).toEqual([0, 0, 0, 0]);
  const [a, b, c, d] = blockIn('patch');
  expect(a === b || c === d || a === c || b === d).toBe(false);
});

test('a quilt without assorted fabrics has no deal', () => {
  const pattern = patternOf('fabric ink #22345c\nblock Six 6" {\n  ink\n}\nquilt {\n  straight 2 by 2\n  place { Six }\n}\n');
  expect(dealOf(layoutQuilt(specifyQuilt(pattern), pattern.rules))).toBeUndefined();
});

test('rings, crosses and single prints come out as they can', () => {
  const ring = (n: number): [number, number][] => Array.from({ length: n }, (_, i) => [i, (i + 1) % n]);
  for (const n of [3, 5, 6, 9, 14]) {
    const dealt = dealtInTurn(n, 3, ring(n));
    expect(ring(n).filter(([a, b]) => dealt[a] === dealt[b])).toEqual([]);
  }
  expect(dealtInTurn(5, 1, ring(5))).toEqual([0, 0, 0, 0, 0]);
  expect(dealtInTurn(0, 4, [])).toEqual([]);
  expect(dealtInTurn(2, 4, [[0, 1]])).toEqual([0, 1]);
});

test('many units are dealt in a moment', () => {
  const side = 300;
  const pairs = Array.from({ length: side * side }, (_, i): [number, number][] => [...((i + 1) % side === 0 ? [] : [[i, i + 1] as [number, number]]), ...(i + side < side * side ? [[i, i + side] as [number, number]] : [])]).flat();
  const start = performance.now();
  const dealt = dealtInTurn(side * side, 4, pairs);
  expect(pairs.filter(([a, b]) => dealt[a] === dealt[b])).toEqual([]);
  expect(performance.now() - start).toBeLessThan(3000);
});

