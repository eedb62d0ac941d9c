/** The quilt in its sizes and colourways: what replaces what, and every statement resolved. */
import { describe, expect, test } from 'vitest';
import { key } from '../../server/src/exact/number.ts';
import type { BorderSpec, GridLine, QuiltSpec, TileSpec } from '../../server/src/model/pattern.ts';
import { specifyQuilt } from '../../server/src/model/quilt.ts';
import { cellText, linesOf, patternOf, quiltOf, rowsText } from './host.ts';

const CLOTH = 'fabric ink #22345c "Night"\nfabric sand #eadfc8\nfabric rust #a4502e\nblock Nine(a = ink) 6" {\n a sand\n}\n';
const quilt = (lines: string, rest = ''): string => `${CLOTH}quilt {\n${lines}\n}\n${rest}\n`;
const specOf = (lines: string): QuiltSpec => quiltOf(patternOf(quilt(lines)));

describe('settings', () => {
  test.each<[string, string]>([
    ['straight 4 by 5', 'straight 4 by 5'],
    ['on_point (2*2) by 5', 'on_point 4 by 5'],
    ['grid 3" 6 rest by (1" + 1)', 'grid 3" 6" rest by 2"'],
    ['rows 40"\nrow Nine sand\nrow cut 2" ink', 'rows 40: Nine sand; 3/2 ink'],
  ])('%s', (lines, expected) => {
    expect(settingText(specOf(lines))).toBe(expected);
  });

  test('without one there is none, and nothing else is lost', () => {
    const spec = specOf('place { Nine }\nborder 1" ink');
    expect([settingText(spec), tileText(spec.tile), spec.borders.length]).toEqual(['', 'Nine', 1]);
  });

  test('a library has no quilt to specify', () => {
    expect(() => specifyQuilt(patternOf(CLOTH))).toThrow(RangeError);
  });

  test('tiles, also a quarter of one', () => {
    const spec = specOf('on_point 4 by 5\nplace turned 4 {\n Nine Nine@90\n sand Nine(rust)\n}\nbetween { sand }');
    expect([tileText(spec.tile), spec.tile?.symmetry?.kind, spec.tile?.symmetry?.times, tileText(spec.between)]).toEqual(['Nine Nine@90; sand Nine(rust)', 'turned', 4, 'sand']);
  });

  test('edges, in one line or in several', () => {
    const inOne = specOf('on_point 2 by 2\nplace { Nine }\nedges sand corners none float 1/2"');
    const inSeveral = specOf('on_point 2 by 2\nplace { Nine }\nedges sand\ncorners Nine\nfloat cut 1"');
    expect(edgesText(inOne)).toEqual(['sand', 'none', '1/2']);
    expect(edgesText(inSeveral)).toEqual(['sand', 'Nine', '1/2']);
  });

  test.each<[string, readonly unknown[]]>([
    ['sashing 1 1/2" sand', ['3/2', 'sand', undefined, false]],
    ['sashing cut 2" sand cornerstones Nine outer', ['3/2', 'sand', 'Nine', true]],
    ['sashing Nine cornerstones rust', [undefined, 'Nine', 'rust', false]],
  ])('%s', (line, expected) => {
    const { sashing } = specOf(`straight 2 by 2\nplace { Nine }\n${line}`);
    expect(sashing && [sashing.width && key(sashing.width), cellText(sashing.filling), sashing.cornerstones && cellText(sashing.cornerstones), sashing.outer]).toEqual(expected);
  });
});

describe('borders', () => {
  test.each([
    ['border 1" rust', '1 1 rust butted'],
    ['border cut 6 1/2" ink corners mitred lengthwise', '6 6 ink mitred lengthwise'],
    ['border 2" ink corners squares rust', '2 2 ink squares rust'],
    ['border 2" ink corners squares Nine', '2 2 ink squares Nine'],
    ['border top 2" sides 3" ink', '2 3 ink butted'],
    ['border pieced Nine', 'pieced Nine'],
    ['border pieced Nine(rust)@90 corner Nine meet', 'pieced Nine(rust)@90 corner Nine meet'],
    ['border pieced { Nine Nine@180 }', 'pieced Nine Nine@180'],
    ['border to 60" by 72" ink', 'to 60 by 72 ink butted'],
    ['border fit 2" ink', 'fit 2 ink butted'],
  ])('%s', (line, expected) => {
    const pattern = patternOf(quilt(`straight 2 by 2\nplace { Nine }\n${line}`));
    expect(linesOf(pattern).filter((each) => !each.includes('unused'))).toEqual([]);
    expect(quiltOf(pattern).borders.map(borderText)).toEqual([expected]);
  });

  test('stand from the inside out; a bad one is left out', () => {
    expect(specOf('straight 2 by 2\nplace { Nine }\nborder 1" ink\nborder 0" sand\nborder 3" rust').borders.map(borderText)).toEqual(['1 1 ink butted', '3 3 rust butted']);
  });

  test('an unknown fabric keeps its width', () => {
    const [border] = specOf('straight 2 by 2\nplace { Nine }\nborder 1" snad').borders;
    expect(border?.kind === 'plain' && [key(border.top), border.fabric.standsFor]).toEqual(['1', 'unknown']);
  });

  test('a cut width follows the seam of the pattern', () => {
    const pattern = patternOf(`pattern "x" {\n seam 1/2"\n}\n${quilt('straight 2 by 2\nplace { Nine }\nborder cut 3" ink')}`);
    expect(quiltOf(pattern).borders.map(borderText)).toEqual(['2 2 ink butted']);
  });
});

