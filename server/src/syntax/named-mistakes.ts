/** The mistakes that have a rule of their own in the tolerant grammar: what to say of each, and how to mend it. */
import type { Node } from 'ohm-js';
import type { Columns } from '../text/place.ts';
import { columnsOf, part } from './build.ts';
import { cellFaults, looseSeamFaults } from './cell-mistakes.ts';
import { fault } from './fault.ts';
import type { Fault, LineFix } from './fault.ts';
import { isBlank } from './scan.ts';
import { nearestWord } from '../text/nearest.ts';
import { didYouMean } from './suggest.ts';

type Say = (node: Node, text: string) => readonly Fault[];

const UNIT_HINTS: readonly (readonly [RegExp, string])[] = [
  [/^yards?$|^yds?$/i, 'yd'], [/^mill|^mm$/i, 'mm'], [/^cent|^cm$/i, 'cm'], [/^met/i, 'm'], [/./, '"'],
];

/** The rules of the tolerant grammar that are mistakes by themselves. */
export const NAMED_MISTAKES: Readonly<Record<string, Say>> = {
  wrongBy: (node) => [fault(columnsOf(node), 'two measures are joined by `by`', replace(node, spaced(node, 'by'), 'Write `by`'))],
  wrongUnit: (node, text) => {
    const { from, to } = columnsOf(node);
    const written = node.sourceString;
    const unit = UNIT_HINTS.find(([pattern]) => pattern.test(written))?.[1] ?? '"';
    const isFoot = /^f/i.test(written);
    const start = unit === '"' ? backOverBlanks(text, from) : from;
    const fix = isFoot ? undefined : { title: `Write ${unit}`, edits: [{ from: start, to, text: unit }] };
    return [fault({ from, to }, `\`${written}\` is no unit: write ${unit === '"' ? '" or in' : unit}`, fix)];
  },
  wrongDecimal: (node) => {
    const at = node.source.startIdx + node.sourceString.indexOf(',');
    return [fault({ from: at, to: at + 1 }, `a decimal takes a point: ${node.sourceString.replace(',', '.')}`, { title: 'Write the point', edits: [{ from: at, to: at + 1, text: '.' }] })];
  },
  wrongColour: (node) => [fault(columnsOf(node), 'a colour is # and six digits, like #22345c', sixDigits(node))],
  wrongName: (node) => {
    const { from, to } = columnsOf(node);
    const sign = node.sourceString.search(/[-.]/);
    if (sign < 0) return [fault({ from, to }, 'a name begins with a letter')];
    const edits = [{ from, to, text: node.sourceString.replace(/[-.]/g, '_') }];
    const at = { from: from + sign, to: from + sign + 1 };
    return [fault(at, `a name has letters, digits and _: no ${node.sourceString[sign]}`, { title: `Write ${edits[0]?.text}`, edits })];
  },
  wrongSpace: (node) => [fault(columnsOf(node), 'the ( of parameters touches the name', replace(node, '', 'Remove the blank'))],
  wrongParameters: (node, text) => parameterFaults(columnsOf(node), text),
  wrongLength: (node, text) => {
    const name = part(node, 2) ?? node;
    const meant = /^\s*border\s+$/.test(text.slice(0, columnsOf(name).from)) ? nearestWord(name.sourceString, ['pieced', 'fit', 'to', 'top']) : undefined;
    if (meant !== undefined) return [fault(columnsOf(name), `\`${name.sourceString}\` is no kind of border${didYouMean(meant)}`, replace(name, meant, `Write \`${meant}\``))];
    return [lengthExpected(columnsOf(name), name.sourceString, replace(name, `(${name.sourceString})`, `Write (${name.sourceString})`))];
  },
  wrongPoint: (node) => {
    const comma = node.source.startIdx + node.sourceString.indexOf(',');
    const close = node.sourceString.replace(/\s*,\s*/, ',');
    return [fault({ from: comma, to: comma + 1 }, 'a corner is x,y without a blank', replace(node, close, `Write ${close}`))];
  },
  wrongMixed: (node) => {
    const hyphen = node.sourceString.replace(/\s+/, '-');
    return [fault(columnsOf(node), `in a patch a mixed number takes the hyphen: ${hyphen}`, replace(node, hyphen, `Write ${hyphen}`))];
  },
  wrongComma: (node, text) => {
    const { from, to } = columnsOf(node);
    const apart = isBlank(text[to]) || isBlank(text[from - 1]) || to === text.length;
    return [fault({ from, to }, 'cells stand apart by blanks, not commas', replace(node, apart ? '' : ' ', 'Remove the comma'))];
  },
  loose: (node, text) => looseSeamFaults(text, columnsOf(node)),
  badCell: (node, text) => cellFaults(text, columnsOf(node)),
};

function replace(node: Node, text: string, title: string): LineFix {
  return { title, edits: [{ ...columnsOf(node), text }] };
}

/** A word with the blanks around it that are not there yet. */
function spaced(node: Node, word: string): string {
  const { sourceString: whole, startIdx, endIdx } = node.source;
  return `${isBlank(whole[startIdx - 1]) ? '' : ' '}${word}${isBlank(whole[endIdx]) ? '' : ' '}`;
}

/** `#abc` is `#aabbcc`. */
function sixDigits(node: Node): LineFix | undefined {
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(node.sourceString);
  if (!short) return undefined;
  const long = `#${short.slice(1).map((digit) => digit + digit).join('')}`;
  return replace(node, long, `Write ${long}`);
}

function parameterFaults({ from, to }: Columns, text: string): Fault[] {
  const close = text.indexOf(')', from);
  if (close < 0 || close >= to) return [fault({ from, to: from + 1 }, 'this ( is not closed')];
  return [fault({ from, to }, 'parameters are names with commas between them, each with a default if you like: (dark = ink, d = 1/3)')];
}

/** Where a name stands for a length that must stand in parentheses. */
export function lengthExpected(columns: Columns, name: string, fix?: LineFix): Fault {
  return fault(columns, `a length is expected before \`${name}\`; a name that stands for a length goes in parentheses: (${name})`, fix);
}

function backOverBlanks(text: string, at: number): number {
  let start = at;
  while (isBlank(text[start - 1])) start--;
  return start;
}
