/** Colours of names in the protocol's form: five numbers a name, each place told from the one before; of a later text only what changed. */
import type { SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver';
import { TOKEN_MODIFIERS, TOKEN_TYPES, tokensIn, type Token } from '../features/tokens.ts';
import type { Snapshot } from '../snapshot.ts';
import type { Range } from '../text/place.ts';
import type { Recoder } from './encoding.ts';

export interface TokenStore {
  readonly whole: (snapshot: Snapshot) => SemanticTokens;
  /** What changed since an answer; the whole when that is not known any more. */
  readonly since: (snapshot: Snapshot, resultId: string) => SemanticTokens | SemanticTokensDelta;
  readonly part: (snapshot: Snapshot, range: Range) => number[];
}

/** Texts whose last answer is kept, those asked about last: who has been away longer is told the whole again. */
const KEPT = 32;

export function tokenStore(recoder: () => Recoder): TokenStore {
  const last = new Map<string, { readonly resultId: string; readonly data: number[] }>();
  let made = 0;
  const whole: TokenStore['whole'] = (snapshot) => {
    const data = encoded(snapshot, tokensIn(snapshot), recoder());
    const resultId = `${(made += 1)}`;
    const { source } = snapshot.document;
    last.delete(source);
    last.set(source, { resultId, data });
    const [oldest] = last.keys();
    if (last.size > KEPT && oldest !== undefined) last.delete(oldest);
    return { resultId, data };
  };
  return {
    whole,
    since: (snapshot, resultId) => {
      const before = last.get(snapshot.document.source);
      const now = whole(snapshot);
      return before?.resultId === resultId && now.resultId !== undefined ? { resultId: now.resultId, edits: difference(before.data, now.data) } : now;
    },
    part: (snapshot, range) => encoded(snapshot, tokensIn(snapshot, range), recoder()),
  };
}

function encoded({ document }: Snapshot, tokens: readonly Token[], { theirs }: Recoder): number[] {
  const data: number[] = [];
  let [lastLine, lastFrom] = [0, 0];
  for (const { line, from, to, type, modifiers } of tokens) {
    const text = document.lines[line]?.text ?? '';
    const [start, end] = [theirs(text, from), theirs(text, to)];
    const bits = modifiers.reduce((sum, modifier) => sum | (1 << TOKEN_MODIFIERS.indexOf(modifier)), 0);
    data.push(line - lastLine, line === lastLine ? start - lastFrom : start, end - start, TOKEN_TYPES.indexOf(type), bits);
    [lastLine, lastFrom] = [line, start];
  }
  return data;
}

/** One edit: all but what both share at their ends. */
function difference(before: readonly number[], now: readonly number[]): SemanticTokensDelta['edits'] {
  const least = Math.min(before.length, now.length);
  let start = 0;
  while (start < least && before[start] === now[start]) start += 1;
  let end = 0;
  while (end < least - start && before[before.length - 1 - end] === now[now.length - 1 - end]) end += 1;
  if (start === before.length && start === now.length) return [];
  return [{ start, deleteCount: before.length - start - end, data: now.slice(start, now.length - end) }];
}
