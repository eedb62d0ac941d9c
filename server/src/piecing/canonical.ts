/**
 * When is one part of a block another one, turned? A part is read from a corner of one of its patches, along the edge there: each
 * point by its products with that edge, which no turn changes. The least of the readings from the corners that come into question
 * (those of its rarest patches) is its key. Mirror images have other keys.
 */
import { key, sign } from '../exact/number.ts';
import type { Exact } from '../exact/number.ts';
import { cross, dot, minus, orientation, pointKey, squaredDistance } from '../exact/point.ts';
import type { Point } from '../exact/point.ts';
import { withoutStraightCorners } from '../exact/polygon.ts';
import { groupedBy } from '../text/grouped.ts';
import { across } from './region.ts';
import type { SeamMap, Shape } from './map.ts';

/** A shape in its colour, with the corners that are sewn over it. */
export interface Coloured extends Shape {
  readonly fabric: string;
  readonly over: readonly Coloured[];
}

export interface Reading {
  readonly key: string;
  /** The patches in an order that matches that of every part with the same key. */
  readonly order: readonly number[];
}

/**
 * For each shape a number that shapes share when one, turned and moved, is the other, in the same fabric: in any block. Others may
 * share it by chance, so it only says where a closer look is worth while.
 */
export function kindsOf(shapes: readonly Coloured[]): number[] {
  const corners = new Map<string, string>();
  return shapes.map((shape) => hashOf([shape, ...shape.over].map((each) => `${each.fabric} ${leastReading(each, corners)}`).join(' over ')));
}

/** The same for parts made of the same kinds of patches, in whatever order and place. */
export function printOf(kinds: readonly number[], patches: readonly number[]): string {
  let [sum, mix] = [0, 0];
  for (const patch of patches) {
    const kind = kinds[patch] ?? 0;
    sum += kind;
    mix = (mix + mixed(kind, 3)) | 0;
  }
  return `${patches.length} ${sum} ${mix}`;
}

/** FNV-1a, 32 bits. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** Reads parts of a map, given by the indices of their shapes. */
export function reader(map: SeamMap, shapes: readonly Coloured[], kinds: readonly number[]): (patches: readonly number[]) => Reading {
  const plain = shapes.map((shape) => ({ ...shape, outline: cornersOf(shape) }));
  return (patches) => {
    const starts = rarest(map, kinds, patches).flatMap((patch) => startsAt(plain[patch]));
    const readings = starts.map((start) => readFrom(start, plain, patches));
    return readings.reduce((least, reading) => (reading.key < least.key ? reading : least), readings[0] ?? { key: '', order: patches });
  };
}

function cornersOf({ outline, arcs }: Shape): readonly Point[] {
  return arcs?.some((radius) => radius !== undefined) === true ? outline : withoutStraightCorners(outline);
}

/** The reading of a shape by itself: side lengths, angles and bends, from the corner that makes it least. */
function leastReading(shape: Coloured, known: Map<string, string>): string {
  const corners = cornersOf(shape);
  const n = corners.length;
  const parts = corners.map((a, i) => {
    const [b, c] = [corners[(i + 1) % n] ?? a, corners[(i + 2) % n] ?? a];
    const name = `${pointKey(minus(b, a))} ${pointKey(minus(c, b))}`;
    const reading = known.get(name) ?? `${key(squaredDistance(a, b))} ${key(dot(minus(b, a), minus(c, b)))} ${orientation(a, b, c)}`;
    known.set(name, reading);
    return reading + bend(shape.arcs?.[i]);
  });
  return rotations(parts).reduce((least, reading) => (reading < least ? reading : least));
}

function bend(radius: Exact | undefined): string {
  return radius === undefined || sign(radius) === 0 ? '' : ` bent ${key(radius)}`;
}

function rotations(parts: readonly string[]): string[] {
  if (parts.every((part) => part === parts[0])) return [parts.join(';')];
  return parts.map((_, i) => [...parts.slice(i), ...parts.slice(0, i)].join(';'));
}

/** The patches of the rarest kind, told apart by their neighbours within the part. */
function rarest(map: SeamMap, kinds: readonly number[], patches: readonly number[]): readonly number[] {
  const inside = new Set(patches);
  let colours = new Map(patches.map((patch) => [patch, mixed(kinds[patch] ?? 0, 1)]));
  for (let round = 0; round < 2; round += 1) {
    colours = new Map(patches.map((patch) => [patch, mixed(colours.get(patch) ?? 0, around(map, colours, { patch, inside }))]));
  }
  const classes = [...groupedBy(patches, (patch) => colours.get(patch) ?? 0)].sort(([a, some], [b, others]) => some.length - others.length || a - b);
  return classes[0]?.[1] ?? patches;
}

function around(map: SeamMap, colours: ReadonlyMap<number, number>, { patch, inside }: { readonly patch: number; readonly inside: ReadonlySet<number> }): number {
  let sum = 0;
  for (const piece of map.around[patch] ?? []) {
    const other = across(map, piece, patch);
    if (inside.has(other)) sum = (sum + mixed(colours.get(other) ?? 0, 7)) | 0;
  }
  return sum;
}

function mixed(a: number, b: number): number {
  const x = Math.imul(a ^ (b + 0x9e3779b9), 0x85ebca6b);
  return Math.imul(x ^ (x >>> 13), 0xc2b2ae35) | 0;
}

interface Start {
  readonly from: Point;
  readonly along: Point;
}

function startsAt(shape: Coloured | undefined): Start[] {
  const corners = shape?.outline ?? [];
  return corners.map((from, i) => ({ from, along: minus(corners[(i + 1) % corners.length] ?? from, from) }));
}

function readFrom(start: Start, shapes: readonly Coloured[], patches: readonly number[]): Reading {
  const known = new Map<Point, string>();
  const read = (p: Point): string => {
    const text = known.get(p) ?? readPoint(start, p);
    known.set(p, text);
    return text;
  };
  const readShape = (shape: Coloured | undefined): string => {
    if (!shape) return '';
    const turns = rotations(shape.outline.map((p, i) => read(p) + bend(shape.arcs?.[i])));
    return [shape.fabric, turns.reduce((least, turn) => (turn < least ? turn : least)), ...shape.over.map(readShape)].join(' ');
  };
  const lines = patches.map((patch) => ({ patch, text: readShape(shapes[patch]) })).sort((a, b) => (a.text < b.text ? -1 : 1));
  return { key: lines.map((line) => line.text).join('|'), order: lines.map((line) => line.patch) };
}

function readPoint({ from, along }: Start, p: Point): string {
  const v = minus(p, from);
  return `${key(dot(v, along))} ${key(cross(along, v))}`;
}
