/** Blocks with their arguments: what they are called, that they are made once, what stands in them. */
import { describe, expect, test } from 'vitest';
import { key } from '../../server/src/exact/number.ts';
import { defaultInstance, instantiate, sampleInstance } from '../../server/src/model/instantiate.ts';
import type { BlockInstance, PatchItem, Pattern } from '../../server/src/model/pattern.ts';
import { cellText, instanceOf, linesOf, patternOf, rowsText, textAt } from './host.ts';

const CLOTH = 'fabric ink #22345c\nfabric sand #eadfc8\nfabric rust #a4502e\n';

describe('names and keys', () => {
  const used = (declared: string, use: string): readonly string[] => rowsText(instanceOf(patternOf(`${CLOTH}${declared}\nblock Buoy 4" {\n ${use}\n}`), 'Buoy'));
  const NINE = 'block Nine(a = ink, b = sand, d = 1/3) 4" {\n a*(d)|b\n}';

  test.each([
    ['Nine', 'Nine'],
    ['Nine(rust)', 'Nine(rust)'],
    ['Nine(ink)', 'Nine'],
    ['Nine(b: rust)', 'Nine(b: rust)'],
    ['Nine(b = rust)', 'Nine(b: rust)'],
    ['Nine(ink, rust)', 'Nine(b: rust)'],
    ['Nine(rust, sand, 1/4)', 'Nine(rust, d: 1/4)'],
    ['Nine(d: 2/6)', 'Nine'],
    ['Nine(d: 1/2")', 'Nine(d: 1/2")'],
    ['Nine(rust)@90@flip', 'Nine(rust)@90@flip'],
    ['Nine(Nine(rust))', 'Nine(Nine(rust))'],
    ['Nine(Nine@90)', 'Nine(Nine@90)'],
  ])('%s is %s', (use, name) => {
    expect(used(NINE, use)).toEqual([name]);
  });

  test('the same arguments are the same object, however they are written', () => {
    const pattern = patternOf(`${CLOTH}${NINE}\nblock Buoy 4" {\n Nine Nine(ink) Nine(b: sand) Nine(ink, sand, 2/6) Nine(rust)\n}`);
    expect(instanceOf(pattern, 'Buoy').nested).toHaveLength(2);
    expect(instanceOf(pattern, 'Buoy').nested?.[0]).toBe(instanceOf(pattern, 'Nine'));
  });

  test('keys tell instances apart and are the same for the same text', () => {
    const text = `${CLOTH}${NINE}\nblock Buoy 4" {\n Nine Nine(rust) Nine(1/3) Nine(Nine)\n}`;
    const keys = (): readonly string[] => (instanceOf(patternOf(text), 'Buoy').nested ?? []).map((nested) => nested.key);
    expect(new Set(keys()).size).toBe(4);
    expect(keys()).toEqual(keys());
  });
});

