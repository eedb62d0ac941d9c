/** A block that stands in a cell is written out there, with what it is given put in. */
import { asFraction, type Exact } from '../../exact/number.ts';
import type { BlockInstance, CellSpec, GridLine } from '../../model/pattern.ts';
import type { Snapshot } from '../../snapshot.ts';
import type { Argument, BlockNode, Cell, Reference, Statement } from '../../syntax/tree.ts';
import { visitParts, type Part } from '../../syntax/walk.ts';
import type { Position } from '../../text/document.ts';
import { blocksOf } from '../blocks.ts';
import { blockAround } from '../names.ts';
import { under } from '../under.ts';
import { textIn, type Refactoring } from './edit.ts';

/** Undefined where no block that could be written in one cell stands. */
export function inlineBlock(snapshot: Snapshot, position: Position): Refactoring | undefined {
  const found = under(snapshot.tree, position);
  const reference = found?.parts.find((part): part is Reference => part.kind === 'reference' && 'turns' in part);
  const statement = found?.statement;
  const block = statement && blockAround(statement);
  if (!reference || !block || statement.node.kind !== 'row_of_cells') return undefined;
  const around = blocksOf(snapshot).find(({ definition }) => definition.statement === block)?.layout.instance;
  const inner = around && instanceIn(around, statement, reference);
  const text = inner && writtenOut(inner, statement, reference);
  if (text === undefined) return undefined;
  const turns = reference.turns.map((turn) => textIn(statement, turn)).join('');
  const isWhole = turns === '' && statement.node.cells.some((cell) => cell.from === reference.from && cell.to === reference.to);
  const { from, to } = reference;
  return {
    title: `Write \`${reference.name.text}\` out here`,
    kind: 'inline',
    edits: [{ place: { line: statement.line, from, to }, text: isWhole && text.isSplit ? text.text : text.isSplit || turns !== '' ? `(${text.text})${turns}` : text.text }],
  };
}

/** The block that a reference of a row is, as the model made it. */
function instanceIn({ body }: BlockInstance, { line }: Statement, { from, to }: Reference): BlockInstance | undefined {
  const waiting: CellSpec[] = body.kind === 'grid' ? body.content.flatMap(({ cells }) => cells) : [];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (next.kind === 'block' && next.place.line === line && next.place.from === from && next.place.to === to) return next.block;
    if (next.kind === 'split') waiting.push(...next.parts.map(({ cell }) => cell));
    if (next.kind === 'turned') waiting.push(next.inner);
  }
  return undefined;
}

interface Written {
  readonly text: string;
  /** It needs parentheses inside another cell. */
  readonly isSplit: boolean;
}

function writtenOut({ body, definition, corners }: BlockInstance, caller: Statement, reference: Reference): Written | undefined {
  const inside = definition.statement.body?.statements ?? [];
  if (body.kind !== 'grid' || body.symmetry || corners.length > 0 || inside.some(({ node }) => node.kind !== 'row_of_cells' && node.kind !== 'grid')) return undefined;
  const given = givenBy(definition.statement, caller, reference);
  const rows = inside.flatMap((row) => (row.node.kind === 'row_of_cells' ? [row.node.cells.map((cell) => cellText(row, cell, given))] : []));
  const across = weightsOf(body.columns, rows[0]?.length ?? 0);
  const down = weightsOf(body.rows, rows.length);
  if (!across || !down || rows.some((row) => row.length !== across.length)) return undefined;
  const cells = rows.map((row) => joined(row, across, '|'));
  return cells.includes(undefined) ? undefined : joined(cells, down, '-');
}

/** `a|b*2`, each part in parentheses where it has seams of its own. */
function joined(parts: readonly (Written | undefined)[], weights: readonly bigint[], seam: '|' | '-'): Written | undefined {
  const known = parts.filter((part) => part !== undefined);
  if (known.length !== parts.length || known.length === 0) return undefined;
  const [only] = known;
  if (known.length === 1 && only) return only;
  const isEven = weights.every((weight) => weight === weights[0]);
  const texts = known.map(({ text, isSplit }, index) => `${isSplit ? `(${text})` : text}${isEven || weights[index] === 1n ? '' : `*${weights[index] ?? 1n}`}`);
  return { text: texts.join(seam), isSplit: true };
}

/** Whole numbers in the proportions of the lines; undefined where they have none. */
function weightsOf(lines: readonly GridLine[] | undefined, count: number): readonly bigint[] | undefined {
  if (!lines) return Array.from({ length: count }, () => 1n);
  const values = lines.flatMap((line): Exact[] => (line.kind === 'rest' ? [] : [line.value]));
  if (values.length !== lines.length || new Set(lines.map(({ kind }) => kind)).size > 1) return undefined;
  const fractions = values.map(asFraction);
  const known = fractions.filter((each) => each !== undefined);
  if (known.length !== values.length) return undefined;
  const over = known.reduce((all, { d }) => (all * d) / commonDivisor(all, d), 1n);
  const whole = known.map(({ n, d }) => (n * over) / d);
  const shared = whole.reduce(commonDivisor, 0n);
  return shared === 0n ? undefined : whole.map((each) => each / shared);
}

function commonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : commonDivisor(b, a % b);
}

/** What each parameter is given, as text: the argument, or the default. */
function givenBy(definition: Statement<BlockNode>, caller: Statement, { arguments: written = [] }: Reference): ReadonlyMap<string, string> {
  const given = new Map<string, string>();
  for (const [index, parameter] of definition.node.parameters.entries()) {
    const argument = written.find((each: Argument) => each.name?.text === parameter.name.text) ?? (written[index]?.name ? undefined : written[index]);
    const usual = parameter.default && substituted(definition, parameter.default, given);
    const text = argument ? textIn(caller, argument.value) : usual;
    if (text !== undefined) given.set(parameter.name.text, text);
  }
  return given;
}

function cellText(row: Statement, cell: Cell, given: ReadonlyMap<string, string>): Written | undefined {
  if (cell.kind === 'bad' || cell.kind === 'goes_on') return undefined;
  return { text: substituted(row, cell, given), isSplit: cell.kind === 'split' };
}

/** The text of a part with the parameters in it replaced. */
function substituted(statement: Pick<Statement, 'line'>, part: Part, given: ReadonlyMap<string, string>): string {
  const names: Part[] = [];
  const labels = new Set<number>();
  visitParts(part, (each) => {
    if (each.kind === 'name') names.push(each);
    if (each.kind === undefined && 'value' in each && 'name' in each) labels.add(each.from);
  });
  names.sort((a, b) => a.from - b.from);
  let text = '';
  let at = part.from;
  for (const name of names) {
    const replacement = labels.has(name.from) && isLabel(statement, name) ? undefined : given.get(textIn(statement, name));
    if (replacement === undefined) continue;
    text += statement.line.text.slice(at, name.from) + replacement;
    at = name.to;
  }
  return text + statement.line.text.slice(at, part.to);
}

/** `b` in `Nine(b: rust)` is the callee's. */
function isLabel({ line }: Pick<Statement, 'line'>, { to }: Part): boolean {
  return /^\s*[:=]/.test(line.text.slice(to));
}
