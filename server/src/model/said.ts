/** What the author says about the quilt rather than in it: expectations, colourways, the wording of steps. */
import type { Quantity, Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import { at, describe, meaningOf, onLine, refuse, type Context } from './context.ts';
import { evaluate } from './evaluate.ts';
import { makesItsPrints } from './fabrics.ts';
import { numberOf } from './measures.ts';
import type { BlockDefinition, Colorway, Expectation, StepsText, Value } from './pattern.ts';
import { ofKind, type StatementOf } from './statements.ts';

/** The expectations whose values can be worked out. Their paths are judged where quantities are known. */
export function expectationsOf(context: Context, statements: readonly Statement[]): readonly Expectation[] {
  return ofKind(statements, 'expect').flatMap((statement): Expectation[] => {
    const { cut, path, comparison, value: wanted, by, broken } = statement.node;
    if (broken) return [];
    const here = onLine(context, statement.line);
    if (by && !cut) refuse(here, by, 'one value is expected here; two stand behind `expect cut`');
    const value = wanted && expectedValue(here, wanted);
    const second = by && evaluate(here, by);
    if (!value || (by && !second) || path.length === 0) return [];
    const names = path.map((name) => ({ text: name.text, place: at(here, name) }));
    return [{ cut, path: names, comparison, value, ...(second ? { by: second } : {}), place: statement.place }];
  });
}

/** The colourways, each colour by the fabric's name. Fabrics that are not there, or twice, are reported. */
export function colorwaysOf(context: Context, statements: readonly Statement[]): readonly Colorway[] {
  return ofKind(statements, 'colorway').flatMap((statement): Colorway[] => {
    const { name } = statement.node;
    return name ? [{ name: name.text, colours: coloursIn(context, statement), place: placeIn(statement.line, name) }] : [];
  });
}

/** The author's wording. `before` and `after` need a block of this pattern. */
export function stepsOf(context: Context, statements: readonly Statement[], blocks: ReadonlyMap<string, BlockDefinition>): readonly StepsText[] {
  return ofKind(statements, 'steps').map((statement): StepsText => {
    const { where, of } = statement.node;
    const here = onLine(context, statement.line);
    if (of && !blocks.has(of.text) && meaningOf(here, of, 'block')) refuse(here, of, `steps stand before or after a block, and \`${of.text}\` is none`);
    const texts = ofKind(statement.body?.statements ?? [], 'wording').map(({ line, node }) => ({
      text: node.text.value,
      place: node.text.place ?? placeIn(line, node.text),
    }));
    return { where: where?.word ?? 'instead', ...(of ? { of: of.text } : {}), texts, place: statement.place };
  });
}

function expectedValue(context: Context, quantity: Quantity): Value | { readonly fatQuarters: Value['number'] } | undefined {
  if (quantity.kind !== 'measure' || quantity.unit !== 'fq') return evaluate(context, quantity);
  const fatQuarters = numberOf(context, quantity.amount, 'a count of fat quarters');
  return fatQuarters && { fatQuarters };
}

function coloursIn(context: Context, colorway: StatementOf<'colorway'>): Colorway['colours'] {
  const colours = new Map<string, { readonly colour: string; readonly label?: string; readonly place: ReturnType<typeof at> }>();
  for (const { node, line } of ofKind(colorway.body?.statements ?? [], 'recolour')) {
    const { fabric, colour, label } = node;
    if (!fabric || !colour) continue;
    const here = onLine(context, line);
    const first = colours.get(fabric.text);
    if (first) here.report({ rule: 'duplicate-name', place: at(here, fabric), name: fabric.text, what: 'colours', first: first.place });
    else if (isRecolourable(here, fabric)) colours.set(fabric.text, { colour: colour.value, ...(label ? { label: label.value } : {}), place: at(here, fabric) });
  }
  return colours;
}

function isRecolourable(context: Context, fabric: Parameters<typeof meaningOf>[1]): boolean {
  const meaning = meaningOf(context, fabric, 'fabric');
  if (!meaning || meaning.kind === 'broken') return false;
  if (meaning.kind !== 'fabric') {
    refuse(context, fabric, `\`${fabric.text}\` is ${describe(meaning)}, and a colourway gives colours to fabrics`);
    return false;
  }
  if (makesItsPrints(meaning.fabric)) return true;
  refuse(context, fabric, `\`${fabric.text}\` is made of prints: give them the colours`, meaning.fabric.place);
  return false;
}
