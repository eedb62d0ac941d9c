/** A fabric's strips in words: one line a kind of strip, one line each for what is cut from it. */
import { equals } from '../exact/number.ts';
import { pieceLabel } from '../cutting/labels.ts';
import type { Cloth, CountedCloth, FabricPlan, Piece, Strip, Subcut } from '../cutting/plan.ts';
import type { UnitSystem } from '../exact/length.ts';
import { cutNoun, type Printer } from './words.ts';
import type { CuttingWords } from './words/cutting-words.ts';

/** What cutting.md is told with. */
export interface Telling {
  readonly words: CuttingWords;
  readonly print: Printer;
  readonly units: UnitSystem;
}

/** The lines for all strips of a fabric, in cutting order; of cloth that is counted, for each piece of it that is cut alike. */
export function stripLines({ strips, cloths, counted: sold }: FabricPlan, pieces: readonly Piece[], telling: Telling): readonly string[] {
  const { words, print } = telling;
  if (!sold) return linesFor(strips, (strip) => `- ${words.stripAcross(strip.count, print.length(strip.width))}`, { pieces, telling, indent: '  ' });
  return cloths.flatMap((cloth) => [`- ${words.eachCloth(sold.kind, cloth.count)}`, ...clothLines(cloth, sold.kind, { pieces, telling, indent: '    ' })]);
}

/** A precut strip is one already. */
function clothLines({ strips, across, down, turned }: Cloth, kind: CountedCloth['kind'], context: Context): readonly string[] {
  if (kind === 'strip') return linesFor(strips, () => '', { ...context, indent: '  ' });
  const { words, print } = context.telling;
  return linesFor(strips, (strip) => `  - ${words.stripOfCloth(strip.count, print.length(strip.width), turned ? 'along' : 'across', print.length(turned ? down : across))}`, context);
}

interface Context {
  readonly pieces: readonly Piece[];
  readonly telling: Telling;
  readonly indent: string;
}

function linesFor(strips: readonly Strip[], heading: (strip: Gathered) => string, { pieces, telling, indent }: Context): readonly string[] {
  return gathered(strips).flatMap((strip) => [
    ...[heading(strip)].filter((line) => line !== ''),
    ...strip.subcuts.flatMap((subcut) => {
      const piece = pieces[subcut.piece];
      return piece ? [`${indent}- ${pieceLabel(subcut.piece)}: ${subcutWords(piece, subcut, strip, telling)}`] : [];
    }),
  ]);
}

/** Strips of one kind, or of several that hold the same single piece: then `count` of a subcut is from all of them. */
interface Gathered {
  readonly width: Strip['width'];
  readonly count: number;
  readonly subcuts: readonly Subcut[];
  readonly from: 'all' | 'each';
}

/** Whole strips and the last, shorter one of the same piece are one line: `from them 20 squares`. */
function gathered(strips: readonly Strip[]): readonly Gathered[] {
  return strips.reduce<readonly Gathered[]>((done, strip) => {
    const last = done.at(-1);
    const before = last?.from === 'all' ? last.subcuts[0] : undefined;
    const here = strip.subcuts.length === 1 ? strip.subcuts[0] : undefined;
    if (!here) return [...done, { ...strip, from: 'each' }];
    const total = { ...here, count: here.count * strip.count };
    if (!last || !before || before.piece !== here.piece || before.turned !== here.turned || !equals(last.width, strip.width)) return [...done, { ...strip, subcuts: [total], from: 'all' }];
    return [...done.slice(0, -1), { ...last, count: last.count + strip.count, subcuts: [{ ...total, count: before.count + total.count }] }];
  }, []);
}

function subcutWords(piece: Piece, { count, stacked }: Subcut, strip: Gathered, telling: Telling): string {
  const { words, print } = telling;
  if (piece.method === 'from strips joined') return joinedWords(piece, strip.count, telling);
  const use = useWords(piece, 'sentence', words);
  if (piece.segment) return words.stripSets(use, print.length(piece.segment), piece.pieces);
  const have = { count: count * piece.piecesPerCut, shape: piece.shape, each: piece.piecesPerCut };
  return words.from(strip.count === 1 ? 'one' : strip.from, words.cut(count, cutNoun(piece), print.size(piece.cut)), words.purpose(piece.method, count, have, use), stacked);
}

/** What a piece is for: a part of the quilt, or the blocks it is shared by. */
export function useWords(piece: Piece, form: 'label' | 'sentence', words: CuttingWords): string {
  return piece.shared ? words.listed(piece.shared) : words.use(piece.for, form);
}

function joinedWords(piece: Piece, strips: number, { words, print }: Telling): string {
  if (piece.for === 'binding') return words.joinBinding(strips, piece.role === undefined ? 'whole' : 'part');
  const lengths = (piece.joined ?? []).map(({ length, count }) => words.of(count, print.length(length)));
  return words.joined(strips, words.listed(lengths), useWords(piece, 'sentence', words));
}