describe('parameters', () => {
  const rows = (text: string, name = 'Buoy'): readonly string[] => rowsText(instanceOf(patternOf(CLOTH + text), name));

  test('hide what is declared outside', () => {
    expect(rows('block Buoy(ink = sand) 4" {\n ink rust\n}')).toEqual(['sand rust']);
  });

  test('a default names what is declared, even under the name of the parameter', () => {
    expect(rows('block Buoy(ink = ink, sand = rust) 4" {\n ink sand\n}')).toEqual(['ink rust']);
  });

  test('a default may name an earlier parameter', () => {
    expect(rows('block Hour(top, right, bottom = top, left = right) 4" {\n top right bottom left\n}\nblock Buoy 4" {\n Hour(ink, sand)\n}', 'Hour')).toEqual(['top right top right']);
    const pattern = patternOf(`${CLOTH}block Hour(top, right, bottom = top, left = right) 4" {\n top right bottom left\n}\nblock Buoy 4" {\n Hour(ink, sand) Hour(ink, sand, rust, rust)\n}`);
    const nested = instanceOf(pattern, 'Buoy').nested ?? [];
    expect(nested.map(({ name }) => name)).toEqual(['Hour(ink, sand)', 'Hour(ink, sand, rust, rust)']);
    expect(nested.map(rowsText)).toEqual([['ink sand ink sand'], ['ink sand rust rust']]);
  });

  test('and none of the later ones', () => {
    expect(linesOf(patternOf(`${CLOTH}block Hour(a = b, b = ink) 4" {\n a b\n}`))).toEqual(['[b] unknown-name: no fabric or block b']);
  });

  test('may stand for blocks, with or without arguments', () => {
    const pattern = patternOf(`${CLOTH}block Nine(a = ink) 4" {\n a\n}\nblock Frame(x) 4" {\n x x@90\n}\nblock Buoy 4" {\n Frame(Nine) Frame(Nine(rust)) Frame(Nine@90) Frame(ink)\n}`);
    expect(linesOf(pattern)).toEqual([]);
    expect((instanceOf(pattern, 'Buoy').nested ?? []).filter(({ definition }) => definition.name === 'Frame').map(rowsText)).toEqual([['Nine Nine@90'], ['Nine(rust) Nine(rust)@90'], ['Nine@90 Nine@90@90'], ['ink ink@90']]);
    const withArguments = patternOf(`${CLOTH}block Nine(a = ink) 4" {\n a\n}\nblock Frame(x) 4" {\n x(rust) x\n}\nblock Buoy 4" {\n Frame(Nine)\n}`);
    expect(instanceOf(withArguments, 'Buoy').nested?.map(rowsText)).toEqual([['Nine(rust) Nine']]);
  });

  test('may measure the block', () => {
    const pattern = patternOf(`${CLOTH}block Nine(s = 3") (s*2) {\n ink\n}\nblock Buoy 4" {\n Nine Nine(2)\n}`);
    expect(instanceOf(pattern, 'Buoy').nested?.map(({ size }) => size && key(size.width))).toEqual(['6', '4']);
  });

  test('know what they are used as', () => {
    const kinds = patternOf('block Star(a, b, c, d, e, f = 1/3) (c*2) {\n a a b(ink) Inner(d)\n corner e 1" top_left\n}').blocks.get('Star')?.parameters.map(({ kind }) => kind);
    expect(kinds).toEqual(['cell', 'block', 'number', undefined, 'fabric', 'number']);
  });
});

describe('a block by itself', () => {
  const made = (text: string): readonly (string | undefined)[] => {
    const pattern = patternOf(CLOTH + text);
    const definition = pattern.blocks.get('Buoy');
    if (!definition) throw new Error('No Buoy.');
    return [defaultInstance(pattern, definition), sampleInstance(pattern, definition)].map((instance) => instance && rowsText(instance).join('; '));
  };

  test('has its defaults', () => {
    expect(made('block Buoy(a = ink) 4" {\n a sand\n}')).toEqual(['ink sand', 'ink sand']);
  });

  test('or grey fabrics in place of fabrics that have to be given', () => {
    expect(made('block Buoy(a, b) 4" {\n a b\n}')).toEqual([undefined, 'a b']);
    const pattern = patternOf('block Buoy(a, b) 4" {\n a b\n}');
    const body = instanceOf(pattern, 'Buoy').body;
    const [first, second] = body.kind === 'grid' ? (body.content[0]?.cells ?? []) : [];
    expect(first?.kind === 'fabric' && second?.kind === 'fabric' && [first.fabric.standsFor, first.fabric.colour === second.fabric.colour]).toEqual(['parameter', false]);
  });

  test('also through other blocks', () => {
    expect(made('block Nine(x) 4" {\n x\n}\nblock Buoy(a) 4" {\n Nine(a) sand\n}')).toEqual([undefined, 'Nine(a) sand']);
  });

  test('but not in place of numbers and blocks', () => {
    expect(made('block Buoy(a, n) 4" {\n a*(n)|sand\n}')).toEqual([undefined, undefined]);
    expect(made('block Buoy(x) 4" {\n x(ink)\n}')).toEqual([undefined, undefined]);
    expect(made('block Nine(n) 4" {\n ink*(n)|sand\n}\nblock Buoy(x) 4" {\n Nine(x)\n}')).toEqual([undefined, undefined]);
    expect(linesOf(patternOf(`${CLOTH}block Nine(n) 4" {\n ink*(n)|sand\n}\nblock Buoy(x) 4" {\n Nine(x)\n}`))).toEqual([]);
  });

  test('can be made with arguments from outside', () => {
    const pattern = patternOf(`${CLOTH}block Buoy(a) 4" {\n a sand\n}`);
    const definition = pattern.blocks.get('Buoy');
    const rust = pattern.fabrics.get('rust');
    const instance = definition && rust && instantiate(pattern, definition, new Map([['a', { kind: 'fabric', fabric: rust }]]));
    expect(instance && [instance.name, rowsText(instance)]).toEqual(['Buoy(rust)', ['rust sand']]);
  });
});

