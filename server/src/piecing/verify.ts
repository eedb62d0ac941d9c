/**
 * Sews a plan and says what goes wrong. Shares nothing with the planner but the shape of its answer.
 *
 * A part is the rim of what is sewn so far: edges in order, clockwise, each with the patch it belongs to and the allowance beyond it.
 * A seam must find both its sides on the rims, whole edges of both parts (a partial one: from a corner to its stop), and takes them
 * off; what is left closes up. In the end there is one part, its rim is the block's outline, every allowance on it untouched.
 */
import { equals, sign } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { cross, dot, minus, opposite, samePoint } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { withoutStraightCorners } from '../exact/polygon.ts';
import type { Patch } from '../geometry/layout.ts';
import type { Assembly, Seam, SewingPlan, Stretch } from './plan.ts';
import { chainOn, followsOn, rimOf, takeOff, turnsAt } from './verify-rim.ts';
import type { Rim, RimEdge } from './verify-rim.ts';

export interface SewingFault {
  /** The number of the seam. */
  readonly seam?: number;
  readonly what: string;
}

export interface SewingTask {
  readonly patches: readonly Patch[];
  /** Where the sewn block must end, clockwise. */
  readonly outline: readonly Point[];
  readonly seam: Exact;
  /** The allowance a patch was cut with beyond its edge from corner i to the next; `seam` unless said. */
  readonly allowance?: (patch: number, edge: number) => Exact;
}

/** Nothing when the plan sews the patches to the outline, each once, every seam as it is said to be. */
export function verifyPlan(task: SewingTask, plan: SewingPlan): SewingFault[] {
  const bench: Bench = { task, faults: [], used: new Set(), sewn: [] };
  const rim = sew(bench, plan.assembly);
  finalCheck(bench, rim);
  countCheck(bench, plan);
  return bench.faults;
}

interface Bench {
  readonly task: SewingTask;
  readonly faults: SewingFault[];
  readonly used: Set<number>;
  readonly sewn: Seam[];
}

function sew(bench: Bench, node: Assembly): Rim {
  switch (node.kind) {
    case 'patch':
      return layOut(bench, node.patch);
    case 'join':
      return joinParts(bench, node.parts.map((part) => sew(bench, part)), node.seams);
    case 'finish': {
      const rim = sew(bench, node.part);
      checkKind(bench, node.seam, ['finish']);
      return sewSeam(bench, node.seam, [rim, rim]);
    }
    case 'flip': {
      const rim = sew(bench, node.part);
      flip(bench, rim, node);
      return rim;
    }
  }
}

function layOut(bench: Bench, index: number): Rim {
  const { patches, seam, allowance } = bench.task;
  const patch = patches[index];
  if (bench.used.has(index) || !patch) fault(bench, undefined, `patch ${index} is not there to take`);
  bench.used.add(index);
  return rimOf({ patch: index, outline: patch?.outline ?? [], arcs: patch?.arcs ?? [], allowance: (edge) => allowance?.(index, edge) ?? seam });
}

function joinParts(bench: Bench, parts: readonly Rim[], seams: readonly Seam[]): Rim {
  const [first, ...rest] = parts;
  if (!first || seams.length !== rest.length) fault(bench, undefined, 'a join has another number of seams than of parts to sew on');
  let rim = first ?? rimOf({ patch: -1, outline: [], arcs: [], allowance: () => bench.task.seam });
  rest.forEach((part, i) => {
    const seam = seams[i];
    if (!seam) return;
    checkKind(bench, seam, ['straight', 'curved', 'set_in', 'partial']);
    rim = sewSeam(bench, seam, [rim, part]);
  });
  return rim;
}

/** Sews one seam between two parts, or within one when they are the same. */
function sewSeam(bench: Bench, seam: Seam, [one, two]: readonly [Rim, Rim]): Rim {
  bench.sewn.push(seam);
  const way = findSides(seam.stretches, one, two) ?? (one === two ? undefined : findSides(seam.stretches, two, one));
  if (!way) {
    fault(bench, seam, 'its two sides are not edges of the parts it joins');
    return one;
  }
  checkAllowances(bench, seam, way);
  checkNames(bench, seam, way);
  checkEnds(bench, seam, way);
  checkPivots(bench, seam, way);
  return takeOff(one, two, way);
}

