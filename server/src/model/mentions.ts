/** Which names a statement uses, and as what, before anything is resolved: for unused names, rings of blocks and kinds of parameters. */
import type { Name, Statement, StatementNode } from '../syntax/tree.ts';
import type { ParameterKind } from './pattern.ts';

export interface Mention {
  readonly name: string;
  /** `argument`: handed on, so it may be anything; `path`: in an expectation or a heading of steps. */
  readonly as: ParameterKind | 'argument' | 'path';
}

/** Every name used in the statements and in the braces they open, in the order of the text; declared names are no uses. */
export function mentionsIn(statements: readonly Statement[]): readonly Mention[] {
  const found: Mention[] = [];
  const waiting = [...statements].reverse();
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    found.push(...mentionsOf(next.node));
    for (const inner of [...(next.body?.statements ?? [])].reverse()) waiting.push(inner);
  }
  return found;
}

/** The names used in one statement's own line; a node that stands from one keystroke to the next is looked at once. */
export function mentionsOf(node: StatementNode): readonly Mention[] {
  const found = known.get(node) ?? lookedFor(node);
  known.set(node, found);
  return found;
}

const known = new WeakMap<StatementNode, readonly Mention[]>();

function lookedFor(node: StatementNode): readonly Mention[] {
  const found: Mention[] = [];
  look(usesOf(node), 'fabric', found);
  return found;
}

/** The parts of a statement that can use names: what it declares or labels is left out. */
function usesOf(node: StatementNode): unknown {
  switch (node.kind) {
    case 'import':
    case 'colorway':
    case 'recolour':
    case 'junk':
      return [];
    case 'block':
      return [node.parameters.map((parameter) => ({ kind: 'argument', value: parameter.default })), node.size];
    case 'size':
      return [node.count];
    case 'let':
      return [node.value];
    case 'fabric':
      return [node.width, node.shrink, node.source];
    case 'assorted':
      return [node.prints, node.count];
    case 'expect':
      return [{ kind: 'path', value: node.path }, node.value, node.by];
    case 'steps':
      return [{ kind: 'path', value: node.of }];
    default:
      return Object.values(node);
  }
}

/** A name in a quantity is a number, a reference with arguments a block, a bare one in a cell either; a bare name is a fabric. */
function look(value: unknown, as: Mention['as'], found: Mention[]): void {
  if (Array.isArray(value)) for (const each of value) look(each, as, found);
  else if (isNode(value)) lookIn(value, as, found);
}

function lookIn(node: Node, as: Mention['as'], found: Mention[]): void {
  if (node.kind === 'name') found.push({ name: (node as unknown as Name).text, as });
  else if (node.kind === 'path' || node.kind === 'argument') look(node.value, node.kind, found);
  else if (node.kind === 'reference') lookInReference(node, as, found);
  else for (const each of Object.values(node)) look(each, as, found);
}

function lookInReference({ name, turns, arguments: given }: Node, as: Mention['as'], found: Mention[]): void {
  if (!Array.isArray(turns)) return look(name, 'number', found);
  look(name, given ? 'block' : as === 'argument' ? as : 'cell', found);
  for (const each of (given as readonly { readonly value: unknown }[] | undefined) ?? []) look(each.value, 'argument', found);
}

type Node = Readonly<Record<string, unknown>>;

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && !('text' in value && 'eol' in value);
}