describe('finishing', () => {
  test('backing and batting stand out by 4" unless it is said', () => {
    const usual = specOf('straight 2 by 2\nplace { Nine }\nbacking sand\nbatting');
    const said = specOf('straight 2 by 2\nplace { Nine }\nbacking sand overhang 0" width 108"\nbatting overhang 2"');
    expect([usual.backing?.fabric?.name, usual.backing && key(usual.backing.overhang), usual.batting && key(usual.batting.overhang)]).toEqual(['sand', '4', '4']);
    expect([said.backing && key(said.backing.overhang), said.backing?.width && key(said.backing.width), said.batting && key(said.batting.overhang)]).toEqual(['0', '108', '2']);
  });

  test.each([
    ['binding cut 2 1/4" rust', '9/4 double straight'],
    ['binding cut 1 1/4" rust single bias', '5/4 single bias'],
    ['binding 3/8" rust', '9/4 double straight'],
    ['binding 3/8" rust single', '3/2 single straight'],
  ])('%s', (line, expected) => {
    const { binding } = specOf(`straight 2 by 2\nplace { Nine }\n${line}`);
    expect(binding && `${key(binding.cutWidth)} ${binding.double ? 'double' : 'single'} ${binding.bias ? 'bias' : 'straight'}`).toBe(expected);
  });

  test('quilting keeps its words and its measures', () => {
    const { quilting, quiltingLines } = specOf('straight 2 by 2\nplace { Nine }\nquilting "Spirals" in_the_ditch echo 1/4"');
    expect(quilting).toHaveLength(3);
    expect(quiltingLines?.map((line) => (line.kind === 'words' ? line.text : line.kind === 'echo' ? key(line.distance) : line.kind))).toEqual(['Spirals', 'in_the_ditch', '1/4']);
  });
});

describe('sizes', () => {
  const SIZED = quilt(
    'on_point 4 by 5\nplace { Nine }\nedges sand corners none\nborder 1" rust\nborder 6" ink\nbacking sand',
    'let unit = 2"\nlet wide = unit * 2\nsize crib 3 by 4\nsize throw 5 by 6 {\n border 2" sand\n corners rust\n}\nsize wall 2 by 3 {\n straight 9 by 9\n place { sand Nine }\n}\nsize big 4 by 4 {\n let unit = 3"\n border (wide) ink\n}',
  );
  const sized = (size?: string): QuiltSpec => quiltOf(patternOf(SIZED), size);

  test('the count of the size replaces that of the quilt', () => {
    expect([undefined, 'crib', 'throw'].map((size) => settingText(sized(size)))).toEqual(['on_point 4 by 5', 'on_point 3 by 4', 'on_point 5 by 6']);
    expect(sized('crib').size?.name).toBe('crib');
  });

  test('a statement in a size replaces all of its keyword, and nothing else', () => {
    expect(sized('crib').borders.map(borderText)).toEqual(['1 1 rust butted', '6 6 ink butted']);
    expect(sized('throw').borders.map(borderText)).toEqual(['2 2 sand butted']);
    expect(edgesText(sized('throw'))).toEqual(['sand', 'rust', undefined]);
    expect(sized('throw').backing?.fabric?.name).toBe('sand');
  });

  test('another setting in a size takes the place of the setting', () => {
    const pattern = patternOf(SIZED);
    const spec = quiltOf(pattern, 'wall');
    expect([settingText(spec), tileText(spec.tile)]).toEqual(['straight 2 by 3', 'sand Nine']);
  });

  test('a number in a size replaces that of the file, and what is made from it follows', () => {
    expect(sized('big').borders.map(borderText)).toEqual(['6 6 ink butted']);
  });

  test('blocks follow the numbers of the size, and only there', () => {
    const pattern = patternOf(`fabric ink #000000\nlet unit = 2"\nblock Buoy (unit*2) {\n ink\n}\nquilt {\n straight 1 by 1\n place { Buoy }\n}\nsize small 2 by 2\nsize big 3 by 3 {\n let unit = 4"\n}`);
    const sides = [undefined, 'small', 'big'].map((size) => {
      const [cell] = quiltOf(pattern, size).tile?.rows[0]?.cells ?? [];
      return cell?.kind === 'block' && cell.block.size && key(cell.block.size.width);
    });
    expect(sides).toEqual(['4', '4', '8']);
    expect(linesOf(pattern)).toEqual([]);
  });

  test('a half-typed count leaves the count of the quilt', () => {
    expect(patternOf(SIZED.replace('size crib 3 by 4', 'size crib 3 by')).sizes.map(({ name, across, down }) => `${name} ${across} ${down}`)).toEqual(['crib 4 5', 'throw 5 6', 'wall 2 3', 'big 4 4']);
  });

  test('what is wrong in a size is found in that size', () => {
    expect(linesOf(patternOf(quilt('straight 1 by 1\nplace { Nine rust }', 'size crib 2 by 2 {\n border 1" snad\n let n = m\n}')))).toEqual(['[snad] unknown-name: no fabric snad', '[m] unknown-name: no number m']);
  });
});

