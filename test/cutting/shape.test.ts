/** The shape of a patch and the size of its cut, against what others print. */
import { describe, expect, test } from 'vitest';
import { SQRT2, ZERO, add, div, fraction, mul, neg, sub, toNumber, type Exact } from '../../server/src/exact/number.ts';
import type { Point } from '../../server/src/exact/point.ts';
import { applyToAll, turn } from '../../server/src/exact/transform.ts';
import type { PatchRole } from '../../server/src/geometry/layout.ts';
import { cuttingOf, type Cuttable, type Cutting } from '../../server/src/cutting/shape.ts';
import { DIAGONALS, FLIPPED, GEESE, HALF_SQUARE, QUARTER_SQUARE, SETTING } from './triangle-tables.ts';
import { METRIC, RULES, inches, n, times } from './layouts.ts';

function cut(outline: readonly Point[], role: PatchRole = 'patch', more: Partial<Cuttable> = {}, float = ZERO): Cutting {
  const found = cuttingOf({ outline, role, ...more }, { ...RULES, float });
  if (!found) throw new Error('no cutting');
  return found;
}

function points(...corners: readonly (readonly [Exact, Exact])[]): Point[] {
  return corners.map(([x, y]) => ({ x, y }));
}

/** Legs along the axes. */
function halfSquare(leg: Exact): Point[] {
  return points([ZERO, ZERO], [leg, ZERO], [ZERO, leg]);
}

/** Long side along the top. */
function quarterSquare(long: Exact): Point[] {
  return points([ZERO, ZERO], [long, ZERO], [div(long, fraction(2)), div(long, fraction(2))]);
}

function rectangle(width: Exact, height: Exact): Point[] {
  return points([ZERO, ZERO], [width, ZERO], [width, height], [ZERO, height]);
}

describe('triangles as others print them', () => {
  test.each(HALF_SQUARE)('half-square triangle %s is cut %s', (finished, printed) => {
    const found = cut(halfSquare(n(finished)));
    expect([found.shape, inches(found.cut.width), found.piecesPerCut, found.method]).toEqual(['half-square triangle', printed, 2, 'once on the diagonal']);
    expect(inches(found.finished.width)).toBe(finished);
  });

  test.each(QUARTER_SQUARE)('quarter-square triangle %s is cut %s', (finished, printed) => {
    const found = cut(quarterSquare(n(finished)));
    expect([found.shape, inches(found.cut.width), found.piecesPerCut, found.method]).toEqual(['quarter-square triangle', printed, 4, 'twice on the diagonal']);
  });

  test.each(GEESE)('flying geese %s by %s', (height, width, small, large) => {
    expect(inches(cut(halfSquare(n(height))).cut.width)).toBe(small);
    expect(inches(cut(quarterSquare(n(width))).cut.width)).toBe(large);
  });

  test.each(FLIPPED)('flipped corner %s is cut %s', (finished, printed) => {
    const found = cut(halfSquare(n(finished)), 'flipped_corner');
    expect([found.shape, inches(found.cut.width), found.piecesPerCut]).toEqual(['square', printed, 1]);
  });

  test.each(['1', '2 1/2', '3', '5', '7 3/4', '12'])('common practice for a finished %s: + 1/2", + 7/8", + 1 1/4"', (text) => {
    const size = n(text);
    expect(inches(cut(rectangle(size, size)).cut.width)).toBe(inches(add(size, n('1/2'))));
    expect(inches(cut(halfSquare(size)).cut.width)).toBe(inches(add(size, n('7/8'))));
    expect(inches(cut(quarterSquare(size)).cut.width)).toBe(inches(add(size, n('1 1/4'))));
  });
});

