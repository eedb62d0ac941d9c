/** The needs of a quilt gathered into kinds of piece: the same fabric, shape, size and use, with how many squares to cut. */
import { fraction, key, less } from '../exact/number.ts';
import { shapeKey } from '../exact/polygon.ts';
import { squaredDistance } from '../exact/point.ts';
import type { Patch } from '../geometry/layout.ts';
import type { Line } from '../text/document.ts';
import type { Place } from '../text/place.ts';
import { mapSteps, type Steps } from '../text/steps.ts';
import { countOf, stripsToJoin } from './joined.ts';
import type { Need } from './needs.ts';
import type { Measure, Piece } from './plan.ts';
import { onceFor } from './remembered.ts';
import type { Cutting, CutRules } from './shape.ts';
import { stripLength } from './stock.ts';

/** The pieces of all needs, in the order in which they first come up. */
export function* piecesOf(needs: readonly Need[], rules: CutRules): Steps<readonly Piece[]> {
  const groups = new Map<string, Group>();
  for (const need of needs) {
    const cutting = need.patch.fabric.directional || need.cutting.method === 'strip set' ? need.cutting : shortSideFirst(need.cutting);
    const name = groupKey(need, cutting);
    const group = groups.get(name) ?? { need, cutting, pieces: 0, uses: new Set<string>(), places: new PlaceSet() };
    groups.set(name, group);
    group.uses.add(need.for);
    group.pieces += need.count;
    group.places.add(need.patch.place);
    yield undefined;
  }
  return yield* mapSteps(groups.values(), (group) => pieceOf(group, rules));
}

interface Group {
  readonly need: Need;
  readonly cutting: Cutting;
  pieces: number;
  /** Several where a set of units is for more than one block. */
  readonly uses: Set<string>;
  readonly places: PlaceSet;
}

function pieceOf({ need, cutting, pieces, uses, places }: Group, rules: CutRules): Piece {
  const { fabric, outline } = need.patch;
  const piece: Piece = {
    ...cutting,
    fabric,
    ...(need.role === undefined ? {} : { role: need.role }),
    pieces,
    cutCount: cutsFor(pieces, cutting),
    for: listed([...uses]),
    ...(uses.size > 1 ? { shared: [...uses] } : {}),
    outline,
    ...(cutting.shape === 'template' ? templateLooks(need.patch) : {}),
    places: places.all,
    ...(cutting.method === 'strip set' ? { lie: 'across' as const } : fabric.directional ? { lie: 'along' as const } : {}),
  };
  return isLongStrip(need.patch, cutting) ? joinedPiece(piece, rules) : piece;
}

/** A name may hold commas of its own: `Sails(navy, foam)`. */
function listed(names: readonly string[]): string {
  const [last = '', ...before] = names.toReversed();
  return before.length === 0 ? last : `${before.toReversed().join(', ')} and ${last}`;
}

function templateLooks({ arcs, grain }: Patch): Pick<Piece, 'arcs' | 'grain'> {
  return { ...(arcs ? { arcs } : {}), ...(grain ? { grain } : {}) };
}

function cutsFor(pieces: number, { piecesPerCut, fours, segments }: Cutting): number {
  if (segments !== undefined) return stripsFor(pieces / segments, { segments, perStrip: piecesPerCut });
  return fours ? 4 * Math.ceil(pieces / 8) : Math.ceil(pieces / piecesPerCut);
}

/** Whole strips for whole sets; for the rest a set of parts of strips, `each` of them for this fabric. */
function stripsFor(each: number, { segments, perStrip }: { readonly segments: number; readonly perStrip: number }): number {
  const rest = segments % perStrip;
  return each * Math.floor(segments / perStrip) + (rest === 0 ? 0 : Math.ceil(each / Math.floor(perStrip / rest)));
}

/** A sash, a spacer or a plain patch that is longer than the fabric is wide and can be joined from strips across it. */
function isLongStrip({ role, fabric }: Patch, { shape, cut }: Cutting): boolean {
  if ((shape !== 'rectangle' && shape !== 'strip') || (role !== 'sash' && role !== 'plain' && role !== 'border')) return false;
  const reach = stripLength(fabric);
  if (fabric.directional) return less(reach, cut.width);
  return less(reach, cut.height) && !less(reach, cut.width);
}

function joinedPiece(piece: Piece, rules: CutRules): Piece {
  const { fabric, pieces } = piece;
  const [finished, cut, exactCut] = [piece.finished, piece.cut, piece.exactCut].map(longSideLast) as [Measure, Measure, Measure];
  const joined = [{ length: cut.height, count: pieces }];
  const height = stripLength(fabric);
  const cutCount = stripsToJoin(joined, height, rules.seam);
  if (cutCount === undefined) return piece;
  return {
    ...piece,
    shape: 'strip',
    method: 'from strips joined',
    lie: 'across',
    joined,
    finished,
    cut: { width: cut.width, height },
    exactCut: { width: exactCut.width, height },
    cutCount,
    pieces: countOf(joined),
  };
}

const shortSideFirst = onceFor((cutting: Cutting): Cutting => {
  const { finished, cut, exactCut } = cutting;
  if (!less(exactCut.height, exactCut.width)) return cutting;
  return { ...cutting, finished: swapped(finished), cut: swapped(cut), exactCut: swapped(exactCut) };
});

const sizesKey = onceFor(({ finished, cut }: Cutting): string => [finished.width, finished.height, cut.width, cut.height].map(key).join(' '));

function swapped({ width, height }: Measure): Measure {
  return { width: height, height: width };
}

function longSideLast(measure: Measure): Measure {
  return less(measure.height, measure.width) ? swapped(measure) : measure;
}

function groupKey({ patch, role, for: use, set }: Need, cutting: Cutting): string {
  const { shape } = cutting;
  const template = shape === 'template' ? `${shapeKey(patch.outline, { mirror: 'different' })} ${arcsKey(patch)}` : '';
  const isStrip = isLongStrip(patch, cutting) ? 'strip' : '';
  return `${patch.fabric.name}|${role ?? ''}|${set ?? use}|${shape}|${cutting.method}|${sizesKey(cutting)}|${isStrip}|${template}`;
}

/** The arcs around the outline with the lengths of their chords, from whichever corner reads least. */
function arcsKey({ outline, arcs }: Patch): string {
  if (!arcs) return '';
  const parts = outline.map((corner, i) => {
    const next = outline[(i + 1) % outline.length] ?? corner;
    return `${key(squaredDistance(corner, next))} ${key(arcs[i] ?? fraction(0))}`;
  });
  return parts.map((_, i) => [...parts.slice(i), ...parts.slice(0, i)].join('; ')).reduce((least, each) => (each < least ? each : least), parts.join('; '));
}

/** Places, each once, in the order they are added. */
class PlaceSet {
  readonly all: Place[] = [];
  readonly #seen = new Map<Line, Set<string>>();

  add(place: Place): void {
    const columns = `${place.from} ${place.to}`;
    const seen = this.#seen.get(place.line) ?? new Set<string>();
    if (seen.has(columns)) return;
    this.#seen.set(place.line, seen.add(columns));
    this.all.push(place);
  }
}
