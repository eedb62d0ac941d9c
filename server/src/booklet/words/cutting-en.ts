/** cutting.md in English. */
import { ENGLISH, counted, listed } from '../words.ts';
import type { CuttingWords, Proof } from './cutting-words.ts';

const CORNERS = { butted: 'butted corners', mitred: 'mitred corners', squares: 'corner squares', pieced: 'pieced' };

const PARTS = ['setting', 'sashing', 'binding', 'sleeve'];

export const CUTTING_EN: CuttingWords = {
  voice: ENGLISH,
  untitled: 'Untitled quilt',
  listed,
  title: (title) => `${title}: cutting`,
  cloth: (kind, count, size) => {
    if (kind === 'fat quarter') return counted(count, kind);
    return kind === 'strip' ? `${counted(count, kind)} ${size} wide` : `${counted(count, kind)} ${size}`;
  },
  or: (amount, other) => `${amount}, or ${other}`,
  of: (count, what) => `${count} of ${what}`,
  measure: (measures) => `Size: ${measures}.`,

  heads: {
    sizes: 'Sizes', colourways: 'Colourways', blocks: 'Blocks', before: 'Before cutting', borders: 'Borders', backing: 'Backing', batting: 'Batting', binding: 'Binding', sleeve: 'Hanging sleeve', tooWide: 'Too wide', labels: 'Labels',
  },
  sizeColumns: (fabrics) => ['size', 'finished', 'blocks', ...fabrics, 'backing'],
  colourColumns: (colourways) => ['fabric', 'as declared', ...colourways],
  cautions: [
    'Close the blade of the rotary cutter every time it leaves your hand.',
    'Cut away from yourself, along a ruler with a guard for the fingers.',
    'Follow the instructions of the maker of your cutter, mat and ruler.',
    'Wash the fabric first if it may shrink or run, press it, and trim the selvages.',
  ],
  table: (layers) => [
    'Fold the fabric once, selvage on selvage, and straighten its end with one cut; the spare covers that.',
    `${layers === 1 ? 'Two layers lie under the cutter' : `${layers} folded fabrics lie on one another, ${2 * layers} layers under the cutter`}, and cuts are counted so. Open the fold for what is longer than half the width.`,
    'Cut in the order given: the widest strips first, and from each strip the tallest pieces first.',
  ],
  size: (name, measures) => `${name === null ? 'Size' : `Size ${name}`}: ${measures} finished, without the binding.`,
  seams: (seam, roundUp) => `Seams: ${seam}; cut sizes include them and are rounded up to ${roundUp}.`,
  drop: (bed, mattress, sides, foot) => `On a ${bed} (mattress ${mattress}) ${sides}, ${foot}, its head at the head of the mattress.`,
  hangs: (length, where) => `${length} hangs ${where === 'sides' ? 'at each side' : 'at the foot'}`,
  shows: (length, where) => `${length} of the mattress shows ${where === 'sides' ? 'at each side' : 'at the foot'}`,
  block: (count, name, finished, raw) => `${counted(count, `${name} block`)}: ${finished} finished, ${raw} with seams.`,
  label: (letter, fabric, cut, use) => `${letter}: ${fabric}, ${cut}, for ${use}.`,

  take: (amount) => `Take ${amount}.`,
  buy: (amount) => `Buy ${amount}.`,
  usable: (width) => `Usable width: ${width}.`,
  length: (length, proof) => `Length cut: ${length}${proofText(proof)}.`,
  usableOfEach: (size, side) => `Usable of each: ${size}${side === undefined ? '' : `, the ${side} side along the selvage`}.`,
  needed: (count, least) => `Needed: ${count}${least === undefined ? ', proven least' : `; no plan takes fewer than ${least}`}.`,
  atHand: (count, missing) => `At hand: ${count}, which is ${missing} too few.`,
  cuts: (strips, pieces) => `Cuts: ${strips} for the strips, ${pieces} for the pieces.`,
  drawn: (file) => `Drawn to scale in ${file}.`,
  assorted: (title) => `${title} (assorted)`,
  buyInAll: (amount, prints) => `Buy ${amount} in all, of ${counted(prints, 'print')}.`,
  dealt: (pieces, prints) => `${counted(pieces, 'piece')}, dealt in turn: ${prints}.`,

  stripAcross: (count, width) => `Cut ${counted(count, 'strip')} ${width} by width of fabric.`,
  stripOfCloth: (count, width, lie, length) => `Cut ${counted(count, 'strip')} ${width} wide ${lie === 'along' ? 'along the selvage' : 'across'}, ${length} long.`,
  eachCloth: (kind, count) => (count === 1 ? `One ${kind}:` : `${count} ${kind}s, each:`),
  cut: (count, noun, size) => `${counted(count, noun)} ${size}`,
  use: (use, form) => (form === 'sentence' && PARTS.includes(use) ? `the ${use}` : use),
  from: (strips, cut, purpose, stacked) => `from ${{ one: 'it', each: 'each', all: 'them' }[strips]} cut ${cut}${purpose}${stacked === undefined ? '' : `, ${stacked} one above the other`}.`,
  stripSets: (use, segment, pieces) => `for strip sets for ${use}: sewn together, they are cut into segments of ${segment}, ${counted(pieces, 'piece')} in all.`,
  purpose: (method, squares, { count, shape, each }, use) => {
    if (method === 'template') return `, one for each template, for ${use}`;
    if (method === 'bias') return `, and cut bias strips from ${squares === 1 ? 'it' : 'them'} for the binding`;
    if (each === 1) return ` for ${use}`;
    if (method.endsWith('at a time')) return `, to be sewn ${method}: ${counted(count, shape)} for ${use}`;
    return `, and cut ${squares === 1 ? 'it' : 'each'} ${method}: ${counted(count, shape)} for ${use}`;
  },
  joinBinding: (strips, isPart) =>
    strips === 1 ? `${isPart === 'part' ? 'join it to the other prints' : 'it is long enough'} for the binding.` : `join them end to end${isPart === 'part' ? ', and to the other prints,' : ''} for the binding.`,
  joined: (strips, lengths, use) => `${strips === 1 ? 'from it' : 'join them end to end and'} cut ${lengths} for ${use}.`,

  border: ({ number, fabric, width, corners, lengthwise, strips }) => `Border ${number}: ${fabric}, ${width} finished, ${CORNERS[corners]}${lengthwise ? ', cut along the selvage' : ''}: ${strips}.`,
  panels: (count, length, usable, seams) => `Cut ${counted(count, 'panel')} ${length} long by width of fabric (${usable} usable)${seams === 'none' ? '' : `, ${counted(count - 1, `${seams} seam`)}`}.`,
  backingBuy: (amount, fabric) => `Buy ${amount}${fabric === undefined ? '' : ` of ${fabric}, besides what is cut from it above`}.`,
  package: (name, size) => `Package: ${name}${size === undefined ? '' : ` (${size})`}.`,
  bindingLength: (length, joins) => `Length: ${length}, the perimeter and ${joins} for joins and corners.`,
  bindingSquares: (count, square, width, fabric) => `Cut ${counted(count, 'square')} ${square}, cut into bias strips ${width} wide, from ${fabric}.`,
  bindingStrips: (count, width, length, fabric) => `Cut ${counted(count, 'strip')} ${width} by ${length ?? 'width of fabric'}, from ${fabric}.`,
  double: 'Double: fold the strip in half lengthwise.',
  single: 'Single.',
  bindingBuy: (amount) => `Bought by itself: ${amount}.`,
  sleeve: (width, height, strips, fabric) => `${width} by ${height}, from ${counted(strips, 'strip')} of ${fabric}${strips > 1 ? ', joined end to end' : ''}.`,
  sleeveSew: 'Hem the short ends, fold it lengthwise wrong sides together, and sew it under the top edge of the back.',
  tooWide: (use, needs, fabric, width) => `${use}: needs a width of ${needs}, ${fabric} has ${width}.`,
  tooLarge: (use, needs, kind, fabric, has) => `${use}: needs ${needs}, a ${kind} of ${fabric} is ${has}.`,
};

function proofText(proof: Proof): string {
  if (proof.kind === 'least') return ', proven least';
  return `; no plan takes less than ${proof.bound}${proof.buysTheSame ? ', and that buys the same' : ''}`;
}
