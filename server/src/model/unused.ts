/** Fabrics and blocks that nothing in the quilt comes to. A file without a quilt is a library: all of it is there for others. */
import type { Statement } from '../syntax/tree.ts';
import type { Finding } from './finding.ts';
import { mentionsIn } from './mentions.ts';
import type { BlockDefinition, Fabric } from './pattern.ts';

export interface Declared {
  readonly statements: readonly Statement[];
  readonly fabrics: ReadonlyMap<string, { readonly fabric: Fabric; readonly statement: Statement }>;
  readonly blocks: ReadonlyMap<string, BlockDefinition>;
}

/** The findings on a file's own declarations. A block that only an unused block uses is unused; a fabric in it is not. */
export function unusedIn({ statements, fabrics, blocks }: Declared): readonly Finding[] {
  if (!statements.some(({ node }) => node.kind === 'quilt')) return [];
  const named = mentionsIn(statements.filter(({ node }) => node.kind !== 'block')).map(({ name }) => name);
  const reached = reachedFrom(named, blocks);
  const used = new Set(named);
  for (const { mentions } of blocks.values()) for (const name of mentions ?? []) used.add(name);
  const findings: Finding[] = [];
  for (const [name, { fabric, statement }] of fabrics) if (!used.has(name)) findings.push({ rule: 'unused-fabric', place: fabric.place, name, line: statement.place });
  for (const [name, { place, statement }] of blocks) if (!reached.has(name)) findings.push({ rule: 'unused-block', place, name, line: statement.place });
  return findings;
}

function reachedFrom(named: readonly string[], blocks: ReadonlyMap<string, BlockDefinition>): ReadonlySet<string> {
  const reached = new Set(named);
  for (const name of reached) for (const inner of blocks.get(name)?.mentions ?? []) reached.add(inner);
  return reached;
}
