/**
 * pattern.xlsx as tables: what to buy, the pieces, the strips, and all sizes side by side. Counts and lengths in inches are numbers, the
 * same as in pattern.json; lengths in the pattern's units are texts. `print/sheet.ts` makes the file.
 */
import { toNumber, type Exact } from '../exact/number.ts';
import { pieceLabel } from '../cutting/labels.ts';
import type { CuttingPlan, FabricPlan } from '../cutting/plan.ts';
import { boughtText } from './bought.ts';
import { piecesTable } from './cutting-csv.ts';
import type { BookletQuilt, BookletSource } from './source.ts';
import { printerFor, type Printer } from './words.ts';

export type CellValue = string | number;

export interface SheetTable {
  readonly name: string;
  readonly columns: readonly string[];
  /** As many cells as columns. */
  readonly rows: readonly (readonly CellValue[])[];
}

/** The sheets of one size. */
export function workbookOf({ pattern, quilts }: BookletSource, quilt: BookletQuilt): readonly SheetTable[] {
  const print = printerFor(pattern.rules.units);
  const { plan } = quilt;
  return [
    { name: 'Needs', columns: ['what', 'fabric', 'label', 'usable width', 'length cut', 'length cut in inches', 'buy', 'buy in inches', 'buy in pieces'], rows: needRows(plan, print) },
    { name: 'Pieces', ...piecesTable(quilt, print) },
    { name: 'Strips', columns: ['fabric', 'strip width', 'strip width in inches', 'strips', 'letter', 'for', 'pieces from one strip'], rows: plan.fabrics.flatMap((fabric) => stripRows(fabric, plan, print)) },
    sizesSheet(quilts, print),
  ];
}

/** Cloth off the bolt is bought by its length, fat quarters and precuts by the piece. */
function needRows({ fabrics, backing, batting, binding }: CuttingPlan, print: Printer): readonly (readonly CellValue[])[] {
  const bought = (length: Exact): readonly CellValue[] => [print.cloth(length), toNumber(length), ''];
  const none: readonly CellValue[] = ['', '', ''];
  return [
    ...fabrics.map((plan) => {
      const { fabric, length, buy, counted } = plan;
      return ['fabric', fabric.name, fabric.label, print.length(fabric.width), print.length(length), toNumber(length), ...(counted ? [boughtText(plan, print), '', counted.count] : bought(buy))];
    }),
    ...(backing ? [['backing', backing.fabric?.name ?? '', print.widthByHeight(backing), ...none, ...bought(backing.buy)]] : []),
    ...(batting ? [['batting', '', `${print.widthByHeight(batting)}, ${batting.package}`, ...none, ...none]] : []),
    ...(binding ? [['binding, in its fabric above', binding.fabric.name, '', '', print.length(binding.length), toNumber(binding.length), ...bought(binding.buy)]] : []),
  ];
}

function stripRows({ fabric, strips }: FabricPlan, { pieces }: CuttingPlan, print: Printer): readonly (readonly CellValue[])[] {
  return strips.flatMap(({ width, count, subcuts }) =>
    subcuts.map((subcut) => [fabric.name, print.length(width), toNumber(width), count, pieceLabel(subcut.piece), pieces[subcut.piece]?.for ?? '', subcut.count]),
  );
}

function sizesSheet(quilts: readonly BookletQuilt[], print: Printer): SheetTable {
  const fabrics = [...new Set(quilts.flatMap(({ plan }) => plan.fabrics.map(({ fabric }) => fabric.name)))];
  const rows = quilts.map(({ name, layout, plan }): readonly CellValue[] => [
    name ?? '',
    print.widthByHeight(layout),
    toNumber(layout.width),
    toNumber(layout.height),
    layout.blocks.reduce((total, { count }) => total + count, 0),
    ...fabrics.map((fabric) => boughtIn(plan, fabric, print)),
    plan.backing ? print.cloth(plan.backing.buy) : '',
  ]);
  return { name: 'Sizes', columns: ['size', 'finished', 'width in inches', 'height in inches', 'blocks', ...fabrics.map((fabric) => `${fabric}, to buy`), 'backing, to buy'], rows };
}

function boughtIn({ fabrics }: CuttingPlan, name: string, print: Printer): string {
  const plan = fabrics.find(({ fabric }) => fabric.name === name);
  return plan ? boughtText(plan, print) : '';
}