/** For each stretch the edges on its right and, backwards, on its left. */
interface Side {
  readonly stretch: Stretch;
  readonly right: readonly RimEdge[];
  readonly left: readonly RimEdge[];
}

function findSides(stretches: readonly Stretch[], right: Rim, left: Rim): Side[] | undefined {
  const sides = stretches.map((stretch) => {
    const onRight = chainOn(right, stretch, 'forward');
    const onLeft = chainOn(left, stretch, 'back');
    return onRight && onLeft ? { stretch, right: onRight, left: onLeft } : undefined;
  });
  return sides.every((side) => side !== undefined) && sides.length > 0 ? sides : undefined;
}

function checkAllowances(bench: Bench, seam: Seam, sides: readonly Side[]): void {
  const short = sides.flatMap(({ right, left }) => [...right, ...left]).find((edge) => !equals(edge.allowance, bench.task.seam));
  if (short) fault(bench, seam, `patch ${short.patch} was cut with another allowance there`);
}

/** The stretches name the patches that lie beside them, from end to end. */
function checkNames(bench: Bench, seam: Seam, sides: readonly Side[]): void {
  for (const { stretch, right, left } of sides) {
    const found = [right.map((edge) => edge.patch), left.map((edge) => edge.patch).reverse()].map(withoutRepeats);
    const said = [stretch.right, stretch.left].map(withoutRepeats);
    if (found.some((names, i) => names.join() !== said[i]?.join())) fault(bench, seam, 'it names other patches than lie beside it');
  }
}

function withoutRepeats(list: readonly number[]): readonly number[] {
  return list.filter((each, i) => each !== list[i - 1]);
}

/** Both ends are corners of both parts, but for the stop of a partial seam and of its finish. */
function checkEnds(bench: Bench, seam: Seam, sides: readonly Side[]): void {
  const [first, last] = [sides[0], sides.at(-1)];
  if (!first || !last) return;
  const ends = [
    { point: first.stretch.from, straightOn: [followsOn(first.right[0], 'before'), followsOn(first.left.at(-1), 'after')] },
    { point: last.stretch.to, straightOn: [followsOn(last.right.at(-1), 'after'), followsOn(last.left[0], 'before')] },
  ];
  const isStop = (point: Point): boolean => seam.stop !== undefined && samePoint(point, seam.stop);
  for (const { point, straightOn } of ends) {
    if (seam.kind === 'partial' && isStop(point)) {
      if (straightOn.includes(false)) fault(bench, seam, 'it is said to stop partway, and ends at a corner');
    } else if (!isStop(point) && straightOn.includes(true)) fault(bench, seam, 'it ends in the middle of an edge');
  }
  if (seam.kind === 'partial' && !ends.some(({ point }) => isStop(point))) fault(bench, seam, 'it is said to stop partway, and does not');
}

/** A seam pivots where it is said to, and only where no seam could run straight through. */
function checkPivots(bench: Bench, seam: Seam, sides: readonly Side[]): void {
  const pivots = sides.slice(1).map((side) => side.stretch.from);
  const said = seam.kind === 'finish' ? [...pivots, ...seam.corners.filter((corner) => !pivots.some((p) => samePoint(p, corner)))] : pivots;
  if (said.length !== seam.corners.length || said.some((p, i) => !samePoint(p, seam.corners[i] ?? p))) fault(bench, seam, 'it pivots at other corners than those it names');
  if (pivots.length > 0 && seam.kind !== 'set_in' && seam.kind !== 'finish') fault(bench, seam, 'it pivots, and is not said to be set in');
  if (seam.kind === 'set_in' && pivots.length === 0) fault(bench, seam, 'it is said to be set in, and runs straight');
  sides.slice(1).forEach(({ right }, i) => {
    if (!turnsAt(sides[i]?.right.at(-1), right[0])) fault(bench, seam, 'it is said to pivot where it runs straight on');
  });
  for (const corner of seam.corners) if (hasStraightThrough(bench.task.patches, corner)) fault(bench, seam, 'a straight seam could run through a corner that it sets in');
}

