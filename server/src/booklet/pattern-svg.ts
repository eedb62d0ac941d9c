/**
 * pattern.svg: every piece at true size for cutting machines, in millimetres: one layer a fabric, nothing but lines to cut. Pieces lie
 * in rows across the usable width (a little more, by the gaps between them), as the cut list cuts them: triangles as their squares give them, templates along their own line.
 */
import { equals, less, toNumber } from '../exact/number.ts';
import type { Piece } from '../cutting/plan.ts';
import { extentOf, movedShape, turnedShape } from '../cutting/template-extent.ts';
import { cutOutline, planeShape, type PlaneShape } from '../cutting/template-outline.ts';
import { coordinate, escapeXml } from '../drawing/markup.ts';
import { pathOf } from '../drawing/path.ts';
import type { Fabric, Rules } from '../model/pattern.ts';
import { UNTITLED, type BookletQuilt, type BookletSource } from './source.ts';

const MM = 25.4;

/** Between pieces, in inches: 2 mm. */
const GAP = 2 / MM;

/** Of one size. */
export function patternSvg({ pattern }: BookletSource, quilt: BookletQuilt): string {
  const fabrics = [...new Map(quilt.plan.pieces.map(({ fabric }) => [fabric.name, fabric])).values()];
  let top = GAP;
  let right = 0;
  const layers = fabrics.map((fabric) => {
    const items = quilt.plan.pieces.filter((piece) => piece.fabric.name === fabric.name).flatMap((piece) => itemsOf(piece, pattern.rules));
    const rows = inRows(items, toNumber(fabric.width));
    const layer = layerOf(fabric, rows.placed, top);
    top += rows.height;
    right = Math.max(right, rows.width);
    return layer;
  });
  const [width, height] = [coordinate((right + GAP) * MM), coordinate(top * MM)];
  const title = [pattern.title ?? UNTITLED, ...(quilt.name === null ? [] : [quilt.name])].join(', ');
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escapeXml(title)}</title>`,
    ...layers,
    '</svg>',
    '',
  ].join('\n');
}

/** Shapes that are laid together, from the origin; how often. */
interface Item {
  readonly shapes: readonly PlaneShape[];
  readonly width: number;
  readonly height: number;
}

function itemsOf(piece: Piece, rules: Rules): readonly Item[] {
  const repeated = (count: number, item: Item): readonly Item[] => Array<Item>(count).fill(item);
  const side = toNumber(piece.cut.width);
  switch (piece.method) {
    case 'once on the diagonal':
      return [...repeated(Math.floor(piece.pieces / 2), pairOfHalves(side)), ...repeated(piece.pieces % 2, itemOf([0, 0, side, 0, 0, side]))];
    case 'twice on the diagonal':
      return repeated(piece.pieces, itemOf([0, side / 2, side / 2, 0, side, side / 2]));
    case 'template':
      return repeated(piece.pieces, templateItem(piece, toNumber(rules.seam)));
    default:
      return repeated(piece.cutCount, rectangleItem(piece));
  }
}

function itemOf(points: readonly number[]): Item {
  return boxed({ points });
}

/** Two halves of a square a little apart, so that each is cut by itself. */
function pairOfHalves(side: number): Item {
  const far = side + GAP * Math.SQRT2;
  const near = GAP * Math.SQRT2;
  return { shapes: [{ points: [0, 0, side, 0, 0, side] }, { points: [far, near, far, far, near, far] }], width: far, height: far };
}

/** The longer side across the fabric, unless it is too long or must lie another way. */
function rectangleItem({ fabric, cut, lie }: Piece): Item {
  const isFlat = lie === undefined ? less(cut.width, cut.height) === !less(fabric.width, cut.height) && !equals(cut.width, cut.height) : lie === 'across';
  const [width, height] = isFlat ? [toNumber(cut.height), toNumber(cut.width)] : [toNumber(cut.width), toNumber(cut.height)];
  return itemOf([0, 0, width, 0, width, height, 0, height]);
}

/** The grain along the selvage. */
function templateItem({ outline, arcs, grain, fabric }: Piece, seam: number): Item {
  const cut = cutOutline(planeShape({ outline, ...(arcs ? { arcs } : {}) }), seam);
  const upright = boxed(turnedShape(cut, grain ? -toNumber(grain) : 0));
  const across = boxed(turnedShape(cut, (grain ? -toNumber(grain) : 0) + 90));
  const width = toNumber(fabric.width);
  return upright.width > width && across.width <= width && !fabric.directional ? across : upright;
}

/** Moved to the origin. */
function boxed(shape: PlaneShape): Item {
  const { left, top, right, bottom } = extentOf(shape);
  return { shapes: [movedShape(shape, -left, -top)], width: right - left, height: bottom - top };
}

interface Rows {
  readonly placed: readonly { readonly shape: PlaneShape; readonly x: number; readonly y: number }[];
  /** With the gap around every piece but that above the first row. */
  readonly width: number;
  readonly height: number;
}

/** The highest first, from left to right, each row as high as its first. */
function inRows(items: readonly Item[], usable: number): Rows {
  const placed: { readonly shape: PlaneShape; readonly x: number; readonly y: number }[] = [];
  let [x, y, high, width] = [0, 0, 0, 0];
  for (const item of [...items].sort((a, b) => b.height - a.height || b.width - a.width)) {
    if (x > 0 && x + item.width > usable) [x, y, high] = [0, y + high + GAP, 0];
    placed.push(...item.shapes.map((shape) => ({ shape, x: x + GAP, y })));
    high = Math.max(high, item.height);
    x += item.width + GAP;
    width = Math.max(width, x);
  }
  return { placed, width, height: y + high + GAP };
}

function layerOf(fabric: Fabric, placed: Rows['placed'], top: number): string {
  const name = escapeXml(fabric.label === '' || fabric.label === fabric.name ? fabric.name : `${fabric.name}: ${fabric.label}`);
  const paths = placed.map(({ shape, x, y }) => `<path d="${pathOf(shape, [MM, 0, 0, MM, x * MM, (y + top) * MM])}"/>`);
  return [`<g id="layer-${escapeXml(fabric.name)}" inkscape:groupmode="layer" inkscape:label="${name}" fill="none" stroke="#000000" stroke-width="0.1">`, ...paths, '</g>'].join('\n');
}
