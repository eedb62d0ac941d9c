/** The pattern's own measures, from its `pattern` statement: seam, rounding, spare fabric, and how things are made. */
import type { UnitSystem } from '../exact/length.ts';
import { fraction, type Exact } from '../exact/number.ts';
import type { Length, Statement } from '../syntax/tree.ts';
import { onLine, type Context } from './context.ts';
import { clothLength, countOf, shareOf } from './measures.ts';
import { methodsOf } from './methods.ts';
import type { Rules } from './pattern.ts';
import { ofKind, onlyOne, type StatementOf } from './statements.ts';

/** What a pattern has that says nothing else: 1/4", or 0.75 cm. */
export function usualSeam(units: UnitSystem): Exact {
  return units === 'inches' ? fraction(1, 4) : centimetres(75, 100);
}

/** The units bare numbers count in, wherever `units` stands in the file. */
export function unitsOf(statements: readonly Statement[]): UnitSystem {
  const said = ofKind(patternBody(statements), 'units').find(({ node }) => node.units);
  return said?.node.units?.word ?? 'inches';
}

/** The rules; what is not said, or cannot be, is as usual in the units. The context's units are the pattern's. */
export function rulesOf(context: Context, statements: readonly Statement[]): Rules {
  const body = patternBody(statements);
  const { units } = context;
  onlyOne(context, body, 'units');
  const spare = onlyOne(context, body, 'spare');
  const share = spare?.node.percent && shareOf(onLine(context, spare.line), spare.node.percent, 'spare fabric', 1000);
  return {
    units,
    seam: measureOf(context, onlyOne(context, body, 'seam'), 'a seam') ?? usualSeam(units),
    roundUp: measureOf(context, onlyOne(context, body, 'round_up'), 'what cut sizes are rounded up to') ?? (units === 'inches' ? fraction(1, 8) : centimetres(1, 10)),
    yardage: measureOf(context, onlyOne(context, body, 'yardage'), 'what bought lengths are rounded up to') ?? (units === 'inches' ? fraction(36, 8) : centimetres(10)),
    spare: share ?? fraction(1, 20),
    ...layersOf(context, onlyOne(context, body, 'layers')),
    methods: methodsOf(context, body),
  };
}

/** Everything in the braces of `pattern`. */
export function patternBody(statements: readonly Statement[]): readonly Statement[] {
  return ofKind(statements, 'pattern').flatMap((statement) => statement.body?.statements ?? []);
}

/** n / d centimetres in inches. */
export function centimetres(n: number, d = 1): Exact {
  return fraction(n * 100, d * 254);
}

/** More folded fabrics than these no rotary cutter goes through. */
const MOST_LAYERS = 8;

function layersOf(context: Context, statement: StatementOf<'layers'> | undefined): Pick<Rules, 'layers'> {
  const count = statement?.node.count && countOf(onLine(context, statement.line), statement.node.count, { what: 'a number of fabrics on one another', least: 1, most: MOST_LAYERS });
  return count === undefined ? {} : { layers: count };
}

function measureOf(context: Context, statement: StatementOf<'seam' | 'round_up' | 'yardage'> | undefined, what: string): Exact | undefined {
  const length: Length | undefined = statement?.node.length;
  return statement && length && clothLength(onLine(context, statement.line), length, what);
}
