/** `bias-outside`: an edge on the bias on the outside of a block or of the quilt, where nothing holds it before the next seam. */
import { HALF, ZERO, div, equals, isWhole, mul, fraction, sub, type Exact } from '../exact/number.ts';
import { edgesOf } from '../exact/polygon.ts';
import type { Point } from '../exact/point.ts';
import type { BlockLayout, Patch, QuiltLayout } from '../geometry/layout.ts';
import { cornersOf, type Room } from '../geometry/move.ts';
import { outerPlace } from '../geometry/cell.ts';
import type { Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import { distinctBlocks, type Rule } from './rule.ts';
import { numberText } from './wording.ts';

const buoy = (grain: string): string => quiltExample(`block Buoy 4" {\n  patch ink  0,0 2,0 2,4 0,4${grain}\n  patch sand 2,0 4,0 4,4 2,4\n}`);

export const biasOutside: Rule = {
  id: 'bias-outside',
  severity: 'hint',
  when: 'later',
  title: 'A bias edge on the outside',
  why: 'Cloth stretches when it is pulled across its threads. An edge on the bias inside a block is held by the seam across it; on the outside of the block it pulls out of shape when it is handled and pressed, and on the outside of the quilt it makes a border that waves.',
  bad: buoy(' grain 45'),
  good: buoy(''),
  mends: [
    'Leave out `grain`: triangles are then cut so that their outer edges are straight.',
    'On point, give the edge a fabric (`edges FABRIC`): setting triangles are cut with the straight grain along the quilt\'s edge.',
    'Sashes end on the bias where the edge cuts them: `cornerstones`, or `outer` for a frame around.',
    'Keep it: starch the cloth, handle it little, and sew a line of stitches along the edge (`// allow bias-outside`).',
  ],
  find: (context) => [...[...distinctBlocks(context)].flatMap(inBlock), ...context.quilts.flatMap(({ layout }) => inQuilt(layout))],
};

/** Patches of the block itself: one in a nested block is on the outside of that too. */
function inBlock(block: BlockLayout): readonly Problem[] {
  return block.patches.flatMap((patch): Problem[] => {
    const { grain, within, outline } = patch;
    if (!grain || within || isAlongThreads(grain) || !touches(outline, { x: ZERO, y: ZERO, width: block.width, height: block.height })) return [];
    return [problem(outerPlace(patch), `this patch has a bias edge on the outside of the block: its grain runs ${numberText(grain)}° from upright`)];
  });
}

function inQuilt(layout: QuiltLayout): readonly Problem[] {
  const cut = new Map<Place, string>();
  for (const { clip, place, block } of layout.placements) {
    if (clip) cut.set(place, `\`${block.instance.definition.name}\` is cut along the edge of the quilt on the bias`);
  }
  const room = centreOf(layout);
  const ends = new Set(layout.patches.filter((patch) => isSlantedSash(patch) && touches(patch.outline, room)).map(({ place }) => place));
  return [
    ...[...cut].map(([place, message]) => problem(place, message)),
    ...[...ends].map((place) => problem(place, 'these sashes end on the bias at the edge of the quilt')),
  ];
}

function problem(place: Place, message: string): Problem {
  return { rule: 'bias-outside', place, message };
}

/** Upright, or across. */
function isAlongThreads(grain: Exact): boolean {
  return isWhole(div(grain, fraction(90)));
}

/** Whether an edge lies on a side of the room. */
function touches(outline: readonly Point[], room: Room): boolean {
  const [{ x: left, y: top } = { x: ZERO, y: ZERO }, , { x: right, y: bottom } = { x: ZERO, y: ZERO }] = cornersOf(room);
  const both = (side: Exact, a: Exact, b: Exact): boolean => equals(a, side) && equals(b, side);
  return edgesOf(outline).some(({ from, to }) => both(left, from.x, to.x) || both(right, from.x, to.x) || both(top, from.y, to.y) || both(bottom, from.y, to.y));
}

/** The quilt inside its borders. */
function centreOf({ width, height, centre }: QuiltLayout): Room {
  return { x: mul(HALF, sub(width, centre.width)), y: mul(HALF, sub(height, centre.height)), ...centre };
}

/** A sash is cut along its own sides; one that lies slanted has a side that runs down and across. */
function isSlantedSash({ role, outline }: Patch): boolean {
  return role === 'sash' && edgesOf(outline).some(({ from, to }) => !equals(from.x, to.x) && !equals(from.y, to.y));
}