describe('setting triangles', () => {
  /** A side triangle below the quilt's top edge: long side B√2. */
  const side = (block: Exact): Point[] => quarterSquare(mul(block, SQRT2));
  const corner = (block: Exact): Point[] => halfSquare(div(block, SQRT2));

  test.each(SETTING)('a %s block: side %s, corner %s', (block, sidePrinted, cornerPrinted) => {
    const [aside, acorner] = [cut(side(n(block)), 'side_triangle'), cut(corner(n(block)), 'corner_triangle')];
    expect([aside.shape, inches(aside.cut.width), aside.piecesPerCut, inches(aside.finished.width)]).toEqual(['side setting triangle', sidePrinted, 4, block]);
    expect([acorner.shape, inches(acorner.cut.width), acorner.piecesPerCut, inches(acorner.finished.width)]).toEqual(['corner setting triangle', cornerPrinted, 2, block]);
  });

  test.each(DIAGONALS)('a %s block before rounding: + 1.2071 and + 0.8536', (block, diagonal, half) => {
    expect(toNumber(cut(side(n(block)), 'side_triangle').exactCut.width)).toBeCloseTo(diagonal + 1.207107, 5);
    expect(toNumber(cut(corner(n(block)), 'corner_triangle').exactCut.width)).toBeCloseTo(half + 0.853553, 5);
  });

  test.each([0, 6, 12, 18])('on every edge of the quilt, turned by %i · 15°', (steps) => {
    expect(inches(cut(applyToAll(side(n(6)), turn(steps)), 'side_triangle').cut.width)).toBe('9 3/4');
    expect(inches(cut(applyToAll(corner(n(6)), turn(steps)), 'corner_triangle').cut.width)).toBe('5 1/8');
  });

  describe('blocks that float by 1": the triangle around what is left when a tip is cut off', () => {
    const half = div(n(6), SQRT2);
    const deep = add(half, n(1));
    const [sideSquare, cornerSquare] = [add(times(deep, 2), mul(n('1/4'), add(fraction(2), times(SQRT2, 2)))), add(add(half, n(2)), mul(n('1/4'), add(fraction(2), SQRT2)))];

    test.each([
      ['both tips cut off straight', points([ZERO, ZERO], [times(half, 2), ZERO], [times(half, 2), n(1)], [half, deep], [ZERO, n(1)])],
      ['one tip cut off on the slant', points([n(-1), ZERO], [sub(times(half, 2), n(1)), ZERO], [times(half, 2), n(1)], [half, deep])],
    ])('side, %s', (_, outline) => {
      expect(cut(outline, 'side_triangle', {}, n(1))).toMatchObject({ shape: 'side setting triangle', finished: { width: n(6) }, exactCut: { width: sideSquare } });
    });

    test.each([
      ['straight', points([ZERO, ZERO], [deep, ZERO], [deep, n(1)], [n(1), deep], [ZERO, deep])],
      ['on the slant', points([ZERO, ZERO], [half, ZERO], [deep, n(1)], [n(1), deep], [ZERO, half])],
      ['not at all', halfSquare(add(half, n(2)))],
    ])('corner, its tips cut off %s', (_, outline) => {
      expect(cut(outline, 'corner_triangle', {}, n(1))).toMatchObject({ shape: 'corner setting triangle', finished: { width: n(6) }, exactCut: { width: cornerSquare } });
    });
  });

  test('without an edge along the quilt\'s it is no setting triangle', () => {
    expect(cut(applyToAll(side(n(6)), turn(1)), 'side_triangle').shape).not.toContain('setting');
  });
});

