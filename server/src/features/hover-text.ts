/** What a hover says, as data, and its two forms: Markdown and plain text. Whatever a maker wrote is escaped. */
import type { Place } from '../text/place.ts';

export interface Hover {
  /** What the hover is about. */
  readonly place: Place;
  readonly heading: string;
  readonly facts: readonly Fact[];
}

/** `Cut`: `a square of 2 3/8", once on the diagonal`. A fact without a label is a sentence. */
export interface Fact {
  readonly label: string;
  readonly value: string;
}

export function fact(label: string, value: string | undefined): readonly Fact[] {
  return value === undefined || value === '' ? [] : [{ label, value }];
}

export function markdownOf({ heading, facts }: Hover): string {
  const lines = facts.map(({ label, value }) => (label === '' ? escapeMarkdown(value) : `${escapeMarkdown(label)}: **${escapeMarkdown(value)}**`));
  return [`**${escapeMarkdown(heading)}**`, lines.join('  \n')].filter((part) => part !== '').join('\n\n');
}

export function plainOf({ heading, facts }: Hover): string {
  return [heading, ...facts.map(({ label, value }) => (label === '' ? value : `${label}: ${value}`))].map(oneLine).join('\n');
}

/** A text that Markdown shows as it is, in one line. */
export function escapeMarkdown(text: string): string {
  return oneLine(text).replace(/[\\`*_{}[\]()<>#+\-.!|~&$^:@/]/g, (character) => (SAFE.has(character) ? character : `\\${character}`));
}

/** These mean something only at the start of a line, or next to others that are escaped. */
const SAFE = new Set(['-', '/', '(', ')']);

function oneLine(text: string): string {
  return text.toWellFormed().replace(/\s+/g, ' ').trim();
}
