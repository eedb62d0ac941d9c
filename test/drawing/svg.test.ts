/** SVG: the picture read back has the areas and places of the layout; the file is valid, small, safe and always the same. */
import { describe, expect, it } from 'vitest';
import { sceneOfBlock, sceneOfQuilt } from '../../server/src/drawing/build.ts';
import { coordinate, escapeXml, factor } from '../../server/src/drawing/markup.ts';
import { svgOf } from '../../server/src/drawing/svg.ts';
import { fraction, SQRT2, mul } from '../../server/src/exact/number.ts';
import {
  FAN, HALVES, INK, MIRROR, RUST, SAND, SNOWBALL, block, box, compose, exact, fabric, patch, place, placed, quilt, scale, translate, turn,
} from './layouts.ts';
import { area, areasByFill, drawnIn, elements, parseXml } from './read-svg.ts';

const at = (x: number, y: number): ReturnType<typeof translate> => translate(exact(x), exact(y));

describe('numbers and texts', () => {
  it.each([
    [7.5, '7.5'], [0, '0'], [-0, '0'], [-0.00004, '0'], [1 / 3, '0.3333'], [-2 / 3, '-0.6667'], [1e-9, '0'], [123456.78901, '123456.789'],
    [1e300, '1000000'], [Number.NaN, '0'], [-Infinity, '-1000000'],
  ])('coordinate %d is %s', (number, text) => {
    expect(coordinate(number)).toBe(text);
  });
  it('has no exponent at the last decimal of a factor', () => {
    expect([0.000001, -0.000002, 0.0000001].map(factor)).toEqual(['0.000001', '-0.000002', '0']);
  });
  it('escapes what XML reads and drops what it cannot hold', () => {
    expect(escapeXml(`<a b='"'>&\u0000\u001b\ud800\uffff\n`)).toBe('&lt;a b=&#39;&quot;&#39;&gt;&amp;\uFFFD\uFFFD\uFFFD\uFFFD\n');
  });
});

describe('a block', () => {
  it('has true size and one path per colour', () => {
    const svg = svgOf(sceneOfBlock(HALVES));
    const root = parseXml(svg);
    expect(root.getAttribute('width')).toBe('3in');
    expect(root.getAttribute('height')).toBe('3in');
    expect(root.getAttribute('viewBox')).toBe('0 0 3 3');
    expect(root.getAttribute('role')).toBe('img');
    expect(drawnIn(svg)).toEqual([
      { fill: '#22345c', points: [[0, 0], [3, 0], [0, 3]] },
      { fill: '#eadfc8', points: [[3, 0], [3, 3], [0, 3]] },
    ]);
  });
  it('bends arcs out of one patch and into its neighbour', () => {
    const areas = areasByFill(svgOf(sceneOfBlock(FAN)));
    expect(areas['#a4502e']).toBeCloseTo(Math.PI, 3);
    expect(areas['#eadfc8']).toBeCloseTo(9 - Math.PI, 3);
  });
  it('draws flipped corners over their base, those of inner blocks first', () => {
    const ground = sceneOfBlock(SNOWBALL);
    expect(drawnIn(svgOf({ ...ground, items: ground.items.toReversed() })).map((shape) => shape.fill)).toEqual(['#eadfc8', '#a4502e', '#22345c']);
  });
  it('shares a path between patches of one colour, but not below a corner that lies over it', () => {
    const svg = svgOf(sceneOfBlock(block('Corners', 4, 2, [
      box(SAND, place(1), 0, 0, 2, 2),
      box(INK, place(2), 2, 0, 2, 2),
      patch(INK, place(3), [[0, 0], [1, 0], [0, 1]], { role: 'flipped_corner' }),
      patch(SAND, place(4), [[4, 0], [4, 1], [3, 0]], { role: 'flipped_corner' }),
    ])));
    expect(svg.match(/<path/g)).toHaveLength(4);
    expect(drawnIn(svg).map((shape) => shape.fill)).toEqual(['#eadfc8', '#22345c', '#22345c', '#eadfc8']);
  });
});

