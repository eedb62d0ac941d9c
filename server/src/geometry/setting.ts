/** What every setting answers: its size and how many patches it has, known before any is laid, and then the pieces themselves. */
import { ONE, equals, key } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import type { CellSpec, QuiltSpec, Rules } from '../model/pattern.ts';
import type { Place } from '../text/place.ts';
import { countCell } from './count.ts';
import { writtenSize } from './fit.ts';
import type { Pieces } from './fit.ts';
import type { GridCell } from './join.ts';
import type { Size } from './move.ts';

/** The quilt inside its borders. */
export interface Measured extends Size {
  /** The statement that says how large it is. */
  readonly place: Place;
  readonly patches: number;
  readonly findings: readonly Finding[];
  /** The pieces, the upper left corner of the setting at x, y. Not asked for when there are too many. */
  readonly lay: (x: Exact, y: Exact) => Pieces;
}

export interface QuiltContext {
  readonly spec: QuiltSpec;
  readonly rules: Rules;
}

/** The patches of all cells; each distinct cell is counted once. */
export function countCells(cells: readonly GridCell[]): number {
  const known = new Map<CellSpec, number>();
  return cells.reduce((sum, { cell }) => {
    const count = known.get(cell) ?? countCell(cell);
    known.set(cell, count);
    return sum + count;
  }, 0);
}

/** A size that something asks for, and the cell that asks. */
export interface Wanted {
  readonly size: Exact;
  readonly place: Place;
}

/** The size that most ask for, or the first of equals, and the first that asks for it. */
export function commonest(wanted: readonly Wanted[]): Wanted | undefined {
  const counts = new Map<string, { readonly first: Wanted; count: number }>();
  for (const each of wanted) {
    const known = counts.get(key(each.size));
    if (known) known.count += 1;
    else counts.set(key(each.size), { first: each, count: 1 });
  }
  const [head, ...others] = counts.values();
  return head && others.reduce((best, each) => (each.count > best.count ? each : best), head).first;
}

/** `sizes-differ` for those that ask for another size than expected. */
export function differing(wanted: readonly Wanted[], expected: Wanted, what: string): Finding[] {
  return wanted
    .filter((each) => !equals(each.size, expected.size))
    .map((each): Finding => ({ rule: 'sizes-differ', place: each.place, other: expected.place, found: each.size, expected: expected.size, what }));
}

/** One finding a cell: what repeats in the setting is wrong in the text once. */
export function oncePerPlace(findings: readonly Finding[]): Finding[] {
  const seen = new Set<Place>();
  return findings.filter(({ place }) => {
    const isNew = !seen.has(place);
    seen.add(place);
    return isNew;
  });
}

/**
 * When nothing in the setting has a size: every place is taken for 1 by 1 inch, so that the rest can be drawn. It goes without
 * saying where a cell could not be resolved, which might have had one.
 */
export function withoutSize(cells: readonly GridCell[], place: Place): { readonly size: Size; readonly findings: readonly Finding[] } {
  const block = cells.find(({ cell }) => cell.kind === 'block')?.cell;
  const size = { width: ONE, height: ONE };
  // A size that is written and cannot be read, or makes no sense, has its own problem.
  const isSaid = block?.kind === 'block' && (block.block.definition.statement.node.size !== undefined || block.block.definition.statement.node.broken === true);
  if (isSaid || cells.some(({ cell }) => cell.kind === 'bad')) return { size, findings: [] };
  const needed = 'nothing here says how large a place is: at least one block with a size is needed';
  const problem = block?.kind === 'block' ? `\`${block.block.name}\` needs a size: nothing here says how large its place is` : needed;
  return { size, findings: [{ rule: 'wrong-argument', place: block?.place ?? place, problem }] };
}

/** The written widths or heights of cells that cover one column or row. */
export function wantedSizes(cells: readonly GridCell[], side: 'width' | 'height'): Wanted[] {
  const known = new Map<CellSpec, Size | undefined>();
  return cells.flatMap(({ cell }) => {
    if (!known.has(cell)) known.set(cell, writtenSize(cell));
    const size = known.get(cell);
    return size ? [{ size: size[side], place: cell.place }] : [];
  });
}
