/**
 * The exact answer for small cases, by a solver that is not ours (HiGHS) on all cutting patterns, which are listed here by brute
 * force from the words of the task: shares no code with the optimiser but its types.
 */
import loadHighs from 'highs';
import type { Cloth, Demand } from '../../../server/src/cutting/pack/types.ts';

export interface Pattern {
  readonly height: number;
  readonly pieces: readonly number[];
}

export interface Exact {
  readonly linear: number;
  readonly whole: number;
}

const highs = await loadHighs();

/** The least length, or sum of heights of ready-cut strips: with patterns in parts, and whole. */
export function leastLength(demand: readonly Demand[], cloth: Exclude<Cloth, { readonly kind: 'sheets' }>): Exact {
  const heights = cloth.kind === 'strips' ? cloth.heights : demand.flatMap(({ width, height, mayTurn }) => [...(width <= cloth.width ? [height] : []), ...(mayTurn && height <= cloth.width ? [width] : [])]);
  const patterns = [...new Set(heights)].flatMap((height) => patternsIn(demand, cloth.width, height, false));
  const sum = (of: (pattern: Pattern) => number): string => patterns.map((pattern, i) => [of(pattern), i]).filter(([factor]) => factor !== 0).map(([factor = 0, i]) => `+ ${factor} x${i}`).join(' ');
  const rows = demand.map(({ count }, item) => `r${item}: ${sum(({ pieces }) => pieces[item] ?? 0)} >= ${count}`);
  const text = `Minimize\n o: ${sum(({ height }) => height)}\nSubject To\n ${rows.join('\n ')}\n`;
  const names = patterns.map((_, i) => `x${i}`).join(' ');
  return { linear: solve(`${text}End`), whole: Math.round(solve(`${text}General\n ${names}\nEnd`)) };
}

/** The least number of sheets; strips along the width, or either way, one way in each sheet. */
export function leastSheets(demand: readonly Demand[], cloth: Extract<Cloth, { readonly kind: 'sheets' }>, most: number): number {
  const frames = [{ width: cloth.width, height: cloth.height, turned: false }, ...(cloth.eitherWay ? [{ width: cloth.height, height: cloth.width, turned: true }] : [])];
  const columns = frames.flatMap((frame, f) => {
    const ways = demand.flatMap(({ width, height, mayTurn }) => (mayTurn ? [width, height] : [frame.turned ? width : height]));
    const heights = [...new Set(ways)].filter((height) => height <= frame.height);
    return heights.flatMap((height) => patternsIn(demand, frame.width, height, frame.turned).map((pattern) => ({ ...pattern, frame: f })));
  });
  const sheets = frames.flatMap((frame, f) => Array.from({ length: most }, (_, i) => ({ ...frame, frame: f, name: `s${f}_${i}` })));
  const name = (column: number, sheet: string): string => `x${column}${sheet}`;
  const join = (terms: readonly (readonly [number, string])[]): string => terms.filter(([factor]) => factor !== 0).map(([factor, of]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${of}`).join(' ');
  const inSheet = (sheet: (typeof sheets)[number]): readonly (readonly [Pattern, string])[] => columns.flatMap((column, c) => (column.frame === sheet.frame ? [[column, name(c, sheet.name)] as const] : []));
  const rows = demand.map(({ count }, item) => `r${item}: ${join(sheets.flatMap((sheet) => inSheet(sheet).map(([{ pieces }, of]) => [pieces[item] ?? 0, of] as const)))} >= ${count}`);
  const room = sheets.map((sheet) => `h${sheet.name}: ${join([...inSheet(sheet).map(([{ height }, of]) => [height, of] as const), [-sheet.height, sheet.name]])} <= 0`);
  const order = sheets.flatMap((sheet, i) => (sheets[i + 1]?.frame === sheet.frame ? [`o${i}: ${sheet.name} - ${sheets[i + 1]?.name ?? ''} >= 0`] : []));
  const counted = sheets.flatMap((sheet) => inSheet(sheet).map(([, of]) => of));
  const binary = sheets.map((sheet) => sheet.name);
  return Math.round(solve(`Minimize\n o: ${binary.map((each) => `+ ${each}`).join(' ')}\nSubject To\n ${[...rows, ...room, ...order].join('\n ')}\nGeneral\n ${counted.join(' ')}\nBinary\n ${binary.join(' ')}\nEnd`));
}

function solve(text: string): number {
  const { Status, ObjectiveValue } = highs.solve(text, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
  if (Status !== 'Optimal') throw new Error(`HiGHS: ${Status}`);
  return ObjectiveValue;
}

/** Every set of pieces that a strip can hold and to which nothing can be added. */
export function patternsIn(demand: readonly Demand[], width: number, height: number, isFrameTurned: boolean): readonly Pattern[] {
  const segments = demand.flatMap(({ width: w, height: h, count, mayTurn }, item) => {
    const lays = [...(mayTurn || !isFrameTurned ? [[w, h]] : []), ...(mayTurn || isFrameTurned ? [[h, w]] : [])];
    return lays.filter(([, down = 0]) => down <= height).map(([across = 0, down = 0]) => ({ item, across, held: Math.floor(height / down), count }));
  });
  const found = new Map<string, readonly number[]>();
  const visit = (at: number, left: number, pieces: readonly number[]): void => {
    const segment = segments[at];
    if (!segment) {
      found.set(pieces.join(), pieces);
      return;
    }
    for (let n = 0; n * segment.across <= left; n += 1) {
      const before = pieces[segment.item] ?? 0;
      const held = Math.min(segment.count, before + n * segment.held);
      visit(at + 1, left - n * segment.across, pieces.map((each, item) => (item === segment.item ? held : each)));
      if (held === segment.count) break;
    }
  };
  visit(0, width, demand.map(() => 0));
  const all = [...found.values()].filter((pieces) => pieces.some((each) => each > 0));
  return all.filter((pieces) => !all.some((other) => other !== pieces && other.every((each, item) => each >= (pieces[item] ?? 0)))).map((pieces) => ({ height, pieces }));
}
