/**
 * How a fabric is cut, to scale: one scene for each piece of cloth, with every strip and every piece where it is cut, what is left
 * over in grey, the letter of each kind of piece on it and the width of each strip beside it. Squares for triangles show their
 * diagonals. The cloth lies unfolded with the selvages left and right, so strips across run from side to side.
 */
import { toNumber, type Exact } from '../exact/number.ts';
import { formatLength, type UnitSystem } from '../exact/length.ts';
import { pieceLabel } from '../cutting/labels.ts';
import type { Cloth, FabricPlan, Piece, Strip, Subcut } from '../cutting/plan.ts';
import { lightness } from '../text/colour.ts';
import type { Place } from '../text/place.ts';
import type { Matrix } from './matrix.ts';
import type { Scene, SceneBlock, SceneLabel, SceneShape, SceneUse } from './scene.ts';

export interface ClothLayout {
  /** How many pieces of cloth are cut so. */
  readonly count: number;
  readonly scene: Scene;
}

/** What is left over. */
export const WASTE = '#d9d9d9';

/** The layouts of a fabric's cloth, in cutting order; `pieces` are those of the plan it is of. */
export function cuttingLayouts(plan: FabricPlan, pieces: readonly Piece[], units: UnitSystem): readonly ClothLayout[] {
  return plan.cloths.map((cloth) => ({ count: cloth.count, scene: sceneOfCloth(cloth, { plan, pieces, units }) }));
}

/** All cloth of a fabric in one picture, one below the other, and how often each is cut. */
export function cuttingDrawing(plan: FabricPlan, pieces: readonly Piece[], units: UnitSystem): Scene {
  const layouts = cuttingLayouts(plan, pieces, units);
  const gap = Math.max(0, ...layouts.map(({ scene }) => Math.max(scene.width, scene.height))) / 20;
  let top = 0;
  const parts = layouts.map(({ count, scene }, i) => {
    const caption = layouts.length > 1 || count > 1 ? gap : 0;
    const part = shifted(scene, { index: i, down: top + caption, caption: `${count} ×`, gap: caption });
    top += caption + scene.height + gap / 2;
    return part;
  });
  const blocksBefore = parts.map((_, i) => parts.slice(0, i).reduce((total, { blocks }) => total + blocks.length, 0));
  const sourcesBefore = parts.map((_, i) => parts.slice(0, i).reduce((total, { sources }) => total + sources.length, 0));
  const renumbered = parts.map((part, i) => numbered(part, blocksBefore[i] ?? 0, sourcesBefore[i] ?? 0));
  return {
    width: Math.max(1, ...parts.map(({ width }) => width)),
    height: Math.max(1, top),
    title: `${plan.fabric.name}: how it is cut`,
    blocks: renumbered.flatMap(({ blocks }) => blocks),
    items: renumbered.flatMap(({ items }) => items),
    labels: parts.flatMap(({ labels = [] }) => labels),
    sources: parts.flatMap(({ sources }) => sources),
  };
}

interface Part {
  readonly index: number;
  readonly down: number;
  readonly caption: string;
  readonly gap: number;
}

function shifted(scene: Scene, { index, down, caption, gap }: Part): Scene {
  const title: readonly SceneLabel[] = gap > 0 ? [{ text: caption, x: 0, y: down - gap / 2, from: 'left', size: gap * 0.6, fill: '#000000' }] : [];
  return {
    ...scene,
    blocks: scene.blocks.map((block) => ({ ...block, id: `c${index}${block.id}` })),
    items: scene.items.map((item) => (item.kind === 'use' ? { ...item, matrix: moved(item.matrix, down) } : { ...item, points: item.points.map((value, i) => (i % 2 === 1 ? value + down : value)) })),
    labels: [...title, ...(scene.labels ?? []).map((label) => ({ ...label, y: label.y + down }))],
  };
}

function moved([a, b, c, d, e, f]: Matrix, down: number): Matrix {
  return [a, b, c, d, e, f + down];
}

/** With its blocks and sources behind those of the parts before. */
function numbered(scene: Scene, blocks: number, sources: number): Scene {
  const shape = (each: SceneShape): SceneShape => ({ ...each, source: each.source + sources });
  return {
    ...scene,
    blocks: scene.blocks.map((block) => ({ ...block, shapes: block.shapes.map(shape) })),
    items: scene.items.map((item) => (item.kind === 'use' ? { ...item, block: item.block + blocks, source: item.source + sources } : shape(item))),
  };
}

interface Context {
  readonly plan: FabricPlan;
  readonly pieces: readonly Piece[];
  readonly units: UnitSystem;
}

/** Strips as they are drawn: `along` is their length, `turned` ones stand upright. */
interface Table {
  readonly along: number;
  readonly down: number;
  readonly turned: boolean;
  readonly letters: number;
}

function sceneOfCloth(cloth: Cloth, context: Context): Scene {
  const [across, down] = [toNumber(cloth.across), toNumber(cloth.down)];
  const turned = cloth.turned === true;
  const table: Table = { along: turned ? down : across, down: turned ? across : down, turned, letters: Math.max(across, down) / 40 };
  const sources: Place[] = [context.plan.fabric.place];
  const blocks = cloth.strips.map((strip, i) => stripBlock(strip, i, { ...context, table, sources }));
  const starts = startsOf(cloth.strips);
  const margin = turned ? 0 : table.letters * WIDEST_TEXT;
  const room = { width: across + margin, height: down + (turned ? 2 * table.letters : 0) };
  const uses = cloth.strips.flatMap((strip, i) => Array.from({ length: strip.count }, (_, each): SceneUse => ({ kind: 'use', block: i, matrix: placed((starts[i] ?? 0) + each * toNumber(strip.width), table), source: 0 })));
  const labels = cloth.strips.flatMap((strip, i) => stripLabels(strip, starts[i] ?? 0, { ...context, table }));
  const { name } = context.plan.fabric;
  return { ...room, title: `${name}: how it is cut`, blocks, items: [waste([0, 0, across, down], name), ...uses], labels, sources };
}

