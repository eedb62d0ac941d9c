/** Blocks built from the centre: a middle, then strips around it in sewing order, each as long as what it is sewn to. */
import { ZERO, add, equals, neg, sign, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { CentreBody } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';
import { fabricPatch, fitBlock, together } from './cell.ts';
import type { CellContext, Laid } from './cell.ts';
import type { Patch } from './layout.ts';
import { cornersOf, shiftPatch } from './move.ts';
import type { Room, Size } from './move.ts';

export interface CentreContext extends CellContext {
  /** The size the block says it has; the strips must come to it. */
  readonly wanted?: Size & { readonly place: Place };
}

/** The patches, the block's upper left corner at 0,0. */
export function layCentre(context: CentreContext, body: CentreBody): Laid {
  const first = body.centre;
  if (!first) return { patches: [], findings: [] };
  const middle = { x: ZERO, y: ZERO, width: first.width, height: first.height };
  const steps = growing(body, middle);
  const whole = steps.at(-1)?.whole ?? middle;
  const strips = steps.map(({ strip, patch }): Laid => ({ patches: sign(strip.width) > 0 ? [patch] : [], findings: thin(strip) }));
  const laid = together([layMiddle(context, first, middle), ...strips]);
  const [dx, dy] = [neg(whole.x), neg(whole.y)];
  return { patches: laid.patches.map((patch) => shiftPatch(patch, dx, dy)), findings: [...laid.findings, ...sumFindings(context, body, whole)] };
}

/** What centre and strips come to. */
export function naturalCentreSize(body: CentreBody): Size | undefined {
  const first = body.centre;
  return first && (growing(body, { x: ZERO, y: ZERO, width: first.width, height: first.height }).at(-1)?.whole ?? first);
}

type Middle = NonNullable<CentreBody['centre']>;
type Strip = CentreBody['strips'][number];

interface Step {
  readonly strip: Strip;
  readonly patch: Patch;
  /** What has been sewn so far. */
  readonly whole: Room;
}

function growing(body: CentreBody, middle: Room): Step[] {
  const steps: Step[] = [];
  for (const strip of body.strips) {
    const inner = steps.at(-1)?.whole ?? middle;
    const room = stripRoom(inner, strip);
    steps.push({
      strip,
      patch: fabricPatch(strip, cornersOf(room)),
      whole: around(inner, strip),
    });
  }
  return steps;
}

function stripRoom(inner: Room, { side, width }: Strip): Room {
  switch (side) {
    case 'top':
      return { ...inner, y: sub(inner.y, width), height: width };
    case 'bottom':
      return { ...inner, y: add(inner.y, inner.height), height: width };
    case 'left':
      return { ...inner, x: sub(inner.x, width), width };
    case 'right':
      return { ...inner, x: add(inner.x, inner.width), width };
  }
}

function around(inner: Room, { side, width }: Strip): Room {
  return {
    x: side === 'left' ? sub(inner.x, width) : inner.x,
    y: side === 'top' ? sub(inner.y, width) : inner.y,
    width: side === 'left' || side === 'right' ? add(inner.width, width) : inner.width,
    height: side === 'top' || side === 'bottom' ? add(inner.height, width) : inner.height,
  };
}

function layMiddle(context: CellContext, { use, place }: Middle, room: Room): Laid {
  if (sign(room.width) <= 0 || sign(room.height) <= 0) {
    return { patches: [], findings: [{ rule: 'empty-patch', place, why: 'the width or height of this is zero' }] };
  }
  if (use.kind === 'block') return fitBlock(context, use, room);
  return { patches: [fabricPatch(use, cornersOf(room))], findings: [] };
}

function thin({ width, place }: Strip): Finding[] {
  return sign(width) > 0 ? [] : [{ rule: 'empty-patch', place, why: 'a strip is wider than zero' }];
}

function sumFindings({ wanted }: CentreContext, body: CentreBody, whole: Size): Finding[] {
  if (!wanted || body.incomplete) return [];
  const place = body.strips.at(-1)?.place ?? body.centre?.place ?? wanted.place;
  const report = (found: Exact, expected: Exact, what: string): Finding[] =>
    equals(found, expected) ? [] : [{ rule: 'grid-sum', place, found, expected, what, related: wanted.place }];
  return [
    ...report(whole.width, wanted.width, 'the centre and its strips across'),
    ...report(whole.height, wanted.height, 'the centre and its strips down'),
  ];
}
