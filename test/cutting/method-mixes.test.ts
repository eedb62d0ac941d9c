/** Blocks that make the same units in different ways: the steps' squares and triangles are those of the cut list, whatever the mix. */
import { describe, expect, test } from 'vitest';
import { stepsMarkdown } from '../../server/src/booklet/steps.ts';
import { random } from '../geometry/partitions.ts';
import { hostOf, made, type Made } from './from-text.ts';

const HALVES = ['', 'method half_squares singles', 'method half_squares two_at_a_time', 'method half_squares eight_at_a_time', 'method half_squares eight_at_a_time trim', 'method half_squares two_at_a_time trim 1/4"'];
const GEESE = ['', 'method geese singles', 'method geese four_at_a_time', 'method geese corners', 'method geese four_at_a_time trim'];

interface Mix {
  readonly pattern: string;
  readonly blocks: readonly string[];
  readonly counts: readonly number[];
}

/** Blocks of two half squares each, or of one goose and a bar, in a row. */
function quiltOf(kind: 'halves' | 'geese', { pattern, blocks, counts }: Mix): Made {
  const cells = kind === 'halves' ? '  ink/sand sand\\ink\n' : '  goose(ink, sand)\n  ink\n';
  const size = kind === 'halves' ? '6" by 3"' : '6"';
  const texts = blocks.map((method, i) => `block B${i} ${size} {\n  ${method}\n${cells}}\n`);
  const row = blocks.flatMap((_, i) => Array.from({ length: counts[i] ?? 1 }, () => `B${i}`));
  return made(`pattern "Mix" {\n  ${pattern}\n}\nfabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\n${texts.join('')}quilt {\n  straight ${row.length} by 1\n  place { ${row.join(' ')} }\n}\n`, hostOf(new URL('./', import.meta.url)));
}

