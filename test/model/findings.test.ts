/** Every finding of the model with a text that has it and one that has not. */
import { describe, expect, test } from 'vitest';
import { linesOf, patternOf, type Files } from './host.ts';

interface Case {
  readonly name: string;
  readonly text: string;
  readonly finds: readonly string[];
  readonly files?: Files;
}

/** Two fabrics, so that each case shows its own point. */
const CLOTH = 'fabric ink #22345c\nfabric sand #eadfc8\n';

const NAMES: readonly Case[] = [
  { name: 'a cell that nothing declares', text: 'block Buoy 4" {\n ink snad\n}', finds: ['[snad] unknown-name: no fabric or block snad'] },
  { name: 'a fabric of a patch that nothing declares', text: 'block Buoy 4" {\n box 1 by 1\n patch snad 0,0 1,0 1,1 0,1\n}', finds: ['[snad] unknown-name: no fabric snad'] },
  { name: 'a block that nothing declares', text: 'block Buoy 4" {\n Nine(ink)\n}', finds: ['[Nine] unknown-name: no block Nine'] },
  { name: 'a number that nothing declares', text: 'block Buoy (unit*3) {\n ink\n}', finds: ['[unit] unknown-name: no number unit'] },
  { name: 'a parameter that nothing declares', text: 'block Nine(a = ink) 4" {\n a\n}\nblock Buoy 4" {\n Nine(b: ink)\n}', finds: ['[b] unknown-name: no parameter b'] },
  { name: 'names are case-sensitive', text: 'block Buoy 4" {\n Ink\n}', finds: ['[Ink] unknown-name: no fabric or block Ink'] },
  { name: 'a bed that nothing declares', text: 'quilt {\n straight 1 by 1\n place { ink/sand }\n}\nsize q 2 by 2 for qeen_bed', finds: ['[qeen_bed] unknown-name: no bed qeen_bed'] },
  { name: 'a bed that is known', text: 'quilt {\n straight 1 by 1\n place { ink/sand }\n}\nsize q 2 by 2 for queen_bed', finds: [] },
  { name: 'a colour for an unknown fabric', text: 'colorway dusk {\n inc #000000\n}', finds: ['[inc] unknown-name: no fabric inc'] },
  { name: 'steps before an unknown block', text: 'steps before Buoi {\n "x"\n}', finds: ['[Buoi] unknown-name: no block Buoi'] },
  { name: 'words of the language are names where they may be', text: 'fabric light #ffffff\nfabric dark #000000\nfabric top #111111\nblock Buoy(dark = dark) 4" {\n light dark top\n}', finds: [] },

  { name: 'two fabrics of one name', text: 'fabric ink #000000', finds: ['[ink] duplicate-name: two fabrics ink'] },
  { name: 'two blocks of one name', text: 'block Buoy 4" {\n ink\n}\nblock Buoy 5" {\n ink\n}', finds: ['[Buoy] duplicate-name: two blocks Buoy'] },
  { name: 'two numbers of one name', text: 'let n = 1\nlet n = 2', finds: ['[n] duplicate-name: two numbers n'] },
  { name: 'a block called like a fabric', text: 'block ink 4" {\n sand\n}', finds: ['[ink] duplicate-name: two declarations ink'] },
  { name: 'two parameters of one name', text: 'block Buoy(a = ink, a = sand) 4" {\n a\n}', finds: ['[a] duplicate-name: two parameters a'] },
  { name: 'two sizes of one name', text: 'quilt {\n straight 1 by 1\n place { ink/sand }\n}\nsize crib 2 by 2\nsize crib 3 by 3', finds: ['[crib] duplicate-name: two sizes crib'] },
  { name: 'two colourways of one name', text: 'colorway dusk {\n ink #000000\n}\ncolorway dusk {\n ink #000000\n}', finds: ['[dusk] duplicate-name: two colourways dusk'] },
  { name: 'two colours for one fabric', text: 'colorway dusk {\n ink #000000\n ink #111111\n}', finds: ['[ink] duplicate-name: two colours ink'] },
  { name: 'two quilts', text: 'quilt {\n straight 1 by 1\n place { ink/sand }\n}\nquilt {\n}', finds: ['[quilt] duplicate-name: two statements quilt'] },
  { name: 'two seams', text: 'pattern "x" {\n seam 1/4"\n seam 3/8"\n}', finds: ['[seam] duplicate-name: two statements seam'] },
  { name: 'two settings', text: 'quilt {\n straight 1 by 1\n on_point 2 by 2\n place { ink/sand }\n}', finds: ['[on_point] duplicate-name: two statements on_point'] },
  { name: 'two boxes', text: 'block Buoy 4" {\n box 1 by 1\n box 2 by 2\n patch ink 0,0 1,0 1,1 0,1\n}', finds: ['[box] duplicate-name: two statements box'] },
  { name: 'a parameter called like a fabric', text: 'block Buoy(ink = sand) 4" {\n ink\n}', finds: [] },
  { name: 'a block called like one that is always there', text: 'block goose(a = ink) 4" {\n a\n}\nblock Buoy 4" {\n goose\n}', finds: [] },

  { name: 'a fabric that is not used', text: 'fabric rust #a4502e\nquilt {\n straight 1 by 1\n place { ink/sand }\n}', finds: ['[rust] unused-fabric: rust'] },
  { name: 'a fabric used as a default', text: 'block Buoy(a = ink) 4" {\n a\n}\nquilt {\n straight 1 by 1\n place { Buoy }\n backing sand\n}', finds: [] },
  { name: 'a fabric that only a colourway names', text: 'fabric rust #a4502e\nquilt {\n straight 1 by 1\n place { ink/sand }\n}\ncolorway dusk {\n rust #000000\n}', finds: ['[rust] unused-fabric: rust'] },
  { name: 'a fabric that a parameter hides', text: 'fabric rust #a4502e\nblock Buoy(rust = ink) 4" {\n rust\n}\nquilt {\n straight 1 by 1\n place { Buoy sand }\n}', finds: ['[rust] unused-fabric: rust'] },
  { name: 'a print of an assorted role', text: 'assorted scraps = ink sand by patch\nquilt {\n straight 1 by 1\n place { scraps }\n}', finds: [] },
  { name: 'a library uses nothing and is fine', text: 'block Buoy 4" {\n ink\n}', finds: [] },
  { name: 'a block that is not used', text: 'block Buoy 4" {\n ink sand\n}\nquilt {\n straight 1 by 1\n place { ink/sand }\n}', finds: ['[Buoy] unused-block: Buoy'] },
  { name: 'a block that only an unused block uses', text: 'block Bell 4" {\n ink\n}\nblock Buoy 4" {\n Bell sand\n}\nquilt {\n straight 1 by 1\n place { ink/sand }\n}', finds: ['[Bell] unused-block: Bell', '[Buoy] unused-block: Buoy'] },
  { name: 'a block within a block', text: 'block Bell 4" {\n ink\n}\nblock Buoy 4" {\n Bell sand\n}\nquilt {\n straight 1 by 1\n place { Buoy }\n}', finds: [] },
  { name: 'a block as an argument', text: 'block Bell 4" {\n ink\n}\nblock Frame(x) 4" {\n x sand\n}\nquilt {\n straight 1 by 1\n place { Frame(Bell) }\n}', finds: [] },
  { name: 'a block in a border', text: 'block Bell 4" {\n ink sand\n}\nquilt {\n straight 1 by 1\n place { ink/sand }\n border pieced Bell\n}', finds: [] },
  { name: 'a block in a size only', text: 'block Bell 4" {\n ink sand\n}\nquilt {\n straight 1 by 1\n place { ink/sand }\n}\nsize crib 2 by 2 {\n place { Bell }\n}', finds: [] },
  { name: 'a block in an expectation', text: 'block Bell 4" {\n ink sand\n}\nquilt {\n straight 1 by 1\n place { ink/sand }\n}\nexpect Bell.patches 2', finds: [] },
];

