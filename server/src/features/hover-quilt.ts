/** Hovers over the statements of a quilt: the sizes that come out, for each size of the pattern. */
import { count, lengthText, numberText } from '../checks/wording.ts';
import { quantityAt } from '../cutting/quantities.ts';
import type { BorderLayout } from '../geometry/layout.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';
import type { Statement } from '../syntax/tree.ts';
import { placeIn, type Place } from '../text/place.ts';
import { methodFacts } from './hover-method.ts';
import { fact, type Fact, type Hover } from './hover-text.ts';
import { cutText } from './hover-patch.ts';
import { boughtOf, clothText, perSize, widthByHeight } from './measures.ts';

/** The hover over a statement's first word; undefined where there is nothing to say. */
export function statementHover(snapshot: Snapshot, statement: Statement): Hover | undefined {
  const say = SAY[statement.node.kind];
  const facts = say?.(snapshot, statement) ?? [];
  const { node, line } = statement;
  const heading = line.text.slice(node.word.from, (node.kind === 'size' && node.name ? node.name : node.word).to);
  return facts.length === 0 ? undefined : { place: placeIn(statement.line, statement.node.word), heading, facts };
}

type Say = (snapshot: Snapshot, statement: Statement) => readonly Fact[];

const SAY: Readonly<Partial<Record<Statement['node']['kind'], Say>>> = {
  pattern: quiltFacts,
  quilt: quiltFacts,
  size: sizeFacts,
  straight: settingFacts,
  on_point: settingFacts,
  rows: settingFacts,
  edges: (snapshot, { place }) => pieceFacts(snapshot, place),
  corners: (snapshot, { place }) => pieceFacts(snapshot, place),
  sashing: (snapshot, { place }) => pieceFacts(snapshot, place),
  border: borderFacts,
  backing: backingFacts,
  batting: battingFacts,
  binding: bindingFacts,
  sleeve: sleeveFacts,
  quilting: quiltingFacts,
  expect: expectFacts,
  method: methodFacts,
};

function quiltFacts(snapshot: Snapshot): readonly Fact[] {
  const { pattern } = snapshot;
  return [
    ...fact('Finished', perSize(snapshot, ({ layout }) => widthByHeight(layout, pattern))),
    ...fact('Blocks', perSize(snapshot, ({ layout }) => `${layout.blocks.reduce((sum, block) => sum + block.count, 0)}`)),
  ];
}

function sizeFacts(snapshot: Snapshot, { line }: Statement): readonly Fact[] {
  const quilt = snapshot.quilts.find(({ size }) => size?.statement.line === line);
  if (!quilt) return [];
  const { layout, plan, spec: { setting, size } } = quilt;
  const counted = size?.covers && setting && 'across' in setting ? `${setting.across} by ${setting.down} covers the bed` : undefined;
  return [
    ...fact('Count', counted),
    ...fact('Finished', widthByHeight(layout, snapshot.pattern)),
    ...fact('Blocks', layout.blocks.map((block) => `${block.count} ${block.layout.instance.name}`).join(', ')),
    ...fact('Buy', plan.fabrics.map((each) => `${each.fabric.name} ${boughtOf(each, snapshot.pattern)}`).join(', ')),
  ];
}

function settingFacts(snapshot: Snapshot): readonly Fact[] {
  const { pattern } = snapshot;
  return [...fact('Inside the borders', perSize(snapshot, ({ layout }) => widthByHeight(layout.centre, pattern))), ...quiltFacts(snapshot)];
}

/** What is cut for a statement: setting triangles, sashes. */
function pieceFacts(snapshot: Snapshot, place: Place): readonly Fact[] {
  const pieces = (quilt: QuiltView): string | undefined => {
    const own = quilt.plan.pieces.filter((piece) => piece.places.some(({ line, from }) => line === place.line && from >= place.from));
    return own.length === 0 ? undefined : own.map((piece) => `${piece.pieces} ${piece.fabric.name} ${piece.shape}${piece.pieces === 1 ? '' : 's'} (${cutText(piece, snapshot.pattern)})`).join('; ');
  };
  return fact('Pieces', perSize(snapshot, pieces));
}

