/** How a message says which word was probably meant. */

/** `; did you mean …?`, or nothing. */
export function didYouMean(suggestion: string | undefined): string {
  return suggestion === undefined ? '' : `; did you mean \`${suggestion}\`?`;
}

/** Words as a message shows them: not longer than a line has room for. */
export function shown(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
