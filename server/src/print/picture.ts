/** Outlines and scenes drawn into a PDF page as path operators; each distinct block once, as a form that is used often. */
import type { Matrix } from '../drawing/matrix.ts';
import { apply, determinant, IDENTITY, scaleOf } from '../drawing/matrix.ts';
import { paintsOf } from '../drawing/paints.ts';
import type { Outline } from '../drawing/path.ts';
import type { Scene, SceneBlock, SceneLabel, SceneShape, SceneUse } from '../drawing/scene.ts';
import { widthOf, write, type Pdf } from './pdf.ts';
import { typeset } from './typeset.ts';

export interface Ink {
  /** `#rrggbb`; not filled unless given. */
  readonly fill?: string;
  /** `#rrggbb`; no line unless given. */
  readonly stroke?: string;
  /** Of the line, in points; 0.5 unless given. */
  readonly width?: number;
  /** Lengths of dashes and gaps, in points; a whole line unless given. */
  readonly dash?: readonly number[];
}

/** An upright box, in points. */
export function boxAt(x: number, y: number, width: number, height: number): Outline {
  return { points: [x, y, x + width, y, x + width, y + height, x, y + height] };
}

/** One closed outline; the matrix takes it to points on the open page. Corners are rounded to 1/1000 point. */
export function drawOutline({ doc }: Pdf, outline: Outline, matrix: Matrix = IDENTITY, ink: Ink = {}): void {
  doc.addContent(['q', ...inkOperators(ink), outlineOperators(outline, matrix), paintOperator(ink), 'Q'].join('\n'));
}

/** A run of straight lines, open: x and y in turn, in points. */
export function drawLine({ doc }: Pdf, points: readonly number[], ink: Omit<Ink, 'fill'>): void {
  const corners = Array.from({ length: points.length >> 1 }, (_, i) => `${number(points[2 * i] ?? 0)} ${number(points[2 * i + 1] ?? 0)} ${i === 0 ? 'm' : 'l'}`);
  doc.addContent(['q', ...inkOperators(ink), ...corners, 'S', 'Q'].join('\n'));
}

export interface SceneInk {
  /** Of the seams, in points; none are drawn at 0. A quarter point unless given. */
  readonly seam?: number;
  /** `#rrggbb`; a dark grey unless given. */
  readonly seamColour?: string;
}

/** A scene with its upper left corner at x, y (points) and `scale` points to its unit. */
export function drawScene(pdf: Pdf, scene: Scene, at: { readonly x: number; readonly y: number; readonly scale: number }, { seam = 0.25, seamColour = '#404040' }: SceneInk = {}): void {
  const { doc } = pdf;
  const matrix: Matrix = [at.scale, 0, 0, at.scale, at.x, at.y];
  const operators = ['q', `${colour(seamColour)} RG`, '1 j', `${number(seam)} w`];
  const paint = seam > 0 ? 'B' : 'f';
  const names = scene.blocks.map((block, index) => formOf(pdf, block, { seam: seam / (at.scale * scaleOf(firstUse(scene, index))), paint }));
  for (const run of runsOf(scene.items)) {
    if (run.kind === 'shapes') operators.push(...shapesOperators(run.shapes, matrix, paint));
    else operators.push(...useOperators(run.use, names[run.use.block], matrix));
  }
  doc.addContent([...operators, 'Q'].join('\n'));
  for (const label of scene.labels ?? []) drawLabel(pdf, label, matrix);
}

/** The baseline lies about a third of the letters' size below their middle. */
function drawLabel(pdf: Pdf, { text, x, y, from, size, fill }: SceneLabel, matrix: Matrix): void {
  const [left, middle] = apply(matrix, x, y);
  const points = Math.min(size * scaleOf(matrix), LARGEST_LABEL);
  const label = typeset(text);
  const start = from === 'middle' ? left - widthOf(pdf, label, { size: points }) / 2 : left;
  write(pdf, label, start, middle + points * 0.35, { size: points, colour: fill });
}

/** In points. */
const LARGEST_LABEL = 11;

type Run = { readonly kind: 'shapes'; readonly shapes: SceneShape[] } | { readonly kind: 'use'; readonly use: SceneUse };

/** Shapes that follow each other are painted together. */
function runsOf(items: Scene['items']): readonly Run[] {
  const runs: Run[] = [];
  for (const item of items) {
    const last = runs.at(-1);
    if (item.kind === 'use') runs.push({ kind: 'use', use: item });
    else if (last?.kind === 'shapes') last.shapes.push(item);
    else runs.push({ kind: 'shapes', shapes: [item] });
  }
  return runs;
}

function shapesOperators(shapes: readonly SceneShape[], matrix: Matrix, paint: string): string[] {
  return paintsOf(shapes, (shape) => outlineOperators(shape, matrix)).flatMap(({ fill, outlines }) => [`${colour(fill)} rg`, ...outlines, paint]);
}

function useOperators({ matrix }: SceneUse, name: string | undefined, page: Matrix): string[] {
  return name === undefined ? [] : ['q', `${times(page, matrix).map(factor).join(' ')} cm`, `/${name} Do`, 'Q'];
}

function firstUse(scene: Scene, index: number): Matrix {
  return scene.items.find((item): item is SceneUse => item.kind === 'use' && item.block === index)?.matrix ?? IDENTITY;
}

