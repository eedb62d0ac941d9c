/** Numbers, lengths and units, exact; the pattern's own measures; fabrics. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { key, toNumber } from '../../server/src/exact/number.ts';
import type { Exact } from '../../server/src/exact/number.ts';
import type { Fabric } from '../../server/src/model/pattern.ts';
import { linesOf, patternOf, type Files } from './host.ts';

const METRIC = 'pattern "x" { units centimetres }\n';

describe('let', () => {
  test.each([
    ['7', '7'],
    ['2 1/2', '5/2'],
    ['2 1/2"', '5/2"'],
    ['1 yd', '36"'],
    ['254 mm', '10"'],
    ['1 m', '5000/127"'],
    ['1" + 254 mm', '11"'],
    ['1/3 + 1/6', '1/2'],
    ['2" * 3', '6"'],
    ['3 * 2"', '6"'],
    ['6" / 4', '3/2"'],
    ['6" / 4"', '3/2'],
    ['1" + 2', '3"'],
    ['2 - 1/2"', '3/2"'],
    ['-(1" + 2")', '-3"'],
    ['-(-3)', '3'],
    ['10 - 3 - 2', '5'],
    ['12 / 3 / 2', '2'],
    ['2 + 3 * 4', '14'],
    ['sqrt(2)', '0,1,0,0'],
    ['sqrt(2) * sqrt(3)', '0,0,0,1'],
    ['12" / (2 + sqrt(2))', '12,-6,0,0"'],
    ['sqrt(9/4)', '3/2'],
    ['sqrt(8)', '0,2,0,0'],
    ['(1 + 1/2)"', '3/2"'],
    ['(unit)cm * 2.54', '5/2"'],
  ])('%s is %s', (text, value) => {
    const pattern = patternOf(`let unit = 2.5\nlet x = ${text}`);
    expect(linesOf(pattern)).toEqual([]);
    expect(letText(pattern.lets.get('x')?.value)).toBe(value);
  });

  test.each([
    ['1" + 2', '227/127"'],
    ['2', '2'],
    ['2.54 + 0"', '1"'],
  ])('in a metric pattern %s is %s', (text, value) => {
    expect(letText(patternOf(`${METRIC}let x = ${text}`).lets.get('x')?.value)).toBe(value);
  });

  test.each([
    ['1 / 0', '[1 / 0] wrong-argument: 1 cannot be divided by zero'],
    ['2" / (1 - 1)', '[2" / (1 - 1)] wrong-argument: 2" cannot be divided by zero'],
    ['2" * 3"', '[2" * 3"] wrong-argument: a length times a length is an area: 2" times 3"'],
    ['2 / 3"', '[2 / 3"] wrong-argument: a number cannot be divided by a length: 2 over 3"'],
    ['sqrt(5)', '[sqrt(5)] wrong-argument: sqrt(5) cannot be exact: sqrt takes 2, 3 and squares such as 9/4'],
    ['sqrt(-1)', '[sqrt(-1)] wrong-argument: sqrt(-1) cannot be exact: sqrt takes 2, 3 and squares such as 9/4'],
    ['sqrt(2")', '[sqrt(2")] wrong-argument: a root is taken of a number, and 2" is a length'],
    ['(2")cm', '[(2")cm] wrong-argument: 2" is a length already and takes no unit'],
    ['1/3 fq', '[1/3 fq] wrong-argument: `fq` counts fat quarters; a length has another unit'],
    ['y + 1', '[y] unknown-name: no number y'],
  ])('%s: %s', (text, finding) => {
    const pattern = patternOf(`let x = ${text}`);
    expect(linesOf(pattern)).toEqual([finding]);
    expect(pattern.lets.has('x')).toBe(false);
  });

  test('a later one may be used, and a long chain is no trouble', () => {
    const pattern = patternOf(Array.from({ length: 5000 }, (_, i) => `let n${i} = n${i + 1} + 1\n`).join('') + 'let n5000 = 1');
    expect(linesOf(pattern)).toEqual([]);
    expect(letText(pattern.lets.get('n0')?.value)).toBe('5001');
  });

  test('a ring is said once, and what uses it is silent', () => {
    expect(linesOf(patternOf('let a = b + 1\nlet b = c * 2\nlet c = a\nlet d = b'))).toEqual(['[a] wrong-argument: `a` is made from itself: a → b → c → a']);
    expect(linesOf(patternOf('let a = a'))).toEqual(['[a] wrong-argument: `a` is made from itself: a → a']);
  });

  test('long sums and runaway products come to an end', () => {
    expect(letText(patternOf(`let x = 1${' + 1'.repeat(150)}`).lets.get('x')?.value)).toBe('151');
    expect(linesOf(patternOf(`let x = ${'- '.repeat(100)}1`))).toEqual([]);
    const squares = Array.from({ length: 20 }, (_, i) => `let s${i + 1} = s${i} * s${i}\n`).join('');
    expect(linesOf(patternOf(`let s0 = 1234567\n${squares}`))).toEqual(['[s7 * s7] too-large: a number of more than 1,233 digits past 1,233 digits']);
  });
});

describe('the pattern', () => {
  const measures = (text: string): readonly string[] => {
    const { units, seam, roundUp, yardage, spare } = patternOf(text).rules;
    return [units, ...[seam, roundUp, yardage, spare].map(key)];
  };

  test('has the usual measures in inches', () => {
    expect(measures('')).toEqual(['inches', '1/4', '1/8', '9/2', '1/20']);
  });

  test('and in centimetres, wherever it says so', () => {
    expect(measures(`let a = 1\n${METRIC}`)).toEqual(['centimetres', '75/254', '5/127', '500/127', '1/20']);
  });

  test('or those it says, in any unit', () => {
    expect(measures('pattern "x" {\n seam 1 cm\n round_up 1/16"\n yardage 1/4 yd\n spare 7.5%\n}')).toEqual(['inches', '50/127', '1/16', '9', '3/40']);
    expect(measures(`pattern "x" {\n units centimetres\n seam 1\n}`)).toEqual(['centimetres', '50/127', '5/127', '500/127', '1/20']);
  });

  test('may measure with numbers of its own', () => {
    expect(measures('pattern "x" {\n seam (s/2)\n}\nlet s = 1/2"')).toEqual(['inches', '1/4', '1/8', '9/2', '1/20']);
  });

  test('keeps its words', () => {
    const { title, by, about, paper } = patternOf('pattern "Harbour Mail" {\n by "A"\n about "B"\n paper a4\n method half_squares eight_at_a_time trim\n method geese corners trim 1/4"\n method strips off\n press open\n}');
    expect({ title, by, about, paper }).toEqual({ title: 'Harbour Mail', by: 'A', about: 'B', paper: 'a4' });
  });

  test('says how things are made', () => {
    const { methods } = patternOf('pattern "x" {\n method half_squares eight_at_a_time trim\n method geese corners trim 1/4"\n method strips off\n press open\n}').rules;
    expect([methods.halfSquares?.way, text(methods.halfSquares?.trim), methods.geese?.way, text(methods.geese?.trim), methods.strips?.on, methods.press?.way]).toEqual(['eight_at_a_time', '1/8', 'corners', '1/4', false, 'open']);
  });
});

describe('fabrics', () => {
  const fabric = (line: string, files?: Files): Fabric => {
    const found = patternOf(line, files).fabrics.get('rust');
    if (!found) throw new Error('No fabric.');
    return found;
  };

  test('have the usual width and come from yardage', () => {
    const { label, colour, width, directional, value, shrink, source } = fabric('fabric rust #A4502E');
    expect([label, colour, text(width), directional, value, text(shrink), source]).toEqual(['rust', '#a4502e', '40', false, undefined, '0', { kind: 'yardage' }]);
    expect(text(fabric(`${METRIC}fabric rust #a4502e`).width)).toBe('5250/127');
  });

  test('have what their line says', () => {
    const { label, width, directional, value, shrink } = fabric('let w = 42"\nfabric rust #a4502e "Rusted" width (w) value dark directional shrink 3%');
    expect([label, text(width), directional, value, text(shrink)]).toEqual(['Rusted', '42', true, 'dark', '3/100']);
  });

  test.each([
    ['from fat_quarters', ['fat_quarters', '35/2', '20']],
    ['from fat_quarters width 18" by 22"', ['fat_quarters', '18', '22']],
    ['from piece 12" by 30"', ['piece', '12', '30']],
    ['from strips 2 1/2"', ['strips', '5/2']],
    ['from squares 10"', ['squares', '10']],
    ['from yardage', ['yardage']],
  ])('%s', (words, expected) => {
    const { kind, ...measures } = fabric(`fabric rust #a4502e ${words}`).source;
    expect([kind, ...Object.values(measures).map((each) => key(each as Exact))]).toEqual(expected);
  });

  test('a metric fat quarter', () => {
    const source = fabric(`${METRIC}fabric rust #a4502e from fat_quarters`).source;
    expect(source.kind === 'fat_quarters' ? [key(source.width), key(source.height)] : []).toEqual(['2400/127', '2650/127']);
  });

  test('assorted prints that have names', () => {
    const { colour, assorted } = fabric('fabric red #ff0000\nfabric blue #0000ff\nassorted rust = red blue');
    expect([colour, assorted?.by, assorted?.prints.map(({ name }) => name)]).toEqual(['#ff0000', 'block', ['red', 'blue']]);
  });

  test('assorted prints that have none are told apart by number and shade', () => {
    const { label, assorted } = fabric('assorted rust 3 #808080 "Greys"');
    expect([label, assorted?.prints.map((print) => [print.name, print.label, print.colour])]).toEqual(['Greys', [['rust 1', 'Greys 1', '#686868'], ['rust 2', 'Greys 2', '#808080'], ['rust 3', 'Greys 3', '#989898']]]);
  });
});

describe('expectations', () => {
  test('keep path, comparison and value', () => {
    const { expectations } = patternOf('expect throw.width at most 60"\nexpect Capstan.patches 17\nexpect cut Capstan.sand 2" by 2 1/2"\nexpect ink at least 3 yd\nexpect ink at most 5 fq\nexpect ink exactly (2*3)');
    const lines = expectations.map(({ cut, path, comparison, value, by }) =>
      [cut ? 'cut' : '', path.map((each) => each.text).join('.'), comparison, 'fatQuarters' in value ? `${key(value.fatQuarters)} fq` : letText(value), letText(by)].join(' ').trim());
    expect(lines).toEqual(['throw.width at_most 60"', 'Capstan.patches exactly 17', 'cut Capstan.sand exactly 2" 5/2"', 'ink at_least 108"', 'ink at_most 5 fq', 'ink exactly 6']);
  });

  test('without a value they are left out', () => {
    expect(patternOf('expect ink at most\nexpect ink at most unknown').expectations).toEqual([]);
  });
});

function letText(value: { readonly number: Exact; readonly isLength: boolean } | undefined): string {
  return value ? key(value.number) + (value.isLength ? '"' : '') : '';
}

function text(x: Exact | undefined): string | undefined {
  return x && key(x);
}

// Written from the grammar's own list, so that none is forgotten.
describe('words that are no units', () => {
  const [, words = ''] = /wrongUnit = \(([^)]*)\)/.exec(readFileSync(new URL('../../grammar/quilt.ohm', import.meta.url), 'utf8')) ?? [];
  const units = [...words.matchAll(/"([^"]+)"/g)].map(([, unit = '']) => unit);

  test('are many', () => expect(units.length).toBeGreaterThan(20));

  test.each(units)('%s is told, and read as what was meant', (unit) => {
    const pattern = patternOf(`fabric ink #22345c\nblock A 2 ${unit} { ink }\nlet a = 2 ${unit}\nquilt {\n  straight 1 by 1\n  place { A }\n}\n`);
    const inches = /^f/i.test(unit) ? 24 : /^y/i.test(unit) ? 72 : /^(?:mm|mill)/i.test(unit) ? 2 / 25.4 : /^(?:cm|cent)/i.test(unit) ? 2 / 2.54 : /^m/i.test(unit) ? 200 / 2.54 : 2;
    const value = pattern.lets.get('a')?.value;
    expect(value && toNumber(value.number)).toBeCloseTo(inches, 9);
  });
});