describe('bodies', () => {
  const body = (text: string): BlockInstance['body'] => {
    const pattern = patternOf(`${CLOTH}${text}`);
    expect(linesOf(pattern)).toEqual([]);
    return instanceOf(pattern, 'Buoy').body;
  };

  test('cells, split and turned', () => {
    const grid = body('block Nine 4" {\n ink\n}\nblock Buoy 4" {\n ink/sand ink\\sand (ink|sand)-(sand|ink) ink*2|sand|ink\n (ink/sand)@90 Nine@180 < ^\n (ink) ink/sand@90\n}');
    expect(grid.kind === 'grid' && grid.content.map(({ cells }) => cells.map(cellText).join(' '))).toEqual(['(ink/sand) (ink\\sand) ((ink|sand)-(sand|ink)) (ink|sand|ink)', '((ink/sand))@90 Nine@180 < ^', 'ink (ink/sand@90)']);
    const weighted = grid.kind === 'grid' ? grid.content[0]?.cells[3] : undefined;
    expect(weighted?.kind === 'split' && weighted.parts.map(({ weight }) => key(weight))).toEqual(['2', '1', '1']);
  });

  test('lines of a grid', () => {
    const grid = body('let unit = 1 1/2"\nblock Buoy 6" {\n grid 3" (unit) rest by 2 1-1/2\n ink sand ink\n ink sand ink\n}');
    const lines = grid.kind === 'grid' ? [grid.columns, grid.rows].map((each) => each?.map((line) => (line.kind === 'rest' ? 'rest' : `${key(line.value)}${line.kind === 'length' ? '"' : ''}`))) : [];
    expect(lines).toEqual([['3"', '3/2"', 'rest'], ['2', '3/2']]);
  });

  test('a quarter of a grid', () => {
    const grid = body('block Buoy 6" {\n mirrored 4 {\n ink sand\n sand ink\n }\n}');
    expect(grid.kind === 'grid' && [grid.symmetry?.kind, grid.symmetry?.times, grid.content.length]).toEqual(['mirrored', 4, 2]);
  });

  test('patches in the units of the box', () => {
    const patches = body('let t = 1/3\nblock Buoy 4" {\n box 2 by 1\n patch ink 0,0 1-1/2,0 arc -2 0,(t) grain 45\n turned 2 {\n  patch sand 0,0 1,0 0,1\n }\n place goose(ink, sand) at 0,1/2 size 2 by 1\n}');
    expect(patches.kind === 'patches' && [patches.box && [key(patches.box.width), key(patches.box.height)], patches.items.map(itemText)]).toEqual([['2', '1'], ['patch ink 0,0 3/2,0 arc -2 0,1/3 grain 45', 'turned 2 { patch sand 0,0 1,0 0,1 }', 'goose(ink, sand) at 0,1/2 size 2 by 1']]);
  });

  test('patches in inches, or in the units of the pattern', () => {
    const first = (pattern: Pattern): string => {
      const { body: patches } = instanceOf(pattern, 'Buoy');
      return patches.kind === 'patches' ? patches.items.map(itemText).join() : '';
    };
    expect(first(patternOf(`${CLOTH}let t = 1"\nblock Buoy 4" {\n patch ink 0,0 4,0 0,(t)\n}`))).toBe('patch ink 0,0 4,0 0,1');
    expect(first(patternOf(`pattern "x" { units centimetres }\n${CLOTH}block Buoy 10 {\n patch ink 0,0 2.54,0 0,(1")\n}`))).toBe('patch ink 0,0 1,0 0,1');
  });

  test('strips around a centre, in sewing order', () => {
    const centre = body('block Cabin(light = sand) 6" {\n centre rust 2"\n round 1" light light ink ink\n round cut 1" ink\n strip 1/2" left rust\n}\nblock Buoy 6" {\n centre Cabin 2" by 3"\n strip 1" top ink\n}');
    expect(centre.kind === 'centre' && [centre.centre && [key(centre.centre.width), key(centre.centre.height), cellText(centre.centre.use)], centre.strips.length]).toEqual([['2', '3', 'Cabin'], 1]);
    const cabin = instanceOf(patternOf(`${CLOTH}block Cabin(light = sand) 6" {\n centre rust 2"\n round 1" light light ink ink\n round cut 1" ink\n strip 1/2" left rust\n}`), 'Cabin').body;
    const strips = cabin.kind === 'centre' ? cabin.strips.map(({ side, width, fabric }) => `${side} ${key(width)} ${fabric.name}`) : [];
    expect(strips).toEqual(['top 1 sand', 'right 1 sand', 'bottom 1 ink', 'left 1 ink', 'top 1/2 ink', 'right 1/2 ink', 'bottom 1/2 ink', 'left 1/2 ink', 'left 1/2 rust']);
  });

  test('squares on corners, and how it is made', () => {
    const { corners, methods, templates, foundation, size } = instanceOf(patternOf(`${CLOTH}block Buoy 4" by 2" {\n ink sand\n corner rust cut 1 1/2" top_left bottom_right\n method half_squares singles\n press to_dark\n templates\n foundation\n}`), 'Buoy');
    expect(corners.map(({ corner, size: side, fabric, place }) => `${corner} ${key(side)} ${fabric.name} ${textAt(place)}`)).toEqual(['top_left 1 rust [top_left]', 'bottom_right 1 rust [bottom_right]']);
    expect([methods.halfSquares?.way, methods.press?.way, templates, foundation, size && [key(size.width), key(size.height), textAt(size.place)]]).toEqual(['singles', 'to_dark', true, true, ['4', '2', '[4" by 2"]']]);
  });

  test('what cannot be read is marked, and the rest stands', () => {
    const pattern = patternOf(`${CLOTH}block A 4" {\n box 1 by 1\n patch ink 0,0 1,0 (t),1\n patch sand 0,0 1,0 1,1\n}\nblock B 4" {\n ink sand\n ink sand-\n}\nblock C 4" {\n centre snad 2"\n strip 1" top ink\n}`);
    const bodies = ['A', 'B', 'C'].map((name) => instanceOf(pattern, name).body);
    expect(bodies.map((each) => each.kind !== 'empty' && each.incomplete)).toEqual([true, true, true]);
    expect(bodies[0]?.kind === 'patches' && bodies[0].items.length).toBe(1);
    expect(rowsText(instanceOf(pattern, 'B'))).toEqual(['ink sand', 'ink ?']);
  });

  test('an unknown fabric keeps its patch in place', () => {
    const patches = instanceOf(patternOf('block Buoy 4" {\n box 1 by 1\n patch snad 0,0 1,0 1,1 0,1\n}'), 'Buoy').body;
    const [patch] = patches.kind === 'patches' ? patches.items : [];
    expect(patch?.kind === 'patch' && patch.fabric.standsFor).toBe('unknown');
  });
});

function itemText(item: PatchItem): string {
  switch (item.kind) {
    case 'patch':
      return [
        'patch', item.fabric.name,
        ...item.corners.flatMap(({ x, y }, index) => {
          const arc = item.arcs[index];
          return [`${key(x)},${key(y)}`, ...(arc ? [`arc ${key(arc)}`] : [])];
        }),
        ...(item.grain ? [`grain ${key(item.grain)}`] : []),
      ].join(' ');
    case 'symmetry':
      return `${item.symmetry.kind} ${item.symmetry.times} { ${item.items.map(itemText).join(' ')} }`;
    case 'set_in':
      return `${cellText(item.use)} at ${key(item.x)},${key(item.y)} size ${key(item.width)} by ${key(item.height)}`;
  }
}
