/** The blocks of the library files, one by one, in sample fabrics and at any size. */
import { severityOf } from '../../server/src/checks/list.ts';
import { toNumber } from '../../server/src/exact/number.ts';
import type { BlockLayout, Patch } from '../../server/src/geometry/layout.ts';
import type { BlockDefinition } from '../../server/src/model/pattern.ts';
import { snapshotOf, type QuiltView, type Snapshot } from '../../server/src/snapshot.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { hostOf } from '../harness/snapshot.ts';
import always from '../../server/library/always.quilt';
import traditional from '../../server/library/traditional.quilt';

export const LIBRARY = { always, traditional } as const;

const HOST = hostOf({ traditional });

/** A text beside the traditional library. */
/** A snapshot of a text; its problems without the hints: what is sewn with care (set in, many seam ends in a point) is no fault. */
export function read(text: string): Pick<Snapshot, 'pattern' | 'blocks' | 'quilts' | 'shown' | 'problems'> {
  const { pattern, blocks, quilts, shown, problems } = snapshotOf(documentOf('pattern.quilt', text), 1, HOST);
  return { pattern, blocks, quilts, shown, problems: problems.filter(({ rule }) => severityOf(rule) !== 'hint') };
}

export function definitionsOf(text: string): readonly BlockDefinition[] {
  return [...read(text).pattern.blocks.values()].filter(({ origin }) => origin === 'file');
}

export const ALWAYS_THERE = definitionsOf(always);
export const TRADITIONAL = definitionsOf(traditional);
export const EVERY_BLOCK = [...ALWAYS_THERE, ...TRADITIONAL];

/** `goose(f0, f1)`: every parameter that must be given has a fabric of its own. */
export function cellOf({ name, parameters }: BlockDefinition): string {
  const given = parameters.filter(({ hasDefault }) => !hasDefault).map((_, index) => `f${index}`);
  return `${name}(${given.join(', ')})`;
}

/** Twice as wide as high, or as high as wide; every other block is square. */
export const PROPORTIONS: Readonly<Record<string, 'wide' | 'high'>> = {
  goose: 'wide', half_rectangle: 'wide', flipped_goose: 'wide', diamond_in_rectangle: 'wide', flying_geese: 'high',
};

/** `12"`, `12" by 6"`, `6" by 12"`: the longer side of a block is `side` inches. */
export function sizeOf(name: string, side: string): string {
  const half = `(${side.replace(/^(\d+) (\d+\/\d+)$/, '$1 + $2')})/2`;
  const shape = PROPORTIONS[name];
  if (!shape) return `${side}"`;
  return shape === 'wide' ? `${side}" by (${half})"` : `(${half})" by ${side}"`;
}

export interface LaidOut {
  readonly layout: BlockLayout;
  /** Messages about the lines of this block; a fabric that is not used is no problem here. */
  readonly problems: readonly string[];
}

/** Each cell as a block of its own, all in one text; the longer side of each is `side` inches. */
export function laidOut(cells: readonly string[], side = '12'): ReadonlyMap<string, LaidOut> {
  const { blocks, problems } = read(`import "traditional"\n${fabricLines(FABRICS)}\n${cells.map((cell, index) => whole(`Whole${index}`, cell, side)).join('')}`);
  const heard = problems.filter(({ rule }) => rule !== 'unused-fabric' && rule !== 'unused-block');
  return new Map(cells.map((cell, index) => {
    const layout = blocks.find(({ definition }) => definition.name === `Whole${index}`)?.layout;
    if (!layout) throw new Error(`${cell} is not laid out`);
    const lines = [`  ${cell}`, `block Whole${index} `];
    const own = heard.filter(({ place }) => lines.some((line) => place.line.text.startsWith(line)));
    return [cell, { layout, problems: own.map(({ message }) => message) }];
  }));
}

/** A cell as the only block of a quilt, for its cutting plan. The fabrics are declared in the order given. */
/** Cut as printed lists have it: triangles first, then sewn. */
export function quiltOf(cell: string, { fabrics, side }: { readonly fabrics: readonly string[]; readonly side: string }): QuiltView {
  const { problems, shown } = read(`import "traditional"\npattern "One" {\n  method half_squares singles\n  method geese singles\n}\n${fabricLines(fabrics)}\n${whole('Whole', cell, side)}quilt {\n  straight 1 by 1\n  place { Whole }\n}\n`);
  if (!shown || problems.length > 0) throw new Error(`${cell}: ${problems.map(({ message }) => message).join('; ')}`);
  return shown;
}

const FABRICS = ['f0', 'f1', 'f2', 'f3'];

function fabricLines(fabrics: readonly string[]): string {
  return fabrics.map((fabric, index) => `fabric ${fabric} #${String(10 + index * 9)}a0b0 "${fabric}"`).join('\n');
}

function whole(name: string, cell: string, side: string): string {
  return `block ${name} ${sizeOf(cell.split('(')[0] ?? cell, side)} {\n  grid 1 by 1\n  ${cell}\n}\n`;
}

/** x and y; y points down. */
export type Corner = readonly [number, number];

export function cornersOf({ outline }: Patch, scale: number): Corner[] {
  return outline.map(({ x, y }) => [toNumber(x) * scale, toNumber(y) * scale]);
}
