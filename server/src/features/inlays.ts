/** Figures written into the text where one asks for them: cut sizes behind rows, counts, values of sums, sizes that come out. */
import { count, lengthText } from '../checks/wording.ts';
import { evaluate, textOf } from '../model/evaluate.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import { cuttingInBlock } from '../cutting/methods.ts';
import type { Snapshot } from '../snapshot.ts';
import { walkStatements } from '../syntax/find.ts';
import type { Quantity, Reference, Statement } from '../syntax/tree.ts';
import { visitParts } from '../syntax/walk.ts';
import type { Range } from '../text/place.ts';
import { blocksOf } from './blocks.ts';
import { contextOf } from './hover.ts';
import { cutText } from './hover-patch.ts';
import { perSize, widthByHeight } from './measures.ts';
import { blockAround } from './names.ts';

export interface Inlay {
  readonly line: number;
  readonly column: number;
  readonly text: string;
  readonly kind: 'value' | 'parameter';
}

/** More kinds of cut in one row than these are counted, not listed. */
const MOST_CUTS = 3;

/** In the order of the text, those of the lines of a range. */
export function inlaysIn(snapshot: Snapshot, within: Range): readonly Inlay[] {
  const { document, tree } = snapshot;
  const found: Inlay[] = [];
  for (const statement of walkStatements(tree)) {
    const line = document.numberOf(statement.line);
    if (line < within.start.line || line > within.end.line) continue;
    found.push(...inlaysOf(snapshot, statement).map((inlay) => ({ ...inlay, line })));
  }
  return found;
}

type InLine = Omit<Inlay, 'line'>;

function inlaysOf(snapshot: Snapshot, statement: Statement): readonly InLine[] {
  const { node } = statement;
  if (node.broken) return [];
  const end = endOf(statement);
  const says = (text: string | undefined): readonly InLine[] => (text === undefined || text === '' ? [] : [{ column: end, text, kind: 'value' }]);
  switch (node.kind) {
    case 'let':
      return node.value && node.value.kind !== 'number' && node.value.kind !== 'measure' ? says(valueText(snapshot, statement, node.value)) : [];
    case 'block':
      return [...says(patchesText(snapshot, statement)), ...sums(snapshot, statement)];
    case 'size':
      return says(sizeText(snapshot, statement));
    case 'row_of_cells':
      return [...says(cutsText(snapshot, statement)), ...argumentNames(snapshot, statement)];
    case 'straight':
    case 'on_point':
    case 'rows':
      return says(snapshot.quilts.length > 0 ? perSize(snapshot, ({ layout }) => widthByHeight(layout, snapshot.pattern)) : undefined);
    case 'border':
      return [...says(borderText(snapshot, statement)), ...sums(snapshot, statement)];
    default:
      return sums(snapshot, statement);
  }
}

/** Before the brace and the comment. */
function endOf({ node, body, line }: Statement): number {
  const end = body?.open.line === line ? Math.min(node.to, body.open.from) : node.to;
  return line.text.slice(0, end).trimEnd().length;
}

/** What comes of arithmetic in parentheses. */
function sums(snapshot: Snapshot, statement: Statement): readonly InLine[] {
  const found: InLine[] = [];
  visitParts(statement.node, (part) => {
    if (part.kind !== 'parentheses') return;
    const text = valueText(snapshot, statement, part as Quantity);
    if (text !== undefined) found.push({ column: part.to, text, kind: 'value' });
  });
  return found;
}

function valueText(snapshot: Snapshot, { line }: Statement, quantity: Quantity): string | undefined {
  const value = evaluate(contextOf(snapshot, line), quantity);
  return value && `= ${textOf(value, snapshot.pattern.rules.units)}`;
}

function patchesText(snapshot: Snapshot, statement: Statement): string | undefined {
  const layout = layoutOf(snapshot, statement);
  return layout && `${layout.patches.length} ${layout.patches.length === 1 ? 'patch' : 'patches'}`;
}

function sizeText(snapshot: Snapshot, { line }: Statement): string | undefined {
  const quilt = snapshot.quilts.find(({ size }) => size?.statement.line === line);
  return quilt && widthByHeight(quilt.layout, snapshot.pattern);
}

/** A border whose width is worked out. */
function borderText(snapshot: Snapshot, { node, line }: Statement): string | undefined {
  if (node.kind !== 'border' || (node.form !== 'fit' && node.form !== 'to' && node.width?.cut !== true)) return undefined;
  return perSize(snapshot, ({ layout }) => {
    const border = layout.borders.find(({ place }) => place.line === line);
    return border && `${lengthText(border.width, snapshot.pattern)} wide`;
  });
}

function cutsText(snapshot: Snapshot, statement: Statement): string | undefined {
  const block = blockAround(statement);
  const layout = block && layoutOf(snapshot, block);
  if (!layout?.instance.size) return undefined;
  const cuttings = layout.patches.flatMap((patch, index) => (isIn(patch, statement) ? (cuttingInBlock(layout, index, snapshot.pattern.rules) ?? []) : []));
  const cuts = [...new Set(cuttings.map((cutting) => cutText(cutting, snapshot.pattern)))];
  return cuts.length === 0 ? undefined : `cut ${cuts.length > MOST_CUTS ? count(cuts.length, 'size') : cuts.join('; ')}`;
}

/** A patch of the row itself, not of a block in one of its cells. */
function isIn({ place, within }: Patch, { line, node }: Statement): boolean {
  return within === undefined && place.line === line && place.from >= node.from && place.to <= node.to;
}

function layoutOf(snapshot: Snapshot, { line }: Statement): BlockLayout | undefined {
  return blocksOf(snapshot).find(({ definition }) => definition.statement.line === line)?.layout;
}

/** `a:` before an argument without a name, where a block is given several. */
function argumentNames(snapshot: Snapshot, { node }: Statement): readonly InLine[] {
  const found: InLine[] = [];
  visitParts(node, (part) => {
    const given = part.kind === 'reference' && 'turns' in part ? (part as Reference) : undefined;
    const parameters = given && snapshot.pattern.blocks.get(given.name.text)?.parameters;
    if (!given?.arguments || !parameters || given.arguments.length < 2) return;
    for (const [index, argument] of given.arguments.entries()) {
      const name = parameters[index]?.name;
      if (!argument.name && name !== undefined && name !== nameIn(argument.value)) found.push({ column: argument.from, text: `${name}:`, kind: 'parameter' });
    }
  });
  return found;
}

function nameIn(value: Reference | Quantity): string | undefined {
  return value.kind === 'reference' ? value.name.text : undefined;
}
