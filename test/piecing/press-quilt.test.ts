/** Pressing of whole quilts against the drawing: every seam is put where it lies, pressed, and the crossings are counted. */
import { describe, expect, test } from 'vitest';
import { toNumber } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { MIRROR, about, applyTo, compose, determinantSign, translate, turn } from '../../server/src/exact/transform.ts';
import type { Transform } from '../../server/src/exact/transform.ts';
import type { BlockLayout, Patch, Placement, QuiltLayout } from '../../server/src/geometry/layout.ts';
import type { QuiltSpec } from '../../server/src/model/pattern.ts';
import type { Stretch } from '../../server/src/piecing/plan.ts';
import { sewingOf } from '../../server/src/piecing/sewing.ts';
import type { QuiltSewing } from '../../server/src/piecing/sewing.ts';
import { random } from '../geometry/partitions.ts';
import type { Random } from '../geometry/partitions.ts';
import { INK, RUST, SAND, block, box, number, patchOf, place } from './layouts.ts';

describe('quilts of small random blocks, turned and mirrored', () => {
  test('as many crossings nest, and fail to, as the drawing shows; no way of pressing leaves fewer', () => {
    let [compared, withConflicts] = [0, 0];
    for (let seed = 1; seed <= 160; seed += 1) {
      const layout = randomQuilt(random(seed));
      const sewing = sewingOf(layout, { methods: {} });
      const { seams, meetings } = drawn(layout, sewing);
      const free = meetings.filter(({ a, b }) => !seams[a]?.open && !seams[b]?.open);
      const nested = free.filter(({ a, b, bothRight }) => ((seams[a]?.side === seams[b]?.side) === bothRight));
      expect([seed, sewing.pressing.nested, sewing.pressing.conflicts]).toEqual([seed, nested.length, free.length - nested.length]);
      if (seams.length > 15) continue;
      expect([seed, sewing.pressing.conflicts]).toEqual([seed, fewest(free, seams.length)]);
      compared += 1;
      withConflicts += sewing.pressing.conflicts > 0 ? 1 : 0;
    }
    expect(compared).toBeGreaterThan(40);
    expect(withConflicts).toBeGreaterThan(5);
  });
});

interface Line {
  readonly seam: number;
  readonly owner: number;
  readonly from: Point;
  readonly to: Point;
  readonly via: readonly Point[];
  /** True when left and right are changed over, as in a mirrored block. */
  readonly mirrored: boolean;
}

interface Meeting {
  readonly a: number;
  readonly b: number;
  /** Whether they nest when both are pressed to the same side of their stretches. */
  readonly bothRight: boolean;
}

interface Drawn {
  readonly seams: readonly { readonly side: string; readonly open: boolean }[];
  readonly meetings: readonly Meeting[];
}

/** Owner −1 is the setting, others are placements. Seams of the same block are one, wherever it stands. */
function drawn(layout: QuiltLayout, { blocks, setting, pressing }: QuiltSewing): Drawn {
  const seams: { side: string; open: boolean }[] = [];
  const put = (stretches: readonly (readonly Stretch[])[], sides: readonly (readonly string[])[]): { number: number; stretch: Stretch }[] =>
    stretches.flatMap((list, i) =>
      list.map((stretch, k) => {
        const side = sides[i]?.[k] ?? '';
        return { number: seams.push({ side, open: side === 'open' }) - 1, stretch };
      }),
    );
  const ofBlock = new Map(blocks.map(({ layout: of, assembled }, i) => [of, put(assembled?.plan.seams.map((seam) => seam.stretches) ?? [], pressing.blocks[i]?.sides ?? [])]));
  const own = put(setting.assembled?.plan.seams.map((seam) => seam.stretches) ?? [], pressing.setting?.sides ?? []);
  const lines = [
    ...own.map(({ number: seam, stretch }): Line => ({ seam, owner: -1, from: stretch.from, to: stretch.to, via: stretch.via, mirrored: false })),
    ...layout.placements.flatMap((placement, owner) => (ofBlock.get(placement.block) ?? []).map(({ number: seam, stretch }) => placed(stretch, placement, { seam, owner }))),
  ];
  return { seams, meetings: meetingsOf(lines) };
}

function placed(stretch: Stretch, { transform }: Placement, of: Pick<Line, 'seam' | 'owner'>): Line {
  const at = (p: Point): Point => applyTo(p, transform);
  return { ...of, from: at(stretch.from), to: at(stretch.to), via: stretch.via.map(at), mirrored: determinantSign(transform) < 0 };
}

interface End {
  readonly line: Line;
  readonly side: number;
  /** Along the line crossed, where its allowance lies when pressed to the right of the stretch as the block has it. */
  readonly along: number;
}

function meetingsOf(lines: readonly Line[]): Meeting[] {
  const spots = new Map<string, Point>();
  for (const line of lines) for (const p of [line.from, line.to, ...line.via]) spots.set(nameOf(p), p);
  return [...spots.values()].flatMap((p) => lines.filter((line) => isInside(p, line)).flatMap((over) => meetingsOver(over, p, lines)));
}

