/** The settings of the settings sheet: for each the statements of the language that make it, from one block and what the quilt has already. */
import { lightnessOf } from '../../checks/values.ts';
import { printerFor } from '../../booklet/words.ts';
import { fraction, max, roundTo, toNumber, div, type Exact } from '../../exact/number.ts';
import { toInches } from '../../exact/length.ts';
import type { BlockLayout } from '../../geometry/layout.ts';
import type { BlockUse, Fabric, FabricUse, Pattern, QuiltSpec } from '../../model/pattern.ts';
import type { QuiltView, Snapshot } from '../../snapshot.ts';

/** What a setting is written with; every text is one of the language. */
export interface Stock {
  readonly block: string;
  readonly across: number;
  readonly down: number;
  /** The block's lightest fabric. */
  readonly plain: string;
  /** `1 1/2" sand`. */
  readonly sash: string;
  readonly cornerstone: string;
  readonly edges: string;
}

export interface Way {
  /** Stable; part of a tile's address. */
  readonly id: string;
  readonly name: string;
  readonly on: 'straight' | 'on_point';
  readonly lines: (stock: Stock) => readonly string[];
}

const straight = ({ across, down }: Stock): string => `straight ${across} by ${down}`;
const onPoint = ({ across, down }: Stock): string => `on_point ${across} by ${down}`;
const tile = (word: string, rows: readonly (readonly string[])[]): readonly string[] => {
  const [first = []] = rows;
  if (rows.length === 1) return [`${word} { ${first.join(' ')} }`];
  const widths = first.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return [`${word} {`, ...rows.map((row) => `  ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('   ').trimEnd()}`), '}'];
};
const even = (count: number): number => count + (count % 2);

export const WAYS: readonly Way[] = [
  { id: 'straight', name: 'Side by side', on: 'straight', lines: (s) => [straight(s), ...tile('place', [[s.block]])] },
  { id: 'alternate', name: 'With plain squares', on: 'straight', lines: (s) => [straight(s), ...tile('place', [[s.block, s.plain], [s.plain, s.block]])] },
  { id: 'checkerboard', name: 'Every second one a quarter turned', on: 'straight', lines: (s) => [straight(s), ...tile('place', [[s.block, `${s.block}@90`], [`${s.block}@90`, s.block]])] },
  { id: 'turned', name: 'Each quarter turned round', on: 'straight', lines: (s) => [straight(s), ...tile('place', [[s.block, `${s.block}@90`], [`${s.block}@270`, `${s.block}@180`]])] },
  { id: 'mirrored', name: 'Mirrored both ways', on: 'straight', lines: (s) => [straight(s), ...tile('place', [[s.block, `${s.block}@mirror`], [`${s.block}@flip`, `${s.block}@180`]])] },
  { id: 'barn', name: 'Mirrored about the middle', on: 'straight', lines: (s) => [straight({ ...s, across: even(s.across), down: even(s.down) }), ...tile('place mirrored 4', [[s.block]])] },
  { id: 'wheel', name: 'Turned about the middle', on: 'straight', lines: (s) => [straight({ ...s, across: even(s.across), down: even(s.down) }), ...tile('place turned 4', [[s.block]])] },
  { id: 'sashed', name: 'In sashes', on: 'straight', lines: (s) => [straight(s), ...tile('place', [[s.block]]), `sashing ${s.sash}`] },
  { id: 'cornerstones', name: 'In sashes with cornerstones', on: 'straight', lines: (s) => [straight(s), ...tile('place', [[s.block]]), `sashing ${s.sash} cornerstones ${s.cornerstone}`] },
  { id: 'framed', name: 'In sashes all round', on: 'straight', lines: (s) => [straight(s), ...tile('place', [[s.block]]), `sashing ${s.sash} cornerstones ${s.cornerstone} outer`] },
  { id: 'point', name: 'On point', on: 'on_point', lines: (s) => [onPoint(s), ...tile('place', [[s.block]]), `edges ${s.edges}`] },
  { id: 'point_alternate', name: 'On point with plain squares', on: 'on_point', lines: (s) => [onPoint(s), ...tile('place', [[s.block]]), `between { ${s.plain} }`, `edges ${s.edges}`] },
  { id: 'point_turned', name: 'On point, a quarter turned between', on: 'on_point', lines: (s) => [onPoint(s), ...tile('place', [[s.block]]), `between { ${s.block}@90 }`, `edges ${s.edges}`] },
  { id: 'point_sashed', name: 'On point in sashes', on: 'on_point', lines: (s) => [onPoint(s), ...tile('place', [[s.block]]), `sashing ${s.sash} cornerstones ${s.cornerstone}`, `edges ${s.edges}`] },
];

