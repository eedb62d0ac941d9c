/**
 * Bad input as data: each text is put between two good blocks, or is the whole file. What must be said of it, and on which of
 * its lines, stands beside it; that everything else is still answered is the test's affair.
 */

export interface BadInput {
  readonly name: string;
  readonly text: () => string;
  /** The rule that speaks first of it, the line of `text` it speaks at (from 0), and words of the message; nothing when it is allowed. */
  readonly says?: readonly [rule: string, line: number, words: RegExp];
  /** What stands behind is past a limit, too. */
  readonly behind?: 'lost';
  /** Other files, by the path that an import writes. */
  readonly files?: Readonly<Record<string, string>>;
}

const MIB = 1024 * 1024;

/** Good text in front, two fabrics and a block with three patches. */
export const BEFORE = 'fabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\nblock Lamp 6" {\n  ink/sand sand\n}\n';
/** Good text behind. */
export const BEHIND = '\nblock Beacon 9" {\n  sand ink\n  ink  sand\n}\n';

/** Lines until a size is reached; each is made from its number. */
function lines(size: number, line: (number: number) => string): string {
  const made: string[] = [];
  for (let length = 0; length < size; length += made.at(-1)?.length ?? 0) made.push(`${line(made.length)}\n`);
  return made.join('');
}

function nested(depth: number, open: string, close: string, inside = ''): string {
  return open.repeat(depth) + inside + close.repeat(depth);
}