/** True when two straight edges leave a point in opposite directions. */
function hasStraightThrough(patches: readonly Patch[], p: Point): boolean {
  const ways = patches.flatMap(({ outline, role }) => (role === 'flipped_corner' ? [] : waysFrom(outline, p)));
  return ways.some((u) => ways.some((v) => sign(cross(u, v)) === 0 && sign(dot(u, v)) < 0));
}

function waysFrom(outline: readonly Point[], p: Point): Point[] {
  return outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    const [toA, toB] = [minus(a, p), minus(b, p)];
    if (samePoint(a, p)) return [toB];
    if (samePoint(b, p)) return [toA];
    return sign(cross(toA, toB)) === 0 && sign(dot(toA, toB)) < 0 ? [toA, opposite(toA)] : [];
  });
}

/** The corner's tip lies on a corner of the part, its legs along the edges there, and the seam runs from leg to leg. */
function flip(bench: Bench, rim: Rim, { patch: index, seam }: { readonly patch: number; readonly seam: Seam }): void {
  bench.sewn.push(seam);
  const [tip, next, last] = bench.task.patches[index]?.outline ?? [];
  if (bench.used.has(index) || !tip || !next || !last) return fault(bench, seam, `patch ${index} is not there to take`);
  bench.used.add(index);
  const [stretch] = seam.stretches;
  if (!stretch || !samePoint(stretch.from, next) || !samePoint(stretch.to, last)) fault(bench, seam, 'it does not run from leg to leg of the corner');
  const legs = [chainOn(rim, { from: tip, to: next }, 'forward'), chainOn(rim, { from: last, to: tip }, 'forward')];
  if (legs.includes(undefined)) fault(bench, seam, 'its corner does not lie on a corner of the part');
}

function checkKind(bench: Bench, seam: Seam, kinds: readonly Seam['kind'][]): void {
  if (!kinds.includes(seam.kind)) fault(bench, seam, `a ${seam.kind} seam has no place there`);
  if (seam.kind === 'straight' && seam.stretches.some((stretch) => stretch.arcs)) fault(bench, seam, 'it is said to be straight, and is curved');
}

function finalCheck(bench: Bench, rim: Rim): void {
  const { patches, outline, seam } = bench.task;
  if (bench.used.size !== patches.length) fault(bench, undefined, 'not every patch is sewn in');
  const start = rim.edges.values().next().value;
  const corners: Point[] = [];
  let count = 0;
  for (let edge = start; edge !== undefined && count < rim.edges.size; edge = edge.next) {
    corners.push(edge.from);
    count += 1;
    if (edge.next === start) break;
  }
  if (count !== rim.edges.size) fault(bench, undefined, 'something is left open');
  if (!sameLoop(withoutStraightCorners(corners), withoutStraightCorners(outline))) fault(bench, undefined, 'what is sewn is not the block');
  if ([...rim.edges].some((edge) => !equals(edge.allowance, seam))) fault(bench, undefined, 'an allowance is missing at the outside');
}

function sameLoop(a: readonly Point[], b: readonly Point[]): boolean {
  const [first] = a;
  const at = first ? b.findIndex((p) => samePoint(p, first)) : -1;
  return at >= 0 && a.length === b.length && a.every((p, i) => samePoint(p, b[(at + i) % b.length] ?? p));
}

/** The plan's own list and counts agree with what was sewn. */
function countCheck(bench: Bench, plan: SewingPlan): void {
  const { sewn } = bench;
  if (plan.seams.length !== sewn.length || new Set(plan.seams).size !== sewn.length || sewn.some((seam) => plan.seams[seam.number] !== seam)) fault(bench, undefined, 'the list of seams is not what is sewn');
  if (sewn.reduce((sum, seam) => sum + seam.corners.length, 0) !== plan.setIn) fault(bench, undefined, 'another number of corners is set in');
  if (sewn.filter((seam) => seam.kind === 'partial').length !== plan.partial) fault(bench, undefined, 'another number of seams is sewn partway');
}

function fault(bench: Bench, seam: Seam | undefined, what: string): void {
  bench.faults.push(seam ? { seam: seam.number, what } : { what });
}
