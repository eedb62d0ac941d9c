/** Every way of exchanging the fabrics of a block, those that look alike (but for a turn or a mirroring) once. */
import type { BlockLayout } from '../../geometry/layout.ts';
import type { Fabric } from '../../model/pattern.ts';
import { readabilityOf, type Readability } from './readability.ts';
import { symmetriesOf } from './symmetries.ts';

export interface Exchange {
  /** The place of each fabric in its order among the block's: `102` has the first two exchanged. */
  readonly id: string;
  /** What is in place of each fabric that changes. */
  readonly inPlace: ReadonlyMap<string, Fabric>;
  readonly readability: Readability;
}

export interface Exchanges {
  /** The block as it is first, then the most readable first. */
  readonly shown: readonly Exchange[];
  /** That look different, all in all. */
  readonly different: number;
  /** Only exchanges of two fabrics were looked at, because the block has more than `MOST_FABRICS`. */
  readonly pairsOnly: boolean;
}

/** More are not shown. */
export const MOST_SHOWN = 24;
/** All orders of so many are gone through: 720. */
export const MOST_FABRICS = 6;

export function exchangesOf(layout: BlockLayout): Exchanges {
  const fabrics = clothsIn(layout);
  const pairsOnly = fabrics.length > MOST_FABRICS;
  const orders = pairsOnly ? swaps(fabrics.length) : permutations(fabrics.length);
  const seen = new Set<string>();
  const different = orders.flatMap((order): readonly Exchange[] => {
    const all = new Map(fabrics.map((fabric, index) => [fabric.name, fabrics[order[index] ?? index] ?? fabric]));
    const look = lookOf(layout, all);
    if (seen.has(look)) return [];
    seen.add(look);
    const inPlace = new Map([...all].filter(([name, other]) => name !== other.name));
    return [{ id: order.join('.'), inPlace, readability: readabilityOf(layout, (fabric) => all.get(fabric.name) ?? fabric) }];
  });
  const [own, ...others] = different;
  const sorted = others.toSorted((a, b) => (b.readability.difference ?? 0) - (a.readability.difference ?? 0));
  return { shown: own ? [own, ...sorted].slice(0, MOST_SHOWN) : [], different: different.length, pairsOnly };
}

/** Those that a colourway can change, in the order of the block: not stand-ins, and not roles that several prints are dealt to. */
export function clothsIn({ patches }: BlockLayout): readonly Fabric[] {
  const all = new Map(patches.map(({ fabric }) => [fabric.name, fabric]));
  return [...all.values()].filter(({ standsFor, assorted }) => !standsFor && !assorted);
}

/** The colours of the patches, read the way round that gives the least text. */
function lookOf(layout: BlockLayout, inPlace: ReadonlyMap<string, Fabric>): string {
  const colours = layout.patches.map(({ fabric }) => (inPlace.get(fabric.name) ?? fabric).colour);
  const readings = symmetriesOf(layout).map((images) => {
    const read = [...colours];
    images.forEach((image, patch) => (read[image] = colours[patch] ?? ''));
    return read.join();
  });
  return readings.toSorted()[0] ?? colours.join();
}

/** In the order of their first differences; the one that changes nothing is the first. */
function permutations(count: number): readonly (readonly number[])[] {
  const longer = (start: readonly number[]): readonly (readonly number[])[] =>
    start.length === count ? [start] : Array.from({ length: count }, (_, next) => next).filter((next) => !start.includes(next)).flatMap((next) => longer([...start, next]));
  return longer([]);
}

function swaps(count: number): readonly (readonly number[])[] {
  const stand = Array.from({ length: count }, (_, index) => index);
  const pairs = stand.flatMap((a) => stand.slice(a + 1).map((b) => stand.map((each) => (each === a ? b : each === b ? a : each))));
  return [stand, ...pairs];
}

