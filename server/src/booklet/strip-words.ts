/** A fabric's strips in words: one line a kind of strip, one line each for what is cut from it. */
import { equals } from '../exact/number.ts';
import { pieceLabel } from '../cutting/labels.ts';
import type { Cloth, CountedCloth, FabricPlan, Piece, Strip, Subcut } from '../cutting/plan.ts';
import { counted, cutNoun, listed, type Printer } from './words.ts';

/** The lines for all strips of a fabric, in cutting order; of cloth that is counted, for each piece of it that is cut alike. */
export function stripLines({ strips, cloths, counted: sold }: FabricPlan, pieces: readonly Piece[], print: Printer): readonly string[] {
  if (!sold) return linesFor(strips, (strip) => `- Cut ${counted(strip.count, 'strip')} ${print.length(strip.width)} by width of fabric.`, { pieces, print, indent: '  ' });
  return cloths.flatMap((cloth) => [`- ${clothWords(cloth, sold.kind)}`, ...clothLines(cloth, sold.kind, { pieces, print, indent: '    ' })]);
}

function clothWords({ count }: Cloth, kind: CountedCloth['kind']): string {
  return count === 1 ? `One ${kind}:` : `${count} ${kind}s, each:`;
}

/** A precut strip is one already. */
function clothLines({ strips, across, down, turned }: Cloth, kind: CountedCloth['kind'], context: Context): readonly string[] {
  if (kind === 'strip') return linesFor(strips, () => '', { ...context, indent: '  ' });
  const [length, lie] = turned ? [down, 'along the selvage'] : [across, 'across'];
  return linesFor(strips, (strip) => `  - Cut ${counted(strip.count, 'strip')} ${context.print.length(strip.width)} wide ${lie}, ${context.print.length(length)} long.`, context);
}

interface Context {
  readonly pieces: readonly Piece[];
  readonly print: Printer;
  readonly indent: string;
}

function linesFor(strips: readonly Strip[], heading: (strip: Gathered) => string, { pieces, print, indent }: Context): readonly string[] {
  return gathered(strips).flatMap((strip) => [
    ...[heading(strip)].filter((line) => line !== ''),
    ...strip.subcuts.flatMap((subcut) => {
      const piece = pieces[subcut.piece];
      return piece ? [`${indent}- ${pieceLabel(subcut.piece)}: ${subcutWords(piece, subcut, strip, print)}`] : [];
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

function subcutWords(piece: Piece, subcut: Subcut, strip: Gathered, print: Printer): string {
  if (piece.method === 'from strips joined') return joinedWords(piece, strip.count, print);
  if (piece.segment) return `for strip sets for ${useWords(piece)}: sewn together, they are cut into segments of ${print.length(piece.segment)}, ${counted(piece.pieces, 'piece')} in all.`;
  const source = strip.count === 1 ? 'from it' : strip.from === 'each' ? 'from each' : 'from them';
  const stacked = subcut.stacked === undefined ? '' : `, ${subcut.stacked} one above the other`;
  return `${source} cut ${counted(subcut.count, cutNoun(piece))} ${print.size(piece.cut)}${purpose(piece, subcut.count)}${stacked}.`;
}

/** What is made of the squares, and what for. */
function purpose(piece: Piece, count: number): string {
  const { shape, piecesPerCut, method } = piece;
  if (method === 'template') return `, one for each template, for ${useWords(piece)}`;
  if (method === 'bias') return `, and cut bias strips from ${count === 1 ? 'it' : 'them'} for the binding`;
  if (piecesPerCut === 1) return ` for ${useWords(piece)}`;
  if (method.endsWith('at a time')) return `, to be sewn ${method}: ${counted(count * piecesPerCut, shape)} for ${useWords(piece)}`;
  return `, and cut ${count === 1 ? 'it' : 'each'} ${method}: ${counted(count * piecesPerCut, shape)} for ${useWords(piece)}`;
}

function useWords(piece: Piece): string {
  return piece.for === 'setting' || piece.for === 'sashing' || piece.for === 'binding' || piece.for === 'sleeve' ? `the ${piece.for}` : piece.for;
}

function joinedWords(piece: Piece, strips: number, print: Printer): string {
  const isPart = piece.role !== undefined;
  if (piece.for === 'binding') return strips === 1 ? `${isPart ? 'join it to the other prints' : 'it is long enough'} for the binding.` : `join them end to end${isPart ? ', and to the other prints,' : ''} for the binding.`;
  const lengths = (piece.joined ?? []).map(({ length, count }) => `${count} of ${print.length(length)}`);
  return `${strips === 1 ? 'from it' : 'join them end to end and'} cut ${listed(lengths)} for ${useWords(piece)}.`;
}
