/**
 * The settings sheet. Where blocks must lie is worked out here anew, in doubles, from what each setting is called in the trade; the
 * edited text is read as a new file.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { severityOf } from '../../../server/src/checks/list.ts';
import { svgOf } from '../../../server/src/drawing/svg.ts';
import { toNumber } from '../../../server/src/exact/number.ts';
import type { Placement, QuiltLayout } from '../../../server/src/geometry/layout.ts';
import { settingsFor, settingsView, settingWriting, type Tried } from '../../../server/src/features/views/settings.ts';
import { WAYS } from '../../../server/src/features/views/setting-ways.ts';
import type { Snapshot } from '../../../server/src/snapshot.ts';
import { quilts, textOf } from '../../geometry/random-quilt.ts';
import { SAMPLES, sampleText, snapshotBeside } from './samples.ts';

/** How a block lies: quarter turns clockwise, after a mirroring from left to right. */
interface Lie {
  readonly quarters: number;
  readonly mirrored: boolean;
}

const upright: Lie = { quarters: 0, mirrored: false };
const turned = (quarters: number): Lie => ({ quarters: quarters % 4, mirrored: false });
const MIRRORED: Lie = { quarters: 0, mirrored: true };
const FLIPPED: Lie = { quarters: 2, mirrored: true };

interface Expected {
  readonly on: 'straight' | 'on_point';
  /** Of the block at a row and column of a setting of so many; undefined where another thing lies. */
  readonly lie: (row: number, column: number, across: number, down: number) => Lie | undefined;
  readonly sashed: 'no' | 'between' | 'around';
  readonly cornerstones: boolean;
  /** On point: what lies in the places between. */
  readonly between?: Lie | 'plain';
}

const STRAIGHT = { on: 'straight', sashed: 'no', cornerstones: false } as const;
const POINT = { on: 'on_point', sashed: 'no', cornerstones: false, lie: () => upright } as const;

/** In the quarter to the upper left a block lies upright; the others are its images about the middle. */
const quarterAt = (row: number, column: number, across: number, down: number): number => (row < down / 2 ? (column < across / 2 ? 0 : 1) : column < across / 2 ? 3 : 2);

const EXPECTED: Readonly<Record<string, Expected>> = {
  straight: { ...STRAIGHT, lie: () => upright },
  alternate: { ...STRAIGHT, lie: (row, column) => ((row + column) % 2 === 0 ? upright : undefined) },
  checkerboard: { ...STRAIGHT, lie: (row, column) => turned((row + column) % 2) },
  turned: { ...STRAIGHT, lie: (row, column) => turned([[0, 1], [3, 2]][row % 2]?.[column % 2] ?? 0) },
  mirrored: { ...STRAIGHT, lie: (row, column) => [[upright, MIRRORED], [FLIPPED, turned(2)]][row % 2]?.[column % 2] },
  barn: { ...STRAIGHT, lie: (...at) => [upright, MIRRORED, turned(2), FLIPPED][quarterAt(...at)] },
  wheel: { ...STRAIGHT, lie: (...at) => turned(quarterAt(...at)) },
  sashed: { ...STRAIGHT, lie: () => upright, sashed: 'between' },
  cornerstones: { ...STRAIGHT, lie: () => upright, sashed: 'between', cornerstones: true },
  framed: { ...STRAIGHT, lie: () => upright, sashed: 'around', cornerstones: true },
  point: { ...POINT, between: upright },
  point_alternate: { ...POINT, between: 'plain' },
  point_turned: { ...POINT, between: turned(1) },
  point_sashed: { ...POINT, between: upright, sashed: 'between', cornerstones: true },
};

test('every setting has its own account here', () => {
  expect(WAYS.map(({ id }) => id)).toEqual(Object.keys(EXPECTED));
  expect(WAYS.length).toBeGreaterThanOrEqual(12);
});

