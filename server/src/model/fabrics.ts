/** `fabric` and `assorted`: what the quilt is cut from. A broken line still declares its fabric. */
import { fraction, type Exact } from '../exact/number.ts';
import type { UnitSystem } from '../exact/length.ts';
import type { AssortedNode, FabricNode, FabricSource as SourceNode, Name, Statement } from '../syntax/tree.ts';
import type { Place } from '../text/place.ts';
import { at, meaningOf, onLine, refuse, describe, type Context } from './context.ts';
import { clothLength, clothPair, countOf, shareOf } from './measures.ts';
import type { Fabric, FabricSource } from './pattern.ts';
import { centimetres } from './rules.ts';

/** What a fabric without a colour is drawn in. */
const NO_COLOUR = '#c8c8c8';
/** The greys of fabrics that stand in for parameters, far enough apart to be told apart. */
const GREYS = ['#e6e6e6', '#8a8a8a', '#bdbdbd', '#5e5e5e', '#d2d2d2', '#a4a4a4'];
/** How far the prints of `assorted NAME 12 #rrggbb` are from its colour, so that they can be told apart. */
const SPREAD = 24;

/** The fabric a statement declares. */
export function fabricOf(outer: Context, { node, line }: Statement<FabricNode>, name: Name): Fabric {
  const context = onLine(outer, line);
  const what = `the width of \`${name.text}\``;
  return {
    ...plainFabric(context.units, name.text, at(context, name)),
    colour: node.colour?.value ?? NO_COLOUR,
    label: node.label?.value ?? name.text,
    ...definedOnly({
      width: node.width && clothLength(context, node.width, what),
      value: node.value?.word,
      shrink: node.shrink && shareOf(context, node.shrink, 'shrinkage', 100),
      source: node.source && sourceOf(context, node.source, name.text),
    }),
    directional: node.directional !== undefined,
  };
}

/** The role an `assorted` statement declares. Its prints are named by the statement, or made by it: `reds 1`, `reds 2` … */
export function assortedOf(outer: Context, { node, line }: Statement<AssortedNode>, name: Name): Fabric {
  const context = onLine(outer, line);
  const prints = node.count ? countedPrints(context, node, name) : node.prints.flatMap((each) => printOf(context, each, name));
  const first = prints[0];
  return {
    ...(first ?? plainFabric(context.units, name.text, at(context, name))),
    name: name.text,
    label: node.label?.value ?? name.text,
    colour: node.colour?.value ?? first?.colour ?? NO_COLOUR,
    place: at(context, name),
    ...(prints.length > 0 ? { assorted: { prints, by: node.by?.word ?? 'block' } } : {}),
  };
}

/** The same role with another colour; `undefined` when its prints are fabrics with colours of their own. */
export function recolouredRole(role: Fabric, colour: string, label: string | undefined): Fabric | undefined {
  const { assorted } = role;
  if (!assorted) return { ...role, colour, label: label ?? role.label };
  if (!makesItsPrints(role)) return undefined;
  const prints = assorted.prints.map((print, index) => ({ ...print, colour: shade(colour, index, assorted.prints.length) }));
  return { ...role, colour, label: label ?? role.label, assorted: { ...assorted, prints } };
}

/** Whether the prints of a role are made by its own statement (`assorted reds 12 #aa2211`). */
export function makesItsPrints({ assorted, place }: Fabric): boolean {
  return assorted?.prints.every((print) => print.place.line === place.line && print.place.from === place.from) ?? true;
}

/** A grey fabric for a parameter without a default, so that the block itself can be looked at. */
export function standInFor(units: UnitSystem, parameter: string, index: number, place: Place): Fabric {
  const colour = GREYS[index % GREYS.length] ?? NO_COLOUR;
  return { ...plainFabric(units, parameter, place), colour, standsFor: 'parameter' };
}

/** A fabric for a name that nothing declares, so that its patch still lies where it lies. */
export function unknownFabric(units: UnitSystem, name: string, place: Place): Fabric {
  return { ...plainFabric(units, name, place), standsFor: 'unknown' };
}

function plainFabric(units: UnitSystem, name: string, place: Place): Fabric {
  return {
    name,
    colour: NO_COLOUR,
    label: name,
    width: units === 'inches' ? fraction(40) : centimetres(105),
    directional: false,
    shrink: fraction(0),
    source: { kind: 'yardage' },
    place,
  };
}

function sourceOf(context: Context, { source, length, size, count }: SourceNode, name: string): FabricSource | undefined {
  switch (source.word) {
    case 'yardage':
      return { kind: 'yardage' };
    case 'strips':
    case 'squares': {
      const side = length && clothLength(context, length, `the width of the ${source.word} of \`${name}\``);
      return side && { kind: source.word, size: side };
    }
    case 'fat_quarters': {
      const measures = size && clothPair(context, size, `a fat quarter of \`${name}\``);
      return { kind: 'fat_quarters', ...(measures ?? usualFatQuarter(context.units)) };
    }
    case 'piece': {
      const measures = size && clothPair(context, size, `the piece of \`${name}\``);
      const times = count && countOf(context, count, { what: `a number of pieces of \`${name}\``, least: 1, most: 1000 });
      return measures && { kind: 'piece', ...measures, ...(times === undefined ? {} : { count: times }) };
    }
  }
}

/** What is usable of one: 17 1/2" by 20", or 48 by 53 cm. */
function usualFatQuarter(units: UnitSystem): { readonly width: Exact; readonly height: Exact } {
  return units === 'inches' ? { width: fraction(35, 2), height: fraction(20) } : { width: centimetres(48), height: centimetres(53) };
}

function printOf(context: Context, print: Name, role: Name): readonly Fabric[] {
  const meaning = meaningOf(context, print, 'fabric');
  if (!meaning || meaning.kind === 'broken') return [];
  if (meaning.kind !== 'fabric') return refuse(context, print, `\`${print.text}\` is ${describe(meaning)}, and a print is a fabric`) ?? [];
  const { fabric } = meaning;
  if (fabric.assorted) return refuse(context, print, `\`${print.text}\` is assorted itself: name its prints in \`${role.text}\``, fabric.place) ?? [];
  return [fabric];
}

function countedPrints(context: Context, node: AssortedNode, name: Name): readonly Fabric[] {
  const count = node.count && countOf(context, node.count, { what: 'a count of prints', least: 1, most: 1000 });
  return Array.from({ length: count ?? 0 }, (_, index) => ({
    ...plainFabric(context.units, `${name.text} ${index + 1}`, at(context, name)),
    label: `${node.label?.value ?? name.text} ${index + 1}`,
    colour: shade(node.colour?.value ?? NO_COLOUR, index, count ?? 0),
  }));
}

/** The colour of print `index` of `count`: evenly from darker to lighter about the one given. */
function shade(colour: string, index: number, count: number): string {
  if (count < 2) return colour;
  const steps = (2 * SPREAD * index) / (count - 1);
  const by = steps - (steps % 1) - SPREAD;
  const channel = (from: number): string => {
    const value = Number.parseInt(colour.slice(from, from + 2), 16) + by;
    return (value < 0 ? 0 : value > 255 ? 255 : value).toString(16).padStart(2, '0');
  };
  return `#${channel(1)}${channel(3)}${channel(5)}`;
}

/** The object without its undefined fields. */
function definedOnly<T extends object>(values: T): { [K in keyof T]?: NonNullable<T[K]> } {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as { [K in keyof T]?: NonNullable<T[K]> };
}

