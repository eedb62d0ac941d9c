/**
 * Sews cloth, in floating point and sharing nothing with the planner or its verifier. Every patch begins as the cloth that the cut
 * list gives (a square, half of one, a quarter …), turned and moved at random; its finished edges lie a seam inside the raw ones.
 * Seam after seam two parts are laid edge on edge, wherever their own edges put them, and what has been sewn cannot be sewn again.
 * In the end every patch must lie to every other as in the block, and only the block's outside may be left raw.
 */
import { toNumber } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';
import type { Cutting } from '../../server/src/cutting/shape.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import type { Assembly, Seam, SewingPlan, Stretch } from '../../server/src/piecing/plan.ts';
import type { Random } from '../geometry/partitions.ts';
import { NEAR, after, apply, between, boxOf, corners, distance, edgesOf, inset, lengthAlong, lengthOf, motionBetween, near, outset, overlap, sameMotion, sameSize, smaller, without, xy } from './cloth-plane.ts';
import type { Edge, Motion, V } from './cloth-plane.ts';

export interface ClothTask {
  readonly patches: readonly Patch[];
  /** Where the outside of the sewn block is. */
  readonly outline: readonly Point[];
  readonly seam: Exact;
  /** How each patch is cut; undefined where the block gives no cutting, then it is cut along its outline with the seam outside. */
  readonly cutting: (patch: number) => Cutting | undefined;
  /** What is cut over on a unit and trimmed. */
  readonly trim?: (patch: number) => number;
}

/** For each patch of a part where the block's own coordinates lie in the part's. */
type Part = Map<number, Motion>;

/** What goes wrong; nothing when the cloth becomes the block. */
export function sewCloth(task: ClothTask, plan: SewingPlan, r: Random): string[] {
  const isPlain = plan.seams.every(({ kind }) => kind === 'straight' || kind === 'curved' || kind === 'flipped');
  const bench = { task, isPlain, faults: [] as string[], raw: new Map<number, Edge[]>(), order: 0, r };
  const whole = sewPart(bench, plan.assembly);
  if (whole.size !== task.patches.length) bench.faults.push(`${whole.size} of ${task.patches.length} patches are sewn in`);
  const [first] = whole.values();
  for (const [patch, motion] of whole) if (first && !sameMotion(first, motion)) bench.faults.push(`patch ${patch} lies wrong`);
  for (const [patch, edges] of bench.raw) for (const edge of edges) if (!isOutside(edge, task)) bench.faults.push(`patch ${patch} is left open`);
  return bench.faults;
}

interface Bench {
  readonly task: ClothTask;
  /** Nothing is set in and nothing left open for later: every seam closes all there is between its parts. */
  readonly isPlain: boolean;
  readonly faults: string[];
  /** What of each patch is not sewn yet. */
  readonly raw: Map<number, Edge[]>;
  order: number;
  readonly r: Random;
}

function sewPart(bench: Bench, node: Assembly): Part {
  if (node.kind === 'patch') return new Map([[node.patch, layOut(bench, node.patch)]]);
  if (node.kind === 'finish') {
    const part = sewPart(bench, node.part);
    sewSeam(bench, node.seam, part, part);
    return part;
  }
  if (node.kind === 'flip') return flip(bench, sewPart(bench, node.part), node.patch, node.seam);
  const [first, ...rest] = node.parts.map((part) => sewPart(bench, part));
  rest.forEach((part, i) => {
    const seam = node.seams[i];
    if (seam && first) sewSeam(bench, seam, first, part);
  });
  return first ?? new Map<number, Motion>();
}

/** The cloth of a patch somewhere on the table. */
function layOut(bench: Bench, index: number): Motion {
  const { patches, seam, cutting, trim } = bench.task;
  const patch = patches[index];
  if (!patch || bench.raw.has(index)) bench.faults.push(`patch ${index} is not there to take`);
  bench.raw.set(index, patch ? edgesOf(patch) : []);
  const angle = (bench.r.below(360_000) / 180_000) * Math.PI;
  const table: Motion = { c: Math.cos(angle), s: Math.sin(angle), d: [bench.r.below(1000), bench.r.below(1000)] };
  const cut = patch && cutting(index);
  if (!patch || !cut || patch.arcs) return table;
  const wanted = corners(patch);
  const sizes = [toNumber(cut.exactCut.width), toNumber(cut.exactCut.height)];
  const doubled = 2 * toNumber(seam);
  // Under squares that are flipped, and those squares: cut whole.
  if ((cut.shape === 'square' || cut.shape === 'rectangle') && (wanted.length !== 4)) {
    if (!sameSize(boxOf(wanted).map((size) => size + doubled), sizes)) bench.faults.push(`patch ${index}: it is not cut as large as it reaches`);
    return table;
  }
  const finished = inset(clothOf(cut, toNumber(seam)) ?? outset(wanted, toNumber(seam)), toNumber(seam));
  const over = trim?.(index) ?? 0;
  const fit = over > 0 ? motionBetween(wanted, smaller(finished, over)) : motionBetween(wanted, finished);
  if (!fit) bench.faults.push(`patch ${index}: its cloth does not come out at its size`);
  return fit ? after(table, fit) : table;
}

/** The raw cloth of what is cut; undefined for templates. */
function clothOf({ shape, method, exactCut, segment, finished }: Cutting, seam: number): V[] | undefined {
  const [width, height] = [toNumber(exactCut.width), toNumber(exactCut.height)];
  // Eight at a time a square is cut in four before its diagonals.
  const side = method === 'eight at a time' ? width / 2 : width;
  switch (shape) {
    case 'square':
    case 'rectangle':
      return [[0, 0], [width, 0], [width, height], [0, height]];
    case 'half-square triangle':
      return [[0, 0], [side, 0], [0, side]];
    case 'quarter-square triangle':
      return [[0, 0], [side, 0], [side / 2, side / 2]];
    case 'strip':
      return segment ? [[0, 0], [width, 0], [width, toNumber(finished.height) + 2 * seam], [0, toNumber(finished.height) + 2 * seam]] : undefined;
    default:
      return undefined;
  }
}

