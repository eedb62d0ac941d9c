/** `low-contrast`: two fabrics beside each other in a block that are so near in value that the seam between them hardly shows. */
import { neighbours } from '../geometry/neighbours.ts';
import { outerPlace } from '../geometry/cell.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import { locate } from '../exact/polygon.ts';
import { midpoint } from '../exact/point.ts';
import type { Fabric } from '../model/pattern.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import { distinctBlocks, type Rule } from './rule.ts';
import { isLost, lightnessOf, nearestChange } from './values.ts';

const buoy = (second: string): string => quiltExample(`fabric coal ${second} "Coal"\nblock Buoy 4" {\n  ink  coal\n  sand sand\n}`);

export const lowContrast: Rule = {
  id: 'low-contrast',
  severity: 'hint',
  when: 'later',
  title: 'Two neighbours of the same value',
  why: 'A design is read by light and dark, from across the room or in a grey photograph. Two fabrics less than half a step apart on a grey scale of ten steps (5 of 100 in lightness) run into one, and the seam between them is sewn for nothing. The fabric you have may differ more than the colours on the screen: say so with `value light`, `medium` or `dark`.',
  bad: buoy('#2a3550'),
  good: buoy('#4a5a80'),
  mends: ['Choose a lighter or a darker fabric for one of them.', 'If the fabrics differ more than their colours here, say so: `value dark`, `value medium`.', 'Keep it, where hue or print tells them apart: `// allow low-contrast`.'],
  find: (context) => [...distinctBlocks(context)].flatMap(lowContrastIn),
};

/** What the rule says of one block. */
export function lowContrastIn(block: BlockLayout): readonly Problem[] {
  const problems = known.get(block) ?? problemsIn(block);
  known.set(block, problems);
  return problems;
}

/** A layout that stands from one keystroke to the next is looked at once. */
const known = new WeakMap<BlockLayout, readonly Problem[]>();

function problemsIn(block: BlockLayout): readonly Problem[] {
  const near = nearPairs([...new Map(block.patches.map(({ fabric }) => [fabric.name, fabric])).values()]);
  if (near.size === 0) return [];
  const told = new Set<string>();
  const names = new Set([...near].flatMap((name) => name.split('\n')));
  const seams = seamsOf(block.patches.filter(({ fabric }) => names.has(fabric.name)));
  return seams.flatMap(([one, other]): Problem[] => {
    const name = pairName(one.fabric, other.fabric);
    if (!near.has(name) || told.has(name) || isInside(one, other)) return [];
    told.add(name);
    return [{ rule: 'low-contrast', place: outerPlace(other), message: messageOf(one.fabric, other.fabric, block), related: [{ place: outerPlace(one), message: 'its neighbour' }] }];
  });
}

/** Both values, and the nearest change of one of them with which the seam would show: away from all that lies beside it. */
function messageOf(one: Fabric, other: Fabric, block: BlockLayout): string {
  const change = nearestChange(one, other, (fabric) => besides(fabric, block));
  const mend = change ? `; it would show with \`${change.fabric.name}\` ${change.way}, at ${change.to.toFixed(1)}` : '';
  return `\`${one.name}\` and \`${other.name}\` are nearly of one value (lightness ${lightnessOf(one).toFixed(1)} and ${lightnessOf(other).toFixed(1)}, of 100): the seam between them hardly shows${mend}`;
}

/** The pairs of fabrics that are near in value, by their names. */
function nearPairs(fabrics: readonly Fabric[]): ReadonlySet<string> {
  return new Set(fabrics.flatMap((one, i) => fabrics.slice(i + 1).filter((other) => isLost(one, other)).map((other) => pairName(one, other))));
}

/** The other fabrics of the block that share a seam with a fabric. */
function besides(fabric: Fabric, block: BlockLayout): readonly Fabric[] {
  const beside = seamsOf(block.patches).flatMap(([one, other]) => (one.fabric.name === fabric.name ? [other.fabric] : other.fabric.name === fabric.name ? [one.fabric] : []));
  return [...new Map(beside.filter(({ name }) => name !== fabric.name).map((each) => [each.name, each])).values()];
}

function pairName(a: Fabric, b: Fabric): string {
  return a.name < b.name ? `${a.name}\n${b.name}` : `${b.name}\n${a.name}`;
}

/** Both came in with the same nested block, which is looked at by itself. */
function isInside(one: Patch, other: Patch): boolean {
  return one.within?.[0] !== undefined && one.within[0] === other.within?.[0];
}

/** Patches that share a seam, in the order of the block; a flipped corner and what it lies on share its long side. */
function seamsOf(patches: readonly Patch[]): (readonly [Patch, Patch])[] {
  const base = patches.filter(({ role }) => role !== 'flipped_corner');
  const pairs = neighbours(base.map(({ outline }) => outline)).sort(([a, b], [c, d]) => a - c || b - d);
  return [
    ...pairs.flatMap(([a, b]) => (base[a] && base[b] ? [[base[a], base[b]] as const] : [])),
    ...patches.filter(({ role }) => role === 'flipped_corner').flatMap((corner) => underneath(corner, base).map((patch) => [patch, corner] as const)),
  ];
}

/** What lies at the middle of a flipped corner's long side: its corner on the block's is the first. */
function underneath({ outline }: Patch, base: readonly Patch[]): readonly Patch[] {
  const [, from, to] = outline;
  return from && to ? base.filter((patch) => locate(patch.outline, midpoint(from, to)) >= 0) : [];
}
