/** Mends that need a decision: declaring a name that is not there, expecting what comes out now. None of them is certain. */
import type { QuiltView, Snapshot } from '../snapshot.ts';
import type { ExpectNode, Statement } from '../syntax/tree.ts';
import { placeIn, rangeOf, type Place } from '../text/place.ts';
import type { Problem, TextEdit } from '../text/problem.ts';
import { valueIn } from './placeholders.ts';
import { before, behind, eolOf } from './refactor/edit.ts';

export interface Offer {
  readonly title: string;
  readonly edits: readonly TextEdit[];
}

export function offersFor(snapshot: Snapshot, problem: Problem): readonly Offer[] {
  if (problem.rule === 'unknown-name') return declaring(snapshot, problem);
  return problem.rule === 'expect-failed' ? expecting(snapshot, problem) : [];
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
