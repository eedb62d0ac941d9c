/** Light and dark: the picture in grey by CIE lightness, lost seams marked, the fabrics by value, and whether figure and ground hold together. */
import { lowContrastIn } from '../../checks/low-contrast.ts';
import { isLost, lightnessOf } from '../../checks/values.ts';
import { partsOfQuilt } from '../../drawing/build.ts';
import type { Scene, SceneShape, SceneUse } from '../../drawing/scene.ts';
import { straightened } from '../../drawing/straightened.ts';
import { toNumber } from '../../exact/number.ts';
import type { BlockLayout, QuiltLayout } from '../../geometry/layout.ts';
import type { Fabric } from '../../model/pattern.ts';
import type { Snapshot } from '../../snapshot.ts';
import { greyOf, type ColourValue } from '../../text/colour.ts';
import { blocksOf } from '../blocks.ts';
import { chosen } from '../picture.ts';
import { sheetOf } from '../sheet.ts';
import { figureValue, shapesInBlock, shapesInQuilt, valueOfFabric } from './figure.ts';
import { seamsInBlock, type SeenSeam } from './seams.ts';
import { EMPTY, type Table, type View, type ViewChoice } from './view.ts';

export function valuesView(snapshot: Snapshot, choice: ViewChoice): View {
  const quilt = chosen(snapshot, choice);
  if (quilt?.spec.setting && quilt.layout.placements.length > 0) return ofQuilt(quilt.layout);
  const views = blocksOf(snapshot);
  const sheet = sheetOf(views.map((view) => ({ ...view, scene: greyed(withMarks(view.scene, view.layout)) })));
  if (!sheet) return EMPTY;
  const layouts = views.map(({ layout }) => layout);
  const fabrics = fabricsIn(layouts, []).filter(({ standsFor }) => !standsFor);
  const figure = figureValue(fabrics);
  const notes = fabrics.length === 0 ? ['The blocks take the fabrics they are given: these greys only stand for them.'] : [...lostNotes(layouts), ...(figure ? layouts.map((layout) => blockNote(layout.instance.definition.name, layout, figure)) : [ONE_VALUE])];
  return { ...EMPTY, scene: sheet.scene, labels: sheet.labels, notes, table: fabrics.length === 0 ? undefined : tableOf(fabrics) };
}

function ofQuilt(layout: QuiltLayout): View {
  const blocks = layout.blocks.map((block) => block.layout);
  const fabrics = fabricsIn(blocks, layout.patches).filter(({ standsFor }) => !standsFor);
  const figure = figureValue(fabrics);
  const shapes = figure ? [quiltNote(shapesInQuilt(layout, figure), figure), ...layout.blocks.map(({ name, layout: block }) => blockNote(name, block, figure))] : [ONE_VALUE];
  return { ...EMPTY, scene: greyed(marked(layout)), notes: [...lostNotes(blocks), ...shapes], table: tableOf(fabrics) };
}

const ONE_VALUE = 'All fabrics are of one value: nothing is figure, nothing is ground.';

function quiltNote(count: number, figure: string): string {
  return count === 1 ? `The ${figure} shape of the quilt is one piece.` : `The quilt has ${count} ${figure} shapes apart.`;
}

function blockNote(name: string, layout: BlockLayout, figure: ColourValue): string {
  const count = shapesInBlock(layout, figure);
  if (count === 0) return `${name}: nothing ${figure}.`;
  return count === 1 ? `${name}: the ${figure} shape is one piece.` : `${name}: ${count} ${figure} shapes apart.`;
}

