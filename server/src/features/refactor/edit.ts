/**
 * What a refactoring is, and how it is proved: the edited text is read again, and every block must look as it did. What does not
 * come out the same is not offered.
 */
import { ONE, div, key } from '../../exact/number.ts';
import { pointKey } from '../../exact/point.ts';
import { clockwise, withoutStraightCorners } from '../../exact/polygon.ts';
import { applyToAll, scale } from '../../exact/transform.ts';
import type { BlockLayout, Patch } from '../../geometry/layout.ts';
import type { ModelHost } from '../../model/imports.ts';
import { snapshotOf, type Snapshot } from '../../snapshot.ts';
import type { Body, Statement } from '../../syntax/tree.ts';
import { replaceRange, type Document } from '../../text/document.ts';
import { rangeOf, type Place } from '../../text/place.ts';
import type { TextEdit } from '../../text/problem.ts';
import { blocksOf } from '../blocks.ts';

export interface Refactoring {
  readonly title: string;
  readonly kind: 'extract' | 'inline' | 'rewrite';
  readonly edits: readonly TextEdit[];
}

/** Refactorings are not offered for blocks with more cells and patches than these: nobody rewrites such by hand. */
const MOST_PATCHES = 2000;

/** The refactoring, if every block looks the same afterwards; blocks that are new or gone are not compared. */
export function proved(snapshot: Snapshot, refactoring: Refactoring | undefined): readonly Refactoring[] {
  if (!refactoring || refactoring.edits.length === 0) return [];
  const after = withEdits(snapshot, refactoring.edits);
  if (after.tree.problems.length > snapshot.tree.problems.length) return [];
  const then = new Map(blocksOf(after).map(({ definition, layout }) => [definition.name, layout]));
  const same = blocksOf(snapshot).every(({ definition, layout }) => {
    const other = then.get(definition.name);
    return !other || layout === other || (layout.patches.length <= MOST_PATCHES && looksLike(layout, other));
  });
  return same ? [refactoring] : [];
}

/** The snapshot of the edited text, with the same imports. Edits must not overlap. */
export function withEdits(snapshot: Snapshot, edits: readonly TextEdit[]): Snapshot {
  const placed = edits.flatMap(({ place, text }) => {
    const range = rangeOf(snapshot.document, place);
    return range ? [{ range, text }] : [];
  });
  placed.sort((a, b) => b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character);
  const document = placed.reduce((edited, { range, text }) => replaceRange(edited, range.start, range.end, text), snapshot.document);
  return snapshotOf(document, snapshot.version, hostOf(snapshot), snapshot);
}

/** The files that a snapshot was made with. */
function hostOf({ pattern }: Snapshot): ModelHost {
  const { files, library } = pattern.workings;
  return {
    library: library.map(({ tree }) => tree),
    import: (path, importer) => {
      const file = importer === pattern.tree.document.source ? pattern : files.get(importer);
      return file?.imports.find((each) => each.path === path)?.tree ?? 'missing';
    },
  };
}

/** The same patches in the same places, whatever the units; a patch is told by its fabric, outline, arcs and grain. */
export function looksLike(a: BlockLayout, b: BlockLayout): boolean {
  if (a.patches.length !== b.patches.length || (a.instance.size !== undefined) !== (b.instance.size !== undefined)) return false;
  if (a.instance.size && (key(a.width) !== key(b.width) || key(a.height) !== key(b.height))) return false;
  if (key(div(a.width, a.height)) !== key(div(b.width, b.height))) return false;
  const other = looksOf(b);
  return looksOf(a).every((each, index) => each === other[index]) && a.findings.length === b.findings.length;
}

/** Every patch as a text, in an order of its own; in a box of 1 by 1. */
export function looksOf({ patches, width, height }: BlockLayout): readonly string[] {
  const unit = scale(div(ONE, width), div(ONE, height));
  return patches.map((patch) => lookOf(patch, applyToAll(patch.outline, unit))).sort();
}

function lookOf(patch: Patch, outline: Patch['outline']): string {
  const arcs = patch.arcs?.some((radius) => radius) ? patch.arcs : undefined;
  const corners = arcs ? outline.map((corner, i) => `${pointKey(corner)}~${arcs[i] ? key(arcs[i]) : ''}`) : withoutStraightCorners(clockwise(outline)).map(pointKey);
  const first = corners.indexOf(corners.toSorted()[0] ?? '');
  const turned = [...corners.slice(first), ...corners.slice(0, first)];
  return [patch.fabric.name, patch.role, turned.join(' '), patch.grain ? key(patch.grain) : ''].join('|');
}

/** The line end that a document is written with. */
export function eolOf({ lines }: Document): string {
  return lines[0]?.eol === '\r\n' || lines[0]?.eol === '\r' ? lines[0].eol : '\n';
}

/** What stands between the braces of a top-level statement becomes these lines; comments in it stay, above them. */
export function bodyEdit({ document }: Snapshot, body: Body, lines: readonly string[]): TextEdit | undefined {
  const { open, close } = body;
  if (!close) return undefined;
  const eol = eolOf(document);
  const inner = document.lines.slice(document.numberOf(open.line), document.numberOf(close.line) + 1);
  const comments = inner.flatMap(({ text }) => {
    const found = /(?:^|[\s{}])(\/\/.*)$/.exec(text)?.[1];
    return found === undefined ? [] : [found];
  });
  const place: Place = open.line === close.line ? { line: open.line, from: open.to, to: close.from } : { line: open.line, from: open.to, to: close.from, endLine: close.line };
  return { place, text: `${eol}${[...comments, ...lines].map((line) => `  ${line}${eol}`).join('')}` };
}

/** The text of part of a statement's line. */
export function textIn({ line }: Pick<Statement, 'line'>, { from, to }: { readonly from: number; readonly to: number }): string {
  return line.text.slice(from, to);
}

/** The name itself, or numbered where it is taken. */
export function freeName(base: string, isTaken: (name: string) => boolean): string {
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? base : `${base}${number}`;
    if (!isTaken(name)) return name;
  }
}

/** An empty place before the first line of a statement, above the comments that stand right over it. */
export function before({ document }: Snapshot, statement: Statement): Place {
  let number = document.numberOf(statement.line);
  while (number > 0 && /^\s*\/\//.test(document.lines[number - 1]?.text ?? '')) number -= 1;
  const line = document.lines[number] ?? statement.line;
  return { line, from: 0, to: 0 };
}

/** An empty place behind the last line of a statement, and what has to stand before a new line there. */
export function behind({ document }: Snapshot, { place }: Statement): { readonly place: Place; readonly lead: string } {
  const line = place.endLine ?? place.line;
  return { place: { line, from: line.text.length, to: line.text.length }, lead: eolOf(document) };
}
