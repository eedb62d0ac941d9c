/** Units: what is one unit and what is not, how many are made, what they are called. */
import { describe, expect, test } from 'vitest';
import { MIRROR, about, applyToAll, turn } from '../../server/src/exact/transform.ts';
import { formatLength } from '../../server/src/exact/length.ts';
import type { Patch } from '../../server/src/geometry/layout.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import { sewingOf } from '../../server/src/piecing/sewing.ts';
import type { QuiltSewing } from '../../server/src/piecing/sewing.ts';
import { unitsOf } from '../../server/src/piecing/units.ts';
import type { Unit } from '../../server/src/piecing/units.ts';
import { KINDS, random } from '../geometry/partitions.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { INK, RUST, SAND, block, number, patchOf, squares } from './layouts.ts';

const FABRICS = 'fabric ink #22345c\nfabric rust #a4502e\nfabric sand #eadfc8\n';

describe('names', () => {
  test.each([
    ['ink/sand', 'half-square triangle'],
    ['(ink\\sand)/(rust\\ink)', 'hourglass'],
    ['(ink\\sand)/rust', 'half-and-quarters'],
    ['(ink|sand)-(sand|ink)', 'four-patch'],
    ['ink|sand', 'strip pair'],
    ['ink|sand|rust', 'strip set'],
    ['nine_patch(ink, sand)', 'nine-patch'],
    ['square_in_square(ink, sand)', 'square in a square'],
    ['snowball(ink, sand)', 'snowball'],
    ['drunkards_path(ink, sand)', "drunkard's path"],
  ])('%s is a %s', (cell, name) => {
    const [unit] = wholes(`${FABRICS}block Any 6" {\n  ${cell}\n}\nquilt {\n  straight 1 by 1\n  place { Any }\n}\n`);
    expect([unit?.name, unit?.is]).toEqual([name, 'block']);
  });

  test.each([
    ['goose(ink, sand)', 'flying goose'],
    ['half_rectangle(ink, sand)', 'half-rectangle triangle'],
    ['ink|sand', 'two-patch'],
  ])('%s, twice as wide as high, is a %s', (cell, name) => {
    const [unit] = wholes(`${FABRICS}block Any 6" by 3" {\n  ${cell}\n}\nquilt {\n  straight 1 by 1\n  place { Any }\n}\n`);
    expect(unit?.name).toBe(name);
  });

  test('a goose with corner squares is a goose, a square with one corner has its own name', () => {
    const goose = wholes(`${FABRICS}block Any 6" by 3" {\n  ink\n  corner sand 3" top_left top_right\n}\nquilt {\n  straight 1 by 1\n  place { Any }\n}\n`);
    expect(goose[0]?.name).toBe('flying goose');
    const corner = wholes(`${FABRICS}block Any 6" {\n  ink\n  corner sand 2" top_left\n}\nquilt {\n  straight 1 by 1\n  place { Any }\n}\n`);
    expect(corner[0]?.name).toBe('snowball corner');
  });
});

describe('counts', () => {
  test('over the whole quilt, whatever the block and the turn', () => {
    const sewing = sewn(`${FABRICS}block Shoo 6" {
  ink/sand  sand  sand\\ink
  sand      ink   sand
  ink\\sand  sand  sand/ink
}
block Small 2" {
  sand\\ink
}
quilt {
  straight 4 by 3
  place {
    Shoo Shoo
  }
}
`);
    expect(lines(sewing)).toContain('48 half-square triangle 2" by 2" of 2 patches');
    expect(lines(sewing)).toContain('12 row of squares 6" by 2" of 3 patches');
    // The upper and the lower row are one unit, turned.
    expect(sewing.units.units.filter((unit) => unit.patches.length === 5).map((unit) => unit.count)).toEqual([24]);
  });

  test('a unit that two blocks share is counted in both', () => {
    const sewing = sewn(`${FABRICS}block One 4" {\n  ink/sand sand\n  sand sand\\ink\n}\nblock Two 4" {\n  ink sand\\ink\n  ink ink\n}\nquilt {\n  straight 2 by 1\n  place { One Two }\n}\n`);
    const [half] = sewing.units.units.filter((unit) => unit.name === 'half-square triangle');
    expect(half?.count).toBe(3);
    expect(half?.uses.map(({ layout, times }) => `${times} in ${layout.instance.name}`)).toEqual(['2 in One', '1 in Two']);
  });

  test('mirror images are two units', () => {
    const halves = (cells: string): number[] =>
      sewn(`${FABRICS}block Any 8" by 4" {\n  ${cells}\n}\nquilt {\n  straight 1 by 1\n  place { Any }\n}\n`)
        .units.units.filter((unit) => unit.patches.length === 3)
        .map((unit) => unit.count);
    expect(halves('(ink\\rust)/sand  ((ink\\rust)/sand)@180')).toEqual([2]);
    expect(halves('(ink\\rust)/sand  ((ink\\rust)/sand)@mirror')).toEqual([1, 1]);
  });

  test('what a unit is sewn from', () => {
    const { units } = sewn(`${FABRICS}block Nine 6" {\n  ink sand ink\n  sand ink sand\n  ink sand ink\n}\nquilt {\n  straight 1 by 1\n  place { Nine }\n}\n`);
    expect(units.units.map((unit) => unit.parts.map((part) => `${part.count} ${part.kind}`).join(', '))).toEqual(['2 patch, 1 patch', '2 patch, 1 patch', '2 unit, 1 unit']);
    expect(units.units.map((unit) => unit.count)).toEqual([2, 1, 1]);
  });
});

