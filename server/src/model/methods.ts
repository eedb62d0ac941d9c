/** `method` and `press`, in a block or for the whole pattern. */
import { fraction, type Exact } from '../exact/number.ts';
import type { MethodNode, Statement } from '../syntax/tree.ts';
import type { Place } from '../text/place.ts';
import { onLine, refuse, type Context } from './context.ts';
import { clothLength } from './measures.ts';
import type { Methods } from './pattern.ts';
import { ofKind, onlyOne, reportSecond, type StatementOf } from './statements.ts';

const HALF_SQUARES = ['two_at_a_time', 'eight_at_a_time', 'singles'] as const;
const GEESE = ['four_at_a_time', 'singles', 'corners'] as const;
const STRIPS = ['on', 'off'] as const;

/** What the statements say; the first one for a unit counts. */
export function methodsOf(context: Context, statements: readonly Statement[]): Methods {
  const halfSquares = methodFor(context, statements, 'half_squares', HALF_SQUARES);
  const geese = methodFor(context, statements, 'geese', GEESE);
  const strips = methodFor(context, statements, 'strips', STRIPS);
  const press = onlyOne(context, statements, 'press');
  return {
    ...(halfSquares ? { halfSquares } : {}),
    ...(geese ? { geese } : {}),
    ...(strips ? { strips: { on: strips.way === 'on', place: strips.place } } : {}),
    ...(press?.node.way ? { press: { way: press.node.way.word, place: press.place } } : {}),
  };
}

interface Method<W> {
  readonly way: W;
  readonly trim?: Exact;
  readonly place: Place;
}

function methodFor<W extends string>(context: Context, statements: readonly Statement[], unit: NonNullable<MethodNode['unit']>['word'], ways: readonly W[]): Method<W> | undefined {
  const [first, ...others] = ofKind(statements, 'method').filter(({ node }) => node.unit?.word === unit);
  for (const other of others) reportSecond(context, other, first);
  if (!first?.node.way) return undefined;
  const { word } = first.node.way;
  const way = ways.find((each) => each === word);
  if (way === undefined) return refuse(onLine(context, first.line), first.node.way, `${unit} are not made ${word}, but ${ways.join(', ').replace(/, (\w+)$/, ' or $1')}`);
  const trim = trimOf(context, first);
  return { way, place: first.place, ...(trim ? { trim } : {}) };
}

/** `trim` alone is 1/8". */
function trimOf(context: Context, { node, line }: StatementOf<'method'>): Exact | undefined {
  if (node.trimBy) return clothLength(onLine(context, line), node.trimBy, 'what is trimmed off');
  return node.trim ? fraction(1, 8) : undefined;
}
