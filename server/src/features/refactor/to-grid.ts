/** Patches with corners as a grid, where seams run through from side to side: rows, columns, halves and corner-to-corner seams. */
import { asFraction, compare, div, key, sub, type Exact } from '../../exact/number.ts';
import { orientation, point, pointKey, samePoint, type Point } from '../../exact/point.ts';
import { boundingBox, clockwise, isUprightRectangle, withoutStraightCorners, type Box } from '../../exact/polygon.ts';
import type { Patch } from '../../geometry/layout.ts';
import type { BlockView, Snapshot } from '../../snapshot.ts';
import { bodyEdit, textIn, type Refactoring } from './edit.ts';

const OF_PATCHES = ['box', 'patch'];

/** Undefined for a block that is no plain list of patches, or that no grid makes. */
export function toGrid(snapshot: Snapshot, { definition, layout }: BlockView): Refactoring | undefined {
  const { statement, parameters } = definition;
  const inside = statement.body?.statements ?? [];
  const { body, findings } = layout.instance;
  if (body.kind !== 'patches' || findings.length > 0 || layout.findings.length > 0 || parameters.some(({ kind }) => kind === 'number')) return undefined;
  if (!statement.body || inside.some(({ node }) => node.kind === 'place_at' || node.kind === 'turned' || node.kind === 'mirrored') || layout.patches.some(({ arcs, grain }) => arcs || grain)) return undefined;
  const patches = layout.patches.filter(({ role }) => role !== 'flipped_corner').map(({ outline, place }) => ({ outline: withoutStraightCorners(clockwise(outline)), name: nameAt(place) }));
  const lines = gridLines(patches, boundingBox(patches.flatMap(({ outline }) => outline)));
  if (!lines) return undefined;
  const others = inside.filter(({ node }) => !OF_PATCHES.includes(node.kind) && node.kind !== 'junk').map((each) => textIn(each, each.node).trim());
  const edit = bodyEdit(snapshot, statement.body, [...lines, ...others]);
  return edit && { title: 'Turn the patches into a grid', kind: 'rewrite', edits: [edit] };
}

interface Named {
  readonly outline: readonly Point[];
  readonly name: string;
}

/** A cell's text, and whether it needs parentheses inside another. */
interface Text {
  readonly text: string;
  readonly isSplit: boolean;
}

function nameAt({ line, from, to }: Patch['place']): string {
  const written = line.text.slice(from, to);
  return /^patch\s+(\S+)/.exec(written)?.[1] ?? written;
}

function gridLines(patches: readonly Named[], whole: Box): readonly string[] | undefined {
  const across = cutsAcross(patches, whole, 'x');
  const down = cutsAcross(patches, whole, 'y');
  const [columns, rows] = [spans(across), spans(down)];
  const cells = rows.map(([top, bottom]) => columns.map(([left, right]) => cellIn(patches, { left, right, top, bottom })?.text));
  const [widths, heights] = [proportions(columns), proportions(rows)];
  if (cells.flat().includes(undefined) || !widths || !heights) return undefined;
  const isEven = [widths, heights].every((each) => new Set(each).size === 1);
  const last = columns.map((_, index) => Math.max(...cells.map((row) => row[index]?.length ?? 0)));
  const texts = cells.map((row) => row.map((cell, index) => (cell ?? '').padEnd(last[index] ?? 0)).join('  ').trimEnd());
  return isEven ? texts : [`grid ${widths.join(' ')} by ${heights.join(' ')}`, ...texts];
}

/** The lines that no patch lies across, both sides included. */
function cutsAcross(patches: readonly Named[], box: Box, axis: 'x' | 'y'): readonly Exact[] {
  const [low, high] = axis === 'x' ? [box.left, box.right] : [box.top, box.bottom];
  const all = new Map(patches.flatMap(({ outline }) => outline.map((corner) => [key(corner[axis]), corner[axis]] as const)));
  const free = [...all.values()].filter((at) => compare(at, low) > 0 && compare(at, high) < 0 && !patches.some(({ outline }) => isCrossed(outline, at, axis)));
  return [low, ...free.sort(compare), high];
}

function isCrossed(outline: readonly Point[], at: Exact, axis: 'x' | 'y'): boolean {
  const sides = outline.map((corner) => compare(corner[axis], at));
  return sides.includes(-1) && sides.includes(1);
}