const ARGUMENTS: readonly Case[] = [
  { name: 'too many', text: 'block Nine(a = ink) 4" {\n a\n}\nblock Buoy 4" {\n Nine(ink, sand)\n}', finds: ['[sand] wrong-argument: `Nine` takes 1 argument, and this is number 2'] },
  { name: 'a block that takes none', text: 'block Nine 4" {\n ink\n}\nblock Buoy 4" {\n Nine(sand)\n}', finds: ['[sand] wrong-argument: `Nine` takes no arguments, and this is number 1'] },
  { name: 'one missing', text: 'block Nine(a, b = sand) 4" {\n a b\n}\nblock Buoy 4" {\n Nine\n}', finds: ['[Nine] wrong-argument: `Nine` needs `a`'] },
  { name: 'one given twice', text: 'block Nine(a, b = sand) 4" {\n a b\n}\nblock Buoy 4" {\n Nine(ink, a: sand)\n}', finds: ['[a: sand] wrong-argument: `a` of `Nine` is given twice'] },
  { name: 'a fabric for a number', text: 'block Nine(d = 1/3) 4" {\n ink*(d)|sand\n}\nblock Buoy 4" {\n Nine(ink)\n}', finds: ['[ink] wrong-argument: `d` of `Nine` is a number, and this is a fabric'] },
  { name: 'a number for a fabric', text: 'block Nine(a = ink) 4" {\n a\n}\nblock Buoy 4" {\n Nine(1/3)\n}', finds: ['[1/3] wrong-argument: `a` of `Nine` is a fabric or a block, and this is a number'] },
  { name: 'a number handed on to where a fabric is needed', text: 'block Nine(a) 4" {\n a\n}\nblock Frame(x) 4" {\n Nine(x)\n}\nblock Buoy 4" {\n Frame(1/3)\n}', finds: ['[x] wrong-argument: `a` of `Nine` is a fabric or a block, and this is a number'] },
  { name: 'a block for a fabric', text: 'block Nine 4" {\n ink\n}\nblock Goose(a) 4" {\n box 1 by 1\n patch a 0,0 1,0 1,1 0,1\n}\nblock Buoy 4" {\n Goose(Nine)\n}', finds: ['[Nine] wrong-argument: `a` of `Goose` is a fabric, and this is a block'] },
  { name: 'a fabric for a block', text: 'block Frame(x) 4" {\n x(ink)\n}\nblock Buoy 4" {\n Frame(sand)\n}', finds: ['[sand] wrong-argument: `x` of `Frame` is a block, and this is a fabric'] },
  { name: 'arguments to a fabric', text: 'block Buoy 4" {\n ink(sand)\n}', finds: ['[ink] wrong-argument: `ink` is a fabric and takes no arguments'] },
  { name: 'a number in a cell', text: 'let d = 2\nblock Buoy 4" {\n d\n}', finds: ['[d] wrong-argument: `d` is a number, and a fabric or a block is needed here'] },
  { name: 'a fabric in a sum', text: 'block Buoy (ink*2) {\n sand\n}', finds: ['[ink] wrong-argument: `ink` is a fabric, and a number is needed here'] },
  { name: 'a block where only a fabric will do', text: 'block Nine 4" {\n ink\n}\nblock Buoy 4" {\n ink\n corner Nine 1" top_left\n}', finds: ['[Nine] wrong-argument: `Nine` is a block, and a fabric is needed here'] },
  { name: 'a block with arguments takes no more', text: 'block Nine(a = ink) 4" {\n a\n}\nblock Frame(x) 4" {\n x(sand)\n}\nblock Buoy 4" {\n Frame(Nine(ink))\n}', finds: ['[x] wrong-argument: `x` is `Nine` here and has its arguments already'] },
  { name: 'an unknown argument is said once', text: 'block Nine(a, b = sand) 4" {\n a b a b\n}\nblock Buoy 4" {\n Nine(snad)\n}', finds: ['[snad] unknown-name: no fabric or block snad'] },
  { name: 'by position and by name', text: 'block Nine(a, b = sand, d = 1/3) 4" {\n a*(d)|b\n}\nblock Buoy 4" {\n Nine(ink) Nine(sand, d: 1/2) Nine(d = 1/4, a = ink)\n}', finds: [] },
  { name: 'a number of let', text: 'let third = 1/3\nblock Nine(d = 1/2) 4" {\n ink*(d)|sand\n}\nblock Buoy 4" {\n Nine(third) Nine(d: third*2)\n}', finds: [] },

  { name: 'a block within itself', text: 'block Buoy 4" {\n ink Buoy\n}', finds: ['[Buoy] wrong-argument: `Buoy` stands inside itself: Buoy → Buoy'] },
  {
    name: 'a ring of blocks',
    text: 'block A 4" {\n ink B\n}\nblock B 4" {\n C sand\n}\nblock C 4" {\n A\n}',
    finds: ['[B] wrong-argument: `A` stands inside itself: A → B → C → A', '[C] wrong-argument: `B` stands inside itself: B → C → A → B', '[A] wrong-argument: `C` stands inside itself: C → A → B → C'],
  },
  { name: 'a ring by a default', text: 'block A(x = A) 4" {\n x\n}', finds: ['[A] wrong-argument: `A` stands inside itself: A → A'] },
  { name: 'a ring by arguments alone', text: 'block Apply(f) 4" {\n f(f)\n}\nblock Buoy 4" {\n Apply(Apply)\n}', finds: ['[f] wrong-argument: `Apply` stands inside itself: Apply → Apply'] },
  { name: 'a frame in a frame is no ring', text: 'block Nine 4" {\n ink\n}\nblock Frame(x) 4" {\n x\n}\nblock Buoy 4" {\n Frame(Frame(Nine))\n}', finds: [] },
  { name: 'a number that grows for ever', text: 'block Grow(d) 4" {\n Grow(d + 1)\n}\nblock Buoy 4" {\n Grow(1)\n}', finds: ['[Grow] wrong-argument: `Grow` stands inside itself: Grow → Grow'] },
];

