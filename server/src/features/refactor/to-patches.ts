/** A grid block as patches with corners: for shapes that a grid cannot hold. */
import { asFraction, div, equals, fraction, isZero, mul, sub, sum, type Exact } from '../../exact/number.ts';
import { boundingBox } from '../../exact/polygon.ts';
import { ofKind } from '../../model/statements.ts';
import type { Patch } from '../../geometry/layout.ts';
import type { GridLine } from '../../model/pattern.ts';
import type { BlockView, Snapshot } from '../../snapshot.ts';
import type { Statement } from '../../syntax/tree.ts';
import type { Line } from '../../text/document.ts';
import { bodyEdit, textIn, type Refactoring } from './edit.ts';

const OF_GRIDS: readonly Statement['node']['kind'][] = ['grid', 'row_of_cells', 'turned', 'mirrored'];

/** Undefined for a block that is no grid, or whose corners cannot be written as numbers. */
export function toPatches(snapshot: Snapshot, view: BlockView): Refactoring | undefined {
  const { statement, parameters } = view.definition;
  const { body, findings } = view.layout.instance;
  const nested = view.layout.patches.some(({ within }) => within);
  if (body.kind !== 'grid' || !statement.body || findings.length > 0 || view.layout.findings.length > 0 || parameters.some(({ kind }) => kind === 'number') || (nested && body.symmetry)) return undefined;
  const box = boxOf(view);
  const lines = box && patchLines(view, box);
  if (!lines) return undefined;
  const others = statement.body.statements.filter(({ node }) => !OF_GRIDS.includes(node.kind));
  const kept = others.filter(({ node }) => node.kind !== 'junk').map((each) => textIn(each, each.node).trim());
  const size = pairOf(box.width, box.height, ' by ');
  const edit = size === undefined ? undefined : bodyEdit(snapshot, statement.body, [`box ${size}`, ...lines, ...kept]);
  return edit && { title: 'Turn the grid into patches', kind: 'rewrite', edits: [edit] };
}

interface Box {
  readonly width: Exact;
  readonly height: Exact;
}

/** The sums of the grid where they have the block's shape; else the block's size in inches. */
function boxOf({ layout, definition }: BlockView): Box | undefined {
  const { body } = layout.instance;
  if (body.kind !== 'grid') return undefined;
  const rows = ofKind(definition.statement.body?.statements ?? [], 'row_of_cells');
  const across = sumOf(body.columns) ?? (body.symmetry || body.columns ? undefined : fraction(rows[0]?.node.cells.length ?? 1));
  const down = sumOf(body.rows) ?? (body.symmetry || body.rows ? undefined : fraction(rows.length));
  if (across && down && equals(mul(across, layout.height), mul(down, layout.width))) return { width: across, height: down };
  return { width: layout.width, height: layout.height };
}

function sumOf(lines: readonly GridLine[] | undefined): Exact | undefined {
  if (!lines || lines.some(({ kind }) => kind === 'rest')) return undefined;
  return sum(lines.flatMap((line) => (line.kind === 'rest' ? [] : [line.value])));
}

function patchLines({ layout, definition }: BlockView, box: Box): readonly string[] | undefined {
  const [across, down] = [div(box.width, layout.width), div(box.height, layout.height)];
  const texts: (string | undefined)[] = [];
  const done = new Set<string>();
  for (const patch of layout.patches) {
    if (patch.role === 'flipped_corner') continue;
    const cell = patch.within?.[0];
    const id = cell && `${cell.from} ${numberOf(definition.statement, cell.line)}`;
    if (cell && id !== undefined) {
      if (!done.has(id)) texts.push(setIn(layout.patches.filter((each) => each.within?.[0] === cell || (each.within?.[0]?.line === cell.line && each.within[0].from === cell.from)), across, down, cell.line.text.slice(cell.from, cell.to), definition.statement));
      done.add(id);
    } else texts.push(patchLine(patch, across, down));
  }
  return texts.includes(undefined) ? undefined : texts.filter((text) => text !== undefined);
}

function numberOf(statement: Statement, line: Line): number {
  return (statement.body?.statements ?? []).findIndex((each) => each.line === line);
}

function patchLine({ outline, place, arcs, grain }: Patch, across: Exact, down: Exact): string | undefined {
  const name = place.line.text.slice(place.from, place.to).replace(/@.*$/, '');
  const corners = outline.map(({ x, y }) => pairOf(mul(x, across), mul(y, down), ','));
  if (arcs || corners.includes(undefined) || (grain && !isZero(grain))) return undefined;
  return `patch ${name} ${corners.join('  ')}`;
}

/** A block that fills its cell. */
function setIn(patches: readonly Patch[], across: Exact, down: Exact, cell: string, statement: Statement): string | undefined {
  const { left, top, right, bottom } = boundingBox(patches.flatMap(({ outline }) => outline));
  const at = pairOf(mul(left, across), mul(top, down), ',');
  const size = pairOf(mul(sub(right, left), across), mul(sub(bottom, top), down), ' by ');
  const rows = ofKind(statement.body?.statements ?? [], 'row_of_cells');
  const isWhole = rows.some((row) => row.node.cells.some((each) => textIn(row, each) === cell));
  return at === undefined || size === undefined || !isWhole ? undefined : `place ${cell} at ${at} size ${size}`;
}

/** Numbers as corners are written: a mixed one takes the hyphen. Undefined for roots. */
function pairOf(x: Exact, y: Exact, between: string): string | undefined {
  const [first, second] = [numberText(x), numberText(y)];
  return first === undefined || second === undefined ? undefined : first + between + second;
}

function numberText(x: Exact): string | undefined {
  const found = asFraction(x);
  if (!found) return undefined;
  const { n, d } = found;
  if (d === 1n) return `${n}`;
  const whole = n / d;
  return whole === 0n ? `${n}/${d}` : n < 0n ? undefined : `${whole}-${n % d}/${d}`;
}
