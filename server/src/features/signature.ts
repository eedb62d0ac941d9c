/** What a block must be given, while its arguments are written. */
import type { Snapshot } from '../snapshot.ts';
import type { BlockDefinition } from '../model/pattern.ts';
import type { Parameter } from '../syntax/tree.ts';
import type { Position } from '../text/document.ts';

export interface Signature {
  /** `Nine(a = ink, b = sand)` */
  readonly label: string;
  /** Where each parameter stands in the label. */
  readonly parameters: readonly { readonly from: number; readonly to: number; readonly says: string }[];
  /** The one that is being written; past the last when there are too many. */
  readonly active: number;
}

/** Undefined where no arguments of a block are written. */
export function signatureAt(snapshot: Snapshot, { line, character }: Position): Signature | undefined {
  const before = (snapshot.document.lines[line]?.text ?? '').slice(0, character);
  const call = callIn(before);
  const definition = call && snapshot.pattern.blocks.get(call.name);
  if (!call || !definition || /^\s*block\s+[^\s(]*$/.test(before.slice(0, call.open))) return undefined;
  const { label, parameters } = labelOf(definition);
  const named = /^\s*(\p{L}[\p{L}\p{M}\d_]*)\s*[:=]/u.exec(call.last)?.[1];
  const index = named === undefined ? -1 : definition.parameters.findIndex(({ name }) => name === named);
  return { label, parameters, active: index >= 0 ? index : call.commas };
}

/** `Goose(body = ink, sky)`, as the block is declared. */
export function labelOf(definition: BlockDefinition): Pick<Signature, 'label' | 'parameters'> {
  const { statement } = definition;
  const parameters: Signature['parameters'][number][] = [];
  let label = `${definition.name}(`;
  for (const [index, parameter] of definition.parameters.entries()) {
    const node = statement.node.parameters.find(({ name }) => name.text === parameter.name);
    const text = node ? statement.line.text.slice(node.from, node.to) : parameter.name;
    if (index > 0) label += ', ';
    parameters.push({ from: label.length, to: label.length + text.length, says: saysOf(parameter.kind, node) });
    label += text;
  }
  return { label: `${label})`, parameters };
}

function saysOf(kind: BlockDefinition['parameters'][number]['kind'], node: Parameter | undefined): string {
  const what = { number: 'a number', fabric: 'a fabric', block: 'a block', cell: 'a fabric or a block', any: 'a fabric, a block or a number' }[kind ?? 'any'];
  return node?.default ? `${what}; may be left out` : `${what}; must be given`;
}

interface Call {
  readonly name: string;
  /** The column of the parenthesis. */
  readonly open: number;
  readonly commas: number;
  /** What stands behind the last comma. */
  readonly last: string;
}

/** The innermost parenthesis that is open at the end of a text and touches a name. */
function callIn(before: string): Call | undefined {
  let depth = 0;
  let commas = 0;
  let last = before.length;
  for (let at = before.length - 1; at >= 0; at -= 1) {
    const character = before[at];
    if (character === '"' || character === '{' || character === '}') return undefined;
    if (character === ')') depth += 1;
    else if (character === ',' && depth === 0) {
      if (commas === 0) last = at + 1;
      commas += 1;
    } else if (character === '(' && depth > 0) depth -= 1;
    else if (character === '(') {
      const name = /[\p{L}\p{M}\d_.]+$/u.exec(before.slice(0, at))?.[0];
      return name === undefined ? undefined : { name, open: at, commas, last: before.slice(commas === 0 ? at + 1 : last) };
    }
  }
  return undefined;
}
