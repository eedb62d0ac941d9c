/** How many patches something will have, known before any is laid: the limits are asked first, the work is done after. */
import type { BlockBody, BlockInstance, CellSpec, PatchItem, Symmetry } from '../model/pattern.ts';

/** Placed patches in a pattern (language.md, section 10). */
export const MOST_PATCHES = 100_000;

/** The patches of a block with everything nested in it; at most a few fewer when a seam cuts some away. */
export function countPatches(block: BlockInstance): number {
  const known = counted.get(block);
  if (known !== undefined) return known;
  const count = countBody(block.body) + block.corners.length;
  counted.set(block, count);
  return count;
}

/** The patches that a cell becomes. */
export function countCell(cell: CellSpec): number {
  switch (cell.kind) {
    case 'fabric':
      return 1;
    case 'block':
      return countPatches(cell.block);
    case 'split':
      return total(cell.parts.map((part) => countCell(part.cell)));
    case 'turned':
      return countCell(cell.inner);
    case 'goes_on':
    case 'bad':
      return 0;
  }
}

/** A whole number as it is read: `250,000`; past all sense, words. */
export function readable(count: number): string {
  return count < Number.MAX_SAFE_INTEGER ? String(count).replace(/\B(?=(\d{3})+$)/g, ',') : 'more than can be counted';
}

const counted = new WeakMap<BlockInstance, number>();

function countBody(body: BlockBody): number {
  switch (body.kind) {
    case 'grid':
      return copies(body.symmetry) * total(body.content.map((row) => total(row.cells.map(countCell))));
    case 'patches':
      return total(body.items.map(countItem));
    case 'centre':
      return body.strips.length + (body.centre ? countCell(body.centre.use) : 0);
    case 'empty':
      return 0;
  }
}

function countItem(item: PatchItem): number {
  if (item.kind === 'patch') return 1;
  if (item.kind === 'set_in') return countCell(item.use);
  return copies(item.symmetry) * total(item.items.map(countItem));
}

function copies(symmetry: Symmetry | undefined): number {
  return symmetry?.times ?? 1;
}

function total(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0);
}