describe('other shapes', () => {
  test('a square on point is cut along its own edges', () => {
    const found = cut(applyToAll(rectangle(n(3), n(3)), turn(3)));
    expect([found.shape, inches(found.cut.width), inches(found.finished.width)]).toEqual(['square', '3 1/2', '3']);
  });

  test('the middle of a square in a square of 6" is cut 4 3/4" (economy block)', () => {
    const found = cut(points([n(3), ZERO], [n(6), n(3)], [n(3), n(6)], [ZERO, n(3)]));
    expect([found.shape, inches(found.cut.width)]).toEqual(['square', '4 3/4']);
    expect(toNumber(found.exactCut.width)).toBeCloseTo(3 * Math.SQRT2 + 0.5, 12);
  });

  test('a rectangle keeps its width and height', () => {
    const found = cut(rectangle(n(2), n(4)));
    expect([found.shape, inches(found.cut.width), inches(found.cut.height)]).toEqual(['rectangle', '2 1/2', '4 1/2']);
  });

  test('a corner that runs straight on is none', () => {
    expect(cut(points([ZERO, ZERO], [n(1), ZERO], [n(2), ZERO], [n(2), n(2)], [ZERO, n(2)])).shape).toBe('square');
  });

  test('a square whose side is √5: on the ruler, never too small', () => {
    const found = cut(points([n(1), ZERO], [n(3), n(1)], [n(2), n(3)], [ZERO, n(2)]));
    expect([found.shape, inches(found.cut.width)]).toEqual(['square', '2 3/4']);
    expect(toNumber(found.exactCut.width)).toBeGreaterThanOrEqual(Math.sqrt(5) + 0.5 - 1e-12);
  });

  test('a right triangle with uneven legs, a diamond and a slanted strip are templates', () => {
    const half = points([ZERO, ZERO], [n(2), ZERO], [ZERO, n(4)]);
    const slope = div(n(3), SQRT2);
    const diamond = points([slope, ZERO], [add(slope, n(3)), ZERO], [n(3), slope], [ZERO, slope]);
    expect([cut(half).shape, cut(diamond).shape]).toEqual(['template', 'template']);
    // Along the edges the allowance is s, at a corner that stands alone at most s√2.
    expect(toNumber(cut(half).exactCut.width)).toBeCloseTo(2 + 0.25 + 0.25 * Math.SQRT2, 12);
    expect(toNumber(cut(diamond).exactCut.height)).toBeCloseTo(3 / Math.SQRT2 + 0.5, 12);
    expect(toNumber(cut(diamond).exactCut.width)).toBeCloseTo(3 / Math.SQRT2 + 3 + 0.5 * Math.SQRT2, 12);
  });

  test('a quarter circle: the box of its corners, with a seam on each side', () => {
    const fan = cut(points([ZERO, ZERO], [n(3), ZERO], [ZERO, n(3)]), 'patch', { arcs: [undefined, n(3), undefined] });
    expect([fan.shape, inches(fan.cut.width), inches(fan.cut.height)]).toEqual(['template', '3 1/2', '3 1/2']);
  });

  test('an arc that bulges past its corners widens the box', () => {
    const half = cut(points([ZERO, ZERO], [n(4), ZERO], [n(4), n(1)], [ZERO, n(1)]), 'patch', { arcs: [n(2), undefined, undefined, undefined] });
    expect([toNumber(half.finished.width), toNumber(half.finished.height)]).toEqual([4, 3]);
    const flat = cut(points([ZERO, ZERO], [n(4), ZERO], [n(4), n(1)], [ZERO, n(1)]), 'patch', { arcs: [n(3), undefined, undefined, undefined] });
    expect(toNumber(flat.finished.height)).toBeCloseTo(1 + 3 - Math.sqrt(5), 5);
    expect(toNumber(flat.finished.height)).toBeGreaterThanOrEqual(1 + 3 - Math.sqrt(5));
    const hollow = cut(points([ZERO, ZERO], [n(4), ZERO], [n(4), n(3)], [ZERO, n(3)]), 'patch', { arcs: [n(-2), undefined, undefined, undefined] });
    expect(toNumber(hollow.finished.height)).toBe(3);
  });

  test('no area, no piece', () => {
    expect(cuttingOf({ outline: points([ZERO, ZERO], [n(1), ZERO], [n(2), ZERO]), role: 'patch' }, RULES)).toBeUndefined();
    expect(cuttingOf({ outline: [], role: 'patch' }, RULES)).toBeUndefined();
  });
});

