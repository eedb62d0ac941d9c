/**
 * A unit is sewn once in words and pressed as it lies in each block: where its copies are pressed differently, the line for its
 * seams says how many go which way, or sends the maker to the drawings of the blocks.
 */
import type { Assembly, Join } from '../piecing/plan.ts';
import type { PressedSeams } from '../piecing/pressing.ts';
import type { QuiltSewing } from '../piecing/sewing.ts';
import type { Unit } from '../piecing/units.ts';
import { clothTowards, sideOfSeam } from './steps-press.ts';
import { TEXTS } from './steps-texts.ts';
import { sideOf } from './steps-words.ts';
import { plain } from './markdown.ts';
import { listed } from './words.ts';

interface Copy {
  readonly node: Join;
  readonly sides: PressedSeams['sides'];
  readonly clothOf: (patch: number) => string;
  /** How often it is made. */
  readonly count: number;
}

/** A line in place of the usual one; undefined where all copies are pressed alike. */
export function pressedLine(unit: Unit, sewing: QuiltSewing): string | undefined {
  const ways = pressedWays(unit, sewing);
  return ways === undefined ? undefined : ways === 'as drawn' ? TEXTS.pressAsDrawnInBlocks : TEXTS.pressSome(ways);
}

/** How many copies of a unit are pressed which way; `as drawn` where words are too clumsy, undefined where all are pressed alike. */
export function pressedWays(unit: Unit, sewing: QuiltSewing): string | undefined {
  const copies = copiesOf(unit, sewing);
  if (new Set(copies.map((copy) => wayOfCopy(copy, sewing))).size < 2) return undefined;
  const cloths = copies.map(({ node, sides, clothOf }) => {
    const [seam, ...more] = node.seams;
    const [stretch] = seam?.stretches ?? [];
    const side = seam && sideOfSeam(seam, sides);
    return stretch && side && more.length === 0 ? (side === 'open' ? 'open' : clothTowards(stretch, side, clothOf)) : undefined;
  });
  if (cloths.includes(undefined)) return 'as drawn';
  const counts = new Map<string, number>();
  copies.forEach(({ count }, i) => counts.set(cloths[i] ?? '', (counts.get(cloths[i] ?? '') ?? 0) + count));
  if (counts.size < 2) return undefined;
  return listed([...counts].map(([cloth, count]) => `${count} of them ${cloth === 'open' ? 'open' : TEXTS.towards(cloth)}`));
}

function copiesOf({ number }: Unit, { blocks, units, pressing }: QuiltSewing): readonly Copy[] {
  return blocks.flatMap(({ layout, assembled, count }) => {
    const sides = pressing.blocks.find((block) => block.layout === layout)?.sides ?? [];
    const clothOf = (patch: number): string => plain(layout.patches[patch]?.fabric.name ?? '');
    return assembled ? joinsIn(assembled.plan.assembly).filter((node) => units.numbers.get(node) === number).map((node) => ({ node, sides, clothOf, count })) : [];
  });
}

/** Every join of a plan. */
function joinsIn(root: Assembly): readonly Join[] {
  const found: Join[] = [];
  const stack: Assembly[] = [root];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    if (node.kind === 'finish' || node.kind === 'flip') stack.push(node.part);
    if (node.kind !== 'join') continue;
    found.push(node);
    stack.push(...node.parts.toReversed());
  }
  return found;
}

/** How the seams of a copy are pressed, the same for a copy that is turned round. */
function wayOfCopy({ node, sides, clothOf }: Copy, { units }: QuiltSewing): string {
  const names = node.parts.map((part) => (part.kind === 'patch' ? clothOf(part.patch) : `${units.numbers.get(part) ?? -1}`));
  const ways = node.seams.map((seam, i) => {
    const side = sideOfSeam(seam, sides);
    const [stretch] = seam.stretches;
    const added = node.parts[i + 1];
    if (side === undefined || !stretch || !added) return '?';
    return side === 'open' ? 'open' : sideOf(added, stretch) === side ? '>' : '<';
  });
  const there = names.map((name, i) => `${name}${ways[i] ?? ''}`).join(' ');
  const turned = ways.toReversed().map((way) => TURNED[way] ?? way);
  const back = names.toReversed().map((name, i) => `${name}${turned[i] ?? ''}`).join(' ');
  return there < back ? there : back;
}

const TURNED: Readonly<Record<string, string>> = { '<': '>', '>': '<' };
