/** Over `method`: what each way of making the units costs in cuts and seams, and how many units are over. */
import { count } from '../checks/wording.ts';
import { geeseWork, halfSquareWork, type Work } from '../cutting/work.ts';
import { blocksAround } from '../piecing/methods-at.ts';
import { patchesIn } from '../piecing/plan.ts';
import type { Unit } from '../piecing/units.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';
import type { Statement } from '../syntax/tree.ts';
import { fact, type Fact } from './hover-text.ts';
import { perSize } from './measures.ts';

type WorkOf = (count: number) => Work;

const WAYS: Readonly<Record<'half_squares' | 'geese', Readonly<Record<string, WorkOf>>>> = {
  half_squares: {
    singles: (units) => halfSquareWork('singles', units),
    two_at_a_time: (units) => halfSquareWork('two_at_a_time', units),
    eight_at_a_time: (units) => halfSquareWork('eight_at_a_time', units),
  },
  geese: {
    singles: (units) => geeseWork('singles', units),
    four_at_a_time: (units) => geeseWork('four_at_a_time', units),
    corners: (units) => geeseWork('corners', units),
  },
};

/** In every size; in a block, those that lie wholly in it, wherever it stands. */
export function methodFacts(snapshot: Snapshot, { node, parent }: Statement): readonly Fact[] {
  if (node.kind !== 'method' || (node.unit?.word !== 'half_squares' && node.unit?.word !== 'geese')) return [];
  const { word } = node.unit;
  const within = parent?.node.kind === 'block' ? parent : undefined;
  const counts = (quilt: QuiltView): readonly number[] => countsOf(quilt.sewing, { name: word === 'geese' ? 'flying goose' : 'half-square triangle', within });
  return [
    ...fact('Units', perSize(snapshot, (quilt) => `${counts(quilt).reduce((total, each) => total + each, 0)}`)),
    ...Object.entries(WAYS[word]).flatMap(([way, workOf]) => fact(way, perSize(snapshot, (quilt) => workText(counts(quilt).map(workOf))))),
  ];
}

interface Wanted {
  readonly name: Unit['name'];
  /** The block that must hold them; undefined for all of the quilt. */
  readonly within: Statement | undefined;
}

/** For each kind of unit of a name how many of them there are. */
function countsOf({ blocks, units: { units, numbers } }: QuiltView['sewing'], { name, within }: Wanted): readonly number[] {
  const counts = new Map<number, number>();
  for (const { layout, assembled, count: placed } of blocks) {
    const stack = assembled ? [assembled.plan.assembly] : [];
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      const unit = numbers.get(node);
      if (unit === undefined || units[unit]?.name !== name) {
        stack.push(...(node.kind === 'join' ? node.parts : node.kind === 'patch' ? [] : [node.part]));
        continue;
      }
      const isMeant = !within || blocksAround(layout, patchesIn(node)).some(({ definition }) => definition.statement === within);
      if (isMeant) counts.set(unit, (counts.get(unit) ?? 0) + placed);
    }
  }
  return [...counts.values()];
}

function workText(works: readonly Work[]): string {
  const over = works.reduce((total, work) => total + work.over, 0);
  const total = (of: 'cuts' | 'seams'): number => works.reduce((sum, work) => sum + work[of], 0);
  return `${count(total('cuts'), 'cut')}, ${count(total('seams'), 'seam')}${over === 0 ? '' : `, ${count(over, 'unit')} over`}`;
}
