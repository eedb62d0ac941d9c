/** What stands behind a line: whether a statement that lacks its `{` goes on there. */
import type { Line } from '../text/document.ts';
import { indentOf } from './scan.ts';

/** The next line with code begins with a `{`, is indented further than the line, or neither (the end of the text too). */
export type Following = 'brace' | 'indented' | 'level';

/** What follows line number `at`. */
export function followed(lines: readonly Line[], at: number): Following {
  const own = indentOf(lines[at]?.text ?? '');
  for (let next = at + 1; next < lines.length; next++) {
    const text = lines[next]?.text ?? '';
    const indent = indentOf(text);
    if (indent === text.length || text.startsWith('//', indent)) continue;
    if (text[indent] === '{') return 'brace';
    return indent > own ? 'indented' : 'level';
  }
  return 'level';
}