function spans(lines: readonly Exact[]): readonly (readonly [Exact, Exact])[] {
  return lines.slice(1).map((line, index) => [lines[index] ?? line, line]);
}

/** What lies in a box: one patch, halves or strips of it, two triangles. */
function cellIn(patches: readonly Named[], box: Box): Text | undefined {
  const inside = patches.filter(({ outline }) => liesIn(outline, box));
  const [first] = inside;
  if (inside.length === 1 && first && isUprightRectangle(first.outline)) return { text: first.name, isSplit: false };
  return parts(inside, box, 'x') ?? parts(inside, box, 'y') ?? triangles(inside, box);
}

function liesIn(outline: readonly Point[], { left, right, top, bottom }: Box): boolean {
  return outline.every(({ x, y }) => compare(left, x) <= 0 && compare(x, right) <= 0 && compare(top, y) <= 0 && compare(y, bottom) <= 0);
}

function parts(patches: readonly Named[], box: Box, axis: 'x' | 'y'): Text | undefined {
  const lines = cutsAcross(patches, box, axis);
  if (lines.length < 3) return undefined;
  const pieces = spans(lines);
  const weights = proportions(pieces);
  const cells = pieces.map(([from, to]) => cellIn(patches, axis === 'x' ? { ...box, left: from, right: to } : { ...box, top: from, bottom: to }));
  const known = cells.filter((cell) => cell !== undefined);
  if (!weights || known.length !== cells.length) return undefined;
  const isEven = new Set(weights).size === 1;
  const texts = known.map(({ text, isSplit }, index) => (isSplit ? `(${text})` : text) + (isEven || weights[index] === '1' ? '' : `*${weights[index] ?? ''}`));
  return { text: texts.join(axis === 'x' ? '|' : '-'), isSplit: true };
}

/** Two triangles along a diagonal of the box, each whole or cut once more by the other diagonal. */
function triangles(patches: readonly Named[], { left, right, top, bottom }: Box): Text | undefined {
  const [a, b, c, d] = [point(left, top), point(right, top), point(right, bottom), point(left, bottom)];
  const middle = patches.flatMap(({ outline }) => outline).find((corner) => ![a, b, c, d].some((each) => samePoint(each, corner)));
  const half = (corners: readonly [Point, Point, Point], seam: '/' | '\\', order: readonly [Point, Point] | undefined): string | undefined => {
    const whole = patches.find(({ outline }) => isTriangle(outline, corners));
    if (whole) return whole.name;
    if (!middle || !order) return undefined;
    const [tip] = corners.filter((corner) => !order.some((each) => samePoint(each, corner)));
    const names = order.map((each) => patches.find(({ outline }) => tip && isTriangle(outline, [each, middle, tip]))?.name);
    return names.includes(undefined) ? undefined : `(${names.join(seam)})`;
  };
  const slash = [half([a, b, d], '\\', [d, b]), half([b, c, d], '\\', [d, b])];
  if (!slash.includes(undefined)) return { text: slash.join('/'), isSplit: true };
  const back = [half([a, c, d], '/', [a, c]), half([a, b, c], '/', [a, c])];
  return back.includes(undefined) ? undefined : { text: back.join('\\'), isSplit: true };
}

function isTriangle(outline: readonly Point[], corners: readonly Point[]): boolean {
  if (outline.length !== 3 || corners.length !== 3) return false;
  const [p, q, r] = corners;
  if (!p || !q || !r || orientation(p, q, r) === 0) return false;
  const wanted = new Set(corners.map(pointKey));
  return outline.every((corner) => wanted.has(pointKey(corner)));
}

/** The least whole numbers in the proportions of some spans. */
function proportions(pieces: readonly (readonly [Exact, Exact])[]): readonly string[] | undefined {
  const lengths = pieces.map(([from, to]) => sub(to, from));
  const [unit] = lengths;
  if (!unit) return undefined;
  const known = lengths.map((each) => ratio(each, unit)).filter((each) => each !== undefined);
  if (known.length !== lengths.length) return undefined;
  const over = known.reduce((all, { d }) => (all * d) / divisor(all, d), 1n);
  const whole = known.map(({ n, d }) => (n * over) / d);
  const shared = whole.reduce(divisor, 0n);
  return shared === 0n ? undefined : whole.map((each) => `${each / shared}`);
}

function ratio(a: Exact, b: Exact): { readonly n: bigint; readonly d: bigint } | undefined {
  return asFraction(div(a, b));
}

function divisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : divisor(b, a % b);
}
