/** Random patterns as text: blocks of cells and seams, of patches with roots and arcs, from the centre, with flipped corners; every setting, sashing, edges and borders. */
import fc from 'fast-check';

export interface RandomQuilt {
  readonly blocks: string;
  /** `A by B`, the tile's rows and what stands around them. */
  readonly setting: 'straight' | 'on_point';
  readonly across: number;
  readonly down: number;
  readonly tile: readonly (readonly Cell[])[];
  readonly sashing: string;
  readonly edges: string;
  /** Widths in inches: at top and bottom, and at the sides. */
  readonly borders: readonly { readonly top: number; readonly sides: number; readonly corners: string }[];
}

export interface Cell {
  readonly name: string;
  /** Quarter turns clockwise. */
  readonly turns: number;
}

const CELLS = ['ink', 'sand', 'ink/sand', 'sand\\rust', 'ink|sand', 'rust-sand', '(ink|sand)-(sand|ink)', '(ink\\sand)/(rust\\sand)', 'sand*2|ink', 'Inner', 'Inner@90', 'Inner@mirror', '(ink/sand)@180', '(Inner|sand)-rust'];

const cellTexts = fc.constantFrom(...CELLS.filter((cell) => !cell.startsWith('(Inner')));
const grids = fc.array(fc.array(cellTexts, { minLength: 2, maxLength: 2 }), { minLength: 2, maxLength: 2 }).map((rows) => rows.map((row) => `  ${row.join(' ')}`));

/** Blocks that no grid holds, in lines; `SIDE` is the block's size. */
const OTHERS: readonly (readonly string[])[] = [
  // A quarter circle, plain and through a parameter.
  ['  box 7 by 7', '  patch ink 0,0 5,0 arc 5 0,5', '  patch sand 5,0 7,0 7,7 0,7 0,5 arc -5'],
  ['  drunkards_path(rust, sand, 2/3)'],
  // Two arcs that pass each other, with a piece between them.
  ['  box 3 by 3', '  patch ink 0,0 1,0 arc 1 0,1', '  patch sand 1,0 2,0 arc 2 0,2 0,1 arc -1', '  patch rust 2,0 3,0 3,3 0,3 0,2 arc -2'],
  // An eight-pointed star of diamonds, in units of their sides.
  ['  box (2 + sqrt(2)) by (2 + sqrt(2))', '  turned 8 {', '   patch ink (1+sqrt(2)/2),(1+sqrt(2)/2) (1+sqrt(2)/2),(sqrt(2)/2) 1,0 1,1', '  }', '  turned 4 {', '   patch sand 0,0 1,0 1,1 0,1', '   patch rust 1,0 (1+sqrt(2)),0 (1+sqrt(2)/2),(sqrt(2)/2)', '  }'],
  // A triangle of 60 degrees in what is left of the square, which has a reflex corner; and T-junctions below it.
  ['  box 2 by 3', '  patch ink 0,0 2,0 1,(sqrt(3))', '  patch sand 0,0 1,(sqrt(3)) 2,0 2,2 0,2', '  patch rust 0,2 1/2,2 1/2,3 0,3', '  patch ink 1/2,2 2,2 2,3 1/2,3'],
  // From the centre, with light and dark halves; and off centre.
  ['  centre rust (SIDE/2)', '  round (SIDE/4) ink sand ink rust'],
  ['  centre rust (SIDE/2)', '  strip (SIDE/2) top ink', '  strip (SIDE/2) left sand'],
  // Corners laid over.
  ['  ink sand', '  sand ink', '  corner rust 1" top_left bottom_right'],
  // Both symmetries, and a block set in.
  ['  box 4 by 4', '  mirrored 4 {', '   patch ink 0,0 2,0 0,2', '   patch sand 2,0 2,2 0,2', '  }'],
  ['  box 4 by 4', '  place Inner at 1,1 size 2 by 2', '  turned 4 {', '   patch sand 0,0 3,0 3,1 0,1', '  }'],
];

const body = fc.oneof({ weight: 3, arbitrary: grids }, { weight: 2, arbitrary: fc.constantFrom(...OTHERS) });

export const quilts: fc.Arbitrary<RandomQuilt> = fc
  .record({
    bodies: fc.tuple(body, body),
    side: fc.constantFrom('4"', '6"', '5 1/2"'),
    setting: fc.constantFrom('straight' as const, 'on_point' as const),
    across: fc.integer({ min: 1, max: 3 }),
    down: fc.integer({ min: 1, max: 3 }),
    names: fc.array(fc.record({ name: fc.constantFrom('First', 'Second'), turns: fc.integer({ min: 0, max: 3 }) }), { minLength: 9, maxLength: 9 }),
    sashing: fc.constantFrom('', 'sashing 1" rust', 'sashing 1" rust cornerstones ink', 'sashing 1 1/2" rust cornerstones ink outer', 'sashing 1" rust outer'),
    edges: fc.constantFrom('edges sand', 'edges sand float 1"', 'edges First', 'edges sand corners rust'),
    borders: fc.array(fc.record({ top: fc.integer({ min: 1, max: 4 }), sides: fc.integer({ min: 1, max: 4 }), corners: fc.constantFrom('mitred', 'squares ink') }), { maxLength: 2 }),
  })
  .map(({ bodies, side, names, ...rest }) => ({
    ...rest,
    blocks: ['First', 'Second'].map((name, i) => `block ${name} ${side} {\n${(bodies[i] ?? []).join('\n').replaceAll('SIDE', side)}\n}\n`).join(''),
    tile: Array.from({ length: rest.down }, (_, row) => names.slice(3 * row, 3 * row + rest.across)),
  }));

export function textOf({ blocks, setting, across, down, tile, sashing, edges, borders }: RandomQuilt): string {
  const rows = tile.map((row) => `    ${row.map(({ name, turns }) => `${name}${['', '@90', '@180', '@270'][turns] ?? ''}`).join(' ')}`);
  const lines = [
    `  ${setting} ${across} by ${down}`, '  place {', ...rows, '  }',
    ...(setting === 'on_point' ? ['  between { rust }', `  ${edges}`] : []),
    ...(sashing ? [`  ${sashing}`] : []),
    ...borders.map(({ top, sides, corners }) => `  border top ${top}" sides ${sides}" ink corners ${corners}`),
  ];
  return `fabric ink #22345c\nfabric sand #eadfc8\nfabric rust #a4502e\nblock Inner {\n  ink sand\n  rust ink\n}\n${blocks}quilt {\n${lines.join('\n')}\n}\n`;
}

/** The same quilt, turned clockwise by a quarter. */
export function turnedQuarter(quilt: RandomQuilt): RandomQuilt {
  const { across, down, tile, borders } = quilt;
  const turned = Array.from({ length: across }, (_, row) =>
    Array.from({ length: down }, (__, column): Cell => {
      const cell = tile[down - 1 - column]?.[row] ?? { name: 'First', turns: 0 };
      return { ...cell, turns: (cell.turns + 1) % 4 };
    }),
  );
  return { ...quilt, across: down, down: across, tile: turned, borders: borders.map(({ top, sides, corners }) => ({ top: sides, sides: top, corners })) };
}