const SENSE: readonly Case[] = [
  { name: 'a block in two ways', text: 'block Buoy 4" {\n ink sand\n patch ink 0,0 1,0 0,1\n}', finds: ['[patch] wrong-argument: a block is made in one way: this one begins as a grid of cells, and this belongs to a list of patches'] },
  { name: 'a size of nothing', text: 'block Buoy 0" {\n ink\n}', finds: ['[0"] wrong-argument: the size of a block is more than 0, and this is 0"'] },
  { name: 'a size below zero', text: 'block Buoy (1" - 3") {\n ink\n}', finds: ['[(1" - 3")] wrong-argument: the size of a block is more than 0, and this is -2"'] },
  { name: 'a cut size smaller than its seams', text: 'block Buoy cut 1/2" {\n ink\n}', finds: ['[cut 1/2"] wrong-argument: the size of a block cut 1/2" leaves nothing between two seams of 1/4"'] },
  { name: 'a column of nothing', text: 'block Buoy 4" {\n grid 1 0 by 1\n ink sand\n}', finds: ['[0] wrong-argument: a column is more than 0, and this is 0'] },
  { name: 'a weight of nothing', text: 'block Buoy 4" {\n ink*0|sand\n}', finds: ['[0] wrong-argument: a weight is more than 0, and this is 0'] },
  { name: 'turned five times', text: 'block Buoy 4" {\n box 1 by 1\n turned 5 {\n patch ink 0,0 1,0 1,1\n }\n}', finds: ['[5] wrong-argument: `turned` is 2, 3, 4, 6, 8 or 12, and this is 5'] },
  { name: 'a grid turned three times', text: 'block Buoy 4" {\n turned 3 {\n ink sand\n }\n}', finds: ['[3] wrong-argument: `turned` in a grid is 2 or 4, and this is 3'] },
  { name: 'rows beside what is turned', text: 'block Buoy 4" {\n turned 4 {\n ink sand\n }\n sand ink\n}', finds: ['[sand ink] wrong-argument: rows stand inside the braces of `turned`, which make the whole block'] },
  { name: 'a grid in two symmetries', text: 'block Buoy 4" {\n turned 2 {\n ink sand\n }\n mirrored {\n ink sand\n }\n}', finds: ['[mirrored] wrong-argument: a grid has one `turned` or `mirrored`: `mirrored 4` mirrors both ways'] },
  { name: 'a length for a coordinate in box units', text: 'block Buoy 4" {\n box 1 by 1\n patch ink 0,0 1",0 1,1\n}', finds: ['[1"] wrong-argument: this block counts in the units of its box, and 1" is a length'] },
  { name: 'an arc of no radius', text: 'block Buoy 4" {\n box 1 by 1\n patch ink 0,0 1,0 arc 0 0,1\n}', finds: ['[0] wrong-argument: the radius of an arc is not 0'] },
  { name: 'strips without a centre', text: 'block Buoy 4" {\n strip 1" top ink\n}', finds: ['[strip] wrong-argument: strips are sewn around a `centre`, and there is none'] },
  { name: 'a round of two fabrics', text: 'block Buoy 4" {\n centre ink 2"\n round 1" ink sand\n}', finds: ['[round 1" ink sand] wrong-argument: a round has 4 fabrics (top, right, bottom, left), or 1 for all of them, and this has 2'] },
  { name: 'more shrinkage than there is cloth', text: 'fabric rust #a4502e shrink 100%', finds: ['[100] wrong-argument: shrinkage is from 0% to below 100%, and this is 100%'] },
  { name: 'a seam of nothing', text: 'pattern "x" {\n seam 0"\n}', finds: ['[0"] wrong-argument: a seam is more than 0, and this is 0"'] },
  { name: 'half a block', text: 'quilt {\n straight 1 1/2 by 2\n place { ink/sand }\n}', finds: ['[1 1/2] wrong-argument: a count of blocks is a whole number, and this is 1 1/2'] },
  { name: 'no blocks across', text: 'quilt {\n straight 0 by 2\n place { ink/sand }\n}', finds: ['[0] wrong-argument: a count of blocks is at least 1, and this is 0'] },
  { name: 'a count with a unit', text: 'quilt {\n straight 3" by 2\n place { ink/sand }\n}', finds: ['[3"] wrong-argument: a count of blocks is a number, and 3" is a length'] },
  { name: 'a count past all sense', text: 'quilt {\n straight 1000000 by 2\n place { ink/sand }\n}', finds: ['[1000000] too-large: a count of blocks of 1000000 past 100,000'] },
  { name: 'between in a straight setting', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n between { ink }\n}', finds: ['[between] wrong-argument: `between` belongs to a setting on point, and this one is `straight`'] },
  { name: 'edges in a straight setting', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n edges ink\n}', finds: ['[edges] wrong-argument: `edges` belongs to a setting on point, and this one is `straight`'] },
  { name: 'a row in a straight setting', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n row ink\n}', finds: ['[row] wrong-argument: `row` belongs to a quilt of rows, and this one is `straight`'] },
  { name: 'sashing of a fabric without a width', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n sashing ink\n}', finds: ['[ink] wrong-argument: sashing of a fabric needs a width: `sashing 1" FABRIC`'] },
  { name: 'a border of nothing', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n border (1" - 1") ink\n}', finds: ['[(1" - 1")] wrong-argument: a border is more than 0, and this is 0"'] },
  { name: 'a fabric as a border unit', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n border pieced { ink sand }\n}', finds: ['[ink] wrong-argument: the units of a pieced border are blocks: a cell like this has no size of its own', '[sand] wrong-argument: the units of a pieced border are blocks: a cell like this has no size of its own'] },
  { name: 'one fabric as a border unit', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n border pieced ink\n}', finds: ['[ink] wrong-argument: the unit of a pieced border is a block, and `ink` is a fabric'] },
  { name: 'a tile turned twice', text: 'quilt {\n straight 2 by 2\n place turned 2 { ink sand }\n}', finds: ['[2] wrong-argument: `place turned` is 4, and this is 2'] },
  { name: 'corners said twice', text: 'quilt {\n on_point 2 by 2\n place { ink/sand }\n edges ink corners sand\n corners none\n}', finds: ['[corners] duplicate-name: two statements corners'] },
  { name: 'a colour for a role of prints', text: 'assorted scraps = ink sand\ncolorway dusk {\n scraps #000000\n}', finds: ['[scraps] wrong-argument: `scraps` is made of prints: give them the colours'] },
  { name: 'a role within a role', text: 'assorted scraps = ink sand\nassorted more = scraps ink', finds: ['[scraps] wrong-argument: `scraps` is assorted itself: name its prints in `more`'] },
  { name: 'a bed that nobody knows', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n}\nsize bed for twin', finds: ['[twin] unknown-name: no bed twin'] },
  { name: 'two values where one is expected', text: 'expect width 3 by 4', finds: ['[4] wrong-argument: one value is expected here; two stand behind `expect cut`'] },
  { name: 'a misspelt statement is no second one', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n}\nquilts {\n}', finds: [] },
  { name: 'an expectation that cannot be read is not judged', text: 'expect width at 60', finds: [] },
];

