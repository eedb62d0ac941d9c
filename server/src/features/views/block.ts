/** The block under the cursor at its size: finished and with seams, each patch with what is cut for it where that fits, and a list of the cuts. */
import { counted, printerFor } from '../../booklet/words.ts';
import { cuttingInBlock } from '../../cutting/methods.ts';
import type { Cutting } from '../../cutting/shape.ts';
import type { Scene, SceneLabel, SceneShape } from '../../drawing/scene.ts';
import { add, mul, TWO } from '../../exact/number.ts';
import type { BlockLayout } from '../../geometry/layout.ts';
import { patchesByFabric } from '../../geometry/walk.ts';
import type { Pattern } from '../../model/pattern.ts';
import type { Snapshot } from '../../snapshot.ts';
import { cutText } from '../hover-patch.ts';
import { sideBySide } from '../measures.ts';
import { lightness } from '../../text/colour.ts';
import { lookedAt, type LookedAt } from './looked-at.ts';
import { EMPTY, type Table, type View, type ViewChoice } from './view.ts';

export function blockView(snapshot: Snapshot, choice: ViewChoice): View {
  const block = lookedAt(snapshot, choice);
  if (!block) return EMPTY;
  const { pattern } = snapshot;
  const cuttings = block.layout.instance.size ? block.layout.patches.map((_, index) => cuttingInBlock(block.layout, index, pattern.rules)) : [];
  return { ...EMPTY, scene: { ...block.scene, labels: labelsOf(block.scene, cuttings, pattern) }, notes: notesOf(block, pattern), table: tableOf(block.layout, cuttings, pattern), block: block.name };
}

function notesOf({ name, layout, count }: LookedAt, pattern: Pattern): readonly string[] {
  const { width, height, instance, patches } = layout;
  const { seam } = pattern.rules;
  const print = printerFor(pattern.rules.units);
  const raw = { width: add(width, mul(TWO, seam)), height: add(height, mul(TWO, seam)) };
  const fabrics = [...patchesByFabric(layout)].map(([fabric, many]) => `${many} ${fabric}`).join(', ');
  return [
    instance.size ? `${name}: ${print.widthByHeight(layout)} finished, ${print.widthByHeight(raw)} with its seams.` : `${name} has no size of its own: it stands in other blocks.`,
    `${counted(patches.length, 'patch', 'patches')}: ${fabrics}.${count > 0 ? ` The quilt has ${count}.` : ''}`,
  ];
}

/** Equal cuts once, in the order of the block. */
function tableOf({ patches }: BlockLayout, cuttings: readonly (Cutting | undefined)[], pattern: Pattern): Table | undefined {
  const rows = new Map<string, { readonly cells: readonly string[]; count: number }>();
  cuttings.forEach((cutting, index) => {
    if (!cutting) return;
    const cells = [patches[index]?.fabric.name ?? '', shapeWord(cutting), cutText(cutting, pattern)];
    const row = rows.get(cells.join('\n')) ?? { cells, count: 0 };
    row.count += 1;
    rows.set(cells.join('\n'), row);
  });
  if (rows.size === 0) return undefined;
  return { caption: 'Cut for one block', heads: ['Fabric', 'Shape', 'Cut', 'Patches'], rows: [...rows.values()].map(({ cells, count }) => [...cells, `${count}`]) };
}

function shapeWord({ shape }: Cutting): string {
  return shape === 'template' ? 'shape' : shape;
}

/** As large as the widest of them may be, as a part of the block's longer side; smaller than the least none is written. */
const LARGEST = 1 / 16;
const LEAST = 1 / 55;
/** A letter's width, of its height; and how much of a patch a text may take up. */
const LETTER = 0.56;
const FULL = 0.86;

function labelsOf({ items, width, height }: Scene, cuttings: readonly (Cutting | undefined)[], pattern: Pattern): readonly SceneLabel[] {
  const side = Math.max(width, height);
  return items.flatMap((item, index): SceneLabel[] => {
    const cutting = cuttings[index];
    if (item.kind !== 'shape' || !cutting || cutting.shape === 'template') return [];
    const text = shortText(cutting, pattern);
    const size = sizeAt(item, text, side * LARGEST);
    const { x, y } = middleOf(item);
    return size < side * LEAST ? [] : [{ text, x, y, from: 'middle', size, fill: (lightness(item.fill) ?? 0) > 55 ? '#000000' : '#ffffff' }];
  });
}

/** `2 1/2" square`, `½ of 2 7/8" square`. */
function shortText({ cut, piecesPerCut, segment, shape }: Cutting, pattern: Pattern): string {
  const size = sideBySide(segment ? { width: segment, height: cut.width } : cut, pattern).replace(' square', '');
  if (segment || !shape.includes('triangle')) return size;
  return `${PARTS[piecesPerCut] ?? `1/${piecesPerCut}`} of ${size}`;
}

const PARTS: Readonly<Record<number, string>> = { 2: '½', 4: '¼', 8: '⅛' };

/** As large as a text may be in the middle of a shape: it fits at its own top and bottom too. */
function sizeAt(shape: SceneShape, text: string, largest: number): number {
  const corners = cornersOf(shape);
  const { y } = middleOf(shape);
  const fitting = (room: number): number => (room * FULL) / (text.length * LETTER);
  const first = Math.min(largest, fitting(widthAt(corners, y)));
  return Math.min(first, fitting(widthAt(corners, y - first / 2)), fitting(widthAt(corners, y + first / 2)));
}

/** The middle of its area. */
function middleOf(shape: SceneShape): { readonly x: number; readonly y: number } {
  const corners = cornersOf(shape);
  let [area, x, y] = [0, 0, 0];
  corners.forEach(([fromX, fromY], i) => {
    const [toX, toY] = corners[(i + 1) % corners.length] ?? [fromX, fromY];
    const twice = fromX * toY - toX * fromY;
    area += twice / 2;
    x += ((fromX + toX) * twice) / 6;
    y += ((fromY + toY) * twice) / 6;
  });
  return area === 0 ? { x: 0, y: 0 } : { x: x / area, y: y / area };
}

function cornersOf({ points }: SceneShape): readonly (readonly [number, number])[] {
  return Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i] ?? 0, points[2 * i + 1] ?? 0] as const);
}

/** How wide a shape is at a height: the nearest crossings on both sides of its middle. */
function widthAt(corners: readonly (readonly [number, number])[], height: number): number {
  const crossings = corners.flatMap(([fromX, fromY], i) => {
    const [toX, toY] = corners[(i + 1) % corners.length] ?? [fromX, fromY];
    return fromY > height === toY > height ? [] : [fromX + ((height - fromY) / (toY - fromY)) * (toX - fromX)];
  });
  return crossings.length < 2 ? 0 : Math.max(...crossings) - Math.min(...crossings);
}
