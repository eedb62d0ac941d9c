/** pattern.json: the whole pattern in figures, for other programs. `pattern.schema.json` beside this file describes it. */
import { toNumber, type Exact } from '../exact/number.ts';
import type { BorderCut, FabricPlan, Measure, Piece, RolePlan } from '../cutting/plan.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { Fabric, Pattern } from '../model/pattern.ts';
import { sewingOf } from '../piecing/sewing.ts';
import { lightness, valueOf } from '../text/colour.ts';
import { UNTITLED, type BookletQuilt, type BookletSource } from './source.ts';
import { printerFor, type Printer } from './words.ts';

/** The JSON text: the same bytes for the same pattern. */
export function patternJson(source: BookletSource): string {
  const { pattern, quilts } = source;
  const print = printerFor(pattern.rules.units);
  const whole = { scant: 1, title: pattern.title ?? UNTITLED, sizes: quilts.map((quilt) => sizeOf(quilt, pattern, print)) };
  return `${JSON.stringify(whole, null, 2)}\n`;
}

interface Length {
  readonly in: number;
  readonly text: string;
}

function sizeOf({ name, layout, plan }: BookletQuilt, pattern: Pattern, print: Printer): object {
  const { backing, batting, binding, sleeve, drop } = plan;
  const size = (measure: Measure): object => measureOf(measure, print);
  const cloth = (value: Exact): Length => ({ in: toNumber(value), text: print.cloth(value) });
  return {
    name,
    ...size(layout),
    blocks: layout.blocks.map(({ layout: block, name: called, count }) => ({
      name: called,
      count,
      ...size(block),
      patches: block.patches.length,
      patchesByFabric: patchesByFabric(block, pattern),
    })),
    pieces: plan.pieces.map((piece) => pieceOf(piece, print)),
    fabrics: plan.fabrics.map((fabric) => fabricOf(fabric, print)),
    ...(plan.roles.length > 0 ? { assorted: plan.roles.map((role) => roleOf(role, print)) } : {}),
    borders: plan.borders.map((border) => borderOf(border, print)),
    ...(backing ? { backing: { ...size(backing), panels: backing.panels, seams: backing.seams, buy: cloth(backing.buy) } } : {}),
    ...(batting ? { batting: { ...size(batting), package: batting.package } } : {}),
    ...(binding ? { binding: { length: lengthOf(binding.length, print), strips: binding.strips, buy: cloth(binding.buy) } } : {}),
    ...(sleeve ? { sleeve: { fabric: sleeve.fabric.name, cut: size(sleeve.cut), strips: sleeve.strips } } : {}),
    ...(plan.quilting.length > 0
      ? { quilting: plan.quilting.map(({ kind, distance, length }) => ({ kind, ...(distance ? { distance: lengthOf(distance, print) } : {}), length: lengthOf(length, print) })) }
      : {}),
    ...(drop ? { drop: { bed: drop.bed, mattress: size(drop.mattress), sides: lengthOf(drop.sides, print), foot: lengthOf(drop.foot, print) } } : {}),
    seams: sewingOf(layout, pattern.rules).seams,
  };
}

function lengthOf(value: Exact, print: Printer): Length {
  return { in: toNumber(value), text: print.length(value) };
}

function measureOf({ width, height }: Measure, print: Printer): { readonly width: Length; readonly height: Length } {
  return { width: lengthOf(width, print), height: lengthOf(height, print) };
}

/** In the order of the declarations. */
function patchesByFabric(block: BlockLayout, pattern: Pattern): Readonly<Record<string, number>> {
  const counts = new Map<string, number>([...pattern.fabrics.keys()].map((name) => [name, 0]));
  for (const { fabric } of block.patches) counts.set(fabric.name, (counts.get(fabric.name) ?? 0) + 1);
  return Object.fromEntries([...counts].filter(([, count]) => count > 0));
}

function pieceOf(piece: Piece, print: Printer): object {
  const { fabric, shape, finished, cut, cutCount, piecesPerCut, pieces } = piece;
  return { fabric: fabric.name, shape, finished: measureOf(finished, print), cut: measureOf(cut, print), cutCount, piecesPerCut, pieces, for: piece.for };
}

function fabricOf(plan: FabricPlan, print: Printer): object {
  const { fabric, strips, length, lowerBound, isLeast, buy, counted, cuts } = plan;
  return {
    ...namesOf(fabric),
    strips: strips.map(({ width, count, subcuts }) => ({
      width: lengthOf(width, print),
      count,
      subcuts: subcuts.map((subcut) => ({ piece: subcut.piece, count: subcut.count })),
    })),
    length: lengthOf(length, print),
    lowerBound: lengthOf(lowerBound, print),
    provenLeast: isLeast,
    ...(counted ? { cloth: { kind: counted.kind, ...measureOf(counted, print), count: counted.count, least: counted.least } } : { buy: { in: toNumber(buy), text: print.cloth(buy) } }),
    cuts: { strips: cuts.strips, pieces: cuts.pieces },
  };
}

function roleOf({ fabric, prints, pieces, buy }: RolePlan, print: Printer): object {
  return {
    ...namesOf(fabric),
    prints: prints.map((each) => ({ fabric: each.fabric.name, pieces: each.pieces })),
    pieces,
    buy: { in: toNumber(buy), text: print.cloth(buy) },
  };
}

function namesOf({ name, label, colour, value }: Fabric): object {
  return { name, label, colour, lightness: Math.round((lightness(colour) ?? 0) * 10) / 10, value: value ?? valueOf(colour) };
}

function borderOf({ width, fabric, corners, strips }: BorderCut, print: Printer): object {
  return {
    width: lengthOf(width, print),
    fabric: fabric.name,
    corners,
    strips: strips.map((strip) => ({ length: lengthOf(strip.length, print), width: lengthOf(strip.width, print), count: strip.count })),
  };
}
