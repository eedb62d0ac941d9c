/** Builders for names, texts, colours, cells and arguments. */
import type { Node } from 'ohm-js';
import { columnsOf, part, word } from './build.ts';
import type { Builder, Builders, Read } from './build.ts';
import { unescape } from './scan.ts';
import type { Argument, Cell, Colour, Name, Parameter, Part, Quantity, Reference, Seam, Text, Turn } from './tree.ts';

const name: Builder = (node): Name => ({ kind: 'name', text: node.sourceString, ...columnsOf(node) });

export const cellBuilders: Builders = {
  name,
  word: name,
  wrongName: name,
  text: (node): Text => ({ kind: 'text', value: textValue(node.sourceString), ...columnsOf(node) }),
  colour: (node): Colour => ({ kind: 'colour', value: node.sourceString.toLowerCase(), ...columnsOf(node) }),
  wrongColour: () => undefined,

  fabric: first,
  filling: first,
  cell: first,
  cell_read: first,
  cell_bad: bad,
  loose: bad,
  goesOn: (node): Cell => ({ kind: 'goes_on', direction: node.sourceString === '<' ? 'left' : 'above', ...columnsOf(node) }),
  split_across: splitBy('|'),
  split_down: splitBy('-'),
  split_rising: splitBy('/'),
  split_falling: splitBy('\\'),
  inner_across: splitBy('|'),
  inner_down: splitBy('-'),
  inner_rising: splitBy('/'),
  inner_falling: splitBy('\\'),
  part: (node, read): Part => ({ cell: read<Cell>(part(node, 0)), weight: read<Quantity | undefined>(part(node, 1)), ...columnsOf(node) }),
  weight: (node, read) => read(part(node, 1)),
  group: (node, read): Cell => ({ kind: 'group', inner: read<Cell>(part(node, 2)), turns: read<Turn[]>(part(node, 5)), ...columnsOf(node) }),
  turn: (node): Turn => ({ kind: 'turn', by: (part(node, 1)?.sourceString ?? '90') as Turn['by'], ...columnsOf(node) }),

  reference: (node, read): Reference => ({
    kind: 'reference', name: read<Name>(part(node, 0)), arguments: read<Argument[] | undefined>(part(node, 1)), turns: read<Turn[]>(part(node, 2)), ...columnsOf(node),
  }),
  arguments: (node, read) => listed(part(node, 2), read),
  argument: (node, read): Argument => ({ name: read<Name | undefined>(part(node, 0)), value: read<Reference | Quantity>(part(node, 4)), ...columnsOf(node) }),
  parameters: (node, read) => listed(part(node, 2), read),
  wrongParameters: (node, read) => listed(part(node, 2), read),
  parameter: (node, read): Parameter => ({ name: read<Name>(part(node, 0)), default: read<Reference | Quantity | undefined>(part(node, 4)), ...columnsOf(node) }),
  value_plain: first,
  none: word(),
};

/** What a text says: without its quotes, `\"` and `\\` undone. */
export function textValue(written: string): string {
  const quotes = written.startsWith('"""') ? 3 : 1;
  return unescape(written.slice(quotes, -quotes));
}

function first(node: Node, read: Read): unknown {
  return read(part(node, 0));
}

function bad(node: Node): Cell {
  return { kind: 'bad', ...columnsOf(node) };
}

function splitBy(seam: Seam): Builder {
  return (node, read): Cell => {
    const parts: Part[] = [];
    const seams: Node[] = [];
    for (const each of node.children.flatMap((child) => (child.isIteration() ? child.children : [child]))) {
      if (each.ctorName === 'part') parts.push(read<Part>(each));
      else if (each.ctorName === 'single') parts.push({ cell: read<Cell>(each), ...columnsOf(each) });
      else if (each.isTerminal()) seams.push(each);
    }
    return { kind: 'split', seam, seams: seams.map(columnsOf), parts, ...columnsOf(node) };
  };
}

/** The elements of Ohm's `listOf`. */
function listed(list: Node | undefined, read: Read): unknown[] {
  return list ? list.asIteration().children.map((each) => read(each)) : [];
}