describe('a quilt', () => {
  const turned = compose(at(6, 3), turn(6));
  const mirrored = compose(at(9, 0), MIRROR);
  const layout = quilt(10, 6, [placed(HALVES, place(10), at(0, 0)), placed(HALVES, place(11), turned), placed(FAN, place(12), mirrored)], [
    box(RUST, place(13), 9, 0, 1, 6, { role: 'border' }),
    box(RUST, place(14), 0, 3, 3, 3, { role: 'plain' }),
  ]);
  it('puts turned and mirrored blocks where the layout has them', () => {
    const drawn = drawnIn(svgOf(sceneOfQuilt(layout)));
    expect(drawn[2]).toEqual({ fill: '#22345c', points: [[6, 3], [6, 6], [3, 3]] });
    expect(drawn[4]?.points.slice(0, 2)).toEqual([[9, 0], [7, 0]]);
    expect(area(drawn[4]?.points ?? [])).toBeCloseTo(-Math.PI, 3);
  });
  it('draws each distinct block once', () => {
    const svg = svgOf(sceneOfQuilt(layout));
    expect(svg.match(/<g id=/g)).toHaveLength(2);
    expect(svg.match(/<use/g)).toHaveLength(3);
    expect(svg.match(/<path/g)).toHaveLength(5);
  });
  it('keeps areas within rounding under 45°, scaled to a third', () => {
    const step = compose(translate(mul(SQRT2, fraction(6)), exact(1)), compose(turn(3), scale(fraction(1, 3))));
    const areas = areasByFill(svgOf(sceneOfQuilt(quilt(20, 20, [placed(HALVES, place(10), step)]))));
    expect(areas['#22345c']).toBeCloseTo(0.5, 4);
  });
  it('widens the lines of a block that is set smaller', () => {
    const third = scale(fraction(1, 3));
    const svg = svgOf(sceneOfQuilt(quilt(30, 30, [placed(HALVES, place(10), third), placed(FAN, place(11), at(3, 0))])));
    expect(svg).toContain('<g id="b0" stroke-width="0.06">');
    expect(svg).toContain('<g id="b1">');
    expect(svg).toContain('stroke-width="0.02" stroke-linejoin="round"');
  });
  it('keeps ids apart in one page', () => {
    const svg = svgOf(sceneOfQuilt(layout), { idPrefix: 'p1-"><script>' });
    const root = parseXml(svg);
    expect(elements(root).map((each) => each.getAttribute('id')).filter(Boolean)).toEqual(['p1-scripttitle', 'p1-scriptb0', 'p1-scriptb1']);
  });
  it('has one-pixel seams for the preview, on every path', () => {
    const svg = svgOf(sceneOfQuilt(layout), { seams: 'hairline' });
    expect(svg.match(/<path [^>]*vector-effect="non-scaling-stroke"/g)).toHaveLength(svg.match(/<path/g)?.length ?? 0);
    expect(svgOf(sceneOfQuilt(layout), { seams: 'none' })).toContain('stroke="none"');
  });
  it('is the same twice', () => {
    expect(svgOf(sceneOfQuilt(layout))).toBe(svgOf(sceneOfQuilt(layout)));
  });
  it('draws nothing of nothing', () => {
    expect(drawnIn(svgOf(sceneOfQuilt(quilt(0, 0, []))))).toEqual([]);
  });
});

describe('what a name may hold', () => {
  const nasty = `</title></svg><script>alert(1)</script><!-- ]]> "'&`;
  it('stays text', () => {
    const hostile = fabric(nasty, '#22345c" onload="alert(1)', nasty);
    const layout = quilt(4, 4, [placed(block(nasty, 2, 2, [box(hostile, place(1), 0, 0, 2, 2)]), place(2), at(1, 1))]);
    const root = parseXml(svgOf(sceneOfQuilt(layout), { title: nasty }));
    expect(new Set(elements(root).map((element) => element.tagName))).toEqual(new Set(['svg', 'title', 'defs', 'g', 'path', 'use']));
    expect(root.getElementsByTagName('title')[0]?.textContent).toBe(nasty);
    expect(elements(root).flatMap((element) => [...element.attributes].map((attribute) => attribute.name)).filter((name) => name.startsWith('on'))).toEqual([]);
  });
  it('refers to nothing outside', () => {
    const svg = svgOf(sceneOfQuilt(quilt(3, 3, [placed(HALVES, place(1), at(0, 0))])));
    expect([...svg.matchAll(/(?:href|src|url)=?["'(]+([^"')]*)/g)].map((match) => match[1])).toEqual(['#b0']);
    expect(svg).not.toMatch(/<style|style=|<script|<image|<!/);
  });
});

describe('20,000 patches', () => {
  const cells = Array.from({ length: 25 }, (_, index) => box(index % 3 === 0 ? INK : index % 3 === 1 ? SAND : RUST, place(1, index), index % 5, Math.floor(index / 5), 1, 1));
  const layout = quilt(125, 160, Array.from({ length: 800 }, (_, index) => placed(block('Cells', 5, 5, cells), place(2), at((index % 25) * 5, Math.floor(index / 25) * 5))));
  it('stay small', () => {
    const svg = svgOf(sceneOfQuilt(layout));
    expect(drawnIn(svg)).toHaveLength(20_000);
    expect(svg.length).toBeLessThan(33_000);
  });
});
