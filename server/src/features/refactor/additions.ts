/** New statements that begin with what is there: a colourway, a size, a spacer border. */
import type { Snapshot } from '../../snapshot.ts';
import { ofKind } from '../../model/statements.ts';
import type { Statement } from '../../syntax/tree.ts';
import type { Position } from '../../text/document.ts';
import { under } from '../under.ts';
import { behind, eolOf, freeName, type Refactoring } from './edit.ts';

/** A colourway with every fabric in its present colour; offered where fabrics, colourways and the pattern are. */
export function addColourway(snapshot: Snapshot, position: Position): Refactoring | undefined {
  const { pattern, tree, document } = snapshot;
  const here = under(tree, position)?.statement.node.kind;
  if (here !== 'fabric' && here !== 'colorway' && here !== 'recolour' && here !== 'pattern') return undefined;
  const own = [...pattern.fabrics.values()].filter(({ place, assorted }) => place.line.source === document.source && (!assorted || assorted.prints.every((print) => !pattern.fabrics.has(print.name))));
  const after = ofKind(tree.statements, 'colorway').at(-1) ?? ofKind(tree.statements, 'size').at(-1) ?? ofKind(tree.statements, 'quilt').at(-1) ?? tree.statements.at(-1);
  if (own.length === 0 || !after) return undefined;
  const name = freeName('evening', (each) => pattern.colorways.some((one) => one.name === each));
  const rows = own.map((fabric) => `  ${fabric.name} ${fabric.colour} "${quoted(fabric.label)}"`);
  return inserted(snapshot, after, { title: 'Add a colourway', lines: ['', `colorway ${name} {`, ...rows, '}'] });
}

/** One block more each way than the largest there is. */
export function addSize(snapshot: Snapshot, position: Position): Refactoring | undefined {
  const { pattern, tree } = snapshot;
  const here = under(tree, position)?.statement;
  const inQuilt = here && (here.node.kind === 'quilt' || here.node.kind === 'size' || here.node.kind === 'straight' || here.node.kind === 'on_point');
  const after = ofKind(tree.statements, 'size').at(-1) ?? pattern.quilt;
  if (!inQuilt || !after) return undefined;
  const setting = snapshot.shown?.spec.setting;
  const counts = [...pattern.sizes, ...(setting && 'across' in setting ? [setting] : [])];
  if (counts.length === 0) return undefined;
  const largest = counts.reduce((best, each) => (each.across * each.down > best.across * best.down ? each : best));
  const name = freeName('larger', (each) => pattern.sizes.some((size) => size.name === each));
  const line = `size ${name} ${largest.across + 1} by ${largest.down + 1}`;
  return inserted(snapshot, after, { title: 'Add a size', lines: after.node.kind === 'size' ? [line] : ['', line] });
}

/** Before a pieced border, as wide as makes it fit in each size. */
export function addSpacer(snapshot: Snapshot, position: Position): Refactoring | undefined {
  const { tree, pattern, document } = snapshot;
  const statement = under(tree, position)?.statement;
  const parent = statement?.parent;
  if (statement?.node.kind !== 'border' || statement.node.form !== 'pieced' || !parent?.body) return undefined;
  const borders = ofKind(parent.body.statements, 'border');
  const previous = borders[borders.findIndex(({ line }) => line === statement.line) - 1];
  if (previous?.node.form === 'fit' || previous?.node.form === 'to') return undefined;
  const fabric = previous?.node.fabric?.text ?? [...pattern.fabrics.keys()][0];
  if (fabric === undefined || document.numberOf(statement.line) === document.numberOf(parent.line)) return undefined;
  const least = pattern.rules.units === 'inches' ? '1"' : '2 cm';
  const indent = statement.line.text.slice(0, statement.node.from);
  const place = { line: statement.line, from: statement.node.from, to: statement.node.from };
  return { title: 'Add a spacer border', kind: 'rewrite', edits: [{ place, text: `border fit ${least} ${fabric}${eolOf(document)}${indent}` }] };
}

interface Insertion {
  readonly title: string;
  readonly lines: readonly string[];
}

function inserted(snapshot: Snapshot, after: Statement, { title, lines }: Insertion): Refactoring {
  const { place, lead } = behind(snapshot, after);
  return { title, kind: 'rewrite', edits: [{ place, text: lead + lines.join(lead) }] };
}

function quoted(text: string): string {
  return text.replace(/["\\]/g, '\\$&').replace(/\s+/g, ' ');
}