/** Counts for a file without a quilt, or with one that is no grid of blocks. */
const USUAL = { across: 3, down: 4 };

/** Undefined for a block that has no size of its own, or no cloth. */
export function stockFor(snapshot: Snapshot, quilt: QuiltView | undefined, layout: BlockLayout): Stock | undefined {
  const { pattern } = snapshot;
  const cloths = clothsOf(layout, pattern);
  const [lightest] = cloths;
  const darkest = cloths.at(-1);
  if (!layout.instance.size || !lightest || !darkest) return undefined;
  const { sashing, edges } = quilt?.spec ?? {};
  const kept = fabricIn(sashing?.filling);
  const width = kept !== undefined && sashing?.width ? sashing.width : usualSash(layout, pattern);
  return {
    ...countOf(quilt, layout),
    block: textOf(layout, pattern),
    plain: lightest.name,
    sash: `${printerFor(pattern.rules.units).length(width)} ${kept ?? lightest.name}`,
    cornerstone: fabricIn(sashing?.cornerstones) ?? darkest.name,
    edges: fabricIn(edges?.filling) ?? lightest.name,
  };
}

/** Of the block, the lightest first; of the pattern where the block has only stand-ins. */
function clothsOf({ patches }: BlockLayout, { fabrics }: Pattern): readonly Fabric[] {
  const own = [...new Map(patches.map(({ fabric }) => [fabric.name, fabric])).values()].filter(({ name, standsFor }) => !standsFor && fabrics.has(name));
  return (own.length > 0 ? own : [...fabrics.values()]).toSorted((a, b) => lightnessOf(b) - lightnessOf(a));
}

function fabricIn(filling: BlockUse | FabricUse | undefined): string | undefined {
  return filling?.kind === 'fabric' ? filling.fabric.name : undefined;
}

/** The block with its arguments; fabrics of the pattern for what it needs and was not given. */
function textOf({ instance }: BlockLayout, { fabrics }: Pattern): string {
  const needed = instance.definition.parameters.filter(({ hasDefault }) => !hasDefault);
  const standsFor = [...(instance.arguments?.values() ?? [])].some((meaning) => meaning.kind === 'fabric' && meaning.fabric.standsFor);
  const names = [...fabrics.keys()];
  return standsFor && names.length > 0 ? `${instance.definition.name}(${needed.map((_, index) => names[index % names.length]).join(', ')})` : instance.name;
}

function countOf(quilt: QuiltView | undefined, layout: BlockLayout): Pick<Stock, 'across' | 'down'> {
  const setting: QuiltSpec['setting'] = quilt?.spec.setting;
  if (setting && 'across' in setting) return { across: setting.across, down: setting.down };
  if (!quilt || !setting) return USUAL;
  const times = (whole: Exact, part: Exact): number => Math.max(2, Math.round(toNumber(div(whole, part))));
  return { across: times(quilt.layout.centre.width, layout.width), down: times(quilt.layout.centre.height, layout.height) };
}

/** A fifth of the block, to a half inch or a centimetre, and no less than that twice. */
function usualSash({ width, height }: BlockLayout, { rules: { units } }: Pattern): Exact {
  const step = units === 'inches' ? fraction(1, 2) : toInches(fraction(1), 'cm');
  return max(roundTo(div(max(width, height), fraction(5)), step), div(step, fraction(1, 2)));
}
