import { expect, test } from 'vitest';
import { fitted, inPicture, inSight, moved, zoomed } from '../../client/src/preview/view.ts';

const page = { width: 800, height: 600 };
const picture = { width: 60, height: 75 };

test('a fitted picture lies in the middle, whole, with a margin', () => {
  const view = fitted(page, picture);
  expect(view.scale * picture.height).toBeCloseTo(600 - 48);
  expect(view.x + (view.scale * picture.width) / 2).toBeCloseTo(400);
  expect(view.y).toBeCloseTo(24);
});

test('a page without room still gives a view', () => {
  expect(fitted({ width: 10, height: 0 }, picture).scale).toBeGreaterThan(0);
});

test('zooming keeps what lies under the pointer', () => {
  const view = fitted(page, picture);
  const spot = { x: 123, y: 456 };
  const before = inPicture(view, spot);
  const after = inPicture(zoomed(zoomed(view, 3.7, spot), 1 / 1.3, spot), spot);
  expect(after.x).toBeCloseTo(before.x);
  expect(after.y).toBeCloseTo(before.y);
});

test('zooming ends at limits and still keeps the point', () => {
  const view = fitted(page, picture);
  const spot = { x: 10, y: 10 };
  expect(zoomed(view, 1e9, spot).scale).toBe(600);
  expect(zoomed(view, 1e-9, spot).scale).toBe(0.25);
  expect(inPicture(zoomed(view, 1e9, spot), spot).x).toBeCloseTo(inPicture(view, spot).x);
});

test('a picture is never moved out of sight', () => {
  const view = fitted(page, picture);
  for (const by of [{ x: 1e6, y: 0 }, { x: -1e6, y: 0 }, { x: 0, y: 1e6 }, { x: 0, y: -1e6 }]) {
    const { x, y, scale } = moved(view, by, page, picture);
    expect(x).toBeLessThanOrEqual(760);
    expect(x + picture.width * scale).toBeGreaterThanOrEqual(39.9);
    expect(y).toBeLessThanOrEqual(560);
    expect(y + picture.height * scale).toBeGreaterThanOrEqual(39.9);
  }
});

test('a part is brought into sight with the least movement, and not at all when it is in sight', () => {
  const view = { scale: 10, x: 0, y: 0 };
  const part = { x: 5, y: 5, width: 10, height: 10 };
  expect(inSight(view, page, part)).toBe(view);
  expect(inSight({ ...view, x: -100 }, page, part)).toEqual({ scale: 10, x: -50, y: 0 });
  expect(inSight({ ...view, x: 700, y: 500 }, page, part)).toEqual({ scale: 10, x: 650, y: 450 });
  // What is larger than the page begins at its edge.
  expect(inSight({ ...view, scale: 100 }, page, part)).toEqual({ scale: 100, x: -500, y: -500 });
});
