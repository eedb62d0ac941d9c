/** Which blocks a block uses, one level down, and where. */
import type { BlockInstance, BlockUse, CellSpec, FabricUse, PatchItem } from '../model/pattern.ts';

export function usesIn({ body }: BlockInstance): BlockUse[] {
  switch (body.kind) {
    case 'grid':
      return body.content.flatMap((row) => row.cells.flatMap(blocksInCell));
    case 'patches':
      return body.items.flatMap(blocksInItem);
    case 'centre':
      return body.centre ? blockOf(body.centre.use) : [];
    case 'empty':
      return [];
  }
}

function blocksInCell(cell: CellSpec): BlockUse[] {
  switch (cell.kind) {
    case 'block':
      return [cell];
    case 'split':
      return cell.parts.flatMap((part) => blocksInCell(part.cell));
    case 'turned':
      return blocksInCell(cell.inner);
    default:
      return [];
  }
}

function blocksInItem(item: PatchItem): BlockUse[] {
  if (item.kind === 'patch') return [];
  return item.kind === 'set_in' ? blockOf(item.use) : item.items.flatMap(blocksInItem);
}

function blockOf(use: FabricUse | BlockUse): BlockUse[] {
  return use.kind === 'block' ? [use] : [];
}
