/**
 * Cuts a plan again, rectangle by rectangle, with nothing but the plan, the cloth and the demand in hand: shares no code with the
 * optimiser but its types. Every cut goes from edge to edge of the rectangle that is on the table.
 */
import type { Cloth, Demand, Packing, Strip, Subcut } from '../../../server/src/cutting/pack/types.ts';

interface Rectangle {
  readonly across: number;
  readonly down: number;
}

interface Table {
  readonly demand: readonly Demand[];
  readonly fallen: number[];
  readonly faults: string[];
  cuts: number;
}

/** What is wrong, one sentence each. */
export function faultsOf(plan: Packing, demand: readonly Demand[], cloth: Cloth): readonly string[] {
  const table: Table = { demand, fallen: demand.map(() => 0), faults: [], cuts: 0 };
  if (cloth.kind === 'sheets') for (const sheet of plan.sheets) cutSheet(table, sheet, cloth);
  else for (const strip of plan.strips) cutStrips(table, strip, cloth.width, false, 1);
  const heights = plan.strips.map(({ height }) => height);
  const used = plan.strips.reduce((total, { height, count }) => total + height * count, 0);
  const total = cloth.kind === 'sheets' ? plan.sheets.reduce((sum, { count }) => sum + count, 0) : used;
  const says = (isWrong: boolean, what: string): readonly string[] => (isWrong ? [what] : []);
  return [
    ...table.faults,
    ...demand.flatMap(({ count }, i) => says(table.fallen[i] !== (plan.tooLarge.includes(i) ? 0 : count), `piece ${i}: ${table.fallen[i] ?? 0} of ${count}`)),
    ...says(total !== plan.total, 'does not add up'),
    ...says(plan.lowerBound > plan.total, 'is below its bound'),
    ...says(plan.provenOptimal !== (plan.lowerBound === plan.total), 'says it is optimal and is not, or the other way round'),
    ...says(plan.counters.cuts !== table.cuts, `counts ${plan.counters.cuts} cuts and not ${table.cuts}`),
    ...says(plan.counters.widths !== new Set(heights).size, 'miscounts its strip widths'),
    ...says(cloth.kind === 'strips' && heights.some((height) => !cloth.heights.includes(height)), 'has a strip that is not to be had'),
    ...says(heights.some((height, i) => height > (heights[i - 1] ?? height)), 'is not in order'),
  ];
}

function cutSheet(table: Table, sheet: Packing['sheets'][number], cloth: Extract<Cloth, { readonly kind: 'sheets' }>): void {
  const [across, down] = sheet.turned ? [cloth.height, cloth.width] : [cloth.width, cloth.height];
  if (sheet.turned && !cloth.eitherWay) table.faults.push('a sheet is turned');
  if (sheet.strips.reduce((total, { height, count }) => total + height * count, 0) > down) table.faults.push('a sheet is too low');
  for (const strip of sheet.strips) cutStrips(table, strip, across, sheet.turned === true, sheet.count);
}

function cutStrips(table: Table, strip: Strip, across: number, isTurned: boolean, times: number): void {
  if (!Number.isSafeInteger(strip.count) || strip.count < 1 || strip.subcuts.length === 0) table.faults.push('a strip that is none');
  for (let i = 0; i < strip.count * times; i += 1) {
    table.cuts += 1;
    strip.subcuts.reduce((rest, subcut) => cutSegments(table, subcut, rest, isTurned), { across, down: strip.height });
  }
}

/** What is left of the strip. */
function cutSegments(table: Table, { piece, count, turned, stacked = 1 }: Subcut, strip: Rectangle, isTurned: boolean): Rectangle {
  const size = table.demand[piece];
  if (!size) throw new Error(`no piece ${piece}`);
  if (!size.mayTurn && (turned === true) !== isTurned) table.faults.push(`piece ${piece} lies the wrong way`);
  const want: Rectangle = turned ? { across: size.height, down: size.width } : { across: size.width, down: size.height };
  let rest = strip;
  for (let left = count; left > 0; left -= stacked) {
    rest = { across: rest.across - want.across, down: rest.down };
    if (rest.across < 0) table.faults.push(`a strip is too short for piece ${piece}`);
    table.cuts += 1;
    cutPieces(table, piece, want, { across: want.across, down: strip.down }, Math.min(stacked, left));
  }
  return rest;
}

function cutPieces(table: Table, piece: number, want: Rectangle, segment: Rectangle, count: number): void {
  let { down } = segment;
  for (let i = 0; i < count; i += 1) {
    if (down > want.down) table.cuts += 1;
    down -= want.down;
    if (down < 0) table.faults.push(`a segment is too low for piece ${piece}`);
    table.fallen[piece] = (table.fallen[piece] ?? 0) + 1;
  }
}
