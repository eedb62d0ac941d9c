/** Hovers over names: blocks, parameters and named numbers. */
import { add, fraction, mul, sub } from '../exact/number.ts';
import { boundingBox } from '../exact/polygon.ts';
import { lengthText, numberText } from '../checks/wording.ts';
import type { BlockLayout } from '../geometry/layout.ts';
import type { BlockDefinition, ParameterDefinition, Value } from '../model/pattern.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';
import type { Place } from '../text/place.ts';
import { blocksOf } from './blocks.ts';
import { sewingFacts } from './hover-seam.ts';
import { fact, type Fact, type Hover } from './hover-text.ts';
import { perSize, sideBySide } from './measures.ts';

/** A block by its definition, in all its instances; with `use`, only those that stand at that place. */
export function blockHover(snapshot: Snapshot, place: Place, definition: BlockDefinition, use?: Place): Hover {
  const layouts = layoutsOf(snapshot, definition, use);
  const [first] = layouts;
  const origin = { file: '', import: ' (imported)', library: ' (always there)' }[definition.origin];
  const heading = layouts.length === 1 && first ? first.instance.name : definition.name;
  if (!first) return { place, heading: `block ${signatureOf(definition)}${origin}`, facts: use ? withinFacts(snapshot, use) : [] };
  const seams = mul(fraction(2), snapshot.pattern.rules.seam);
  const hasSize = first.instance.size !== undefined;
  return {
    place,
    heading: `block ${heading}${origin}`,
    facts: [
      ...fact('Finished', hasSize ? sideBySide(first, snapshot.pattern) : undefined),
      ...fact('Unfinished', hasSize ? sideBySide({ width: add(first.width, seams), height: add(first.height, seams) }, snapshot.pattern) : undefined),
      ...fact('Patches', `${first.patches.length}`),
      ...fact('In the quilt', perSize(snapshot, (quilt) => timesIn(quilt, new Set(layouts.map(({ instance }) => instance.name))))),
      ...sewingFacts(snapshot, first),
    ],
  };
}

/** `Nine(a, b)` */
function signatureOf({ name, parameters }: BlockDefinition): string {
  return parameters.length === 0 ? name : `${name}(${parameters.map((parameter) => parameter.name).join(', ')})`;
}

/** A block that stands in a cell of another: as large as its patches there. */
function withinFacts(snapshot: Snapshot, cell: Place): readonly Fact[] {
  const quilts = [snapshot.shown, ...snapshot.quilts].filter((quilt) => quilt !== undefined);
  const outer = [...quilts.flatMap(({ layout }) => layout.blocks.map((block) => block.layout)), ...blocksOf(snapshot).map(({ layout }) => layout)];
  for (const { instance, patches } of outer) {
    const own = patches.filter(({ within }) => within?.some((place) => isSame(place, cell)));
    if (own.length === 0) continue;
    const { left, top, right, bottom } = boundingBox(own.flatMap(({ outline }) => outline));
    const size = instance.size ? sideBySide({ width: sub(right, left), height: sub(bottom, top) }, snapshot.pattern) : undefined;
    return [...fact(`Finished in ${instance.name}`, size), ...fact('Patches', `${own.length}`)];
  }
  return [];
}

function layoutsOf(snapshot: Snapshot, definition: BlockDefinition, use: Place | undefined): readonly BlockLayout[] {
  const quilts = [snapshot.shown, ...snapshot.quilts].filter((quilt) => quilt !== undefined);
  const placed = quilts.flatMap(({ layout }) => layout.placements.filter((placement) => use === undefined || isSame(placement.place, use)).map(({ block }) => block));
  const own = placed.filter(({ instance }) => instance.definition.statement === definition.statement);
  const distinct = [...new Map(own.map((layout) => [layout.instance.key, layout])).values()];
  if (distinct.length > 0) return distinct;
  return blocksOf(snapshot).filter((block) => block.definition.statement === definition.statement).map(({ layout }) => layout);
}

function timesIn({ layout }: QuiltView, names: ReadonlySet<string>): string {
  return `${layout.blocks.filter((block) => names.has(block.layout.instance.name)).reduce((sum, block) => sum + block.count, 0)}`;
}

export function numberHover(snapshot: Snapshot, place: Place, name: string, { number, isLength }: Value): Hover {
  return { place, heading: name, facts: fact('Is', isLength ? lengthText(number, snapshot.pattern) : numberText(number)) };
}

/** `standsFor`: the names or numbers it has in the blocks that are there. */
export function parameterHover(place: Place, parameter: ParameterDefinition, block: string, standsFor: readonly string[]): Hover {
  const kind = parameter.kind === undefined || parameter.kind === 'cell' ? 'fabric or block' : parameter.kind;
  return {
    place,
    heading: `${parameter.name}: a ${kind} that ${block} is given`,
    facts: [...fact('Here', standsFor.join(', ')), ...fact('', parameter.hasDefault ? undefined : 'It must be given')],
  };
}

function isSame(a: Place, b: Place): boolean {
  return a.line === b.line && a.from === b.from && a.to === b.to;
}
