/** Texts of a booklet as runs of letters in one look each. Markdown is read by markdown-it, with raw HTML as text and no pictures. */
import MarkdownIt, { type Token } from 'markdown-it';
import type { Text } from '../booklet/book/book.ts';
import { typeset } from './typeset.ts';

export interface Run {
  readonly text: string;
  readonly look: 'plain' | 'bold' | 'italic';
}

export type Prose =
  | { readonly kind: 'paragraph' | 'heading'; readonly runs: readonly Run[] }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly (readonly Run[])[] };

const markdown = new MarkdownIt('commonmark', { html: false });

/** One paragraph's worth. A line break is a run of its own: `\n`. */
export function runsOf(text: Text): readonly Run[] {
  if (typeof text === 'string') return [{ text: typeset(text), look: 'plain' }];
  return inlineRuns(markdown.parseInline(text.markdown, {})[0]?.children ?? []);
}

export function plainText(text: Text): string {
  return runsOf(text).map((run) => run.text).join('');
}

/** The author's own words. What Markdown nests deeper than a list comes out as one paragraph after another. */
export function proseOf(text: string): readonly Prose[] {
  const found: Prose[] = [];
  const lists: { readonly ordered: boolean; readonly items: (readonly Run[])[] }[] = [];
  let kind: 'paragraph' | 'heading' = 'paragraph';
  for (const token of markdown.parse(text, {})) {
    const list = lists.at(-1);
    if (token.type === 'heading_open') kind = 'heading';
    else if (token.type === 'heading_close') kind = 'paragraph';
    else if (token.type === 'bullet_list_open' || token.type === 'ordered_list_open') lists.push({ ordered: token.type === 'ordered_list_open', items: [] });
    else if (token.type === 'bullet_list_close' || token.type === 'ordered_list_close') closeList(lists, found);
    else if (token.type === 'inline' && list) list.items.push(inlineRuns(token.children ?? []));
    else if (token.type === 'inline') found.push({ kind, runs: inlineRuns(token.children ?? []) });
    else if (token.type === 'fence' || token.type === 'code_block') found.push({ kind: 'paragraph', runs: [{ text: token.content.trim(), look: 'plain' }] });
  }
  return found;
}

/** A list within a list goes on in it. */
function closeList(lists: { readonly ordered: boolean; readonly items: (readonly Run[])[] }[], found: Prose[]): void {
  const list = lists.pop();
  const outer = lists.at(-1);
  if (!list) return;
  if (outer) outer.items.push(...list.items);
  else found.push({ kind: 'list', ...list });
}

function inlineRuns(tokens: readonly Token[]): readonly Run[] {
  const runs: Run[] = [];
  let [strong, slanted] = [0, 0];
  let address = '';
  const add = (text: string): void => void runs.push({ text, look: strong > 0 ? 'bold' : slanted > 0 ? 'italic' : 'plain' });
  for (const token of tokens) {
    const { type } = token;
    if (type === 'strong_open') strong += 1;
    else if (type === 'strong_close') strong -= 1;
    else if (type === 'em_open') slanted += 1;
    else if (type === 'em_close') slanted -= 1;
    else if (type === 'link_open') address = `${token.attrGet('href') ?? ''}`;
    else if (type === 'link_close') add(runs.some(({ text }) => text === address) ? '' : ` (${address})`);
    else if (type === 'softbreak') add(' ');
    else if (type === 'hardbreak') add('\n');
    else if (type === 'image') add(token.content);
    else add(typeset(token.content));
  }
  return runs.filter(({ text }) => text !== '');
}
