/** The hover over a fabric: what it is, what is bought of it in each size, and what asks for how much of that. */
import { lengthText } from '../checks/wording.ts';
import { div, fraction, mul, roundTo, sum, toNumber, ZERO, isZero, sub, type Exact } from '../exact/number.ts';
import type { FabricPlan } from '../cutting/plan.ts';
import type { Fabric } from '../model/pattern.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';
import { valueOf } from '../text/colour.ts';
import type { Place } from '../text/place.ts';
import { fact, type Fact, type Hover } from './hover-text.ts';
import { boughtOf, clothText, perSize } from './measures.ts';

export function fabricHover(snapshot: Snapshot, place: Place, fabric: Fabric): Hover {
  const { pattern } = snapshot;
  const planIn = ({ plan }: QuiltView): FabricPlan | undefined => plan.fabrics.find((each) => each.fabric.name === fabric.name);
  const said = (say: (plan: FabricPlan, quilt: QuiltView) => string) => (quilt: QuiltView): string | undefined => {
    const plan = planIn(quilt);
    return plan && say(plan, quilt);
  };
  const pieces = (quilt: QuiltView): string => `${quilt.plan.pieces.filter((piece) => piece.fabric.name === fabric.name).reduce((sum, piece) => sum + piece.pieces, 0)}`;
  const backing = (quilt: QuiltView): string | undefined => (quilt.plan.backing?.fabric?.name === fabric.name ? clothText(quilt.plan.backing.buy, pattern) : undefined);
  return {
    place,
    heading: `fabric ${fabric.name}`,
    facts: [
      ...fact('Label', fabric.label),
      ...fact('Colour', fabric.assorted ? undefined : fabric.colour),
      ...fact('Value', fabric.assorted ? undefined : (fabric.value ?? valueOf(fabric.colour))),
      ...fact('Prints', fabric.assorted?.prints.map(({ name }) => name).join(', ')),
      ...fact('Usable width', lengthText(fabric.width, pattern)),
      ...fact('Pieces', perSize(snapshot, pieces)),
      ...fact('Buy', perSize(snapshot, said((plan) => boughtOf(plan, pattern)))),
      ...fact('Buy for the backing', perSize(snapshot, backing)),
      ...askedFacts(snapshot, fabric),
    ],
  };
}

/** In the quilt the editor shows: the share of the cloth that each block and part takes, and what is left over. */
function askedFacts({ shown }: Snapshot, fabric: Fabric): readonly Fact[] {
  const plan = shown?.plan.fabrics.find((each) => each.fabric.name === fabric.name);
  if (!shown || !plan) return [];
  const cloth = sum(plan.cloths.map(({ across, down, count }) => mul(mul(across, down), fraction(count))));
  if (isZero(cloth)) return [];
  const areas = new Map<string, Exact>();
  for (const { fabric: of, for: use, cut, cutCount } of shown.plan.pieces) {
    if (of.name === fabric.name) areas.set(use, sum([areas.get(use) ?? ZERO, mul(mul(cut.width, cut.height), fraction(cutCount))]));
  }
  const left = sub(cloth, sum([...areas.values()]));
  return fact('Asked for by', [...areas, ['left over', left] as const].map(([use, area]) => `${use} ${percentText(area, cloth)}`).join(', '));
}

function percentText(part: Exact, whole: Exact): string {
  return `${toNumber(roundTo(mul(div(part, whole), fraction(100)), fraction(1)))} %`;
}
