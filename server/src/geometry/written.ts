/** What stands in the text of a quilt or a block, whether or not it could be resolved: nothing is missed that is there and broken. */
import type { QuiltSpec } from '../model/pattern.ts';
import type { Body, Statement, StatementKind } from '../syntax/tree.ts';

/** The statements of these kinds in `quilt` and in its size. */
export function written({ statement, size }: QuiltSpec, ...kinds: readonly StatementKind[]): Statement[] {
  const all = [...(statement.body?.statements ?? []), ...(size?.statement.body?.statements ?? [])];
  return all.filter(({ node }) => kinds.includes(node.kind));
}

/** True when a line in the braces, at any depth, could not be read. */
export function hasBrokenLine(body: Body | undefined): boolean {
  return body?.statements.some(({ node, body: inner }) => node.broken === true || node.kind === 'junk' || hasBrokenLine(inner)) ?? false;
}