/** In letters: `2 1/2" × 12`. */
const WIDEST_TEXT = 6;

function startsOf(strips: readonly Strip[]): readonly number[] {
  let start = 0;
  return strips.map(({ width, count }) => {
    const here = start;
    start += toNumber(width) * count;
    return here;
  });
}

/** A strip lies along the cloth's width, or upright beside the one before it: turned, its length runs down. */
function placed(start: number, { turned }: Table): Matrix {
  return turned ? [0, 1, 1, 0, start, 0] : [1, 0, 0, 1, 0, start];
}

interface StripContext extends Context {
  readonly table: Table;
  readonly sources: Place[];
}

function stripBlock(strip: Strip, index: number, context: StripContext): SceneBlock {
  const { table, plan } = context;
  const [width, height] = [table.along, toNumber(strip.width)];
  const shapes = boxesIn(strip, context).flatMap((box) => boxShapes(box, context));
  return { id: `s${index}`, name: 'strip', width, height, shapes: [waste([0, 0, width, height], plan.fabric.name), ...shapes] };
}

interface Box {
  readonly piece: Piece;
  readonly label: string;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Every piece of one strip, segment after segment, from the top down in each. */
function boxesIn({ subcuts }: Strip, { pieces }: Pick<Context, 'pieces'>): readonly Box[] {
  const boxes: Box[] = [];
  let left = 0;
  let held = 0;
  for (const subcut of subcuts) {
    const piece = pieces[subcut.piece];
    if (!piece) continue;
    const [width, height] = sizeOf(piece, subcut);
    const stack = subcut.stacked ?? 1;
    if (!subcut.continues) held = 0;
    for (let i = 0; i < subcut.count; i += 1) {
      if (held % stack === 0) left += width;
      boxes.push({ piece, label: pieceLabel(subcut.piece), left: left - width, top: (held % stack) * height, width, height });
      held += 1;
    }
  }
  return boxes;
}

function sizeOf({ cut }: Piece, { turned }: Subcut): readonly [number, number] {
  const [width, height] = [toNumber(cut.width), toNumber(cut.height)];
  return turned ? [height, width] : [width, height];
}

function boxShapes({ piece, left, top, width, height }: Box, { sources }: StripContext): readonly SceneShape[] {
  const place = piece.places[0];
  const known = place ? sources.indexOf(place) : 0;
  const source = known >= 0 ? known : sources.push(place as Place) - 1;
  const [right, bottom] = [left + width, top + height];
  const [x, y] = [left + width / 2, top + height / 2];
  const outlines: Readonly<Partial<Record<Piece['method'], readonly (readonly number[])[]>>> = {
    'once on the diagonal': [[left, top, right, top, left, bottom], [right, top, right, bottom, left, bottom]],
    'twice on the diagonal': [[left, top, right, top, x, y], [right, top, right, bottom, x, y], [right, bottom, left, bottom, x, y], [left, bottom, left, top, x, y]],
  };
  const shapes = outlines[piece.method] ?? [[left, top, right, top, right, bottom, left, bottom]];
  return shapes.map((points) => ({ kind: 'shape', points, fill: piece.fabric.colour, fabric: piece.fabric.name, source }));
}

function waste([left, top, right, bottom]: readonly [number, number, number, number], fabric: string): SceneShape {
  return { kind: 'shape', points: [left, top, right, top, right, bottom, left, bottom], fill: WASTE, fabric, source: 0 };
}

/** A letter on each piece of the first strip of a kind, and the width beside all of them. */
function stripLabels(strip: Strip, start: number, context: Context & { readonly table: Table }): readonly SceneLabel[] {
  const { table, plan, units } = context;
  const own = boxesIn(strip, context).map(({ label, left, top, width, height }) => {
    const size = Math.min(table.letters, 0.7 * height, (0.9 * width) / label.length);
    return at(left + width / 2, start + top + height / 2, table, { text: label, from: 'middle', size, fill: inkOn(plan.fabric.colour) });
  });
  const all = toNumber(strip.width) * strip.count;
  const size = Math.min(table.letters, 0.9 * all);
  const text = `${widthText(strip.width, units)}${strip.count > 1 ? ` × ${strip.count}` : ''}`;
  const beside = at(table.along + table.letters / 2, start + all / 2, table, { text, from: table.turned ? 'middle' : 'left', size, fill: '#000000' });
  return [...own, beside];
}

function at(along: number, down: number, { turned }: Table, label: Omit<SceneLabel, 'x' | 'y'>): SceneLabel {
  return turned ? { x: down, y: along, ...label } : { x: along, y: down, ...label };
}

function widthText(width: Exact, units: UnitSystem): string {
  return formatLength(width, { units });
}

function inkOn(colour: string): string {
  return (lightness(colour) ?? 100) < 55 ? '#ffffff' : '#000000';
}
