/** What the grammar cannot see in a statement that it has read: words that cannot be names, numbers that cannot or hardly be meant. */
import type { Columns } from '../text/place.ts';
import { fault } from './fault.ts';
import type { Fault, LineFix } from './fault.ts';
import type { Name, Quantity, StatementNode } from './tree.ts';
import { visitParts } from './walk.ts';
import type { Part } from './walk.ts';
import { UNIT_WORDS, isReserved } from './words.ts';

/** More digits than any length or count has. */
const MAX_DIGITS = 15;

/** The faults of a statement read from `text`, in the order of the text. */
export function review(node: StatementNode, text: string): Fault[] {
  const faults: Fault[] = [];
  visitParts(node, (part) => {
    if (part.kind === 'name') faults.push(...nameFaults(part as Name, node));
    else if (part.kind === 'number') faults.push(...numberFaults(text.slice(part.from, part.to), part));
  });
  if (node.kind === 'grid') faults.push(...gridFaults([...node.columns, ...node.rows], text));
  if (node.kind === 'let' && node.value) faults.push(...minusFaults(node.value, text));
  return faults.sort((a, b) => a.from - b.from);
}

// ---------------------------------------------------------------------------------------------- names

/** In a path and behind `for`, `before` and `after` any word may stand. */
function nameFaults(name: Name, node: StatementNode): Fault[] {
  if (node.kind === 'expect' || (node.kind === 'steps' && name === node.of) || (node.kind === 'size' && name === node.bed)) return [];
  const [word = ''] = name.text.split('.');
  if (!isReserved(word)) return [];
  const why = (UNIT_WORDS as readonly string[]).includes(word) ? 'it is a unit' : isStatement(word) ? 'it begins a statement' : 'the language needs it';
  return [fault(name, `\`${word}\` cannot be a name: ${why}`)];
}

function isStatement(word: string): boolean {
  return word !== 'at' && word !== 'cut' && word !== 'sqrt';
}

// ---------------------------------------------------------------------------------------------- numbers

function numberFaults(written: string, columns: Columns): Fault[] {
  if (/\d{16,}/.test(written)) return [{ ...fault(columns, `a number has at most ${MAX_DIGITS} digits`), rule: 'too-large' }];
  const { whole, n, d } = /^(?:(?<whole>\d+)(?:[^\d/⁄]+))?(?<n>\d+)[/⁄](?<d>\d+)$/.exec(written)?.groups ?? {};
  if (n === undefined || d === undefined) return [];
  if (Number(d) === 0) return [fault(columns, 'a fraction has no 0 below its line')];
  if (whole !== undefined) return Number(n) < Number(d) ? [] : [fault(columns, 'after a whole number the fraction must be below 1')];
  const split = splitOf(n, Number(d));
  if (!split) return [];
  const rest = BigInt(n) % BigInt(d);
  const value = `${BigInt(n) / BigInt(d)}${rest === 0n ? '' : ` ${rest}/${d}`}`;
  return [{ ...fault(columns, `${written} is read as ${value}; if ${split.join(' ')}/${d} is meant, write the blank or the hyphen`), rule: 'unclear-number' }];
}

/** `71/2` may be a `7 1/2` that lost its blank: the whole number and the numerator, where they make a fraction below 1. */
function splitOf(numerator: string, denominator: number): readonly [string, string] | undefined {
  if (Number(numerator) < denominator) return undefined;
  for (let end = numerator.length - 1; end > 0; end--) {
    const rest = numerator.slice(end);
    if (rest.startsWith('0')) continue;
    return Number(rest) < denominator ? [numerator.slice(0, end), rest] : undefined;
  }
  return undefined;
}

/** In a list of proportions a blank also parts two numbers, so a mixed number had better have the hyphen. */
function gridFaults(proportions: readonly Part[], text: string): Fault[] {
  return proportions.filter((each) => each.kind === 'number').flatMap((each) => {
    const written = text.slice(each.from, each.to);
    const blank = /^(\d+)(\s+)\d/.exec(written);
    if (!blank?.[1] || !blank[2]) return [];
    const from = each.from + blank[1].length;
    const fix: LineFix = { title: 'Write the hyphen', edits: [{ from, to: from + blank[2].length, text: '-' }] };
    const hyphen = written.replace(/\s+/, '-');
    return [{ ...fault(each, `${written} is read as one number; in a list write ${hyphen} to make that plain`, fix), rule: 'unclear-number' as const }];
  });
}

/** After `let … =` a `-` is minus: `2-1/2` is one and a half there. */
function minusFaults(value: Quantity, text: string): Fault[] {
  if (value.kind !== 'operation' || value.operator !== '-' || value.left.kind !== 'number') return [];
  const written = text.slice(value.from, value.to);
  const { whole, rest } = /^(?<whole>\d+)-(?<rest>\d+[/⁄]\d+)/.exec(written)?.groups ?? {};
  if (whole === undefined || rest === undefined) return [];
  return [{ ...fault(value, `the - is minus here; the mixed number is written ${whole} ${rest}, the difference ${whole} - ${rest}`), rule: 'unclear-number' }];
}
