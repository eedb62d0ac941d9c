/** Layouts made by hand, so that drawing is tested by itself. */
import { fraction, sub, toNumber, ZERO, type Exact } from '../../server/src/exact/number.ts';
import { IDENTITY, MIRROR, compose, scale, translate, turn, type Transform } from '../../server/src/exact/transform.ts';
import type { BlockLayout, Patch, Placement, QuiltLayout } from '../../server/src/geometry/layout.ts';
import type { BlockInstance, Fabric, QuiltSpec } from '../../server/src/model/pattern.ts';
import { documentOf, type Line } from '../../server/src/text/document.ts';
import type { Place } from '../../server/src/text/place.ts';

const document = documentOf('hand.quilt', Array.from({ length: 60 }, (_, line) => `line ${line}`).join('\n'));

/** A place of its own for each number. */
export function place(line: number, from = 0): Place {
  return { line: document.lines[line] as Line, from, to: from + 1 };
}

export function fabric(name: string, colour: string, label = name): Fabric {
  return { name, colour, label, width: fraction(40), directional: false, shrink: ZERO, source: { kind: 'yardage' }, place: place(0) };
}

export const INK = fabric('ink', '#22345c');
export const RUST = fabric('rust', '#a4502e');
export const SAND = fabric('sand', '#eadfc8');

/** Thousandths are exact. */
export function exact(x: number): Exact {
  return fraction(Math.round(x * 1000), 1000);
}

export function patch(of: Fabric, at: Place, corners: readonly (readonly [number, number])[], more: Partial<Patch> = {}): Patch {
  return { fabric: of, outline: corners.map(([x, y]) => ({ x: exact(x), y: exact(y) })), role: 'patch', place: at, ...more };
}

export function box(of: Fabric, at: Place, x: number, y: number, width: number, height: number, more: Partial<Patch> = {}): Patch {
  return patch(of, at, [[x, y], [x + width, y], [x + width, y + height], [x, y + height]], more);
}

export function block(name: string, width: number, height: number, patches: readonly Patch[]): BlockLayout {
  const instance = { key: name, name } as BlockInstance;
  return { key: name, instance, width: exact(width), height: exact(height), patches, findings: [] };
}

export function placed(of: BlockLayout, at: Place, transform: Transform, column = 0, row = 0): Placement {
  return { block: of, transform, place: at, row, column, part: 'place' };
}

export function quilt(width: number, height: number, placements: readonly Placement[], patches: readonly Patch[] = []): QuiltLayout {
  return {
    spec: {} as QuiltSpec,
    width: exact(width),
    height: exact(height),
    placements,
    patches,
    borders: [],
    centre: { width: exact(width), height: exact(height) },
    blocks: [],
    findings: [],
  };
}

/** Two half-square triangles, 3 by 3: ink upper left, sand lower right; they come from lines 1 and 2. */
export const HALVES = block('Halves', 3, 3, [
  patch(INK, place(1), [[0, 0], [3, 0], [0, 3]]),
  patch(SAND, place(2), [[3, 0], [3, 3], [0, 3]]),
]);

/** A quarter circle of radius 2 in the upper left of 3 by 3. */
export const FAN = block('Fan', 3, 3, [
  patch(RUST, place(3), [[0, 0], [2, 0], [0, 2]], { arcs: [undefined, exact(2), undefined] }),
  patch(SAND, place(4), [[2, 0], [3, 0], [3, 3], [0, 3], [0, 2]], { arcs: [undefined, undefined, undefined, undefined, exact(-2)] }),
]);

/** A sand square with a rust corner flipped over its upper left, out of a nested cell, and an ink one over its lower right. */
export const SNOWBALL = block('Snowball', 4, 4, [
  box(SAND, place(5), 0, 0, 4, 4, { within: [place(20)] }),
  patch(RUST, place(6), [[0, 0], [1, 0], [0, 1]], { role: 'flipped_corner', within: [place(20)] }),
  patch(INK, place(7), [[4, 3], [4, 4], [3, 4]], { role: 'flipped_corner' }),
]);

export { IDENTITY, MIRROR, compose, scale, translate, turn, sub, toNumber, ZERO };