/** Lays the second part with its edge on the first one's, and joins them. */
function sewSeam(bench: Bench, seam: Seam, one: Part, two: Part): void {
  if (seam.number !== bench.order) bench.faults.push(`seam ${seam.number} is sewn as number ${bench.order}`);
  bench.order += 1;
  const [stretch] = seam.stretches;
  if (!stretch) return;
  const isLeft = stretch.left.every((patch) => one.has(patch));
  if (one !== two) {
    const [mine, yours] = isLeft ? [stretch.left, stretch.right] : [stretch.right, stretch.left];
    const move = between(ends(stretch, yours, two), ends(stretch, mine, one));
    if (!move) bench.faults.push(`seam ${seam.number}: its two edges are not as long`);
    if (bench.isPlain) checkWhole(bench, seam, one, two);
    for (const [patch, motion] of two) one.set(patch, move ? after(move, motion) : motion);
  }
  for (const each of seam.stretches) sewStretch(bench, seam, each, one);
}

/** Both sides lie on each other at every corner along it, and are raw there. */
function sewStretch(bench: Bench, seam: Seam, stretch: Stretch, part: Part): void {
  const stops = [stretch.from, ...stretch.via, stretch.to].map(xy);
  for (const side of [stretch.left, stretch.right]) {
    const used = side.flatMap((patch) => takeOff(bench, patch, stretch));
    if (Math.abs(used.reduce((sum, length) => sum + length, 0) - lengthAlong(stretch)) > NEAR) bench.faults.push(`seam ${seam.number}: an edge beside it is not there, or sewn already`);
  }
  for (const p of stops) {
    const places = [...stretch.left, ...stretch.right].flatMap((patch) => {
      const motion = part.get(patch);
      return motion ? [apply(motion, p)] : [];
    });
    if (places.some((place) => !near(place, places[0] ?? place))) bench.faults.push(`seam ${seam.number}: its two sides do not meet`);
  }
}

/** A seam from edge to edge closes all that the two parts have in common. */
function checkWhole(bench: Bench, seam: Seam, one: Part, two: Part): void {
  const length = seam.stretches.reduce((sum, stretch) => sum + lengthAlong(stretch), 0);
  let common = 0;
  for (const a of one.keys()) for (const b of two.keys()) for (const edge of bench.raw.get(a) ?? []) for (const other of bench.raw.get(b) ?? []) common += overlap(edge, other);
  if (Math.abs(common - length) > NEAR) bench.faults.push(`seam ${seam.number}: the parts touch for ${common.toFixed(4)}, it is ${length.toFixed(4)} long`);
}

/** Takes off a patch's raw edges what runs along a stretch, and says how long that was. */
function takeOff(bench: Bench, patch: number, stretch: Stretch): number[] {
  const taken: number[] = [];
  const lines: readonly Edge[] = stretch.arcs ? stretch.arcs.map(({ from, to, radius }) => ({ from: xy(from), to: xy(to), radius: toNumber(radius) })) : [{ from: xy(stretch.from), to: xy(stretch.to), radius: 0 }];
  for (const line of lines) {
    bench.raw.set(patch, (bench.raw.get(patch) ?? []).flatMap((edge) => {
      const length = overlap(edge, line);
      if (length <= NEAR) return [edge];
      taken.push(length);
      return without(edge, line);
    }));
  }
  return taken;
}

/** A square on the corner, sewn from corner to corner: its legs lie along raw edges of what it covers. */
function flip(bench: Bench, part: Part, index: number, seam: Seam): Part {
  if (seam.number !== bench.order) bench.faults.push(`seam ${seam.number} is sewn as number ${bench.order}`);
  bench.order += 1;
  const corner = bench.task.patches[index];
  const cut = bench.task.cutting(index);
  const [tip, next, last] = corner?.outline.map(xy) ?? [];
  if (!corner || !tip || !next || !last || bench.raw.has(index)) {
    bench.faults.push(`patch ${index} is not there to take`);
    return part;
  }
  const leg = distance(tip, next);
  if (cut && Math.abs(toNumber(cut.exactCut.width) - 2 * toNumber(bench.task.seam) - leg) > NEAR) bench.faults.push(`patch ${index}: its square does not come out at its size`);
  const covered = [[tip, next], [last, tip]].every(([from, to]) => from && to && [...part.keys()].some((patch) => (bench.raw.get(patch) ?? []).some((edge) => overlap(edge, { from, to, radius: 0 }) > leg - NEAR)));
  if (!covered) bench.faults.push(`patch ${index} does not lie on a corner`);
  bench.raw.set(index, []);
  const [under] = part.values();
  if (under) part.set(index, under);
  return part;
}

function isOutside(edge: Edge, { outline }: ClothTask): boolean {
  return outline.some((p, i) => overlap({ from: xy(p), to: xy(outline[(i + 1) % outline.length] ?? p), radius: 0 }, edge) > lengthOf(edge) - NEAR);
}

/** The ends of a stretch where one of its sides has them. */
function ends({ from, to }: Stretch, side: readonly number[], part: Part): readonly [V, V] {
  const at = (patch: number | undefined, p: V): V => apply(part.get(patch ?? -1) ?? { c: 1, s: 0, d: [0, 0] }, p);
  return [at(side[0], xy(from)), at(side.at(-1), xy(to))];
}