function borderFacts(snapshot: Snapshot, { line }: Statement): readonly Fact[] {
  const { pattern } = snapshot;
  const own = (quilt: QuiltView): BorderLayout | undefined => quilt.layout.borders.find((border) => border.place.line === line);
  const strips = (quilt: QuiltView): string | undefined => {
    const number = quilt.layout.borders.findIndex((border) => border.place.line === line) + 1;
    const cuts = quilt.plan.borders.filter((border) => border.number === number).flatMap((border) => border.strips);
    return cuts.map((strip) => `${strip.count} of ${widthByHeight({ width: strip.width, height: strip.length }, pattern)}`).join(', ');
  };
  return [
    ...fact('Finished width', perSize(snapshot, (quilt) => textOf(own(quilt), (border) => lengthText(border.width, pattern)))),
    ...fact('Corners', perSize(snapshot, (quilt) => own(quilt)?.corners)),
    ...fact('Cut', perSize(snapshot, strips)),
  ];
}

function backingFacts(snapshot: Snapshot): readonly Fact[] {
  const { pattern } = snapshot;
  const seams = { vertical: ', upright seams', horizontal: ', seams across', none: '' };
  return [
    ...fact('Size', perSize(snapshot, ({ plan }) => textOf(plan.backing, (backing) => widthByHeight(backing, pattern)))),
    ...fact('Of', perSize(snapshot, ({ plan }) => textOf(plan.backing, (backing) => `${count(backing.panels, 'panel')}${seams[backing.seams]}`))),
    ...fact('Buy', perSize(snapshot, ({ plan }) => textOf(plan.backing, ({ buy }) => clothText(buy, pattern)))),
  ];
}

function battingFacts(snapshot: Snapshot): readonly Fact[] {
  return [
    ...fact('Size', perSize(snapshot, ({ plan }) => textOf(plan.batting, (batting) => widthByHeight(batting, snapshot.pattern)))),
    ...fact('Package', perSize(snapshot, ({ plan }) => plan.batting?.package)),
  ];
}

function bindingFacts(snapshot: Snapshot): readonly Fact[] {
  const { pattern } = snapshot;
  return [
    ...fact('Cut width', perSize(snapshot, ({ plan }) => textOf(plan.binding, ({ width }) => lengthText(width, pattern)))),
    ...fact('Length', perSize(snapshot, ({ plan }) => textOf(plan.binding, ({ length }) => lengthText(length, pattern)))),
    ...fact('Strips', perSize(snapshot, ({ plan }) => textOf(plan.binding, ({ strips }) => `${strips}`))),
  ];
}

/** How long the stitched lines of this statement are. */
function quiltingFacts(snapshot: Snapshot, { line }: Statement): readonly Fact[] {
  const names = { in_the_ditch: 'In the ditch', echo: 'Echo', allover: 'All over (an estimate)' };
  const own = ({ plan }: QuiltView): QuiltView['plan']['quilting'] => plan.quilting.filter(({ place }) => place.line === line);
  const kinds = [...new Set(snapshot.quilts.flatMap((quilt) => own(quilt).map(({ kind }) => kind)))];
  return kinds.flatMap((kind) => fact(names[kind], perSize(snapshot, (quilt) => textOf(own(quilt).find((each) => each.kind === kind), ({ length }) => `${clothText(length, snapshot.pattern)} of stitching`))));
}

function sleeveFacts(snapshot: Snapshot): readonly Fact[] {
  const { pattern } = snapshot;
  return [
    ...fact('Cut', perSize(snapshot, ({ plan }) => textOf(plan.sleeve, ({ cut }) => widthByHeight(cut, pattern)))),
    ...fact('Strips', perSize(snapshot, ({ plan }) => textOf(plan.sleeve, ({ strips }) => `${strips}`))),
  ];
}

/** What the quantity is now. */
function expectFacts(snapshot: Snapshot, { line }: Statement): readonly Fact[] {
  const { pattern } = snapshot;
  const expectation = pattern.expectations.find((each) => each.place.line === line);
  if (!expectation || expectation.cut) return [];
  const path = expectation.path.map(({ text }) => text);
  const isOfSize = pattern.sizes.some(({ name }) => name === path[0]);
  const now = (quilt: QuiltView): string | undefined => {
    if (isOfSize && quilt.name !== path[0]) return undefined;
    const quantity = quantityAt(quilt, isOfSize ? path.slice(1) : path, pattern.rules);
    if (!quantity) return undefined;
    return quantity.kind === 'count' ? numberText(quantity.value) : quantity.kind === 'cloth' ? clothText(quantity.value, pattern) : lengthText(quantity.value, pattern);
  };
  return fact('Now', perSize(snapshot, now));
}

function textOf<T>(value: T | undefined, say: (value: T) => string): string | undefined {
  return value === undefined ? undefined : say(value);
}
