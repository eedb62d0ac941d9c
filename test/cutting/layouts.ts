/** Quilts in the plane made by hand, so that cutting is tested by itself. Numbers are given as quilters write them. */
import { ZERO, add, fraction, key, mul, type Exact } from '../../server/src/exact/number.ts';
import { formatLength } from '../../server/src/exact/length.ts';
import { parseNumber } from '../../server/src/exact/parse.ts';
import { IDENTITY } from '../../server/src/exact/transform.ts';
import type { BlockLayout, BorderLayout, Patch, Placement, QuiltLayout } from '../../server/src/geometry/layout.ts';
import type { BlockInstance, Fabric, Pattern, QuiltSpec, Rules } from '../../server/src/model/pattern.ts';
import { documentOf, type Line } from '../../server/src/text/document.ts';
import type { Place } from '../../server/src/text/place.ts';
import type { Piece } from '../../server/src/cutting/plan.ts';

const document = documentOf('hand.quilt', Array.from({ length: 500 }, (_, line) => `line ${line}`).join('\n'));

export function place(line: number): Place {
  return { line: document.lines[line] as Line, from: 0, to: 4 };
}

/** `7 1/2` */
export function n(text: string | number): Exact {
  const found = typeof text === 'number' ? fraction(Math.round(text * 1000), 1000) : parseNumber(text);
  if (!found) throw new Error(`not a number: ${text}`);
  return found;
}

export function fabric(name: string, more: Partial<Fabric> = {}): Fabric {
  return { name, colour: '#888888', label: name, width: fraction(40), directional: false, shrink: ZERO, source: { kind: 'yardage' }, place: place(0), ...more };
}

export const RULES: Rules = { units: 'inches', seam: fraction(1, 4), roundUp: fraction(1, 8), yardage: fraction(9, 2), spare: fraction(1, 20), methods: {} };

export const METRIC: Rules = { units: 'centimetres', seam: fraction(75, 254), roundUp: fraction(10, 254), yardage: fraction(1000, 254), spare: fraction(1, 20), methods: {} };

export function pattern(fabrics: readonly Fabric[], rules: Rules = RULES): Pattern {
  return { rules, fabrics: new Map(fabrics.map((each) => [each.name, each])), colorways: [] } as unknown as Pattern;
}

export type Corners = readonly (readonly [Exact, Exact])[];

export function patch(of: Fabric, corners: Corners, more: Partial<Patch> = {}): Patch {
  return { fabric: of, outline: corners.map(([x, y]) => ({ x, y })), role: 'patch', place: place(1), ...more };
}

export function box(of: Fabric, width: Exact, height: Exact, more: Partial<Patch> = {}): Patch {
  return patch(of, [[ZERO, ZERO], [width, ZERO], [width, height], [ZERO, height]], more);
}

export function block(name: string, side: Exact, patches: readonly Patch[]): BlockLayout {
  const instance = { key: name, name, definition: { name } } as BlockInstance;
  return { key: name, instance, width: side, height: side, patches, findings: [] };
}

export function placed(of: BlockLayout, more: Partial<Placement> = {}): Placement {
  return { block: of, transform: IDENTITY, place: place(2), row: 0, column: 0, part: 'place', ...more };
}

export function border(number: number, of: Fabric, more: Partial<BorderLayout>): BorderLayout {
  return { width: n(4), fabric: of, corners: 'butted', lengthwise: false, strips: [], place: place(100 + number), ...more };
}

export interface QuiltParts {
  readonly width?: Exact;
  readonly height?: Exact;
  readonly blocks?: readonly (readonly [BlockLayout, number])[];
  readonly patches?: readonly Patch[];
  readonly borders?: readonly BorderLayout[];
  readonly spec?: Partial<QuiltSpec>;
}

export function quilt({ width = n(60), height = n(80), blocks = [], patches = [], borders = [], spec = {} }: QuiltParts): QuiltLayout {
  return {
    spec: spec as QuiltSpec,
    width,
    height,
    placements: blocks.flatMap(([layout, count]) => Array.from({ length: count }, () => placed(layout))),
    patches,
    borders,
    centre: { width, height },
    blocks: blocks.map(([layout, count]) => ({ layout, name: layout.instance.name, count })),
    findings: [],
  };
}

/** `8 of 2 7/8 once on the diagonal`: one line a piece, as cut. */
export function cutLines(pieces: readonly Piece[]): string[] {
  return pieces.map(({ fabric: of, cut, cutCount, method }) => {
    const size = key(cut.width) === key(cut.height) ? inches(cut.width) : `${inches(cut.width)} x ${inches(cut.height)}`;
    return `${of.name}: ${cutCount} of ${size}${method === 'plain' ? '' : ` ${method}`}`;
  });
}

/** `7 1/2` */
export function inches(length: Exact): string {
  return formatLength(length, { units: 'inches' }).replace('"', '');
}

export function times(a: Exact, b: number): Exact {
  return mul(a, fraction(b));
}

export { add };
