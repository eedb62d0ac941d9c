/** Picking statements of a kind out of a list, and what may stand only once. */
import { placeIn } from '../text/place.ts';
import type { Statement, StatementKind, StatementNode } from '../syntax/tree.ts';
import type { Context } from './context.ts';

/** A statement of one of the kinds. */
export type StatementOf<K extends StatementKind> = Statement<NodeWith<K>>;

/** The nodes that may have one of the kinds (some kinds share a shape). */
type NodeWith<K extends StatementKind, N = StatementNode> = N extends StatementNode ? ([K & N['kind']] extends [never] ? never : N & { readonly kind: K }) : never;

/** The statements of the kinds, in the order of the text. */
export function ofKind<K extends StatementKind>(statements: readonly Statement[], ...kinds: readonly K[]): readonly StatementOf<K>[] {
  const [only]: readonly StatementKind[] = kinds;
  const isWanted = kinds.length === 1 ? ({ node }: Statement): boolean => node.kind === only : ({ node }: Statement): boolean => (kinds as readonly StatementKind[]).includes(node.kind);
  return statements.filter(isWanted) as unknown as readonly StatementOf<K>[];
}

/** The first statement of the kinds; each further one is reported, since the first one counts. */
export function onlyOne<K extends StatementKind>(context: Context, statements: readonly Statement[], ...kinds: readonly K[]): StatementOf<K> | undefined {
  const [first, ...others] = ofKind(statements, ...kinds);
  for (const other of others) reportSecond(context, other, first);
  return first;
}

/** Says that a statement stands a second time. */
export function reportSecond(context: Context, second: Statement, first: Statement | undefined): void {
  if (!first || second.node.broken) return;
  const place = placeIn(second.line, second.node.word);
  const name = second.line.text.slice(second.node.word.from, second.node.word.to);
  context.report({ rule: 'duplicate-name', place, name, what: 'statements', first: placeIn(first.line, first.node.word), whole: second.place });
}