describe('colourways', () => {
  const pattern = patternOf(quilt('straight 1 by 1\nplace { Nine }\nborder 1" rust', 'assorted reds 3 #aa2211\ncolorway dusk {\n ink #000033 "Dusk"\n rust #333333\n reds #101010\n}'));

  test('change colours and labels and nothing else', () => {
    const { colours } = pattern.colorways[0] ?? { colours: new Map<string, never>() };
    expect([...colours].map(([name, { colour, label }]) => [name, colour, label])).toEqual([['ink', '#000033', 'Dusk'], ['rust', '#333333', undefined], ['reds', '#101010', undefined]]);
    const spec = quiltOf(pattern, undefined, 'dusk');
    const [cell] = spec.tile?.rows[0]?.cells ?? [];
    const body = cell?.kind === 'block' ? cell.block.body : undefined;
    const patch = body?.kind === 'grid' ? body.content[0]?.cells[0] : undefined;
    expect(patch?.kind === 'fabric' && [patch.fabric.name, patch.fabric.colour, patch.fabric.label]).toEqual(['ink', '#000033', 'Dusk']);
    const [border] = spec.borders;
    expect(border?.kind === 'plain' && [border.fabric.name, border.fabric.colour, border.fabric.label]).toEqual(['rust', '#333333', 'rust']);
  });

  test('leave the pattern as it is', () => {
    const [before] = quiltOf(pattern).tile?.rows[0]?.cells ?? [];
    quiltOf(pattern, undefined, 'dusk');
    const [after] = quiltOf(pattern).tile?.rows[0]?.cells ?? [];
    expect(before?.kind === 'block' && after?.kind === 'block' && before.block === after.block && rowsText(before.block)).toEqual(['ink sand']);
  });
});

describe('steps', () => {
  test('keep their wording and where it stands', () => {
    const { steps } = patternOf(`${CLOTH}steps before Nine {\n "One {Nine.count}."\n """Two\nlines"""\n}\nsteps {\n "All."\n}`);
    expect(steps.map(({ where, of, texts }) => [where, of, texts.map(({ text }) => text)])).toEqual([['before', 'Nine', ['One {Nine.count}.', 'Two\nlines']], ['instead', undefined, ['All.']]]);
  });
});

function settingText({ setting }: QuiltSpec): string {
  if (!setting) return '';
  if (setting.kind === 'grid') return `grid ${setting.columns.map(lineText).join(' ')} by ${setting.rows.map(lineText).join(' ')}`;
  if (setting.kind !== 'rows') return `${setting.kind} ${setting.across} by ${setting.down}`;
  return `rows ${key(setting.width)}: ${setting.rows.map((row) => (row.kind === 'cells' ? row.cells.map(cellText).join(' ') : `${key(row.height)} ${row.fabric.name}`)).join('; ')}`;
}

function lineText(line: GridLine): string {
  return line.kind === 'rest' ? 'rest' : `${key(line.value)}${line.kind === 'length' ? '"' : ''}`;
}

function tileText(tile: TileSpec | undefined): string {
  return tile?.rows.map(({ cells }) => cells.map(cellText).join(' ')).join('; ') ?? '';
}

function edgesText({ edges, cornerFilling, float }: QuiltSpec): readonly (string | undefined)[] {
  const corner = cornerFilling?.filling;
  return [edges && cellText(edges.filling), corner === 'none' ? corner : corner && cellText(corner), float && key(float.width)];
}

function borderText(border: BorderSpec): string {
  if (border.kind === 'pieced') {
    return ['pieced', ...border.units.map(cellText), ...(border.corner ? ['corner', cellText(border.corner)] : []), ...(border.meet ? ['meet'] : [])].join(' ');
  }
  const measures = border.kind === 'plain' ? `${key(border.top)} ${key(border.sides)}` : border.kind === 'to' ? `to ${key(border.width)} by ${key(border.height)}` : `fit ${key(border.atLeast)}`;
  const corners = border.corners.kind === 'squares' ? `squares ${cellText(border.corners.filling)}` : border.corners.kind;
  return `${measures} ${border.fabric.name} ${corners}${border.lengthwise ? ' lengthwise' : ''}`;
}