const BROKEN: readonly Case[] = [
  { name: 'a broken fabric line still declares', text: 'fabric rust #a45 "Rusted"\nblock Buoy 4" {\n rust ink sand\n}', finds: [] },
  { name: 'a broken block line still declares', text: 'block Nine(a = ink 4" {\n a\n}\nblock Buoy 4" {\n Nine sand\n}', finds: [] },
  { name: 'a half-typed number', text: 'let unit =\nblock Buoy (unit*3) {\n ink\n}\nblock Bell (unit) {\n sand\n}', finds: [] },
  { name: 'a half-typed size', text: 'quilt {\n straight 2 by 2\n place { ink/sand }\n}\nsize throw 4', finds: [] },
  { name: 'a half-typed cell', text: 'block Buoy 4" {\n ink sand-\n}', finds: [] },
  { name: 'an empty quilt', text: 'quilt {\n}\nblock Buoy 4" {\n ink sand\n}', finds: ['[Buoy] unused-block: Buoy'] },
];

describe.each([['names', NAMES], ['arguments', ARGUMENTS], ['what makes no sense', SENSE], ['broken lines', BROKEN]] as const)('%s', (_, cases) => {
  test.each(cases)('$name', ({ text, finds, files }) => {
    expect(linesOf(patternOf(CLOTH + text, files))).toEqual(finds);
  });
});