/** Both as functions of a point: first the second, then the first. */
function times(outer: Matrix, [a, b, c, d, e, f]: Matrix): Matrix {
  const [ox, oy] = apply(outer, e, f);
  const [ax, ay] = apply(outer, a, b);
  const [cx, cy] = apply(outer, c, d);
  return [ax - outer[4], ay - outer[5], cx - outer[4], cy - outer[5], ox, oy];
}

/** A form object (ISO 32000-1, 8.10) for each look of a block in a document; lines and colours are in it, the seams' colour is not. */
function formOf({ doc }: Pdf, block: SceneBlock, { seam, paint }: { readonly seam: number; readonly paint: string }): string {
  const inside = doc as unknown as Drawing;
  const content = [`${factor(seam)} w`, ...shapesOperators(block.shapes, IDENTITY, paint)].join('\n');
  const known = FORMS.get(doc) ?? new Map<string, { readonly name: string; readonly ref: Reference }>();
  FORMS.set(doc, known);
  const form = known.get(content) ?? { name: `Fm${known.size + 1}`, ref: makeForm(inside, block, content) };
  known.set(content, form);
  inside.page.xobjects[form.name] = form.ref;
  return form.name;
}

function makeForm(doc: Drawing, { width, height }: SceneBlock, content: string): Reference {
  const margin = Math.max(width, height) / 20;
  const ref = doc.ref({ Type: 'XObject', Subtype: 'Form', BBox: [-margin, -margin, width + margin, height + margin], Resources: {} });
  ref.end(content);
  return ref;
}

const FORMS = new WeakMap<object, Map<string, { readonly name: string; readonly ref: Reference }>>();

interface Reference {
  end(content: string): void;
}

/** Parts of the writer that its types leave out. */
interface Drawing {
  readonly page: { readonly xobjects: Record<string, Reference> };
  ref(data: Readonly<Record<string, unknown>>): Reference;
}

function inkOperators({ fill, stroke, width = 0.5, dash }: Ink): string[] {
  return [
    ...(fill === undefined ? [] : [`${colour(fill)} rg`]),
    ...(stroke === undefined ? [] : [`${colour(stroke)} RG`, `${number(width)} w`, '1 j']),
    ...(dash ? [`[${dash.map(number).join(' ')}] 0 d`] : []),
  ];
}

function paintOperator({ fill, stroke }: Ink): string {
  if (fill !== undefined) return stroke === undefined ? 'f' : 'B';
  return stroke === undefined ? 'n' : 'S';
}

/** `0 0.5 1` of `#0080ff`. */
function colour(hex: string): string {
  return [1, 3, 5].map((from) => number(parseInt(hex.slice(from, from + 2), 16) / 255)).join(' ');
}

function outlineOperators({ points, arcs }: Outline, matrix: Matrix): string {
  const corners = Array.from({ length: points.length >> 1 }, (_, i) => apply(matrix, points[2 * i] ?? 0, points[2 * i + 1] ?? 0));
  const [first] = corners;
  if (!first || corners.length < 2) return '';
  const scale = scaleOf(matrix) * (determinant(matrix) < 0 ? -1 : 1);
  const edges = corners.map((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? first;
    const radius = (arcs?.[i] ?? 0) * scale;
    if (radius !== 0) return curveOperators(from, to, radius);
    return i === corners.length - 1 ? '' : `${pair(to)} l`;
  });
  return [`${pair(first)} m`, ...edges.filter((edge) => edge !== ''), 'h'].join('\n');
}

type Point = readonly [x: number, y: number];

/** The shorter arc as Bézier curves of at most 45°: off by less than 1/200,000 of the radius (Goldapp 1991). A positive radius bulges to the left of its way, y down. */
function curveOperators(from: Point, to: Point, radius: number): string {
  const [halfX, halfY] = [(to[0] - from[0]) / 2, (to[1] - from[1]) / 2];
  const half = Math.hypot(halfX, halfY);
  if (half === 0) return '';
  const size = Math.max(Math.abs(radius), half);
  const side = Math.sign(radius);
  const apart = Math.sqrt(size * size - half * half) / half;
  const [centreX, centreY] = [from[0] + halfX - side * halfY * apart, from[1] + halfY + side * halfX * apart];
  const start = Math.atan2(from[1] - centreY, from[0] - centreX);
  const sweep = side * 2 * Math.asin(half / size);
  const pieces = Math.max(1, Math.ceil(Math.abs(sweep) / (Math.PI / 4)));
  const step = sweep / pieces;
  const reach = (4 / 3) * Math.tan(step / 4) * size;
  return Array.from({ length: pieces }, (_, i) => {
    const [a, b] = [start + i * step, start + (i + 1) * step];
    const [ax, ay, bx, by] = [centreX + size * Math.cos(a), centreY + size * Math.sin(a), centreX + size * Math.cos(b), centreY + size * Math.sin(b)];
    const end: Point = i === pieces - 1 ? to : [bx, by];
    return `${pair([ax - reach * Math.sin(a), ay + reach * Math.cos(a)])} ${pair([bx + reach * Math.sin(b), by - reach * Math.cos(b)])} ${pair(end)} c`;
  }).join('\n');
}

function pair([x, y]: Point): string {
  return `${number(x)} ${number(y)}`;
}

/** Never −0, never an exponent. */
function number(value: number): string {
  return rounded(value, 1e3);
}

function factor(value: number): string {
  return rounded(value, 1e6);
}

function rounded(value: number, steps: number): string {
  const nearest = Math.round(Math.min(Math.max(value, -1e6), 1e6) * steps) / steps;
  return Math.abs(nearest) < 1e-6 || Number.isNaN(nearest) ? '0' : `${nearest}`;
}
