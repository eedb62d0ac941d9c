/** Random quilts of square blocks. */
import type { Point } from '../../server/src/exact/point.ts';
import { MIRROR, about, compose, translate, turn } from '../../server/src/exact/transform.ts';
import type { Transform } from '../../server/src/exact/transform.ts';
import type { BlockLayout, Patch, Placement, QuiltLayout } from '../../server/src/geometry/layout.ts';
import type { QuiltSpec } from '../../server/src/model/pattern.ts';
import type { Random } from '../geometry/partitions.ts';
import { INK, RUST, SAND, block, box, number, patchOf, place } from './layouts.ts';

export interface RandomQuilt {
  readonly blocks: number;
  readonly across: number;
  readonly down: number;
  /** Cells of a block, each way. */
  readonly cells: number;
}

/** Blocks of square cells, plain or halved, turned and mirrored. */
export function randomQuilt(r: Random, { blocks: count, ...size }: RandomQuilt): QuiltLayout {
  return quiltOf(r, Array.from({ length: count }, (_, i) => randomBlock(r, i, size.cells)), size);
}

/** At least one block; each of so many cells each way. */
export function quiltOf(r: Random, blocks: readonly BlockLayout[], { across, down, cells }: Omit<RandomQuilt, 'blocks'>): QuiltLayout {
  const placements = Array.from({ length: across * down }, (_, i): Placement => {
    const [column, row] = [i % across, Math.floor(i / across)];
    const shift = translate(number(cells * column), number(cells * row));
    return { block: blocks[i % blocks.length] as BlockLayout, transform: compose(shift, randomTurn(r, cells)), place: place(1), row, column, part: 'place' };
  });
  const counted = blocks.map((layout) => ({ layout, name: layout.key, count: placements.filter((each) => each.block === layout).length }));
  const [width, height] = [number(cells * across), number(cells * down)];
  return { spec: {} as QuiltSpec, width, height, placements, patches: [], borders: [], centre: { width, height }, blocks: counted.filter((each) => each.count > 0), findings: [] };
}

function randomTurn(r: Random, cells: number): Transform {
  const turned = turn(6 * r.below(4));
  return about({ x: number(cells / 2), y: number(cells / 2) }, r.below(3) === 0 ? compose(MIRROR, turned) : turned);
}

function randomBlock(r: Random, i: number, cells: number): BlockLayout {
  const places = Array.from({ length: cells * cells }, (_, k) => [k % cells, Math.floor(k / cells)] as const);
  const isBars = cells === 2 && r.below(4) === 0;
  const patches = isBars ? [box(0, 0, 1, 2, INK), box(1, 0, 1, 2, SAND)] : places.flatMap(([x, y]) => cell(x, y, r));
  return block(`Block ${i}`, cells, cells, patches);
}

function cell(x: number, y: number, r: Random): Patch[] {
  const fabric = (): typeof INK => r.pick([INK, SAND, RUST]);
  const plain = box(x, y, 1, 1, fabric());
  const [a, b, c, d] = plain.outline as [Point, Point, Point, Point];
  const halves = r.pick([[[a, b, c], [a, c, d]], [[a, b, d], [b, c, d]]]);
  return r.below(3) > 0 ? [plain] : halves.map((outline) => patchOf(outline, { fabric: fabric() }));
}
