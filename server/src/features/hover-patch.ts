/** The hover over a patch: what it is, how large, how it is cut, and how many the quilt takes. */
import { ZERO, equals } from '../exact/number.ts';
import { lengthText, numberText } from '../checks/wording.ts';
import type { Piece } from '../cutting/plan.ts';
import { cuttingInBlock } from '../cutting/methods.ts';
import type { Cutting } from '../cutting/shape.ts';
import type { Patch } from '../geometry/layout.ts';
import type { Fabric, Pattern } from '../model/pattern.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';
import type { Place } from '../text/place.ts';
import { blocksOf } from './blocks.ts';
import { fact, type Fact, type Hover } from './hover-text.ts';
import { perSize, sideBySide } from './measures.ts';

/** More kinds than these are counted, not listed. */
const MOST_KINDS = 4;

/** One kind of patch that a cell makes; the cell of a block with parameters may make several. */
interface Kind {
  readonly fabric: Fabric;
  readonly cutting: Cutting;
  /** The block or the part of the quilt it is for; undefined outside a quilt. */
  readonly use: string | undefined;
  readonly patch: Patch | undefined;
}

/** Undefined where the text makes no patch. */
export function patchHover(snapshot: Snapshot, place: Place): Hover | undefined {
  const kinds = kindsAt(snapshot, place);
  const [first] = kinds;
  if (!first) return undefined;
  if (kinds.length === 1) return { place, heading: headingOf(first), facts: factsOf(snapshot, place, first) };
  const listed = kinds.slice(0, MOST_KINDS).flatMap((kind) => [
    { label: '', value: `${headingOf(kind)}: ${cutText(kind.cutting, snapshot.pattern)}` },
    ...fact('In the quilt', countText(snapshot, place, kind)),
  ]);
  const more = kinds.length > MOST_KINDS ? [{ label: '', value: `and ${kinds.length - MOST_KINDS} more kinds` }] : [];
  return { place, heading: `${kinds.length} kinds of patch`, facts: [...listed, ...more] };
}

function headingOf({ cutting, fabric, use }: Kind): string {
  const shape = cutting.shape === 'template' ? 'shape' : cutting.shape;
  return `${fabric.name}: ${shape}${use === undefined ? '' : ` in ${isPartOfQuilt(use) ? 'the ' : ''}${use}`}`;
}

function isPartOfQuilt(use: string): boolean {
  return use === 'setting' || use === 'sashing' || use === 'binding' || use.startsWith('border');
}

function factsOf(snapshot: Snapshot, place: Place, kind: Kind): readonly Fact[] {
  const { pattern } = snapshot;
  return [
    ...fact('Finished', finishedText(kind.cutting, pattern)),
    ...fact('Cut', cutText(kind.cutting, pattern)),
    ...fact('Grain', grainText(kind)),
    ...fact('In the quilt', countText(snapshot, place, kind)),
  ];
}

/** From the cutting plan of what the editor shows; else from the blocks as they are. */
function kindsAt(snapshot: Snapshot, place: Place): readonly Kind[] {
  const quilts = [snapshot.shown, ...snapshot.quilts].filter((quilt) => quilt !== undefined);
  for (const quilt of quilts) {
    const pieces = piecesAt(quilt, place);
    if (pieces.length > 0) return pieces.map((piece) => ({ fabric: piece.fabric, cutting: piece, use: piece.for, patch: patchAt(quilt, place) }));
  }
  const block = blocksOf(snapshot).find(({ layout }) => layout.instance.size && layout.patches.some((patch) => isSame(patch.place, place)));
  const patch = block?.layout.patches.find((each) => isSame(each.place, place));
  const cutting = block && patch && cuttingInBlock(block.layout, block.layout.patches.indexOf(patch), snapshot.pattern.rules);
  return patch && cutting ? [{ fabric: patch.fabric, cutting, use: block?.definition.name, patch }] : [];
}

function piecesAt({ plan }: QuiltView, place: Place): readonly Piece[] {
  return plan.pieces.filter((piece) => piece.places.some((each) => isSame(each, place)));
}

function patchAt({ layout }: QuiltView, place: Place): Patch | undefined {
  const inBlocks = layout.blocks.flatMap(({ layout: { patches } }) => patches);
  return [...inBlocks, ...layout.patches].find((patch) => isSame(patch.place, place));
}

function countText(snapshot: Snapshot, place: Place, kind: Kind): string | undefined {
  return perSize(snapshot, (quilt) => {
    const pieces = piecesAt(quilt, place).filter(({ fabric, shape, for: use }) => fabric.name === kind.fabric.name && shape === kind.cutting.shape && use === kind.use);
    return pieces.length === 0 ? undefined : `${pieces.reduce((sum, piece) => sum + piece.pieces, 0)}`;
  });
}

function finishedText({ shape, finished }: Cutting, pattern: Pattern): string {
  if (shape === 'side setting triangle' || shape === 'corner setting triangle') return `beside a block of ${lengthText(finished.width, pattern)}`;
  if (shape === 'half-square triangle' || shape === 'quarter-square triangle') return `short sides of ${lengthText(finished.width, pattern)}`;
  return shape === 'template' ? `within ${sideBySide(finished, pattern)}` : sideBySide(finished, pattern);
}

/** `2 3/8" square, once on the diagonal: 2 from each`. */
export function cutText({ cut, method, piecesPerCut, segment }: Cutting, pattern: Pattern): string {
  if (segment) return `a strip ${lengthText(cut.width, pattern)} wide, in a strip set: ${piecesPerCut} segments of ${lengthText(segment, pattern)}`;
  const size = sideBySide(cut, pattern);
  if (method === 'plain') return size;
  if (method === 'template') return `with a template, from ${size}`;
  if (method === 'from strips joined') return `strips ${lengthText(cut.width, pattern)} wide, joined`;
  if (method === 'bias') return `${size}, as one long bias strip`;
  return `${size}, ${method}: ${piecesPerCut} from each`;
}

/** Where the straight grain of a patch runs. */
function grainText({ cutting, patch, fabric }: Kind): string | undefined {
  const way = fabric.directional ? 'the print runs upright in the block; ' : '';
  if (patch?.grain !== undefined) return `${way}${equals(patch.grain, ZERO) ? 'upright' : `${numberText(patch.grain)} degrees from upright`}`;
  if (cutting.shape === 'half-square triangle' || cutting.shape === 'corner setting triangle') return `${way}straight on the short sides, bias on the long one`;
  if (cutting.shape === 'quarter-square triangle' || cutting.shape === 'side setting triangle') return `${way}straight on the long side, bias on the short ones`;
  return cutting.shape === 'template' ? `${way}upright in the block` : `${way}straight on all sides`;
}

function isSame(a: Place, b: Place): boolean {
  return a.line === b.line && a.from === b.from && a.to === b.to;
}
