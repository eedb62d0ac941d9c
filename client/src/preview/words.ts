/** What the preview says in words: why there is no picture, and what a dim picture means. */
import type { Preview } from '../../../server/src/lsp/requests.ts';

/** Instead of a picture. */
export function noteFor(uri: string | null, preview: Preview | null): string {
  if (uri === null) return 'Open a .quilt file to see it here.';
  if (!preview) return 'The file is no longer there.';
  if (preview.errors > 0) return 'There is no picture yet: the text has errors.';
  return 'Nothing to draw yet: write a block or a quilt.';
}

/** Beside a picture of a text with errors; empty for a text without. */
export function badgeFor({ errors, partial, svg }: Preview, shown: Shown): string {
  if (errors === 0) return '';
  const count = errors === 1 ? '1 error' : `${errors} errors`;
  if (shown === 'the last good one') return `${count}: this is the last good picture`;
  if (shown === 'both') return `${count}: dim parts are from the last good picture`;
  return partial && svg !== null ? `${count}: parts are missing` : count;
}

/** Which pictures are on the sheet: the newest, the last good one dimmed, or the newest over it. */
export type Shown = 'the newest' | 'the last good one' | 'both';