/** What the sentences of the units take: whole squares, and single triangles. */
function taken(steps: string): { readonly squares: number; readonly triangles: number; readonly made: number } {
  const sum = (pattern: RegExp): number => [...steps.matchAll(pattern)].reduce((total, match) => total + Number(match[1] ?? 1), 0);
  const pairs = sum(/Lay squares on each other in (\d+) pairs/g) + sum(/Lay a square on another/g);
  const large = sum(/Take (\d+) large square/g);
  const small = sum(/Take (\d+) small square/g);
  const singles = [...steps.matchAll(/: (half-square triangle|flying goose), (?:[a-z ]+, )?make (\d+)\n([^#]*)/g)].filter(([, , , lines = '']) => /triangle \(/.test(lines));
  const corners = [...steps.matchAll(/: flying goose, (?:[a-z ]+, )?make (\d+)\n([^#]*)/g)].filter(([, , lines = '']) => /For each, take one/.test(lines)).reduce((total, [, count]) => total + 2 * Number(count), 0);
  const triangles = singles.reduce((total, [, name, count]) => total + (name === 'flying goose' ? 3 : 2) * Number(count), 0);
  const all = [...steps.matchAll(/: (?:half-square triangle|flying goose), (?:[a-z ]+, )?make (\d+)/g)].reduce((total, [, count]) => total + Number(count), 0);
  return { squares: 2 * pairs + large + small + corners, triangles, made: all };
}

function cutFor({ plan }: Made): { readonly squares: number; readonly triangles: number } {
  const atOnce = plan.pieces.filter(({ method, shape }) => method.endsWith('at a time') || (method === 'plain' && shape === 'square'));
  const apart = plan.pieces.filter(({ method }) => method.endsWith('on the diagonal'));
  return { squares: atOnce.reduce((sum, { cutCount }) => sum + cutCount, 0), triangles: apart.reduce((sum, { pieces }) => sum + pieces, 0) };
}

describe.each([['halves', HALVES, 2], ['geese', GEESE, 1]] as const)('%s', (kind, ways, perBlock) => {
  test('every pair of ways, and random mixes of three blocks', () => {
    const r = random(7);
    const pick = (): string => ways[r.below(ways.length)] ?? '';
    const pairs = ways.flatMap((one) => ways.map((two): Mix => ({ pattern: '', blocks: [one, two], counts: [1 + r.below(5), 1 + r.below(9)] })));
    const mixes = Array.from({ length: 40 }, (): Mix => ({ pattern: pick(), blocks: [pick(), pick(), pick()], counts: [1 + r.below(9), 1 + r.below(9), 1 + r.below(9)] }));
    for (const mix of [...pairs, ...mixes]) {
      const quilt = quiltOf(kind, mix);
      const [first] = quilt.quilts;
      if (!first) throw new Error('no quilt');
      const { squares, triangles, made: units } = taken(stepsMarkdown(quilt, first));
      expect([mix, { squares, triangles }]).toEqual([mix, cutFor(quilt)]);
      expect([mix, units]).toEqual([mix, perBlock * mix.counts.reduce((sum, count) => sum + count, 0)]);
    }
  });
});

test('strips: whole ones for whole sets, and parts of as many as the last, shorter set takes', () => {
  for (let seed = 1; seed <= 80; seed += 1) {
    const r = random(seed);
    const cells = Array.from({ length: 2 + r.below(4) }, () => r.pick(['ink', 'sand', 'rust']));
    const [across, down] = [1 + r.below(6), 1 + r.below(6)];
    const widths = [20, 30, 40].map((width) => width + r.below(10));
    const text = `pattern "Strips" {\n  method strips on\n}\nfabric ink #22345c "Ink" width ${widths[0] ?? 40}"\nfabric sand #eadfc8 "Sand" width ${widths[1] ?? 40}"\nfabric rust #a4502e "Rust" width ${widths[2] ?? 40}"\nblock Bars ${2 * cells.length}" by 4" {\n  ${cells.join('|')}\n}\nquilt {\n  straight ${across} by ${down}\n  place { Bars }\n}\n`;
    const quilt = made(text);
    const [first] = quilt.quilts;
    if (!first) throw new Error('no quilt');
    const steps = stepsMarkdown(quilt, first);
    // The row as it is cut: 4 1/2" long segments from strips as long as the narrowest fabric is wide.
    const used = [...new Set(cells)];
    const perStrip = Math.floor(Math.min(...used.map((name) => widths[['ink', 'sand', 'rust'].indexOf(name)] ?? 40)) / 4.5);
    const [whole, rest] = [Math.floor((across * down) / perStrip), (across * down) % perStrip];
    expect([seed, Number(/Make (\d+) strip set/.exec(steps)?.[1] ?? 0)]).toEqual([seed, whole]);
    expect([seed, /at least ([\d /]+)" long/.exec(steps)?.[1] ?? '']).toEqual([seed, rest === 0 ? '' : inches(rest * 4.5)]);
    for (const name of used) {
      const each = cells.filter((cell) => cell === name).length;
      const parts = rest === 0 ? 0 : Math.ceil(each / Math.floor(perStrip / rest));
      expect([seed, name, quilt.plan.pieces.find(({ fabric }) => fabric.name === name)?.cutCount]).toEqual([seed, name, each * whole + parts]);
    }
  }
});

function inches(length: number): string {
  return length % 1 === 0 ? `${length}` : `${Math.floor(length)} 1/2`;
}

describe('which method holds', () => {
  const nested = (outer: string, inner: string, pattern = ''): Made =>
    made(`pattern "Nested" {\n  ${pattern}\n}\nfabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\nblock Half {\n  ${inner}\n  ink/sand\n}\nblock Whole 6" {\n  ${outer}\n  Half Half@90\n  Half@90 Half\n}\nquilt {\n  straight 4 by 1\n  place { Whole }\n}\n`);
  const methods = ({ plan }: Made): readonly string[] => [...new Set(plan.pieces.map(({ method }) => method))];
  const [two, eight] = ['method half_squares two_at_a_time', 'method half_squares eight_at_a_time'];

  test.each([
    ['the innermost block that says one', nested(two, eight, 'method half_squares singles'), 'eight at a time'],
    ['else the block around it', nested(eight, '', two), 'eight at a time'],
    ['else the pattern', nested('', '', eight), 'eight at a time'],
    ['a block that says something else says nothing of this', nested(eight, 'method geese corners', two), 'eight at a time'],
    ['without any: the fewest cuts of the same squares', nested('', ''), 'two at a time'],
  ])('%s', (_, quilt, method) => {
    expect(methods(quilt)).toEqual([method]);
  });
});

describe('without a method', () => {
  const head = 'fabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\nfabric rust #a4502e "Rust"\n';
  const cuts = (text: string): readonly string[] => made(`${head}${text}`).plan.pieces.map(({ fabric, shape, cutCount, method }) => `${cutCount} ${fabric.name} ${shape} ${method}`);
  const quilt = (across: number): string => `quilt {\n  straight ${across} by 1\n  place { Any }\n}\n`;

  test('an odd count is sewn singly: nothing is left over', () => {
    expect(cuts(`block Any 3" {\n  ink/sand\n}\n${quilt(3)}`)).toEqual(['2 ink half-square triangle once on the diagonal', '2 sand half-square triangle once on the diagonal']);
    expect(cuts(`block Any 3" {\n  ink/sand\n}\n${quilt(4)}`)).toEqual(['2 ink half-square triangle two at a time', '2 sand half-square triangle two at a time']);
  });

  test('triangles that are needed elsewhere too are cut first: one line for all of them', () => {
    expect(cuts(`block Any 6" by 3" {\n  ink/sand (ink/rust)\n}\n${quilt(1)}`)[0]).toBe('1 ink half-square triangle once on the diagonal');
  });

  test('a snowball has squares on its corners, a template only where that is asked for', () => {
    const ball = (templates: string): readonly string[] =>
      cuts(`block Any 6" {\n${templates}  box 6 by 6\n  patch ink 2,0 4,0 6,2 6,4 4,6 2,6 0,4 0,2\n  patch sand 0,0 2,0 0,2\n  patch sand 4,0 6,0 6,2\n  patch sand 6,4 6,6 4,6\n  patch sand 2,6 0,6 0,4\n}\n${quilt(2)}`);
    expect(ball('')).toEqual(['2 ink square plain', '8 sand square plain']);
    expect(ball('  templates\n').some((line) => line.includes('template'))).toBe(true);
  });
});
