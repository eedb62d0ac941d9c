/** `low-contrast`: two fabrics beside each other in a block that are so near in value that the seam between them hardly shows. */
import { neighbours } from '../geometry/neighbours.ts';
import { outerPlace } from '../geometry/cell.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import { locate } from '../exact/polygon.ts';
import { midpoint } from '../exact/point.ts';
import type { Fabric } from '../model/pattern.ts';
import { lightness } from '../text/colour.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import { distinctBlocks, type Rule } from './rule.ts';

/** In L*, from 0 (black) to 100 (white): half a step of the grey scale of ten steps by which quilters tell values. */
const NEAR = 5;

const buoy = (second: string): string => quiltExample(`fabric coal ${second} "Coal"\nblock Buoy 4" {\n  ink  coal\n  sand sand\n}`);

export const lowContrast: Rule = {
  id: 'low-contrast',
  severity: 'hint',
  title: 'Two neighbours of the same value',
  why: 'A design is read by light and dark, from across the room or in a grey photograph. Two fabrics less than half a step apart on a grey scale of ten steps (5 of 100 in lightness) run into one, and the seam between them is sewn for nothing. The fabric you have may differ more than the colours on the screen: say so with `value light`, `medium` or `dark`.',
  bad: buoy('#2a3550'),
  good: buoy('#4a5a80'),
  mends: ['Choose a lighter or a darker fabric for one of them.', 'If the fabrics differ more than their colours here, say so: `value dark`, `value medium`.', 'Keep it, where hue or print tells them apart: `// allow low-contrast`.'],
  find: (context) => [...distinctBlocks(context)].flatMap((block) => {
    const problems = known.get(block) ?? problemsIn(block);
    known.set(block, problems);
    return problems;
  }),
};

/** A layout that stands from one keystroke to the next is looked at once. */
const known = new WeakMap<BlockLayout, readonly Problem[]>();

function problemsIn(block: BlockLayout): readonly Problem[] {
  const near = nearPairs([...new Map(block.patches.map(({ fabric }) => [fabric.name, fabric])).values()]);
  if (near.size === 0) return [];
  const told = new Set<string>();
  const names = new Set([...near.keys()].flatMap((name) => name.split('\n')));
  return seamsOf(block.patches.filter(({ fabric }) => names.has(fabric.name))).flatMap(([one, other]): Problem[] => {
    const name = pairName(one.fabric, other.fabric);
    const values = near.get(name);
    if (values === undefined || told.has(name) || isInside(one, other)) return [];
    told.add(name);
    const message = `\`${one.fabric.name}\` and \`${other.fabric.name}\` are nearly of one value (lightness ${values}, of 100): the seam between them hardly shows`;
    return [{ rule: 'low-contrast', place: outerPlace(other), message, related: [{ place: outerPlace(one), message: 'its neighbour' }] }];
  });
}

/** The pairs of fabrics that are near in value, by their names, with what is said of them. */
function nearPairs(fabrics: readonly Fabric[]): ReadonlyMap<string, string> {
  const valued = fabrics.flatMap((fabric) => (fabric.standsFor ? [] : [{ fabric, value: lightness(fabric.colour) ?? 0 }]));
  const pairs = new Map<string, string>();
  valued.forEach((one, i) => {
    for (const other of valued.slice(i + 1)) {
      const apart = one.value < other.value ? other.value - one.value : one.value - other.value;
      const saidToDiffer = one.fabric.value && other.fabric.value && one.fabric.value !== other.fabric.value;
      if (apart < NEAR && !saidToDiffer) pairs.set(pairName(one.fabric, other.fabric), `${one.value.toFixed(1)} and ${other.value.toFixed(1)}`);
    }
  });
  return pairs;
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
