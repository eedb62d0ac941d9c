/** A fabric's strips in words: one line a kind of strip, one line each for what is cut from it. */
import { equals } from '../exact/number.ts';
import type { FabricPlan, Piece, Strip, Subcut } from '../cutting/plan.ts';
import { counted, cutNoun, listed, type Printer } from './words.ts';

/** The lines for all strips of a fabric, in cutting order. */
export function stripLines(plan: FabricPlan, pieces: readonly Piece[], print: Printer): readonly string[] {
  return gathered(plan.strips).flatMap((strip) => [
    `- Cut ${counted(strip.count, 'strip')} ${print.length(strip.width)} by width of fabric.`,
    ...strip.subcuts.flatMap((subcut) => {
      const piece = pieces[subcut.piece];
      return piece ? [`  - ${subcutWords(piece, subcut, strip, print)}`] : [];
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
  if (piece.segment) return `For strip sets for ${useWords(piece)}: sewn together, they are cut into segments of ${print.length(piece.segment)}, ${counted(piece.pieces, 'piece')} in all.`;
  const source = strip.count === 1 ? 'From it' : strip.from === 'each' ? 'From each' : 'From them';
  const stacked = subcut.stacked === undefined ? '' : ` (${subcut.stacked} one above the other)`;
  return `${source} cut ${counted(subcut.count, cutNoun(piece))} ${print.size(piece.cut)}${stacked}${purpose(piece, subcut.count)}.`;
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
  return piece.for === 'setting' || piece.for === 'sashing' || piece.for === 'binding' ? `the ${piece.for}` : piece.for;
}

function joinedWords(piece: Piece, strips: number, print: Printer): string {
  const isPart = piece.role !== undefined;
  if (piece.for === 'binding') return strips === 1 ? `${isPart ? 'Join it to the other prints' : 'It is long enough'} for the binding.` : `Join them end to end${isPart ? ', and to the other prints,' : ''} for the binding.`;
  const lengths = (piece.joined ?? []).map(({ length, count }) => `${count} of ${print.length(length)}`);
  return `${strips === 1 ? 'From it' : 'Join them end to end and'} cut ${listed(lengths)} for ${useWords(piece)}.`;
}
