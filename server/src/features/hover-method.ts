/** Over `method`: what each way of making the units costs in cuts and seams, and how many units are over. */
import { count } from '../checks/wording.ts';
import { geeseWork, halfSquareWork, type Work } from '../cutting/work.ts';
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

/** In every size; in a block, its own units only. */
export function methodFacts(snapshot: Snapshot, { node, parent }: Statement): readonly Fact[] {
  if (node.kind !== 'method' || (node.unit?.word !== 'half_squares' && node.unit?.word !== 'geese')) return [];
  const { word } = node.unit;
  const isOf = ({ name }: Unit): boolean => name === (word === 'geese' ? 'flying goose' : 'half-square triangle');
  const countOf = ({ uses }: Unit): number => uses.filter(({ layout }) => parent?.node.kind !== 'block' || layout.instance.definition.statement === parent).reduce((sum, use) => sum + use.count, 0);
  const counts = (quilt: QuiltView): readonly number[] => quilt.sewing.units.units.filter(isOf).map(countOf).filter((count) => count > 0);
  return [
    ...fact('Units', perSize(snapshot, (quilt) => `${counts(quilt).reduce((total, each) => total + each, 0)}`)),
    ...Object.entries(WAYS[word]).flatMap(([way, workOf]) => fact(way, perSize(snapshot, (quilt) => workText(counts(quilt).map(workOf))))),
  ];
}

function workText(works: readonly Work[]): string {
  const over = works.reduce((total, work) => total + work.over, 0);
  const total = (of: 'cuts' | 'seams'): number => works.reduce((sum, work) => sum + work[of], 0);
  return `${count(total('cuts'), 'cut')}, ${count(total('seams'), 'seam')}${over === 0 ? '' : `, ${count(over, 'unit')} over`}`;
}
