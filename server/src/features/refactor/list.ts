/** What can be rewritten at a position without changing what is sewn. */
import type { Snapshot } from '../../snapshot.ts';
import type { Range } from '../../text/place.ts';
import { blocksOf } from '../blocks.ts';
import { blockAround } from '../names.ts';
import { under } from '../under.ts';
import { addColourway, addSize, addSpacer } from './additions.ts';
import { proved, type Refactoring } from './edit.ts';
import { exchanges } from './exchange.ts';
import { extractBlock } from './extract.ts';
import { foldedPatches } from './fold-patches.ts';
import { inlineBlock } from './inline.ts';
import { symmetries } from './symmetric.ts';
import { toGrid } from './to-grid.ts';
import { toPatches } from './to-patches.ts';

export type { Refactoring } from './edit.ts';

/** A block with more rows than these is not gone through whenever the cursor moves. */
const MOST_LINES = 200;

/** Those that change no block are proved by reading the edited text again; the others say what they change. */
export function refactoringsAt(snapshot: Snapshot, range: Range): readonly Refactoring[] {
  const { start } = range;
  const changing = [...exchanges(snapshot, start), ...[addColourway(snapshot, start), addSize(snapshot, start), addSpacer(snapshot, start)].filter((each) => each !== undefined)];
  const same = [extractBlock(snapshot, range), inlineBlock(snapshot, start), ...rewritings(snapshot, range)];
  return [...same.flatMap((each) => proved(snapshot, each)), ...changing];
}

/** Of the whole block that the position is in. */
function rewritings(snapshot: Snapshot, { start }: Range): readonly (Refactoring | undefined)[] {
  const statement = under(snapshot.tree, start)?.statement;
  const block = statement && blockAround(statement);
  if (!block || (block.body?.statements.length ?? 0) > MOST_LINES) return [];
  const view = blocksOf(snapshot).find(({ definition }) => definition.statement === block);
  return view ? [toPatches(snapshot, view), toGrid(snapshot, view), ...symmetries(snapshot, view), ...foldedPatches(snapshot, view)] : [];
}
