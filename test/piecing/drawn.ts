/** The seams of a whole quilt put where they lie, and where they meet, found by looking: the planner is not asked. */
import { toNumber } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { applyTo, determinantSign } from '../../server/src/exact/transform.ts';
import type { Placement, QuiltLayout } from '../../server/src/geometry/layout.ts';
import type { Stretch } from '../../server/src/piecing/plan.ts';
import type { QuiltSewing } from '../../server/src/piecing/sewing.ts';

interface Line {
  readonly seam: number;
  readonly owner: number;
  readonly from: Point;
  readonly to: Point;
  readonly via: readonly Point[];
  /** True when left and right are changed over, as in a mirrored block. */
  readonly mirrored: boolean;
}

export interface Meeting {
  readonly a: number;
  readonly b: number;
  /** Whether they nest when both are pressed to the same side of their stretches. */
  readonly bothRight: boolean;
}

export interface Drawn {
  readonly seams: readonly { readonly side: string; readonly open: boolean }[];
  readonly meetings: readonly Meeting[];
}

/** Owner −1 is the setting, others are placements. Seams of the same block are one, wherever it stands. */
export function drawn(layout: QuiltLayout, { blocks, setting, pressing }: QuiltSewing): Drawn {
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
