/**
 * What stands in a place of the quilt. A cell is fitted to its room once, in a pose (upright, or turned on point); wherever it
 * stands it is then only shifted. A block keeps the size it is written with; one without a size is scaled to the room.
 */
import { HALF, ZERO, add, equals, key, mul, sub } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { compose, translate } from '../exact/transform.ts';
import type { Finding } from '../model/finding.ts';
import type { BlockUse, CellSpec, TurnBy } from '../model/pattern.ts';
import { layoutBlockIn, layoutSashIn, nest } from './block.ts';
import { doesNotFit, layCell } from './cell.ts';
import type { CellContext } from './cell.ts';
import type { BlockLayout, Patch, PatchRole, Placement } from './layout.ts';
import { chain, movePatch, plainly, shiftPatch, turnBox } from './move.ts';
import type { Motion, Size } from './move.ts';

/** A cell in a room whose own corner is at 0,0, moved by the pose; to be shifted to where it stands. */
export interface Fitted {
  readonly block?: { readonly layout: BlockLayout; readonly motion: Motion };
  readonly patches: readonly Patch[];
  readonly findings: readonly Finding[];
}

export interface FitOptions {
  /** From the room's coordinates to around the point where it will stand. */
  readonly pose: Motion;
  /** `before`: that sized blocks have the room's size is reported by the setting. */
  readonly sizesChecked: 'here' | 'before';
  /** Of a patch that fills the room; `plain` unless said. */
  readonly role?: PatchRole;
}

/** Where a fitted cell stands. */
export type Station = Pick<Placement, 'row' | 'column' | 'part' | 'place'> & { readonly x: Exact; readonly y: Exact };

/** Placements, loose patches and findings; what each part of a quilt comes to. */
export interface Pieces {
  readonly placements: readonly Placement[];
  readonly patches: readonly Patch[];
  readonly findings: readonly Finding[];
}

export const NO_PIECES: Pieces = { placements: [], patches: [], findings: [] };

export const QUILT_CELLS: CellContext = { nest, inInches: true };

export function fitCell(cell: CellSpec, room: Size, options: FitOptions): Fitted {
  if (cell.kind === 'block') return fitPlaced(cell, room, options);
  const laid = layCell(QUILT_CELLS, cell, { x: ZERO, y: ZERO, width: room.width, height: room.height });
  const role = options.role ?? 'plain';
  const patches = laid.patches.map((patch) => movePatch(cell.kind === 'fabric' ? { ...patch, role } : patch, options.pose));
  return { patches, findings: laid.findings };
}

/** A cell with further turns around it. Parentheses around a block are the block turned; a fabric has nothing to turn. */
export function turnedCell(cell: CellSpec, turns: readonly TurnBy[] = []): CellSpec {
  if (cell.kind === 'turned') {
    const inner = turnedCell(cell.inner, cell.turns);
    if (inner.kind !== 'turned') return turnedCell(inner, turns);
    return { ...inner, place: cell.place, turns: [...inner.turns, ...turns] };
  }
  if (cell.kind === 'block') return turns.length === 0 ? cell : { ...cell, turns: [...cell.turns, ...turns] };
  return cell.kind === 'split' && turns.length > 0 ? { kind: 'turned', inner: cell, turns, place: cell.place } : cell;
}

/** The size a block is written with, as it stands here; undefined for whatever takes the size of its room. */
export function writtenSize(cell: CellSpec): Size | undefined {
  return cell.kind === 'block' && cell.block.size ? turnBox(cell.turns, cell.block.size) : undefined;
}

/** Fits each cell to each size of room once. */
export function fitter(options: FitOptions): { readonly fit: (cell: CellSpec, room: Size) => Fitted; readonly findings: () => readonly Finding[] } {
  const known = new Map<CellSpec, Map<string, Fitted>>();
  const fit = (cell: CellSpec, room: Size): Fitted => {
    const ofCell = known.get(cell) ?? new Map<string, Fitted>();
    known.set(cell, ofCell);
    const size = `${key(room.width)} ${key(room.height)}`;
    const fitted = ofCell.get(size) ?? fitCell(cell, room, options);
    ofCell.set(size, fitted);
    return fitted;
  };
  return { fit, findings: () => [...known.values()].flatMap((ofCell) => [...ofCell.values()].flatMap((fitted) => fitted.findings)) };
}

export function stamp(fitted: Fitted, { x, y, ...where }: Station): Omit<Pieces, 'findings'> {
  const { block } = fitted;
  const placements = block ? [{ block: block.layout, transform: shifted(block.motion, x, y), ...where }] : [];
  return { placements, patches: fitted.patches.map((patch) => shiftPatch(patch, x, y)) };
}

export function gather(parts: readonly Partial<Pieces>[]): Pieces {
  return {
    placements: parts.flatMap((part) => part.placements ?? []),
    patches: parts.flatMap((part) => part.patches ?? []),
    findings: parts.flatMap((part) => part.findings ?? []),
  };
}

function shifted({ transform }: Motion, x: Exact, y: Exact): Placement['transform'] {
  return { ...transform, dx: add(transform.dx, x), dy: add(transform.dy, y) };
}

/** Of a wrong size, the block stands as it is written in the middle of its room. */
function fitPlaced(use: BlockUse, room: Size, options: FitOptions): Fitted {
  const layout = (options.role === 'sash' ? layoutSashIn : layoutBlockIn)(use.block, turnBox(use.turns, room));
  const turned = turnBox(use.turns, layout);
  const [spareWidth, spareHeight] = [sub(room.width, turned.width), sub(room.height, turned.height)];
  const centred = compose(options.pose.transform, translate(mul(HALF, spareWidth), mul(HALF, spareHeight)));
  const fits = equals(room.width, turned.width) && equals(room.height, turned.height);
  const reported = fits || (use.block.size !== undefined && options.sizesChecked === 'before');
  return {
    block: { layout, motion: chain({ ...options.pose, transform: centred }, turned.motion) },
    patches: [],
    findings: reported ? [] : [doesNotFit(QUILT_CELLS, use, turned, room)],
  };
}

export const UPRIGHT: Motion = plainly(translate(ZERO, ZERO));
