/** Which pieces one template serves, how many are turned over, and where its notches are. */
import { describe, expect, test } from 'vitest';
import { templatesOf, type Template } from '../../server/src/cutting/templates.ts';
import { formOf, poseOf } from '../../server/src/cutting/template-pose.ts';
import { fraction, toNumber } from '../../server/src/exact/number.ts';
import { area, backwards, clockwise, shapeKey } from '../../server/src/exact/polygon.ts';
import { about, applyToAll, compose, MIRROR, turn } from '../../server/src/exact/transform.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { guillotine, random, triangleRows, triangles, type Shape } from '../geometry/partitions.ts';
import traditional from '../../server/library/traditional.quilt';

describe('shapes that lie on each other', () => {
  test('moved, turned and turned over, random shapes keep their key and know their side', () => {
    let mirrorImages = 0;
    for (let seed = 1; seed <= 150; seed += 1) {
      const r = random(seed);
      const patch = clockwise(r.pick(r.pick([guillotine, triangles, triangleRows])(r).patches));
      const start = r.below(patch.length);
      const shifted = [...patch.slice(start), ...patch.slice(0, start)];
      const turned = applyToAll(shifted, about({ x: fraction(r.below(9)), y: fraction(r.below(5), 3) }, turn(r.below(24))));
      const over = backwards(applyToAll(turned, MIRROR));
      const [own, same, other] = [patch, turned, over].map((outline) => formOf({ outline }));
      expect([same?.key, other?.key], `seed ${seed}`).toEqual([own?.key, own?.key]);
      expect(same?.isTurnedOver).toBe(own?.isTurnedOver);
      const isOwnMirror = shapeKey(patch, { mirror: 'different' }) === shapeKey(over, { mirror: 'different' });
      expect(other?.isTurnedOver !== own?.isTurnedOver, `seed ${seed}`).toBe(!isOwnMirror);
      if (!isOwnMirror) mirrorImages += 1;
    }
    expect(mirrorImages).toBeGreaterThan(10);
  });

  test('other shapes have other keys', () => {
    const shapes = Array.from({ length: 60 }, (_, seed) => clockwise(guillotine(random(seed)).patches[0] as Shape));
    for (const one of shapes) for (const other of shapes) if (formOf({ outline: one }).key === formOf({ outline: other }).key) expect(toNumber(area(one))).toBe(toNumber(area(other)));
  });

  test('a fixed grain keeps shapes apart that lie across it', () => {
    const outline = clockwise(guillotine(random(7)).patches[0] as Shape);
    const grain = fraction(30);
    const turned = applyToAll(outline, compose(turn(2), turn(0)));
    expect(poseOf({ outline, grain }).key).not.toBe(poseOf({ outline: turned, grain }).key);
    expect(poseOf({ outline, grain }).key).toBe(poseOf({ outline: turned, grain: fraction(60) }).key);
    expect(poseOf({ outline, grain, isDirectional: true }).key).not.toBe(poseOf({ outline, grain }).key);
  });
});

