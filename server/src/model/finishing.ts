/** Backing, batting, binding, quilting. */
import { toInches, type UnitSystem } from '../exact/length.ts';
import { fraction, mul, type Exact } from '../exact/number.ts';
import type { Length, QuiltingPart, Statement } from '../syntax/tree.ts';
import { at, onLine, type Context } from './context.ts';
import { clothLength, finishedLength, overhangLength } from './measures.ts';
import type { BindingSpec, QuiltSpec, QuiltingLine } from './pattern.ts';
import { ofKind, onlyOne } from './statements.ts';
import { fabricFor, type Builder } from './uses.ts';

/** What backing and batting are larger on each side unless the pattern says: 4" (language.md, section 5), 10 cm in a metric pattern. */
export function usualOverhang(units: UnitSystem): Exact {
  return units === 'inches' ? fraction(4) : toInches(fraction(10), 'cm');
}

export function backingOf(builder: Builder, statements: readonly Statement[]): QuiltSpec['backing'] {
  const statement = onlyOne(builder, statements, 'backing');
  if (!statement) return undefined;
  const { node, line, place } = statement;
  const here = onLine(builder, line);
  const fabric = node.fabric && fabricFor(here, node.fabric);
  const width = node.width && clothLength(here, node.width, 'the width of the backing');
  return { ...(fabric ? { fabric } : {}), overhang: overhangOf(here, node.overhang), ...(width ? { width } : {}), place };
}

export function sleeveOf(builder: Builder, statements: readonly Statement[]): QuiltSpec['sleeve'] {
  const statement = onlyOne(builder, statements, 'sleeve');
  const fabric = statement?.node.fabric && fabricFor(onLine(builder, statement.line), statement.node.fabric);
  return statement && fabric && { fabric, place: statement.place };
}

export function battingOf(builder: Builder, statements: readonly Statement[]): QuiltSpec['batting'] {
  const statement = onlyOne(builder, statements, 'batting');
  return statement && { overhang: overhangOf(onLine(builder, statement.line), statement.node.overhang), place: statement.place };
}

export function bindingOf(builder: Builder, statements: readonly Statement[]): BindingSpec | undefined {
  const statement = onlyOne(builder, statements, 'binding');
  if (!statement) return undefined;
  const { node, line, place } = statement;
  const here = onLine(builder, line);
  const isDouble = node.layers?.word !== 'single';
  const cutWidth = node.width && bindingCut(here, node.width, isDouble ? 6 : 4);
  const fabric = node.fabric && fabricFor(here, node.fabric);
  return cutWidth && fabric && { cutWidth, fabric, double: isDouble, bias: node.grain?.word === 'bias', place };
}

/** The words as they stand, and what they ask for. */
export function quiltingOf(builder: Builder, statements: readonly Statement[]): { readonly quilting: readonly QuiltingPart[]; readonly quiltingLines: readonly QuiltingLine[] } {
  const all = ofKind(statements, 'quilting');
  return {
    quilting: all.flatMap(({ node }) => node.parts),
    quiltingLines: all.flatMap(({ node, line }) => node.parts.flatMap((part) => quiltingLine(onLine(builder, line), part) ?? [])),
  };
}

/**
 * A binding of finished width w lies w wide on the front, w on the back and w over the seam, in one layer (single: and w is
 * turned under) or two: cut 4w, or 6w. With `cut` the width is that of the strip.
 */
function bindingCut(here: Builder, width: Length, layers: number): Exact | undefined {
  if (width.cut) return clothLength(here, width, 'a binding');
  const finished = finishedLength(here, width, 'a binding');
  return finished && mul(fraction(layers), finished);
}

function overhangOf(here: Context, overhang: Length | undefined): Exact {
  return (overhang && overhangLength(here, overhang, 'an overhang')) ?? usualOverhang(here.units);
}

function quiltingLine(here: Context, part: QuiltingPart): QuiltingLine | undefined {
  if (part.kind === 'text') return { kind: 'words', text: part.value, place: part.place ?? at(here, part) };
  if (part.kind === 'word') return { kind: part.word, place: at(here, part) };
  const distance = clothLength(here, part.length, 'an echo');
  return distance && { kind: 'echo', distance, place: at(here, part) };
}
