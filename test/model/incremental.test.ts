/** A pattern built after another one says what a fresh one says, and what has not changed is the same object. */
import { describe, expect, test } from 'vitest';
import { buildPattern } from '../../server/src/model/build.ts';
import type { BlockInstance, Pattern } from '../../server/src/model/pattern.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf, replaceRange, type Document } from '../../server/src/text/document.ts';
import { dumpOf } from './dump.ts';
import { hostOf, instanceOf, quiltOf, type Files } from './host.ts';

const FILES: Files = { 'lib.quilt': 'fabric ink #000000\nfabric moon #ffffff\nblock Star(a = ink) 6" {\n a moon\n}' };

const TEXT = `// A harbour.
pattern "Harbour" {
  seam 1/4"
}
import "lib.quilt" as lib
fabric ink #22345c "Night"
fabric sand #eadfc8
fabric rust #a4502e
let unit = 2"
block Nine(a = ink, b = sand) (unit*3) {
  a b
  b a
}
block Bell(c) 6" {
  c sand
}
block Buoy 6" {
  Nine Nine(rust)
  lib.Star Bell(ink)
}
quilt {
  straight 2 by 2
  place { Buoy Nine }
  border 1" rust
}
size crib 2 by 3
size big 4 by 4 {
  let unit = 3"
}
colorway dusk {
  ink #000033 "Dusk"
}`;

const HOST = hostOf(FILES);

/** A pattern and the one after an edit: the first place where `from` stands has `to`. */
function edited(from: string, to: string): { readonly before: Pattern; readonly after: Pattern; readonly fresh: Pattern } {
  const document = documentOf('test.quilt', TEXT);
  const tree = parse(document);
  const before = buildPattern(tree, HOST);
  dumpOf(before);
  const changed = replaced(document, from, to);
  const after = buildPattern(parse(changed, tree), HOST, before);
  return { before, after, fresh: buildPattern(parse(documentOf('test.quilt', changed.text)), HOST) };
}

function replaced(document: Document, from: string, to: string): Document {
  const line = document.lines.findIndex(({ text }) => text.includes(from));
  const character = document.lines[line]?.text.indexOf(from) ?? 0;
  return replaceRange(document, { line, character }, { line, character: character + from.length }, to);
}

describe('after an edit everything is as if read anew', () => {
  test.each([
    ['a cell', '  c sand', '  c rust'],
    ['a cell that is not there', '  c sand', '  c snad'],
    ['a colour', '#22345c', '#22345d'],
    ['a number', 'let unit = 2"', 'let unit = 2 1/2"'],
    ['the seam', 'seam 1/4"', 'seam 3/8"'],
    ['the units', 'seam 1/4"', 'units centimetres'],
    ['a default', 'a = ink', 'a = rust'],
    ['a parameter', '(c)', '(d)'],
    ['the name of a block', 'block Bell', 'block Bill'],
    ['the name of a fabric', 'fabric sand', 'fabric sane'],
    ['a new line above everything', 'pattern', '// note\n\npattern'],
    ['the import', '"lib.quilt" as lib', '"none.quilt" as lib'],
    ['the name of the import', 'as lib', 'as bib'],
    ['a size', '2 by 3', '2 by 4'],
    ['a number of a size', 'let unit = 3"', 'let unit = 4"'],
    ['a colour of a colourway', '#000033', '#000034'],
    ['a row gone', '  b a\n', ''],
    ['a ring', '  c sand', '  c Buoy'],
    ['a brace gone', 'b a\n}', 'b a\n'],
    ['half a statement', 'place { Buoy Nine }', 'pla'],
    ['a second fabric of a name', 'fabric rust', 'fabric ink'],
  ])('%s', (_, from, to) => {
    const { after, fresh } = edited(from, to);
    expect(dumpOf(after)).toEqual(dumpOf(fresh));
  });
});

describe('what has not changed is the same object', () => {
  const same = (from: string, to: string, ...names: readonly string[]): readonly boolean[] => {
    const { before, after } = edited(from, to);
    return names.map((name) => instanceOf(before, name) === instanceOf(after, name));
  };

  test('an edit in one block costs that block, and those it stands in', () => {
    expect(same('b a', 'b b', 'Nine', 'Bell', 'Buoy', 'lib.Star')).toEqual([false, true, false, true]);
    expect(same('lib.Star Bell', 'Bell(rust) Bell', 'Nine', 'Bell', 'Buoy', 'lib.Star')).toEqual([true, true, false, true]);
  });

  test('a line above, or an edit in the quilt, costs no block', () => {
    expect(same('pattern', '\n\npattern', 'Nine', 'Bell', 'Buoy', 'lib.Star')).toEqual([true, true, true, true]);
    expect(same('border 1"', 'border 2"', 'Nine', 'Bell', 'Buoy', 'lib.Star')).toEqual([true, true, true, true]);
  });

  test('a fabric costs the blocks it is in', () => {
    expect(same('#a4502e', '#a4502f', 'Nine', 'Bell', 'Buoy', 'lib.Star')).toEqual([true, true, false, true]);
  });

  test('a number costs the blocks that use it', () => {
    expect(same('let unit = 2"', 'let unit = 4"', 'Nine', 'Bell', 'Buoy')).toEqual([false, true, false]);
  });

  test('also in a colourway and in a size', () => {
    const { before, after } = edited('  c sand', '  c rust');
    const first = (pattern: Pattern, size?: string, colorway?: string): BlockInstance | undefined => {
      const cell = quiltOf(pattern, size, colorway).tile?.rows[0]?.cells[1];
      return cell?.kind === 'block' ? cell.block : undefined;
    };
    expect(first(before, undefined, 'dusk')).toBe(first(after, undefined, 'dusk'));
    expect(first(before, 'big')).toBe(first(after, 'big'));
    expect(first(after, 'big')).not.toBe(first(after));
    expect(first(after, 'crib')).toBe(first(after));
  });

  test('with the same statements the pattern keeps everything it has worked out', () => {
    const { before, after } = edited('A harbour', 'Two\n// harbours');
    expect(after.workings === before.workings).toBe(true);
    expect(after.tree).not.toBe(before.tree);
  });
});
