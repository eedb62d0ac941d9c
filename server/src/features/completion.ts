/** What may be written at a position: the statements of the braces, the options of the line, the names that are declared. */
import type { Snapshot } from '../snapshot.ts';
import { contextAt } from '../syntax/find.ts';
import { BRACES, OPTION_WORDS, PLAIN_LINES, STATEMENT_WORDS, TURN_WORDS, ruleOf, type Context } from '../syntax/words.ts';
import type { Statement } from '../syntax/tree.ts';
import type { Position } from '../text/document.ts';
import type { Columns } from '../text/place.ts';

export interface Completion {
  readonly text: string;
  readonly kind: 'statement' | 'option' | 'fabric' | 'block' | 'number' | 'parameter';
  readonly detail: string;
}

export interface Completions {
  /** The columns of the line that a completion takes the place of. */
  readonly columns: Columns;
  readonly items: readonly Completion[];
}

export function completionsAt(snapshot: Snapshot, position: Position): Completions {
  const line = snapshot.document.lines[position.line]?.text ?? '';
  const before = line.slice(0, position.character);
  const word = /[\p{L}\p{N}_]*$/u.exec(before)?.[0] ?? '';
  const columns = { from: position.character - word.length, to: position.character };
  return { columns, items: isInText(before) ? [] : itemsAt(snapshot, position, before.slice(0, before.length - word.length)) };
}

function itemsAt(snapshot: Snapshot, position: Position, lead: string): readonly Completion[] {
  if (lead.endsWith('@')) return TURN_WORDS.map((text) => ({ text, kind: 'option', detail: 'turn' }));
  if (/[#\d]$/.test(lead)) return [];
  const { context, owner } = contextAt(snapshot.tree, position);
  const start = lead.slice(lead.lastIndexOf('{') + 1).trimStart();
  if (start === '') return [...statements(context), ...(PLAIN_LINES[context] ? names(snapshot, owner, context) : [])];
  const first = /^[\p{L}_]+/u.exec(start)?.[0];
  const rule = first === undefined ? undefined : ruleOf(start === lead.trimStart() ? context : inner(first), first);
  const options = (rule === undefined ? [] : (OPTION_WORDS[rule] ?? [])).map((text): Completion => ({ text, kind: 'option', detail: first ?? '' }));
  return [...options, ...names(snapshot, owner, context)];
}

function statements(context: Context): readonly Completion[] {
  return STATEMENT_WORDS[context].map(({ word }) => ({ text: word, kind: 'statement', detail: 'statement' }));
}

/** In `place { ` in one line, the braces are those of the word before. */
function inner(first: string): Context {
  return first in BRACES ? (BRACES[first as keyof typeof BRACES]?.context ?? 'unknown') : 'unknown';
}

function names({ pattern }: Snapshot, owner: Statement | undefined, context: Context): readonly Completion[] {
  const parameters = parametersAround(owner);
  const fabrics = [...pattern.fabrics.values()].map(({ name, label }): Completion => ({ text: name, kind: 'fabric', detail: label }));
  const blocks = [...pattern.blocks.values()].map(({ name, parameters: each }): Completion => ({ text: name, kind: 'block', detail: each.map((one) => one.name).join(', ') }));
  const numbers = [...pattern.lets.keys()].map((text): Completion => ({ text, kind: 'number', detail: 'let' }));
  if (context === 'top' || context === 'pattern') return [...fabrics, ...numbers];
  return [...parameters.map((text): Completion => ({ text, kind: 'parameter', detail: 'parameter' })), ...fabrics, ...blocks, ...numbers];
}

/** Of the block that the braces stand in. */
function parametersAround(owner: Statement | undefined): readonly string[] {
  if (!owner) return [];
  return owner.node.kind === 'block' ? owner.node.parameters.map(({ name }) => name.text) : parametersAround(owner.parent);
}

/** After an opening quote or in a comment. A quote that touches a number before it is an inch mark. */
function isInText(before: string): boolean {
  if (/(?:^|\s|[{}])\/\//.test(before)) return true;
  return (before.match(/(?<![\d)½¼¾⅓⅔⅛⅜⅝⅞])"/g) ?? []).length % 2 === 1;
}
