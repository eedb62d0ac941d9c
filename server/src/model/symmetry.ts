/** `turned N` and `mirrored` in a block. */
import { onLine, refuse } from './context.ts';
import { oneOf } from './measures.ts';
import type { Symmetry } from './pattern.ts';
import type { StatementOf } from './statements.ts';
import type { Builder } from './uses.ts';

/** How often a turned thing can repeat: in a grid only halves and quarters are grids again. */
export const TURNS = { grid: [2, 4], patches: [2, 3, 4, 6, 8, 12] } as const;

/** The symmetry a statement asks for; `mirrored` alone is one mirror image. */
export function symmetryOf(builder: Builder, statement: StatementOf<'turned' | 'mirrored'>, within: keyof typeof TURNS): Symmetry | undefined {
  const { node, line, place } = statement;
  const here = onLine(builder, line);
  if (!node.times) return node.kind === 'mirrored' ? { kind: 'mirrored', times: 2, place } : missing(builder, statement);
  const choices: readonly number[] = node.kind === 'mirrored' ? [2, 4] : TURNS[within];
  const times = oneOf(here, node.times, within === 'grid' ? `\`${node.kind}\` in a grid` : `\`${node.kind}\``, choices);
  return times === undefined ? undefined : { kind: node.kind, times, place };
}

function missing(builder: Builder, { node, line }: StatementOf<'turned' | 'mirrored'>): undefined {
  return node.broken ? undefined : refuse(onLine(builder, line), node.word, '`turned` needs how often: `turned 4`');
}
