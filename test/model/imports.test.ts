/** Imports: whose names, whose units, whose fabrics; files that cannot be brought in; names that would clash. */
import { describe, expect, test } from 'vitest';
import { key } from '../../server/src/exact/number.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { instanceOf, linesOf, patternOf, quiltOf, rowsText, type Files } from './host.ts';

const STARS = 'fabric ink #000000 "Black"\nfabric moon #ffffff "White"\nlet unit = 2"\nblock Star(a = ink, b = moon) (unit*3) {\n a b\n b Dot\n}\nblock Dot 2" {\n moon\n}\n';

describe('names', () => {
  test('come in as they are', () => {
    const pattern = patternOf('import "stars.quilt"\nblock Buoy (unit) {\n ink Star\n}', { 'stars.quilt': STARS });
    expect(linesOf(pattern)).toEqual([]);
    expect(rowsText(instanceOf(pattern, 'Buoy'))).toEqual(['ink Star']);
    expect([...pattern.fabrics.keys()]).toEqual(['ink', 'moon']);
  });

  test('or under the name of the import', () => {
    const pattern = patternOf('import "stars.quilt" as lib\nblock Buoy (lib.unit) {\n lib.ink lib.Star lib.Star(lib.moon)\n}', { 'stars.quilt': STARS });
    expect(linesOf(pattern)).toEqual([]);
    expect(rowsText(instanceOf(pattern, 'Buoy'))).toEqual(['lib.ink lib.Star lib.Star(lib.moon)']);
  });

  test('and not without it', () => {
    expect(linesOf(patternOf('import "stars.quilt" as lib\nblock Buoy 4" {\n ink Star\n}', { 'stars.quilt': STARS }))).toEqual(['[ink] unknown-name: no fabric or block ink', '[Star] unknown-name: no fabric or block Star']);
  });

  test('an imported block keeps the fabrics of its own file', () => {
    const pattern = patternOf('fabric ink #22345c\nimport "stars.quilt" as lib\nblock Buoy 4" {\n ink lib.Star\n}', { 'stars.quilt': STARS });
    const star = instanceOf(pattern, 'Buoy').nested?.[0];
    expect(star && rowsText(star)).toEqual(['lib.ink lib.moon', 'lib.moon lib.Dot']);
  });

  test('a declaration of the file wins, and the hidden fabric gets a name of its own', () => {
    const pattern = patternOf('import "blocks/stars.quilt"\nfabric ink #22345c\nblock Buoy 4" {\n ink Star\n}', { 'blocks/stars.quilt': STARS });
    const star = instanceOf(pattern, 'Buoy').nested?.[0];
    expect(linesOf(pattern)).toEqual([]);
    expect(pattern.fabrics.get('ink')?.colour).toBe('#22345c');
    expect(star && rowsText(star)).toEqual(['stars.ink moon', 'moon Dot']);
  });

  test('imports of imports stay where they are, and their blocks work', () => {
    const files: Files = { 'a.quilt': 'import "b.quilt"\nblock Outer 4" {\n Inner sand\n}', 'b.quilt': 'fabric sand #eadfc8\nblock Inner 4" {\n sand\n}' };
    const pattern = patternOf('import "a.quilt"\nblock Buoy 4" {\n Outer\n}\nblock Bell 4" {\n Inner\n}', files);
    expect(linesOf(pattern)).toEqual(['[Inner] unknown-name: no fabric or block Inner']);
    expect(rowsText(instanceOf(pattern, 'Outer'))).toEqual(['Inner sand']);
  });

  test('one block by two ways is one block', () => {
    const files: Files = { 'a.quilt': 'import "b.quilt"\nblock Outer 4" {\n Inner\n}', 'b.quilt': 'fabric sand #eadfc8\nblock Inner 4" {\n sand\n}' };
    const pattern = patternOf('import "a.quilt"\nimport "b.quilt" as b\nblock Buoy 4" {\n Outer b.Inner\n}', files);
    const [outer, inner] = instanceOf(pattern, 'Buoy').nested ?? [];
    expect(outer?.nested).toEqual([inner]);
    expect(inner?.name).toBe('b.Inner');
  });

  test('two imports with one name are said when it is used', () => {
    const files: Files = { 'a.quilt': 'fabric ink #000000\nblock A 4" {\n ink\n}', 'b.quilt': 'fabric ink #111111\nblock B 4" {\n ink\n}' };
    expect(linesOf(patternOf('import "a.quilt"\nimport "b.quilt"\nblock Buoy 4" {\n A B\n}', files))).toEqual([]);
    expect(linesOf(patternOf('import "a.quilt"\nimport "b.quilt"\nblock Buoy 4" {\n A B ink\n}', files))).toEqual(['["b.quilt"] duplicate-name: two imported declarations ink']);
    expect(linesOf(patternOf('import "a.quilt" as x\nimport "b.quilt" as x', files))).toEqual(['[x] duplicate-name: two imports x']);
  });

  test('what imports bring need not be used', () => {
    expect(linesOf(patternOf('import "stars.quilt"\nfabric sand #eadfc8\nquilt {\n straight 1 by 1\n place { sand }\n}', { 'stars.quilt': STARS }))).toEqual([]);
  });
});

