/** What the examples do not show of the rules about cloth: grain, direction and value. */
import { describe, expect, test } from 'vitest';
import { snapshotOfText } from '../harness/snapshot.ts';
import type { RuleId } from '../../server/src/text/problem.ts';

function told(rule: RuleId, text: string, fabrics = 'fabric ink #22345c\nfabric sand #eadfc8\n'): string[] {
  const { problems, document } = snapshotOfText(fabrics + text);
  return problems.filter((problem) => problem.rule === rule).map(({ place, message }) => `${document.numberOf(place.line) + 1} ${place.line.text.slice(place.from, place.to)}: ${message}`);
}

const SIX = 'block Six 6" {\n  ink sand\n  sand ink\n}\n';

describe('bias-outside', () => {
  const quilt = (lines: string): string => `${SIX}quilt {\n  on_point 2 by 3\n  place { Six }\n${lines}\n  border 1" ink\n}\n`;
  const bias = (lines: string): string[] => told('bias-outside', quilt(lines)).map((each) => each.slice(each.indexOf(' ') + 1));

  test('setting triangles and cornerstones have straight edges', () => {
    expect(bias('  edges sand')).toEqual([]);
    expect(bias('  edges sand float 1"')).toEqual([]);
    expect(bias('  edges sand\n  sashing 1" ink cornerstones sand')).toEqual([]);
  });
  test('a block at the edge has not, and is told once for each statement', () => {
    expect(bias('  edges Six')).toEqual(['Six: `Six` is cut along the edge of the quilt on the bias']);
    expect(bias('  edges sand corners Six')).toHaveLength(1);
  });
  test('sashes that the edge cuts, unless a frame goes around', () => {
    expect(bias('  edges sand\n  sashing 1" ink')).toEqual(['ink: these sashes end on the bias at the edge of the quilt']);
    expect(bias('  edges sand\n  sashing 1" ink outer')).toEqual([]);
  });
  test('a grain that is turned matters on the outside only', () => {
    const block = (grain: string): string => `block Bar 6" {\n  patch ink 2,2 4,2 4,4 2,4 ${grain}\n  patch sand 0,0 6,0 6,2 4,2 2,2 2,4 4,4 4,2 6,2 6,6 0,6\n}\n`;
    expect(told('bias-outside', block('grain 30'))).toEqual([]);
    expect(told('bias-outside', block('').replace('0,6\n', '0,6 grain 90\n'))).toEqual([]);
    expect(told('bias-outside', block('').replace('0,6\n', '0,6 grain 15\n'))).toEqual(['5 patch sand 0,0 6,0 6,2 4,2 2,2 2,4 4,4 4,2 6,2 6,6 0,6 grain 15: this patch has a bias edge on the outside of the block: its grain runs 15° from upright']);
  });
});

describe('directional-turned', () => {
  const FABRICS = 'fabric ink #22345c\nfabric waves #eadfc8 directional\n';
  const block = (cell = 'waves'): string => `block Six 6" {\n  ink ${cell}\n}\n`;
  const turned = (text: string): string[] => told('directional-turned', text, FABRICS).map((each) => each.slice(each.indexOf(' ') + 1));

  test('upright, or after half a turn, is no turn', () => {
    expect(turned(`${block()}quilt {\n  straight 2 by 2\n  place { Six Six@180 Six@mirror Six@flip }\n}\n`)).toEqual([]);
  });
  test('a block turned in the setting, told at its cell', () => {
    expect(turned('block Six 6" {\n  ink waves\n  waves ink\n}\nquilt {\n  straight 2 by 2\n  place { Six Six@90 }\n}\n')).toEqual(['Six@90: `waves` is directional and stands turned by 90° in the quilt here']);
  });
  test('the whole quilt on point; turned back in the block it stands upright', () => {
    const onPoint = 'quilt {\n  on_point 2 by 2\n  place { Six }\n  edges ink\n}\n';
    expect(turned(`block Six 6" {\n  ink waves\n  waves ink\n}\n${onPoint}`)).toEqual(['Six: `waves` is directional and stands turned by 45° in the quilt here']);
    expect(turned(`block Six 6" {\n  patch waves 0,0 6,0 6,6 0,6 grain 135\n}\n${onPoint}`)).toEqual([]);
  });
  test('a cell turned in its block, and a loose patch on point', () => {
    expect(turned(`${block('waves@90')}quilt {\n  straight 2 by 2\n  place { Six }\n}\n`)[0]).toMatch(/^waves@90: .* by 90°/);
    expect(turned('block Six 6" {\n  ink\n}\nquilt {\n  on_point 2 by 2\n  place { Six }\n  between { waves }\n  edges ink\n}\n')).toEqual(['waves: `waves` is directional and stands turned by 45° in the quilt here']);
  });
});

describe('low-contrast', () => {
  const FABRICS = 'fabric ink #22345c\nfabric coal #2a3550\nfabric sand #eadfc8\n';
  const near = (text: string, fabrics = FABRICS): string[] => told('low-contrast', text, fabrics);

  test('once for two fabrics in a block, however many seams', () => {
    expect(near('block Six 6" {\n  ink coal\n  coal ink\n}\n')).toHaveLength(1);
  });
  test('only where they meet: at a corner is not beside', () => {
    expect(near('block Six 6" {\n  ink sand\n  sand coal\n}\n')).toEqual([]);
    expect(near('block Six 6" {\n  ink-sand coal\n}\n')).toHaveLength(1);
  });
  test('between a nested block and its neighbour, and inside one once', () => {
    expect(near('block Two {\n  ink\n  sand\n}\nblock Six 6" {\n  grid 1 1 by 1\n  Two coal\n}\n')).toEqual(['10 coal: `ink` and `coal` are nearly of one value (lightness 22.2 and 22.4, of 100): the seam between them hardly shows; it would show with `coal` lighter, at 27.2']);
    expect(near('block Two {\n  ink\n  coal\n}\nblock Six 6" {\n  Two Two\n}\n')).toHaveLength(1);
  });
  test('a block that gets near fabrics as arguments', () => {
    expect(near('block Two(a, b) 6" {\n  a b\n}\nquilt {\n  straight 1 by 2\n  place {\n    Two(ink, sand)\n    Two(ink, coal)\n  }\n}\n')).toHaveLength(1);
  });
  test('a flipped corner and what it lies on', () => {
    expect(near('block Six 6" {\n  ink\n  corner coal 2" top_left\n}\n')).toHaveLength(1);
  });
  test('what the author says of the values counts', () => {
    expect(near('block Six 6" {\n  ink coal\n}\n', 'fabric ink #22345c value dark\nfabric coal #2a3550 value medium\n')).toEqual([]);
    expect(near('block Six 6" {\n  ink coal\n}\n', 'fabric ink #22345c value dark\nfabric coal #2a3550 value dark\n')).toHaveLength(1);
  });
});