describe.each(SAMPLES)('%s', (name) => {
  const text = sampleText(name);
  const snapshot = snapshotBeside(text);
  const tried = settingsFor(snapshot, {});

  test.each(tried.filter(({ refused }) => refused === undefined).map((each): [string, Tried] => [each.way.name, each]))('%s', (_, each) => {
    expectSetting(snapshot, each);
  });

  test('a setting that is written is the one that is set, and writing it again changes nothing', () => {
    for (const each of tried.filter(({ refused }) => refused === undefined)) {
      const again = snapshotBeside(each.after.document.text);
      expect(settingsView(again, {}).tiles.find(({ id }) => id === each.way.id)?.isSet, each.way.id).toBe(true);
      expect(settingsFor(again, {}).find(({ way }) => way === each.way)?.after.document.text, each.way.id).toBe(each.after.document.text);
    }
  });

  test('each picture of the sheet is that of the text as written', () => {
    const { tiles, scene } = settingsView(snapshot, {});
    expect(tiles.map(({ id }) => id)).toEqual(tried.filter(({ refused }) => refused === undefined).map(({ way }) => way.id));
    const items = tried.filter(({ refused }) => refused === undefined).map(({ after }) => snapshotBeside(after.document.text).shown?.scene.items.length ?? 0);
    expect(scene?.items.length).toBe(items.reduce((sum, count) => sum + count, 0));
  });

  test('a tile writes what was tried, and an unknown one nothing', () => {
    for (const { way, refused, writing } of tried) expect(settingWriting(snapshot, {}, way.id)).toEqual(refused === undefined ? writing : undefined);
    expect(settingWriting(snapshot, {}, 'no such setting')).toBeUndefined();
  });
});

test('an odd count has no middle: what needs one is not offered, and why is said', () => {
  const snapshot = snapshotBeside('fabric ink #22345c\nfabric sand #eadfc8\nblock Buoy 4" {\n  ink sand\n  sand sand\n}\nquilt {\n  straight 3 by 3\n  place { Buoy }\n}\nsize crib 3 by 5\n');
  const { tiles, notes } = settingsView(snapshot, { size: 'crib' });
  expect(tiles.map(({ id }) => id)).not.toContain('barn');
  expect(notes.join(' ')).toMatch(/Not offered: Mirrored about the middle\. .*even counts/);
});

test('a file without a quilt gets one', () => {
  const snapshot = snapshotBeside('fabric ink #22345c\nfabric sand #eadfc8\nblock Buoy 4" {\n  ink sand\n  sand sand\n}\n');
  const tried = settingsFor(snapshot, {});
  expect(tried.every(({ refused }) => refused === undefined)).toBe(true);
  for (const each of tried) expectSetting(snapshot, each);
});

test('a one-line quilt, comments among the statements, and CRLF', () => {
  for (const text of ['quilt { straight 2 by 2 }', 'quilt { // first\n  place { Buoy } // second\n  // third\n  straight 2 by 2\n  border 1" ink // fourth\n}', 'quilt {\r\n  straight 2 by 2\r\n  place {\r\n    Buoy Buoy@90 // quarter\r\n  }\r\n  sashing 1" sand\r\n}']) {
    const snapshot = snapshotBeside(`fabric ink #22345c\nfabric sand #eadfc8\nblock Buoy 4" {\n  ink sand\n  sand sand\n}\n${text}\n`);
    for (const each of settingsFor(snapshot, {})) {
      expect(each.refused, text).toBeUndefined();
      expectSetting(snapshot, each);
    }
  }
});

test('any quilt in any setting', () => {
  fc.assert(fc.property(quilts, fc.constantFrom(...WAYS), (quilt, way) => {
    const snapshot = snapshotBeside(textOf(quilt));
    const each = settingsFor(snapshot, {}).find((one) => one.way === way);
    if (each && each.refused === undefined) expectSetting(snapshot, each);
  }), { numRuns: 40 });
});

/** Reads the edited text as a new file and holds its quilt against the account of the setting. */
function expectSetting(before: Snapshot, { way, after }: Tried): void {
  const again = snapshotBeside(after.document.text);
  const known = new Set(graveIn(before));
  expect(graveIn(again).filter((message) => !known.has(message))).toEqual([]);
  expectKept(before.document.text, after.document.text);
  const { shown } = again;
  if (!shown) throw new Error('no quilt');
  expect(svgOf(shown.scene)).toBe(svgOf((after.shown ?? shown).scene));
  expectLayout(shown.layout, EXPECTED[way.id]);
}

function graveIn({ problems }: Snapshot): readonly string[] {
  return problems.filter(({ rule }) => severityOf(rule) === 'error' && rule !== 'expect-failed').map(({ message }) => message);
}

/** Comments, and every statement that says nothing of the setting. */
function expectKept(before: string, after: string): void {
  const lines = after.split(/\r?\n/).map((line) => line.replace(/\/\/.*/, '').trim());
  for (const comment of before.match(/\/\/[^\r\n]*/g) ?? []) expect(after).toContain(comment);
  for (const [statement] of before.matchAll(/^ *(?:border|backing|binding|batting|quilting|fabric|expect|size|block|import)\b[^\r\n]*/gm)) {
    expect(lines).toContain(statement.replace(/\/\/.*/, '').trim());
  }
}