describe('units', () => {
  const METRIC: Files = { 'metric.quilt': 'pattern "m" { units centimetres }\nfabric sand #eadfc8\nlet side = 10 + 0 cm\nlet n = 3\nblock Tile 10 {\n sand\n}\nblock Cut cut 11.5 {\n sand\n}' };

  test('an imported file keeps its own', () => {
    const pattern = patternOf('import "metric.quilt"\nblock Buoy (side) {\n Tile\n}', METRIC);
    expect(['Tile', 'Cut', 'Buoy'].map((name) => sizeOf(pattern, name))).toEqual(['500/127', '500/127', '500/127']);
  });

  test('a plain number of it has none', () => {
    expect(sizeOf(patternOf('import "metric.quilt"\nblock Buoy (n) {\n sand\n}', METRIC), 'Buoy')).toBe('3');
  });

  function sizeOf(pattern: ReturnType<typeof patternOf>, name: string): string | undefined {
    const { size } = instanceOf(pattern, name);
    return size && key(size.width);
  }
});

describe('files that cannot be brought in', () => {
  test.each([
    ['import "none.quilt" as lib', 'none.quilt missing'],
    ['import "../secret.quilt" as lib', '../secret.quilt outside'],
    ['import "photo.png" as lib', 'photo.png unreadable'],
  ])('%s', (line, reason) => {
    const pattern = patternOf(`${line}\nfabric sand #eadfc8\nblock Buoy 4" {\n lib.Star sand snad\n}`);
    expect(linesOf(pattern)).toEqual([`[${/".*"/.exec(line)?.[0] ?? ''}] import-missing: ${reason}`, '[snad] unknown-name: no fabric or block snad']);
  });

  test('without a name, any unknown name may come from it', () => {
    expect(linesOf(patternOf('import "none.quilt"\nblock Buoy 4" {\n Star\n}'))).toEqual(['["none.quilt"] import-missing: none.quilt missing']);
  });

  test.each<[string, string, Files, string]>([
    ['a file that imports itself', 'import "a.quilt"', { 'a.quilt': 'import "a.quilt"' }, 'a.quilt → a.quilt'],
    ['the file itself', 'import "test.quilt"', { 'test.quilt': '' }, 'test.quilt → test.quilt'],
    ['a ring through this file', 'import "a.quilt"', { 'a.quilt': 'import "test.quilt"', 'test.quilt': 'import "a.quilt"' }, 'test.quilt → a.quilt → test.quilt'],
    ['a ring behind', 'import "a.quilt"', { 'a.quilt': 'import "b.quilt"', 'b.quilt': 'import "c.quilt"', 'c.quilt': 'import "b.quilt"' }, 'b.quilt → c.quilt → b.quilt'],
  ])('%s', (_, text, files, chain) => {
    expect(linesOf(patternOf(text, files))).toEqual([`["${/"(.*)"/.exec(text)?.[1] ?? ''}"] import-cycle: ${chain}`]);
  });

  test('what a ring declares is there all the same', () => {
    const pattern = patternOf('import "a.quilt"\nblock Buoy 4" {\n sand\n}', { 'a.quilt': 'import "test.quilt"\nfabric sand #eadfc8', 'test.quilt': 'import "a.quilt"' });
    expect(linesOf(pattern)).toEqual(['["a.quilt"] import-cycle: test.quilt → a.quilt → test.quilt']);
  });

  test('a file that two others import is no ring', () => {
    const files: Files = { 'a.quilt': 'import "c.quilt"', 'b.quilt': 'import "c.quilt"', 'c.quilt': 'fabric sand #eadfc8' };
    expect(linesOf(patternOf('import "a.quilt"\nimport "b.quilt"', files))).toEqual([]);
  });
});

test('a colourway colours an imported fabric in imported blocks too', () => {
  const pattern = patternOf('import "stars.quilt" as lib\nquilt {\n straight 1 by 1\n place { lib.Star }\n}\ncolorway day {\n lib.ink #ffee00 "Sun"\n}', { 'stars.quilt': STARS });
  expect(linesOf(pattern)).toEqual([]);
  const [cell] = quiltOf(pattern, undefined, 'day').tile?.rows[0]?.cells ?? [];
  const body = cell?.kind === 'block' ? cell.block.body : undefined;
  const patch = body?.kind === 'grid' ? body.content[0]?.cells[0] : undefined;
  expect(patch?.kind === 'fabric' ? [patch.fabric.name, patch.fabric.colour, patch.fabric.label] : []).toEqual(['lib.ink', '#ffee00', 'Sun']);
});

describe('the tool\'s own library', () => {
  test('is imported by a name without a dot or a slash, from anywhere', () => {
    const { hasErrors, pattern } = snapshotOfText('import "traditional" as trad\nfabric ink #22345c\nfabric sand #eadfc8\nquilt {\n  straight 2 by 2\n  place { Star }\n}\nblock Star 9" { trad.pinwheel(ink, sand) }\n');
    expect(hasErrors).toBe(false);
    expect(pattern.blocks.get('trad.pinwheel')?.origin).toBe('import');
  });

  test('other names name those there are, and never reach the disk', () => {
    const { problems } = snapshotOfText('import "tradional"\n', { tradional: 'let side = 2"\n' });
    expect(problems.map(({ message }) => message)).toEqual(['there is no library `tradional`; the tool\'s own: `traditional` (a file of yours ends in `.quilt`)']);
  });
});
