/** `directional-turned`: a directional print that does not stand upright in the quilt. */
import { ONE, ZERO, div, fraction, isZero, key, toInteger, type Exact } from '../exact/number.ts';
import { cross, type Point } from '../exact/point.ts';
import { applyTo, turn, type Transform } from '../exact/transform.ts';
import { outerPlace } from '../geometry/cell.ts';
import type { Patch, Placement, QuiltLayout } from '../geometry/layout.ts';
import type { Place } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { example } from './example.ts';
import type { Rule } from './rule.ts';

const waves = (cell: string): string => example(`fabric waves #7d8fa8 "Waves" directional\nblock Buoy 4" {\n  waves ink\n  sand  ${cell}\n}\nquilt {\n  straight 2 by 2\n  place { Buoy }\n}\n`);

export const directionalTurned: Rule = {
  id: 'directional-turned',
  severity: 'hint',
  when: 'later',
  title: 'A directional print that does not stand upright',
  why: 'Stripes, rows of figures and one-way prints show which way they were cut. Cut lists keep such a fabric upright in its block, so a block that is turned, or set on point, turns the print with it. Half a turn is not told: stripes do not show it.',
  bad: waves('waves@90'),
  good: waves('waves'),
  mends: ['Turn the print back in the block (`waves@90` turns it) or set the block upright.', 'Use a fabric without a direction there.', 'Keep it, where the print is meant to turn: `// allow directional-turned`.'],
  find: ({ quilts }) => quilts.flatMap(({ layout }) => [...inBlocks(layout), ...loose(layout)]),
};

function inBlocks({ blocks, placements }: QuiltLayout): readonly Problem[] {
  const directional = new Map(blocks.map(({ layout }) => [layout.key, kindsIn(layout.patches)]));
  const seen = new Map<Place, Set<string>>();
  return placements.flatMap((placement) => {
    const kinds = directional.get(placement.block.key) ?? [];
    if (kinds.length === 0 || !isNew(seen, placement)) return [];
    return kinds.flatMap((patch) => problemOf(patch, placement.transform, isZero(patch.grain) ? placement.place : outerPlace(patch)));
  });
}

function loose({ patches }: QuiltLayout): readonly Problem[] {
  return kindsIn(patches).flatMap((patch) => problemOf(patch, STILL, patch.place));
}

type Grained = Patch & { readonly grain: Exact };

/** One patch of each fabric, grain and cell. */
function kindsIn(patches: readonly Patch[]): readonly Grained[] {
  const kinds = new Map<string, Map<Place, Grained>>();
  for (const patch of patches) {
    const { fabric, grain } = patch;
    if (!fabric.directional || !grain) continue;
    const name = `${fabric.name} ${key(grain)}`;
    const alike = kinds.get(name) ?? new Map<Place, Grained>();
    kinds.set(name, alike);
    alike.set(outerPlace(patch), { ...patch, grain });
  }
  return [...kinds.values()].flatMap((alike) => [...alike.values()]);
}

/** Once for each cell of the setting, block and turn. */
function isNew(seen: Map<Place, Set<string>>, { place, block, transform: { xx, xy, yx, yy } }: Placement): boolean {
  const known = seen.get(place) ?? new Set();
  seen.set(place, known);
  const name = `${block.key} ${[xx, xy, yx, yy].map(key).join(' ')}`;
  if (known.has(name)) return false;
  known.add(name);
  return true;
}

function problemOf({ fabric, grain }: Grained, transform: Transform, place: Place): readonly Problem[] {
  const degrees = degreesAfter(grain, transform);
  if (degrees === 0) return [];
  const by = degrees === undefined ? '' : ` by ${degrees}°`;
  return [{ rule: 'directional-turned', place, message: `\`${fabric.name}\` is directional and stands turned${by} in the quilt here` }];
}

const STILL = turn(0);
const UP: Point = { x: ZERO, y: ONE };

/** The grain line in the quilt, clockwise from upright, in [0, 180); undefined where it is no multiple of 15°. */
function degreesAfter(grain: Exact, transform: Transform): number | undefined {
  const steps = toInteger(div(grain, fraction(15)));
  if (steps === undefined) return undefined;
  const line = applyTo(applyTo(UP, turn(steps % 24)), { ...transform, dx: ZERO, dy: ZERO });
  const found = Array.from({ length: 12 }, (_, step) => step).find((step) => isZero(cross(line, applyTo(UP, turn(step)))));
  return found === undefined ? undefined : found * 15;
}
