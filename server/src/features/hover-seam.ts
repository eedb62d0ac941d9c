/** How a block is sewn, in words, and the seam that a character between two names draws. */
import { orderLines } from '../booklet/steps-order.ts';
import { printerFor } from '../booklet/words.ts';
import { sum, type Exact } from '../exact/number.ts';
import { lengthBetween } from '../cutting/sides.ts';
import type { BlockLayout, Patch } from '../geometry/layout.ts';
import { outerPlace } from '../geometry/cell.ts';
import type { Stretch } from '../piecing/plan.ts';
import type { PressSide } from '../piecing/pressing.ts';
import { sewingOfBlock } from '../piecing/sewing.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';
import type { Cell } from '../syntax/tree.ts';
import type { Line } from '../text/document.ts';
import { placeIn, type Columns } from '../text/place.ts';
import { blocksOf } from './blocks.ts';
import { fact, type Fact, type Hover } from './hover-text.ts';
import type { Under } from './under.ts';

type Split = Extract<Cell, { readonly kind: 'split' }>;

/** More lines than these are left to steps.md. */
const MOST_LINES = 8;

/** The order of sewing of a block as the quilt has it; nothing where it cannot be sewn yet. */
export function sewingFacts(snapshot: Snapshot, layout: BlockLayout): readonly Fact[] {
  const quilt = quiltWith(snapshot, layout);
  if (!quilt || layout.findings.length > 0 || layout.instance.findings.length > 0) return [];
  const { rules } = snapshot.pattern;
  const lines = orderLines(layout, { sewing: quilt.sewing, rules, print: printerFor(rules.units) });
  const [first, ...rest] = lines.slice(0, MOST_LINES);
  const more = lines.length > MOST_LINES ? fact('', 'And so on: steps.md has all of it') : [];
  return [...fact('Sewing', first), ...rest.map((value) => ({ label: '', value })), ...more];
}

/** Over the seam of a cell. */
export function seamHover(snapshot: Snapshot, { statement, parts }: Under, character: number): Hover | undefined {
  for (const part of parts) {
    if (!isSplit(part)) continue;
    const index = part.seams.findIndex(({ from, to }) => from <= character && character < to);
    const [seam, before, behind] = [part.seams[index], part.parts[index], part.parts[index + 1]];
    if (!seam || !before || !behind) continue;
    const found = seamBetween(snapshot, statement.line, before, behind);
    const place = placeIn(statement.line, seam);
    return found && { place, heading: 'seam', facts: [...fact('Finished length', found.length), ...fact('Press', found.press)] };
  }
  return undefined;
}

function isSplit(part: Under['parts'][number]): part is Split {
  return part.kind === 'split';
}

function quiltWith({ shown, quilts }: Snapshot, block: BlockLayout): QuiltView | undefined {
  return [shown, ...quilts].find((quilt) => quilt?.layout.blocks.some(({ layout }) => layout === block));
}

interface FoundSeam {
  readonly length: string | undefined;
  readonly press: string | undefined;
}

/** Of the block as the quilt has it, else as it is declared. */
function seamBetween(snapshot: Snapshot, line: Line, before: Columns, behind: Columns): FoundSeam | undefined {
  const quilts = [snapshot.shown, ...snapshot.quilts].filter((quilt) => quilt !== undefined);
  const placed = quilts.flatMap((quilt) => quilt.layout.blocks.map(({ layout }) => layout));
  for (const layout of [...placed, ...blocksOf(snapshot).map((block) => block.layout)]) {
    const isIn = (columns: Columns) => (index: number): boolean => standsIn(layout.patches[index], line, columns);
    if (!layout.patches.some((patch) => standsIn(patch, line, before))) continue;
    const stretch = stretchOf(layout, isIn(before), isIn(behind));
    if (stretch) return wordsFor(snapshot, layout, stretch);
  }
  return undefined;
}

function standsIn(patch: Patch | undefined, line: Line, { from, to }: Columns): boolean {
  const place = patch && outerPlace(patch);
  return place?.line === line && place.from >= from && place.to <= to;
}

interface Between extends Pick<Stretch, 'left' | 'right'> {
  readonly number: number;
  readonly index: number;
  readonly stretch: Stretch;
}

function stretchOf(layout: BlockLayout, isBefore: (patch: number) => boolean, isBehind: (patch: number) => boolean): Between | undefined {
  const seams = sewingOfBlock(layout).assembled?.plan.seams ?? [];
  for (const { number, stretches } of seams) {
    for (const [index, stretch] of stretches.entries()) {
      const { left, right } = stretch;
      const divides = (left.some(isBefore) && right.some(isBehind)) || (left.some(isBehind) && right.some(isBefore));
      if (divides) return { number, index, stretch, left, right };
    }
  }
  return undefined;
}

function wordsFor(snapshot: Snapshot, layout: BlockLayout, { number, index, stretch }: Between): FoundSeam {
  const quilt = quiltWith(snapshot, layout);
  const side = quilt?.sewing.pressing.blocks.find((block) => block.layout === layout)?.sides[number]?.[index];
  const length = layout.instance.size ? printerFor(snapshot.pattern.rules.units).length(lengthOf(stretch)) : undefined;
  return { length, press: side && pressWords(side, stretch, layout) };
}

function lengthOf({ from, to, via }: Stretch): Exact {
  const points = [from, ...via, to];
  return sum(points.slice(1).map((point, i) => lengthBetween(points[i] ?? point, point)));
}

function pressWords(side: PressSide, { left, right }: Stretch, { patches }: BlockLayout): string {
  if (side === 'open') return 'open';
  const fabrics = [...new Set((side === 'left' ? left : right).map((patch) => patches[patch]?.fabric.name ?? ''))];
  return `towards ${fabrics.join(', ')}`;
}