describe('laws', () => {
  test.each(['guillotine', 'triangles', 'triangleRows'] as const)('turned by any multiple of 15°, two copies in one quilt: the same unit, sewn alike inside: %s', (kind) => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const { patches } = KINDS[kind](random(seed));
      const motion = about({ x: number(1), y: number(2) }, turn(seed % 24));
      const outlines = patches.map((outline, i) => patchOf(outline, { fabric: [INK, SAND, RUST][i % 3] ?? INK }));
      const turned = outlines.map((patch) => ({ ...patch, outline: applyToAll(patch.outline, motion) }));
      const whole = unitsOf([made(outlines), made(turned)]).units.filter((unit) => unit.patches.length === outlines.length);
      expect([seed, whole.map((unit) => unit.count)]).toEqual([seed, outlines.length === 1 ? [] : [2]]);
    }
  });

  test.each(['guillotine', 'triangles', 'pinwheels', 'octagons'] as const)('turned or mirrored, as many seams, corners set in and partial seams: %s', (kind) => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const { patches } = KINDS[kind](random(seed));
      const plain = patches.map((outline) => patchOf(outline));
      const moved = [turn(seed % 24), MIRROR].map((motion) => patches.map((outline) => patchOf(applyToAll(outline, motion))));
      const counts = [plain, ...moved].map((list) => {
        const plan = assemble(list)?.plan;
        return plan && [plan.seams.length, plan.setIn, plan.partial];
      });
      expect([seed, counts[1], counts[2]]).toEqual([seed, counts[0], counts[0]]);
    }
  });

  test('turned upside down, the same units', () => {
    for (let seed = 1; seed <= 80; seed += 1) {
      const { patches } = KINDS.guillotine(random(seed));
      const outlines = patches.map((outline, i) => patchOf(outline, { fabric: [INK, SAND][i % 2] ?? INK }));
      const turned = outlines.map((patch) => ({ ...patch, outline: applyToAll(patch.outline, turn(12)) }));
      const { units } = unitsOf([made(outlines), made(turned)]);
      expect([seed, units.every((unit) => unit.count % 2 === 0)]).toEqual([seed, true]);
    }
  });

  test('copies nested in one block, turned each way, are sewn alike', () => {
    const sewing = sewn(`${FABRICS}block Part {\n  ink/sand rust\n  sand ink\n  rust sand\\ink\n}\nblock Any 12" by 18" {\n  Part Part@180\n  Part@180 Part\n}\nquilt {\n  straight 1 by 1\n  place { Any }\n}\n`);
    expect(sewing.units.units.filter((unit) => unit.patches.length === 8).map((unit) => unit.count)).toEqual([4]);
    expect(sewing.units.units.filter((unit) => unit.patches.length < 8).every((unit) => unit.count % 4 === 0)).toBe(true);
  });

  test('plain squares of one fabric: rows are one unit', () => {
    const { units } = unitsOf([made(squares('aaaa', 'aaaa', 'aaaa'))]);
    expect(units.map((unit) => `${unit.count} ${unit.name ?? ''}`)).toEqual(['3 row of squares', '1 checkerboard']);
  });
});

function sewn(text: string): QuiltSewing {
  const snapshot = snapshotOfText(text);
  const layout = snapshot.quilts[0]?.layout;
  if (!layout || snapshot.hasErrors) throw new Error(snapshot.problems.map((problem) => problem.message).join('\n'));
  return sewingOf(layout, snapshot.pattern.rules);
}

function wholes(text: string): Unit[] {
  return sewn(text).units.units.filter((unit) => unit.is === 'block');
}

function lines({ units }: QuiltSewing): string[] {
  return units.units.map(({ count, name, size, patches }) => {
    const sides = size ? [size.width, size.height].map((side) => formatLength(side, { units: 'inches' })).join(' by ') : '';
    return `${count} ${name ?? ''} ${sides} of ${patches.length} patches`;
  });
}

function made(patches: readonly Patch[]): Parameters<typeof unitsOf>[0][number] {
  const assembled = assemble(patches);
  if (!assembled) throw new Error('no plan');
  return { layout: block('Any', 1, 1, patches), count: 1, assembled };
}
