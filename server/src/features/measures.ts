/** How features say lengths, cloth and counts, and one fact for every size of a quilt. */
import { boughtText } from '../booklet/bought.ts';
import { printerFor } from '../booklet/words.ts';
import { equals, isZero, sum, type Exact } from '../exact/number.ts';
import type { CuttingPlan, FabricPlan, Measure } from '../cutting/plan.ts';
import type { Pattern } from '../model/pattern.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';

/** `7 1/2" square`, `4" by 2"`. */
export function sideBySide({ width, height }: Measure, pattern: Pattern): string {
  const print = printerFor(pattern.rules.units);
  return equals(width, height) ? `${print.length(width)} square` : print.widthByHeight({ width, height });
}

/** `59 1/4" by 72"`. */
export function widthByHeight({ width, height }: Measure, pattern: Pattern): string {
  return printerFor(pattern.rules.units).widthByHeight({ width, height });
}

/** A length as cloth is bought: `1 3/8 yd`, `1.3 m`. */
export function clothText(inches: Exact, pattern: Pattern): string {
  return printerFor(pattern.rules.units).cloth(inches);
}

/** What is bought of a fabric: `1 3/8 yd`, `9 fat quarters`. */
export function boughtOf(plan: FabricPlan, pattern: Pattern): string {
  return boughtText(plan, printerFor(pattern.rules.units));
}

/** What is bought in all: the cloth that is measured, with the backing, then what is counted. */
export function allBought({ fabrics, backing }: CuttingPlan, pattern: Pattern): string {
  const measured = sum([...fabrics.flatMap(({ buy, counted }) => (counted ? [] : [buy])), ...(backing ? [backing.buy] : [])]);
  const counted = fabrics.flatMap((each) => (each.counted ? [boughtOf(each, pattern)] : []));
  return [...(isZero(measured) && counted.length > 0 ? [] : [clothText(measured, pattern)]), ...counted].join(', ');
}

/** `crib 12, throw 20`: a fact of each size. One alone where there are no sizes or all say the same. */
export function perSize(snapshot: Snapshot, say: (quilt: QuiltView) => string | undefined): string | undefined {
  const said = snapshot.quilts.flatMap((quilt) => {
    const text = say(quilt);
    return text === undefined ? [] : [{ name: quilt.name, text }];
  });
  const [first] = said;
  if (!first) return undefined;
  const same = said.length === snapshot.quilts.length && said.every(({ text }) => text === first.text);
  return same || first.name === null ? first.text : said.map(({ name, text }) => `${name ?? ''} ${text}`).join(', ');
}
