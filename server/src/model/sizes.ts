/** `size NAME A by B for BED`: the named sizes a pattern is made in. */
import { ZERO, fraction, type Exact } from '../exact/number.ts';
import type { Name, Pair, Quantity, Statement } from '../syntax/tree.ts';
import { at, onLine, type Context } from './context.ts';
import { countOf } from './measures.ts';
import type { SizeDefinition } from './pattern.ts';
import { ofKind } from './statements.ts';

export interface BlockCount {
  readonly across: number;
  readonly down: number;
}

/** The most blocks across or down that are worth asking the plane about. */
export const MOST_BLOCKS = 100_000;

/** Mattresses in inches, by the names of `for`; the common figures of North American makers, which differ by an inch. */
export const BEDS: ReadonlyMap<string, { readonly width: Exact; readonly length: Exact }> = new Map(
  ([['crib', 28, 52], ['twin', 39, 75], ['twin_xl', 39, 80], ['full', 54, 75], ['queen', 60, 80], ['king', 76, 80], ['california_king', 72, 84]] as const)
    .map(([name, width, length]) => [`${name}_bed`, { width: fraction(width), length: fraction(length) }]),
);

/**
 * How far a quilt hangs over the sides and the foot of a mattress at least, where the tool counts its blocks: what C. A. Taylor asks
 * for (A Time to Sew, http://atimetosewquilts.com/measurements.htm). A quilt for a crib stays on its mattress (common practice, no source).
 */
export function leastDrop(bed: string): Exact {
  return bed === 'crib_bed' ? ZERO : fraction(12);
}

/** The sizes in the order of the text. A size whose count cannot be read has that of `quilt`; without any it is left out. */
export function sizesOf(context: Context, statements: readonly Statement[], quilt: Statement | undefined): readonly SizeDefinition[] {
  const silent = { ...context, report: () => undefined };
  const usual = quilt && countIn(silent, quilt);
  return ofKind(statements, 'size').flatMap((statement): SizeDefinition[] => {
    const { name, count, bed, broken } = statement.node;
    if (!name) return [];
    const here = onLine(context, statement.line);
    const known = bed && bedOf(here, bed);
    const own = countIn(silent, statement);
    // A setting of lines or rows has its size from them: its blocks need no count.
    const size = (count && pairOf(here, count)) ?? own ?? usual ?? (known === undefined ? undefined : { across: 1, down: 1 });
    const covers = !count && !own && known !== undefined && !broken;
    return size ? [{ name: name.text, ...size, ...(known === undefined ? {} : { bed: known }), ...(covers ? { covers } : {}), statement, place: at(here, name) }] : [];
  });
}

/** `A by B` blocks. */
export function pairOf(context: Context, count: Pair<Quantity>): BlockCount | undefined {
  const across = countOf(context, count.first, { what: 'a count of blocks', least: 1, most: MOST_BLOCKS });
  const down = countOf(context, count.second, { what: 'a count of blocks', least: 1, most: MOST_BLOCKS });
  return across === undefined || down === undefined ? undefined : { across, down };
}

function countIn(context: Context, statement: Statement): BlockCount | undefined {
  const setting = ofKind(statement.body?.statements ?? [], 'straight', 'on_point').find(({ node }) => node.count);
  return setting?.node.count && pairOf(onLine(context, setting.line), setting.node.count);
}

function bedOf(context: Context, bed: Name): string | undefined {
  if (BEDS.has(bed.text)) return bed.text;
  context.report({ rule: 'unknown-name', place: at(context, bed), name: bed.text, wanted: 'bed', known: [...BEDS.keys()] });
  return undefined;
}
