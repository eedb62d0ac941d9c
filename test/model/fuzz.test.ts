/** Broken texts: random edits of a whole pattern never throw, and building on from one to the next equals building anew. */
import { expect, test } from 'vitest';
import { buildPattern } from '../../server/src/model/build.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf, replaceRange } from '../../server/src/text/document.ts';
import { FIRST_PATTERN } from '../harness/first-pattern.ts';
import { dumpOf } from './dump.ts';
import { hostOf, linesOf, patternOf } from './host.ts';

/** More of the language in few lines, for edits to meet. */
const RICH = `${FIRST_PATTERN}
let unit = 2 1/2"
let twice = unit * 2
assorted scraps = ink sand by patch
assorted greys 3 #808080
block Goose(body = ink, sky = sand) (twice) by (unit) {
  box 2 by 1
  patch body 0,1  1,0  2,1
  turned 2 { patch sky 0,0 1,0 0,1 }
}
block Cabin(light = scraps, d = 1/3) 6" {
  centre Goose(light) 2"
  round 1" light light ink ink
  corner ink (d) top_left
}
block Frame(x, y = x) 6" {
  x@90 (x/y)@flip
  Nine(a: y) goose(ink, sand)
}
colorway dusk {
  ink #000033 "Dusk"
  greys #101010
}
size wall 2 by 2 {
  let unit = 3"
  place { Frame(Cabin) Frame(Nine(rust)) }
  border pieced { Goose Goose@180 } corner Cabin
}
steps before Cabin {
  "Sew {Cabin.count}."
}
`;

const PIECES = ['{', '}', '(', ')', '"', '"""', ' ', '\n', '/', '-', '|', '@90', '= ', '0', '1/0', '1/3', '2"', 'cm', 'ink', 'Nine', 'Capstan(ink)', 'Frame', 'unit', 'block X 4" {', 'let unit = 3"', 'import "a.quilt"', 'size', 'fabric', 'turned 3 {', 'sqrt(5)', '#', '//', '<', '^'];

test('the sample has nothing wrong with it', () => {
  expect(linesOf(patternOf(FIRST_PATTERN))).toEqual([]);
  expect(linesOf(patternOf(RICH)).filter((line) => !line.includes('unused'))).toEqual([]);
});

test('every line cut off in the middle', () => {
  for (let length = 0; length < RICH.length; length += 11) expect(() => linesOf(patternOf(RICH.slice(0, length)))).not.toThrow();
});

test('every fourth word taken out, and put in twice', () => {
  for (const [index, match] of [...RICH.matchAll(/\S+/g)].entries()) {
    if (index % 4 > 0) continue;
    const [start, end] = [match.index, match.index + match[0].length];
    for (const text of [RICH.slice(0, start) + RICH.slice(end), `${RICH.slice(0, end)} ${match[0]}${RICH.slice(end)}`]) expect(() => linesOf(patternOf(text))).not.toThrow();
  }
});

test.each([1, 2, 3, 4])('a way of random edits, number %i, is the same step by step and anew', (seed) => {
  const random = randomFrom(seed);
  const host = hostOf({ 'a.quilt': 'fabric ink #000000\nblock Star(a = ink) 6" {\n a\n}\nlet unit = 5"' });
  let document = documentOf('test.quilt', RICH);
  let tree = parse(document);
  let pattern = buildPattern(tree, host);
  for (let step = 0; step < 48; step++) {
    const line = random(document.lines.length);
    const character = random((document.lines[line]?.text.length ?? 0) + 1);
    const isCut = random(2) === 0;
    document = step % 12 === 11
      ? replaceRange(document, { line: 0, character: 0 }, { line: document.lines.length, character: 0 }, RICH)
      : replaceRange(document, { line, character }, { line: line + (isCut ? random(2) : 0), character: character + (isCut ? random(8) : 0) }, isCut ? '' : (PIECES[random(PIECES.length)] ?? ''));
    tree = parse(document, tree);
    pattern = buildPattern(tree, host, pattern);
    const fresh = buildPattern(parse(documentOf('test.quilt', document.text)), host);
    expect(dumpOf(pattern), document.text).toEqual(dumpOf(fresh));
  }
});

/** Whole numbers below a limit, the same for a seed each time (a linear congruence of Numerical Recipes). */
function randomFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state % below;
  };
}