describe('the grain decides', () => {
  test('a fixed grain turns a half-square triangle into a quarter-square one, and back', () => {
    expect(cut(halfSquare(n(3)), 'patch', { grain: n(45) }).shape).toBe('quarter-square triangle');
    expect(cut(quarterSquare(n(3)), 'patch', { grain: n(45) }).shape).toBe('half-square triangle');
    expect(cut(halfSquare(n(3)), 'patch', { grain: n(90) }).shape).toBe('half-square triangle');
    expect(cut(halfSquare(n(3)), 'patch', { grain: n(30) }).shape).toBe('template');
  });

  test('a square on its own grain stays one, on another it is a template', () => {
    expect(cut(rectangle(n(3), n(3)), 'patch', { grain: neg(n(90)) }).shape).toBe('square');
    const turned = cut(rectangle(n(3), n(3)), 'patch', { grain: n(45) });
    expect([turned.shape, toNumber(turned.finished.width)]).toEqual(['template', toNumber(mul(n(3), SQRT2))]);
  });

  test('a grain outside the field is cut from a square that holds the shape at any turn', () => {
    const found = cut(rectangle(n(3), n(4)), 'patch', { grain: n(7) });
    expect(toNumber(found.exactCut.width)).toBeGreaterThanOrEqual(Math.hypot(3.5, 4.5));
  });
});

describe('the cut holds the patch and its seam allowance', () => {
  /** In doubles, by offsetting every edge and meeting the neighbours: another way to the same squares. */
  function grownArea(outline: readonly Point[], seam: number): number {
    const corners = outline.map(({ x, y }) => [toNumber(x), toNumber(y)] as const);
    const at = (i: number): readonly [number, number] => corners[(i + corners.length) % corners.length] ?? [0, 0];
    const grown = corners.map((corner, i) => {
      const [before, after] = [unit(at(i - 1), corner), unit(corner, at(i + 1))];
      const [one, two] = [[before[1], -before[0]], [after[1], -after[0]]] as const;
      const reach = seam / (1 + one[0] * two[0] + one[1] * two[1]);
      return [corner[0] + reach * (one[0] + two[0]), corner[1] + reach * (one[1] + two[1])] as const;
    });
    return grown.reduce((total, [x, y], i) => {
      const next = grown[(i + 1) % grown.length] ?? [0, 0];
      return total + (x * next[1] - y * next[0]) / 2;
    }, 0);
  }

  function unit(from: readonly [number, number], to: readonly [number, number]): readonly [number, number] {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  }

  test.each(['1', '2', '3 3/4', '8'])('the square is just what its pieces of %s take', (text) => {
    for (const outline of [halfSquare(n(text)), quarterSquare(n(text)), rectangle(n(text), n(3))]) {
      for (const steps of [0, 3, 6, 17]) {
        const turned = applyToAll(outline, turn(steps));
        const { exactCut, piecesPerCut } = cut(turned, 'patch', steps === 17 ? { grain: n(255) } : {});
        expect(grownArea(turned, 0.25) * piecesPerCut).toBeCloseTo(toNumber(mul(exactCut.width, exactCut.height)), 9);
      }
    }
  });
});

describe('metric', () => {
  test('10 cm with 0.75 cm seams: 11.5, 12.6, 13.7 cm on the millimetre', () => {
    const size = div(fraction(1000), fraction(254));
    const centimetres = (outline: readonly Point[]): number => toNumber(mul(cuttingOf({ outline, role: 'patch' }, METRIC)?.cut.width ?? ZERO, n('2.54')));
    expect(centimetres(rectangle(size, size))).toBe(11.5);
    expect(centimetres(halfSquare(size))).toBe(12.6);
    expect(centimetres(quarterSquare(size))).toBe(13.7);
  });
});