function expectLayout(layout: QuiltLayout, expected: Expected | undefined): void {
  const { setting } = layout.spec;
  if (!expected || !setting || !('across' in setting)) throw new Error('not a setting of so many by so many');
  expect(setting.kind).toBe(expected.on);
  const placed = layout.placements.filter(({ part }) => part === 'place' || part === 'between');
  const [first] = placed;
  if (!first) throw new Error('no block is placed');
  expect(new Set(placed.map(({ block }) => block.key)).size).toBe(1);
  const sash = toNumber(layout.spec.sashing?.width ?? layout.width) * (layout.spec.sashing ? 1 : 0);
  expect(sash > 0).toBe(expected.sashed !== 'no');
  expect(layout.spec.sashing?.outer ?? false).toBe(expected.sashed === 'around');
  expect(layout.spec.sashing?.cornerstones !== undefined).toBe(expected.cornerstones);
  const room: Room = {
    width: toNumber(layout.width),
    height: toNumber(layout.height),
    left: (toNumber(layout.width) - toNumber(layout.centre.width)) / 2,
    top: (toNumber(layout.height) - toNumber(layout.centre.height)) / 2,
    stepX: toNumber(first.block.width) + sash,
    stepY: toNumber(first.block.height) + sash,
    frame: expected.sashed === 'around' ? sash : 0,
    sash,
  };
  const wanted = expected.on === 'straight' ? onStraight(expected, setting, room) : onPoint(expected, setting, room);
  const found = placed.map(lieOf).sort();
  expect(found).toEqual(wanted.sort());
}

interface Room {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly stepX: number;
  readonly stepY: number;
  readonly frame: number;
  readonly sash: number;
}

interface Count {
  readonly across: number;
  readonly down: number;
}

function onStraight({ lie }: Expected, { across, down }: Count, { left, top, stepX, stepY, frame, sash }: Room): string[] {
  return places(across, down).flatMap(({ row, column }) => {
    const wanted = lie(row, column, across, down);
    const x = left + frame + column * stepX + (stepX - sash) / 2;
    const y = top + frame + row * stepY + (stepY - sash) / 2;
    return wanted ? [said(x, y, linear(wanted, 0))] : [];
  });
}

/** The middles of the blocks are a diagonal of block and sash apart, all of them in the middle of the quilt; the places between half a diagonal beside them. */
function onPoint({ between }: Expected, { across, down }: Count, { width, height, stepX }: Room): string[] {
  const diagonal = stepX * Math.SQRT2;
  const [left, top] = [(width - across * diagonal) / 2, (height - down * diagonal) / 2];
  const main = places(across, down).map(({ row, column }) => said(left + (column + 0.5) * diagonal, top + (row + 0.5) * diagonal, linear(upright, 45)));
  if (between === undefined || between === 'plain') return main;
  return [...main, ...places(across - 1, down - 1).map(({ row, column }) => said(left + (column + 1) * diagonal, top + (row + 1) * diagonal, linear(between, 45)))];
}

function places(across: number, down: number): readonly { readonly row: number; readonly column: number }[] {
  return Array.from({ length: Math.max(across, 0) * Math.max(down, 0) }, (_, i) => ({ row: Math.floor(i / across), column: i % across }));
}

/** Mirrored first, then turned clockwise. */
function linear({ quarters, mirrored }: Lie, degrees: number): readonly number[] {
  const angle = ((quarters * 90 + degrees) * Math.PI) / 180;
  const [cos, sin, sign] = [Math.cos(angle), Math.sin(angle), mirrored ? -1 : 1];
  return [cos * sign, sin * sign, -sin, cos];
}

/** Where the middle of a block lies, and how it lies. */
function lieOf({ block, transform: { xx, xy, yx, yy, dx, dy } }: Placement): string {
  const [a, b, c, d] = [toNumber(xx), toNumber(yx), toNumber(xy), toNumber(yy)];
  const [x, y] = [toNumber(block.width) / 2, toNumber(block.height) / 2];
  return said(a * x + c * y + toNumber(dx), b * x + d * y + toNumber(dy), [a, b, c, d]);
}

function said(x: number, y: number, matrix: readonly number[]): string {
  return [x, y, ...matrix].map((value) => (Math.round(value * 1000) / 1000 + 0).toFixed(3)).join(' ');
}