function meetingsOver(over: Line, p: Point, lines: readonly Line[]): Meeting[] {
  const ends = lines.flatMap((line) => endAt(line, p, over));
  if (over.owner >= 0) return pair(ends.filter((end) => end.line.owner === over.owner));
  const own = ends.filter((end) => end.line.owner === -1);
  const blocks = ends.filter((end) => end.line.owner >= 0);
  if (own.length === 2) return pair(own);
  return own.length === 1 && blocks.length === 1 ? pair([...own, ...blocks]) : own.length === 0 ? pair(blocks) : [];
}

function pair(ends: readonly End[]): Meeting[] {
  const [a, b] = ends;
  if (!a || !b || ends.length !== 2 || a.side === b.side) return [];
  return [{ a: a.line.seam, b: b.line.seam, bothRight: a.along !== b.along }];
}

function endAt(line: Line, p: Point, over: Line): End[] {
  const [x, y] = xy(p);
  const [from, to] = [xy(line.from), xy(line.to)];
  const other = near(from, [x, y]) ? to : near(to, [x, y]) ? from : undefined;
  if (!other || line === over) return [];
  const [[ax, ay], [bx, by]] = [xy(over.from), xy(over.to)];
  const side = Math.sign((bx - ax) * (other[1] - y) - (by - ay) * (other[0] - x));
  const along = (bx - ax) * -(to[1] - from[1]) + (by - ay) * (to[0] - from[0]);
  return [{ line, side, along: Math.sign(line.mirrored ? -along : along) }];
}

function isInside(p: Point, line: Line): boolean {
  const [[x, y], [ax, ay], [bx, by]] = [xy(p), xy(line.from), xy(line.to)];
  const off = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
  const ahead = (x - ax) * (bx - ax) + (y - ay) * (by - ay);
  const whole = (bx - ax) ** 2 + (by - ay) ** 2;
  return Math.abs(off) < 1e-9 && ahead > 1e-9 && ahead < whole - 1e-9;
}

function xy(p: Point): readonly [number, number] {
  return [toNumber(p.x), toNumber(p.y)];
}

function near([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): boolean {
  return Math.abs(ax - bx) < 1e-9 && Math.abs(ay - by) < 1e-9;
}

function nameOf(p: Point): string {
  return xy(p).map((x) => x.toFixed(6)).join(' ');
}

function fewest(meetings: readonly Meeting[], seams: number): number {
  let best = meetings.length;
  for (let sides = 0; sides < 1 << seams; sides += 1) {
    const conflicts = meetings.filter(({ a, b, bothRight }) => (((sides >> a) ^ (sides >> b)) & 1) === (bothRight ? 1 : 0)).length;
    if (conflicts < best) best = conflicts;
  }
  return best;
}

/** One or two blocks of two by two cells, set two or three across in one to three rows. */
function randomQuilt(r: Random): QuiltLayout {
  const blocks = Array.from({ length: 1 + r.below(2) }, (_, i) => randomBlock(r, i));
  const [across, down] = [2 + r.below(2), 1 + r.below(3)];
  const placements = Array.from({ length: across * down }, (_, i): Placement => {
    const [column, row] = [i % across, Math.floor(i / across)];
    const shift = translate(number(2 * column), number(2 * row));
    return { block: blocks[i % blocks.length] ?? randomBlock(r, 9), transform: compose(shift, randomTurn(r)), place: place(1), row, column, part: 'place' };
  });
  const counted = blocks.map((layout) => ({ layout, name: layout.key, count: placements.filter((each) => each.block === layout).length }));
  const [width, height] = [number(2 * across), number(2 * down)];
  return { spec: {} as QuiltSpec, width, height, placements, patches: [], borders: [], centre: { width, height }, blocks: counted.filter((each) => each.count > 0), findings: [] };
}

function randomTurn(r: Random): Transform {
  const turned = turn(6 * r.below(4));
  return about({ x: number(1), y: number(1) }, r.below(3) === 0 ? compose(MIRROR, turned) : turned);
}

function randomBlock(r: Random, i: number): BlockLayout {
  const cells = [[0, 0], [1, 0], [0, 1], [1, 1]] as const;
  const patches = r.below(4) === 0 ? [box(0, 0, 1, 2, INK), box(1, 0, 1, 2, SAND)] : cells.flatMap(([x, y]) => cell(x, y, r));
  return block(`Block ${i}`, 2, 2, patches);
}

function cell(x: number, y: number, r: Random): Patch[] {
  const fabric = (): typeof INK => r.pick([INK, SAND, RUST]);
  const plain = box(x, y, 1, 1, fabric());
  const [a, b, c, d] = plain.outline as [Point, Point, Point, Point];
  const halves = r.pick([[[a, b, c], [a, c, d]], [[a, b, d], [b, c, d]]]);
  return r.below(3) > 0 ? [plain] : halves.map((outline) => patchOf(outline, { fabric: fabric() }));
}