function lostNotes(layouts: readonly BlockLayout[]): readonly string[] {
  const told = [...new Set(layouts.flatMap(lowContrastIn).map(({ message }) => `${message.replaceAll('`', '')}.`))];
  return told.length === 0 ? ['Every seam between two fabrics of a block shows in grey: the lightness on both sides differs by 5 of 100 or more.'] : ['Lost seams are marked in red: the lightness on both sides differs by less than 5 of 100.', ...told];
}

function fabricsIn(blocks: readonly BlockLayout[], patches: QuiltLayout['patches']): readonly Fabric[] {
  const all = [...blocks.flatMap((block) => block.patches), ...patches].map(({ fabric }) => fabric);
  return [...new Map(all.map((fabric) => [fabric.name, fabric])).values()];
}

/** The lightest first. */
function tableOf(fabrics: readonly Fabric[]): Table {
  const rows = fabrics.toSorted((a, b) => lightnessOf(b) - lightnessOf(a));
  return { caption: 'Fabrics by lightness', heads: ['Fabric', 'Lightness', 'Value'], rows: rows.map((fabric) => [fabric.name, lightnessOf(fabric).toFixed(1), valueOfFabric(fabric)]) };
}

// ---------------------------------------------------------------------------------------------- the picture

/** In front of every patch, corners that are flipped included. */
const FRONT = 1000;
const MARK = '#e01b4c';
/** Of the block's longer side. */
const THICKNESS = 1 / 60;

/** Marks within each distinct block, which are drawn wherever it is used. */
function marked(layout: QuiltLayout): Scene {
  const { scene, items } = partsOfQuilt(layout);
  const layouts = new Map<number, BlockLayout>();
  layout.placements.forEach(({ block }, index) => {
    const [use] = items[index] ?? [];
    if (use?.kind === 'use') layouts.set(use.block, block);
  });
  return { ...scene, blocks: scene.blocks.map((block, index) => ({ ...block, shapes: [...block.shapes, ...marksOf(layouts.get(index))] })) };
}

function withMarks(scene: Scene, layout: BlockLayout): Scene {
  return { ...scene, items: [...scene.items, ...marksOf(layout)] };
}

function marksOf(layout: BlockLayout | undefined): readonly SceneShape[] {
  if (!layout) return [];
  const { seen, seams } = seamsInBlock(layout);
  const half = (Math.max(toNumber(layout.width), toNumber(layout.height)) * THICKNESS) / 2;
  const fabricOf = (index: number): Fabric | undefined => layout.patches[seen[index]?.patch ?? -1]?.fabric;
  return seams.flatMap((seam) => {
    const [one, other] = seam.sides.map(fabricOf);
    return one && other && one.name !== other.name && isLost(one, other) ? bars(seam, half) : [];
  });
}

/** A bar along each straight piece of a seam. */
function bars({ from, to, radius }: SeenSeam, half: number): readonly SceneShape[] {
  const ends = [toNumber(from.x), toNumber(from.y), toNumber(to.x), toNumber(to.y)];
  const points = radius ? straightened(ends, [radius, 0]) : ends;
  return Array.from({ length: points.length / 2 - 1 }, (_, i) => points.slice(2 * i, 2 * i + 4)).flatMap(([x0 = 0, y0 = 0, x1 = 0, y1 = 0]): SceneShape[] => {
    const length = Math.hypot(x1 - x0, y1 - y0);
    if (length === 0) return [];
    const [dx, dy] = [(-(y1 - y0) / length) * half, ((x1 - x0) / length) * half];
    return [{ kind: 'shape', points: [x0 - dx, y0 - dy, x1 - dx, y1 - dy, x1 + dx, y1 + dy, x0 + dx, y0 + dy], fill: MARK, fabric: '', source: -1, over: FRONT }];
  });
}

/** Every fabric in the grey of its lightness; marks keep their colour. */
function greyed(scene: Scene): Scene {
  const grey = (shape: SceneShape): SceneShape => (shape.fabric === '' ? shape : { ...shape, fill: greyOf(shape.fill) });
  return {
    ...scene,
    blocks: scene.blocks.map((block) => ({ ...block, shapes: block.shapes.map(grey) })),
    items: scene.items.map((item: SceneUse | SceneShape) => (item.kind === 'shape' ? grey(item) : item)),
  };
}
