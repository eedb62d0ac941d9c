/** Patches that lie on one another when their block is turned or mirrored, written once: `turned` or `mirrored` round one of each. */
import { HALF, key, mul } from '../../exact/number.ts';
import { point, pointKey } from '../../exact/point.ts';
import { about, FLIP, MIRROR, turn, type Transform } from '../../exact/transform.ts';
import type { Patch } from '../../geometry/layout.ts';
import { movePatch, plainly } from '../../geometry/move.ts';
import { ofKind } from '../../model/statements.ts';
import type { BlockView, Snapshot } from '../../snapshot.ts';
import { bodyEdit, textIn, type Refactoring } from './edit.ts';

interface Way {
  readonly written: string;
  /** How many lie on one another. */
  readonly count: number;
  /** Done again and again, they make all images. */
  readonly images: readonly Transform[];
}

/** The steps of `turn` in a whole turn. */
const WHOLE_TURN = 24;

/** The ways of a patch block, those that leave least to write first. */
const WAYS: readonly Way[] = [
  ...[12, 8, 6, 4, 3].map((count): Way => ({ written: `turned ${count}`, count, images: [turn(WHOLE_TURN / count)] })),
  { written: 'mirrored 4', count: 4, images: [MIRROR, FLIP] },
  { written: 'turned 2', count: 2, images: [turn(WHOLE_TURN / 2)] },
  { written: 'mirrored', count: 2, images: [MIRROR] },
];

/** Those that save lines, best first; none for a block that has a symmetry written already, or something wrong in it. */
export function foldedPatches(snapshot: Snapshot, view: BlockView): readonly Refactoring[] {
  const { definition: { statement }, layout } = view;
  const inside = statement.body?.statements ?? [];
  const isPlain = layout.instance.body.kind === 'patches' && layout.findings.length === 0 && layout.instance.findings.length === 0 && inside.every(({ body, node }) => !body && node.kind !== 'corner');
  return isPlain ? WAYS.flatMap((way) => folded(snapshot, view, way) ?? []) : [];
}

function folded(snapshot: Snapshot, { definition: { statement }, layout }: BlockView, { written, count, images }: Way): Refactoring | undefined {
  const inside = statement.body?.statements ?? [];
  const patches = layout.patches.filter(({ within, grain }) => !within && !grain);
  const middle = point(mul(layout.width, HALF), mul(layout.height, HALF));
  const groups = groupsOf(patches, images.map((image) => about(middle, image))).filter((group) => group.length === count);
  if (!statement.body || groups.length * (count - 1) <= 2) return undefined;
  const lineOf = new Map(ofKind(inside, 'patch').map((each) => [each.line, each]));
  const inGroups = new Set(groups.flatMap((group) => group.map(({ place }) => place.line)));
  const first = groups.flatMap(([patch]) => (patch ? (lineOf.get(patch.place.line) ?? []) : []));
  const others = inside.filter(({ node, line }) => node.kind !== 'junk' && !inGroups.has(line));
  if (first.length < groups.length || lineOf.size < inside.filter(({ node }) => node.kind === 'patch').length) return undefined;
  const lines = [...others.map((each) => textIn(each, each.node).trim()), `${written} {`, ...first.map((each) => `  ${textIn(each, each.node).trim()}`), '}'];
  const edit = statement.body && bodyEdit(snapshot, statement.body, lines);
  return edit && { title: `Write one of each ${count} patches and \`${written}\``, kind: 'rewrite', edits: [edit] };
}

/** Patches that come to lie on one another, each group in the order of the text; a patch that has no image is in none. */
function groupsOf(patches: readonly Patch[], images: readonly Transform[]): readonly (readonly Patch[])[] {
  const byLook = new Map(patches.map((patch) => [lookOf(patch), patch]));
  const seen = new Set<Patch>();
  return patches.flatMap((patch) => {
    if (seen.has(patch)) return [];
    const group = new Set([patch]);
    for (const each of group) {
      for (const image of images) {
        const other = byLook.get(lookOf(movePatch(each, plainly(image))));
        if (!other) return [];
        group.add(other);
      }
    }
    for (const each of group) seen.add(each);
    return [[...group].sort((a, b) => patches.indexOf(a) - patches.indexOf(b))];
  });
}

/** Equal for patches of one fabric that lie in one place. */
function lookOf({ fabric, outline, arcs }: Patch): string {
  const corners = outline.map((corner, i) => `${pointKey(corner)}~${arcs?.[i] ? key(arcs[i]) : ''}`);
  const first = corners.indexOf(corners.toSorted()[0] ?? '');
  return [fabric.name, ...corners.slice(first), ...corners.slice(0, first)].join(' ');
}
