/** Patches made by hand, so that piecing is tested by itself. */
import { fraction, ZERO } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { clockwise } from '../../server/src/exact/polygon.ts';
import type { BlockLayout, Patch } from '../../server/src/geometry/layout.ts';
import type { BlockInstance, Fabric } from '../../server/src/model/pattern.ts';
import { documentOf } from '../../server/src/text/document.ts';
import type { Line } from '../../server/src/text/document.ts';
import type { Place } from '../../server/src/text/place.ts';

const document = documentOf('hand.quilt', Array.from({ length: 200 }, (_, line) => `line ${line}`).join('\n'));

export function place(line: number): Place {
  return { line: document.lines[line % 200] as Line, from: 0, to: 1 };
}

export function fabric(name: string, colour = '#888888'): Fabric {
  return { name, colour, label: name, width: fraction(40), directional: false, shrink: ZERO, source: { kind: 'yardage' }, place: place(0) };
}

export const INK = fabric('ink', '#22345c');
export const SAND = fabric('sand', '#eadfc8');
export const RUST = fabric('rust', '#a4502e');

export function patchOf(outline: readonly Point[], more: Partial<Patch> = {}): Patch {
  return { fabric: SAND, outline: more.arcs ? outline : clockwise(outline), role: 'patch', place: place(1), ...more };
}

/** Whole-number corners; fabrics by letter. */
export function patch(corners: readonly (readonly [number, number])[], of: Fabric = SAND, more: Partial<Patch> = {}): Patch {
  return patchOf(points(corners), { fabric: of, ...more });
}

export function points(corners: readonly (readonly [number, number])[]): Point[] {
  return corners.map(([x, y]) => ({ x: number(x), y: number(y) }));
}

export function box(x: number, y: number, width: number, height: number, of: Fabric = SAND): Patch {
  return patch([[x, y], [x + width, y], [x + width, y + height], [x, y + height]], of);
}

/** Thousandths are exact. */
export function number(x: number): Exact {
  return fraction(Math.round(x * 1000), 1000);
}

export function rectangle(width: number, height: number): Point[] {
  return points([[0, 0], [width, 0], [width, height], [0, height]]);
}

/** Letters in rows: plain squares of one unit. */
export function squares(...rows: readonly string[]): Patch[] {
  const fabrics: Record<string, Fabric> = { a: INK, b: SAND, c: RUST };
  return rows.flatMap((row, y) => row.split('').map((letter, x) => box(x, y, 1, 1, fabrics[letter] ?? fabric(letter))));
}

export function block(name: string, width: number, height: number, patches: readonly Patch[], more: Partial<BlockInstance> = {}): BlockLayout {
  const instance = { key: name, name, methods: {}, ...more } as BlockInstance;
  return { key: name, instance, width: number(width), height: number(height), patches, findings: [] };
}
