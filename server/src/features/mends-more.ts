/** Mends that need a decision: declaring a name that is not there, expecting what comes out now. None of them is certain. */
import type { QuiltView, Snapshot } from '../snapshot.ts';
import type { ExpectNode, Statement } from '../syntax/tree.ts';
import { placeIn, rangeOf, type Place } from '../text/place.ts';
import type { Problem, TextEdit } from '../text/problem.ts';
import { valueIn } from './placeholders.ts';
import { before, behind, eolOf, freeName } from './refactor/edit.ts';

export interface Offer {
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

export function offersFor(snapshot: Snapshot, problem: Problem): readonly Offer[] {
  switch (problem.rule) {
    case 'unknown-name':
      return declaring(snapshot, problem);
    case 'expect-failed':
      return expecting(snapshot, problem);
    case 'row-length':
      return evening(problem);
    case 'duplicate-name':
      return renamed(snapshot, problem);
    case 'low-contrast':
      return valued(snapshot, problem);
    default:
      return [];
  }
}

/** A row that is short goes on with its last patch; of one that is long the cells too many are dropped. */
function evening({ place, message }: Problem): readonly Offer[] {
  const [, has, wanted] = /^this row has (\d+) cells?, the grid has (\d+)$/.exec(message) ?? [];
  const missing = Number(wanted) - Number(has);
  const row = place.line.text.slice(place.from, place.to);
  if (has === undefined || place.endLine) return [];
  if (missing > 0) return [{ title: `Let the last patch go on: ${'<'.padEnd(2 * missing - 1, ' <')}`, edits: [{ place: { line: place.line, from: place.to, to: place.to }, text: ' <'.repeat(missing) }] }];
  const cells = [...row.matchAll(/(?:\([^()]*\)|[^\s()])+/g)];
  const first = cells.length === Number(has) ? cells.at(missing - 1) : undefined;
  return first ? [{ title: -missing === 1 ? 'Drop the last cell' : `Drop the last ${-missing} cells`, edits: [{ place: { line: place.line, from: place.from + first.index + first[0].length, to: place.to }, text: '' }] }] : [];
}

/** The second of two with one name gets a number; all uses mean the first. */
function renamed({ pattern, tree }: Snapshot, { place }: Problem): readonly Offer[] {
  const name = place.line.text.slice(place.from, place.to);
  const isStatementWord = tree.statements.every((each) => each.line !== place.line || !('name' in each.node) || each.node.name?.text !== name);
  if (isStatementWord) return [];
  const isTaken = (each: string): boolean => each === name || pattern.workings.names.has(each) || pattern.sizes.some((size) => size.name === each) || pattern.colorways.some((colorway) => colorway.name === each);
  const other = freeName(name, isTaken);
  return [{ title: `Call this one \`${other}\``, edits: [{ place, text: other }] }];
}

/** What the author sees in the cloth and the colours do not say: `value` for the fabrics in question. */
function valued({ tree }: Snapshot, { message }: Problem): readonly Offer[] {
  const [, one = '', other = ''] = /^`(.+?)` and `(.+?)` are/.exec(message) ?? [];
  const declared = (name: string): Statement | undefined => tree.statements.find(({ node }) => node.kind === 'fabric' && node.name?.text === name && !node.value && !node.broken);
  const offer = (light: string, dark: string): readonly Offer[] => {
    const [lighter, darker] = [declared(light), declared(dark)];
    if (!lighter || !darker) return [];
    const edits = [[lighter, 'light'], [darker, 'dark']] as const;
    return [{ title: `Say that \`${light}\` is lighter than \`${dark}\``, edits: edits.map(([{ line, place }, value]) => ({ place: { line, from: place.to, to: place.to }, text: ` value ${value}` })) }];
  };
  return [...offer(one, other), ...offer(other, one)];
}

/** As what the message wants: a fabric, a block or a number. */
function declaring(snapshot: Snapshot, { place, message }: Problem): readonly Offer[] {
  const name = place.line.text.slice(place.from, place.to);
  const line = snapshot.document.numberOf(place.line);
  const outer = snapshot.tree.statements.find((each) => holdsLine(snapshot, each.place, line));
  if (!outer || !/^\p{L}[\p{L}\p{M}\d_]*$/u.test(name)) return [];
  const eol = eolOf(snapshot.document);
  const what = /^no (.*?) is called/.exec(message)?.[1] ?? '';
  const isBlock = /^\p{Lu}/u.test(name);
  const offers: Offer[] = [];
  if (/fabric/.test(what) && !(isBlock && /block/.test(what))) offers.push({ title: `Declare the fabric \`${name}\``, edits: [afterLast(snapshot, 'fabric', outer, `fabric ${name} #888888 "${name}"`)] });
  if (/block/.test(what) && isBlock) offers.push({ title: `Declare the block \`${name}\``, edits: [{ place: before(snapshot, outer), text: [`block ${name} 6" {`, '}', '', ''].join(eol) }] });
  if (/number/.test(what) && !/fabric/.test(what)) offers.push({ title: `Declare the number \`${name}\``, edits: [afterLast(snapshot, 'let', outer, `let ${name} = 1`)] });
  return offers;
}

/** Behind the last declaration of its kind that stands above the use; else before the statement of the use. */
function afterLast(snapshot: Snapshot, kind: Statement['node']['kind'], user: Statement, text: string): TextEdit {
  const above = snapshot.tree.statements.slice(0, snapshot.tree.statements.indexOf(user));
  const last = above.findLast(({ node }) => node.kind === kind);
  const eol = eolOf(snapshot.document);
  if (!last) return { place: before(snapshot, user), text: `${text}${eol}${eol}` };
  const { place, lead } = behind(snapshot, last);
  return { place, text: lead + text };
}

function holdsLine({ document }: Snapshot, place: Place, line: number): boolean {
  const range = rangeOf(document, place);
  return range !== undefined && range.start.line <= line && line <= range.end.line;
}

/** Writes the value that comes out, where it is the same in every size that is meant. */
function expecting(snapshot: Snapshot, { place }: Problem): readonly Offer[] {
  const statement = snapshot.tree.statements.find((each) => each.line === place.line && each.node.kind === 'expect');
  const node = statement?.node as ExpectNode | undefined;
  if (!statement || !node?.value || node.cut) return [];
  const path = node.path.map(({ text }) => text);
  const said = new Set(snapshot.quilts.flatMap((quilt: QuiltView) => valueIn(snapshot, quilt, path) ?? []));
  const [now] = said;
  if (said.size !== 1 || now === undefined || /about|less/.test(now)) return [];
  return [{ title: `Expect ${now}`, edits: [{ place: placeIn(statement.line, node.value), text: now }] }];
}