describe('limits', () => {
  const chain = (count: number): string => Array.from({ length: count }, (_, i) => `block B${i} 4" {\n ${i + 1 < count ? `B${i + 1}` : 'ink/sand'}\n}\n`).join('');

  test('64 levels of blocks are fine', () => {
    expect(linesOf(patternOf(CLOTH + chain(64)))).toEqual([]);
  });

  test('the 65th level is said where it stands', () => {
    expect(linesOf(patternOf(CLOTH + chain(65)))).toEqual(['[B1] too-large: this block within blocks past 64 levels']);
  });

  test('2,000 levels neither throw nor flood', () => {
    expect(linesOf(patternOf(CLOTH + chain(2000)))).toHaveLength(31);
  });

  test('the 2,001st block is said once, and what names it is left alone', () => {
    const blocks = Array.from({ length: 2003 }, (_, i) => `block B${i} 4" {\n ink\n}\n`).join('');
    expect(linesOf(patternOf(`${CLOTH}${blocks}block`.replace('block B0 4" {\n ink', 'block B0 4" {\n ink B2002 B2001')))).toEqual(['[B2000] too-large: a file of 2003 blocks past 2,000']);
  });

  test('blocks that multiply by their arguments come to an end', () => {
    const doubling = Array.from({ length: 40 }, (_, i) => `block D${i}(n) 4" {\n ${i < 39 ? `D${i + 1}(n*2) D${i + 1}(n*2 + 1)` : 'ink*(n + 1)|sand'}\n}\n`).join('');
    const found = linesOf(patternOf(`${CLOTH}${doubling}block Buoy 4" {\n D0(1)\n}`));
    expect(found.length).toBeGreaterThan(0);
    expect(found.every((line) => line.endsWith('too-large: what the blocks of this pattern are made of past 1,000,000 cells'))).toBe(true);
  });
});