export const BAD_INPUTS: readonly BadInput[] = [
  // ------------------------------------------------------------------------------------------ size
  { name: 'one line of 1 MiB of letters', text: () => 'a'.repeat(MIB), says: ['too-large', 0, /10000 characters/] },
  { name: 'one line of 1 MiB of cells in a block', text: () => `block Wide 6" {\n${'ink '.repeat(MIB / 4)}\n}`, says: ['too-large', 1, /10000 characters/] },
  { name: 'one line of 1 MiB of quotes', text: () => '"'.repeat(MIB), says: ['too-large', 0, /10000 characters/] },
  { name: 'a comment of 1 MiB', text: () => `// ${'x'.repeat(MIB)}`, says: ['too-large', 0, /10000 characters/] },
  { name: 'a label of 9,900 characters', text: () => `fabric long #112233 "${'é'.repeat(9900)}"` },
  { name: 'a name of 9,900 characters', text: () => `let ${'n'.repeat(9900)} = 1` },
  { name: '90,000 empty lines', text: () => '\n'.repeat(90_000) },
  { name: '100,000 lines', text: () => '\n'.repeat(100_000), says: ['too-large', 99_995, /more than 100,000 lines/], behind: 'lost' },
  { name: '2,001 blocks', text: () => Array.from({ length: 2001 }, (_, index) => `block B${index} 3" { ink }\n`).join(''), says: ['too-large', 1999, /2,000/], behind: 'lost' },
  { name: 'a million cells in one row quilt', text: () => `block Cell 1" { ink }\nquilt {\n  straight 1000 by 1000\n  place { Cell }\n}`, says: ['too-large', 2, /100,?000/] },
  { name: 'a million cells written out in a block', text: () => `block Many 9" {\n${`  ${'ink '.repeat(1000)}\n`.repeat(1000)}}`, says: ['too-large', 0, /1,000,000 cells/] },
  { name: 'a block of 5,625 patches', text: () => `block Pixels 75" {\n${`  ${'ink sand ink '.repeat(25)}\n`.repeat(75)}}`, says: ['not-yet', 0, /`Pixels`, 5,625 patches: that is done for 5,000 patches/] },
  { name: 'blocks that double at each level', text: () => `block D0 1" { ink }\n${Array.from({ length: 40 }, (_, index) => `block D${index + 1} 2" {\n  D${index} D${index}\n  D${index} D${index}\n}\n`).join('')}`, says: ['too-large', 33, /100,000 patches/] },
  { name: 'a border of endless units', text: () => `block Bit 1/100000" { ink }\nquilt {\n  straight 1 by 1\n  place { Lamp }\n  border pieced Bit\n}`, says: ['too-large', 4, /./] },
  { name: 'a turn in a turn in a turn', text: () => `block Spin 6" {\n  box 6 by 6\n${'  turned 12 {\n'.repeat(8)}  patch ink 0,0 1,0 0,1\n${'  }\n'.repeat(8)}}`, says: ['too-large', 0, /100,000/] },
  // ------------------------------------------------------------------------------------------ nesting
  { name: '5,000 open braces', text: () => '{'.repeat(5000), says: ['syntax', 0, /./] },
  { name: '5,000 nested braces', text: () => nested(2400, '{', '}'), says: ['syntax', 0, /./] },
  { name: '5,000 nested statements on lines of their own', text: () => `block Deep 6" {\n${nested(5000, 'turned 4 {\n', '}\n', 'ink\n')}}`, says: ['too-large', 64, /64/] },
  { name: '5,000 nested parentheses', text: () => `let deep = ${nested(4900, '(', ')', '1')}`, says: ['too-large', 0, /32|parentheses/] },
  { name: '4,900 nested groups in a cell', text: () => `block Group 6" {\n  ${nested(4900, '(', ')', 'ink')}\n}`, says: ['too-large', 1, /32|parentheses/] },
  { name: 'a block with 300 turns on one cell', text: () => `block Turn 6" {\n  Lamp${'@90'.repeat(300)}\n}` },
  { name: '9,000 minus signs', text: () => `let minus = ${'-'.repeat(9000)}1`, says: ['too-large', 0, /200 steps/] },
  // ------------------------------------------------------------------------------------------ numbers
  { name: '1e400', text: () => 'let big = 1e400', says: ['syntax', 0, /./] },
  { name: 'a number of 9,000 digits', text: () => `let big = ${'9'.repeat(9000)}`, says: ['too-large', 0, /digits/] },
  { name: '2^200 by a chain', text: () => `let p0 = 2\n${chain(200, (from, to) => `let p${to} = p${from} * 2`)}` },
  { name: 'squares of squares', text: () => `let p0 = 3\n${chain(60, (from, to) => `let p${to} = p${from} * p${from}`)}`, says: ['too-large', 12, /digits/] },
  { name: '1/3 of 1/7 of 1/3 …', text: () => `let p0 = 1/3\n${chain(400, (from, to) => `let p${to} = p${from} * 1/${to % 2 === 0 ? 3 : 7}`)}` },
  { name: 'a sum of unlike fractions', text: () => `let p0 = 1/2\n${chain(600, (from, to) => `let p${to} = p${from} + 1/${2 * to + 1}`)}` },
  { name: 'roots of roots', text: () => `let p0 = (1 + sqrt(2))\n${chain(80, (from, to) => `let p${to} = (p${from} * (sqrt(3) + p${from}) / (p${from} - sqrt(2) / ${to + 2}))`)}`, says: ['too-large', 10, /digits/] },
  { name: 'a block of 2^200 inches', text: () => `let p0 = 2\n${chain(200, (from, to) => `let p${to} = p${from} * 2`)}\nblock Vast (p200)" {\n  ink/sand sand\n}\nquilt {\n  straight 2 by 2\n  place { Vast }\n}`, says: ['strip-too-wide', 202, /./] },
  { name: 'a block of 1/3 of 1/7 of … inches', text: () => `let p0 = 1/3\n${chain(60, (from, to) => `let p${to} = p${from} * 1/${to % 2 === 0 ? 3 : 7}`)}\nblock Speck (p60)" {\n  ink/sand sand\n}\nquilt {\n  straight 2 by 2\n  place { Speck }\n}`, says: ['patch-too-small', 62, /./] },
  { name: 'a block of nothing', text: () => 'block None 0" {\n  ink\n}', says: ['wrong-argument', 0, /more than 0/] },
  { name: 'a block of less than nothing', text: () => 'block None (0 - 3)" {\n  ink\n}', says: ['wrong-argument', 0, /./] },
  { name: 'division by zero', text: () => 'let zero = (1 / (1 - 1))', says: ['wrong-argument', 0, /zero/] },
  { name: 'a count of a thousand digits', text: () => `quilt {\n  straight ${'9'.repeat(1000)} by 2\n  place { Lamp }\n}`, says: ['too-large', 1, /digits/] },
  { name: 'a count of 15 digits', text: () => 'quilt {\n  straight 999999999999999 by 999999999999999\n  place { Lamp }\n}', says: ['too-large', 1, /100,?000/] },
  { name: 'a border of 15 digits', text: () => 'quilt {\n  straight 1 by 1\n  place { Lamp }\n  border 999999999999999" ink\n}' },
  { name: 'proportions of 15 digits', text: () => 'block Thin 6" {\n  grid 999999999999999 1 by 1 999999999999999\n  ink sand\n  sand ink\n}\nquilt {\n  straight 2 by 2\n  place { Thin }\n}', says: ['patch-too-small', 2, /./] },
  // ------------------------------------------------------------------------------------------ rings
  { name: 'a block in itself', text: () => 'block Self 6" {\n  Self ink\n}', says: ['wrong-argument', 1, /inside itself: Self → Self/] },
  { name: '500 blocks in a ring', text: () => Array.from({ length: 500 }, (_, index) => `block R${index} 3" { R${(index + 1) % 500} }\n`).join(''), says: ['wrong-argument', 0, /inside itself: R0 → R1/] },
  { name: 'a chain of 500 blocks', text: () => Array.from({ length: 500 }, (_, index) => `block C${index} 3" { ${index === 499 ? 'ink' : `C${index + 1}`} }\n`).join(''), says: ['too-large', 51, /64 levels/] },
  { name: 'numbers in a ring', text: () => 'let here = there\nlet there = here', says: ['wrong-argument', 0, /made from itself: here → there → here/] },
  { name: 'a block given itself', text: () => 'block Frame(a = ink) 6" {\n  a ink\n  ink a\n}\nblock Round 6" { Frame(Round) }', says: ['wrong-argument', 4, /inside itself/] },
  { name: 'an import of itself', text: () => 'import "itself.quilt"', says: ['import-cycle', 0, /./] },
  { name: 'a ring of imports', text: () => 'import "ring0.quilt"', files: Object.fromEntries(Array.from({ length: 50 }, (_, index) => [`ring${index}.quilt`, `import "ring${(index + 1) % 50}.quilt"\n`])), says: ['import-cycle', 0, /./] },
  { name: 'a chain of 300 imports', text: () => 'import "chain0.quilt" as far', files: Object.fromEntries(Array.from({ length: 300 }, (_, index) => [`chain${index}.quilt`, index === 299 ? 'let end = 1\n' : `import "chain${index + 1}.quilt"\n`])) },
  { name: 'imports that double at each level', text: () => 'import "twice0.quilt" as far', files: Object.fromEntries(Array.from({ length: 30 }, (_, index) => [`twice${index}.quilt`, index === 29 ? 'let end = 1\n' : `import "twice${index + 1}.quilt" as a\nimport "twice${index + 1}.quilt" as b\n`])) },
  { name: 'an import of what is missing', text: () => 'import "nowhere.quilt"', says: ['import-missing', 0, /nowhere/] },
  { name: 'an import of a folder up and out', text: () => `import "${'../'.repeat(3000)}etc/passwd"`, says: ['import-missing', 0, /outside/] },
  // ------------------------------------------------------------------------------------------ characters
  { name: 'unpaired surrogates', text: () => 'fabric \uD800ink #112233 "\uDC00 \uD83E"\n\uDFFF', says: ['syntax', 0, /./] },
  { name: 'NUL', text: () => 'fabric nul\0 #112233 "N\0L"\n\0\0\0', says: ['syntax', 0, /./] },
  { name: 'every control character', text: () => Array.from({ length: 32 }, (_, code) => `let c${code} = ${String.fromCharCode(code)}1\n`).join(''), says: ['syntax', 0, /./] },
  { name: 'a byte order mark in the middle', text: () => '\uFEFFfabric bom #112233 "B"' },
  { name: 'right-to-left marks, which are blanks wherever they stand', text: () => 'fabric \u202Eknab\u202C #112233 "\u202Eabc\u202C \u2067x\u2069"' },
  { name: 'marks of 9,000 accents on a letter', text: () => `let a${'\u0301'.repeat(9000)} = 1` },
  { name: 'every kind of blank', text: () => 'let\u00A0a\u3000=\u20091\nlet\u2028b\u2029= 1', says: ['syntax', 1, /./] },
  { name: 'look-alike signs', text: () => 'block Look 6″ {\n  ink／sand ink∕sand\n  ink－sand ink–sand\n}', says: ['syntax', 1, /./] },
  { name: 'line ends of every kind', text: () => 'let a = 1\rlet b = 2\r\nlet c = 3\n\rlet d = 4\r\r\n' },
  { name: 'a text that never ends', text: () => 'fabric open #112233 """never\n// and on', says: ['syntax', 0, /./] },
  { name: '2,000 texts that never end', text: () => '"""\n'.repeat(2001), says: ['syntax', 0, /./] },
  { name: 'a conflict left by version control', text: () => '<<<<<<< ours\nblock Mine 6" { ink }\n=======\nblock Mine 6" { sand }\n>>>>>>> theirs', says: ['syntax', 0, /./] },
  { name: 'a picture renamed', text: () => Array.from({ length: 4096 }, (_, index) => String.fromCharCode((index * 7919) % 256)).join(''), says: ['syntax', 0, /./] },
];

/** Whole files of 10 MiB and a little more: lines short and long, each another or all alike, and one line. */
export const LARGE_FILES: readonly BadInput[] = [
  { name: '10 MiB of good lines, each another', text: () => lines(10 * MIB - MIB / 8, (number) => `let n${number} = ${number}   // a line like many others`), says: ['too-large', 100_000, /100,000 lines/] },
  { name: '10 MiB of bad lines, each another', text: () => lines(10 * MIB - MIB / 8, (number) => `bogus ${number} line that says nothing at all`), says: ['too-large', 100_000, /100,000 lines/] },
  { name: '11 MiB of long lines, all alike', text: () => lines(11 * MIB, () => `let a = 1 // ${'x'.repeat(190)}`), says: ['too-large', 51_400, /10 MiB/] },
  { name: '10 MiB in one line', text: () => 'x'.repeat(10 * MIB), says: ['too-large', 0, /10000 characters/] },
];

function chain(length: number, line: (from: number, to: number) => string): string {
  return Array.from({ length }, (_, index) => line(index, index + 1)).join('\n');
}
