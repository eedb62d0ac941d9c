/** The steps of every library block, made in every way: whole sentences with a size in them, and drawings that can be drawn. */
import { describe, expect, test } from 'vitest';
import { cuttingMarkdown } from '../../server/src/booklet/cutting-list.ts';
import { stepsDrawings } from '../../server/src/booklet/steps-drawings.ts';
import { stepsMarkdown } from '../../server/src/booklet/steps.ts';
import { faultsOf } from '../../server/src/cutting/verify.ts';
import { svgOf } from '../../server/src/drawing/svg.ts';
import { EVERY_BLOCK, cellOf, read, sizeOf } from './blocks.ts';

const COLOURS = ['#22345c', '#eadfc8', '#a4502e', '#3a7d5d', '#c9b28f', '#7a3b69'];
const FABRICS = COLOURS.map((colour, index) => `fabric f${index} ${colour} "Cloth ${index}"`).join('\n');
const METHODS = [
  'units inches',
  'method half_squares two_at_a_time trim\n  method geese four_at_a_time\n  method strips on',
  'units centimetres\n  method half_squares eight_at_a_time\n  method geese corners\n  press open',
];

function textOf(cell: string, name: string, method: string): string {
  const size = sizeOf(name, '12').replace(/ \(\(?12\)?\/2\)/, ' 6');
  return `import "traditional"\npattern "One" {\n  ${method}\n}\n${FABRICS}\nblock Whole ${size} {\n  ${cell}\n}\nquilt {\n  straight 2 by 3\n  place { Whole }\n  border 2" f0\n  binding cut 2 1/4" f0\n}\n`;
}

describe.each(METHODS.map((method, index) => [index, method] as const))('way %i', (_, method) => {
  test.each(EVERY_BLOCK.map((definition) => [definition.name, cellOf(definition)] as const))('%s', (name, cell) => {
    const { pattern, quilts } = read(textOf(cell, name, method));
    const [quilt] = quilts;
    if (!quilt) throw new Error('no quilt');
    const steps = stepsMarkdown({ pattern, quilts }, quilt);
    const lines = steps.split('\n').filter((line) => /^\d+\. /.test(line));
    expect(lines.filter((line) => /undefined|NaN|\[object|[{}]|: \.|: and|, ,|\(\)| {2}| \.$|"{2}/.test(line))).toEqual([]);
    expect(lines.filter((line) => /\b1 (strips|squares|rows|blocks|triangles|units|seams|panels|pieces|segments|strip sets)\b|\b([02-9]|\d\d+) (strip|square|row|unit|segment|piece|panel)\b(?! set)/.test(line))).toEqual([]);
    expect(lines.filter((line) => !/[.`]$/.test(line))).toEqual([]);
    // No length without its unit: every fraction and every decimal has one.
    expect(lines.filter((line) => /\d+\/\d+(?!\d|"|\/)|\d\.\d+(?!\d| cm| m\b)/.test(line))).toEqual([]);
    expect(steps).toContain('## Whole: make 6');
    expect(faultsOf(quilt.plan, pattern.rules)).toEqual([]);
    expect(cuttingMarkdown({ pattern, quilts }, quilt)).not.toMatch(/undefined|NaN/);
    const drawings = stepsDrawings(quilt, pattern.rules);
    expect(drawings.map(({ path }) => path).sort()).toEqual([...new Set([...steps.matchAll(/`(steps\/[^`]+\.svg)`/g)].map((match) => match[1] ?? ''))].sort());
    for (const { scene } of drawings) expect(svgOf(scene)).not.toMatch(/NaN|Infinity|undefined/);
  });
});