describe('templates of blocks', () => {
  test('the eight diamonds of a star take one, the blades of a fan one', () => {
    expect(templatesIn('block Star 12" {\n  le_moyne_star(ink, ink, sand)\n}', 'Star').map(countsOf)).toEqual([[8, 0]]);
    const fan = templatesIn('block Fan 12" {\n  grandmothers_fan(ink, ink, sand)\n}', 'Fan');
    expect(fan.filter(({ uses }) => uses.reduce((sum, { pieces }) => sum + pieces, 0) > 1).map(countsOf)).toEqual([[6, 0]]);
  });

  test('mirrored half rectangles take one, turned over for as many as lie so', () => {
    const body = '  half_rectangle(ink, sand) half_rectangle(ink, sand)@mirror\n  half_rectangle(ink, sand)@180 half_rectangle(ink, sand)';
    const [template, ...others] = templatesIn(`block Half 8" by 4" {\n${body}\n}`, 'Half');
    expect(others).toEqual([]);
    expect(template && countsOf(template)).toEqual([8, 2]);
  });

  test('curved partners are marked in the middle of their common arc', () => {
    const curved = templatesIn('block Path 7" {\n  drunkards_path(ink, sand)\n}', 'Path');
    // The arc is a quarter of a circle of 5": 7.85" long, so that its quarters are marked too.
    expect(curved.map(({ marks }) => marks.map(({ along }) => along.toFixed(6)))).toEqual([['0.250000', '0.500000', '0.750000'], ['0.250000', '0.500000', '0.750000']]);
    const small = templatesIn('block Path 3 1/2" {\n  drunkards_path(ink, sand)\n}', 'Path');
    expect(small.map(({ marks }) => marks.map(({ along }) => along.toFixed(6)))).toEqual([['0.500000'], ['0.500000']]);
  });

  test('a side is notched where a seam of its neighbours meets it', () => {
    const body = '  templates\n  patch ink 0,0 6,0 6,2 0,2\n  patch sand 0,2 2,2 2,4 0,4\n  patch ink 2,2 6,2 6,4 2,4';
    const templates = templatesIn(`block Buoy 6" by 4" {\n${body}\n}`, 'Buoy');
    const long = templates.find(({ cut }) => Math.max(...cut.points) > 6);
    expect(long?.marks.map(({ along }) => Math.min(along, 1 - along).toFixed(6))).toEqual(['0.333333']);
  });

  // The seven pieces of the tangram: quarters, eighths and sixteenths of the square (published: shared/checks, tangram).
  test('the tangram, with `templates`: the areas of its pieces', () => {
    const body = '  templates\n  box 4 by 4\n  patch ink 0,0 4,0 2,2\n  patch ink 0,0 2,2 0,4\n  patch sand 0,4 1,3 2,4\n  patch sand 1,3 2,2 3,3 2,4\n  patch ink 2,2 3,1 3,3\n  patch sand 3,1 4,0 4,2 3,3\n  patch ink 4,2 4,4 2,4';
    const areas = templatesIn(`block Tangram 8" {\n${body}\n}`, 'Tangram').flatMap(({ shape, uses }) => uses.flatMap(({ pieces }) => Array<number>(pieces).fill(areaOf(shape.points) / 64)));
    expect(areas.sort((a, b) => a - b)).toEqual([1 / 16, 1 / 16, 1 / 8, 1 / 8, 1 / 8, 1 / 4, 1 / 4]);
  });
});

function templatesIn(block: string, name: string): readonly Template[] {
  const fabrics = ['ink', 'sand'].map((fabric) => `fabric ${fabric} #808080 "${fabric}"`).join('\n');
  const { quilts, pattern, problems, hasErrors } = snapshotOfText(`${fabrics}\nimport "traditional.quilt"\n${block}\nquilt {\n  straight 1 by 1\n  place { ${name} }\n}\n`, { 'traditional.quilt': traditional });
  const [quilt] = quilts;
  if (!quilt || hasErrors) throw new Error(problems.map(({ message }) => message).join('\n'));
  return templatesOf(quilt.layout, quilt.plan, pattern.rules);
}

/** All of its pieces, and those with the template turned over. */
function countsOf({ uses }: Template): readonly [number, number] {
  const sum = (some: Template['uses']): number => some.reduce((total, { pieces }) => total + pieces, 0);
  return [sum(uses), sum(uses.filter(({ isTurnedOver }) => isTurnedOver))];
}

function areaOf(points: readonly number[]): number {
  const corners = Array.from({ length: points.length / 2 }, (_, i) => [points[2 * i] ?? 0, points[2 * i + 1] ?? 0] as const);
  return Math.abs(corners.reduce((sum, [x, y], i) => sum + (x * (corners[(i + 1) % corners.length]?.[1] ?? y) - (corners[(i + 1) % corners.length]?.[0] ?? x) * y) / 2, 0));
}
