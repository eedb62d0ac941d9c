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
  const waiting: Waiting[] = [{ value: usesOf(node), as: 'fabric' }];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    if (isName(next.value)) found.push({ name: next.value.text, as: next.as });
    else waiting.push(...partsOf(next).reverse());
  }
  return found;
}

interface Waiting {
  readonly value: unknown;
  readonly as: Mention['as'];
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
function partsOf({ value, as }: Waiting): Waiting[] {
  if (Array.isArray(value)) return value.map((each: unknown) => ({ value: each, as }));
  if (!isNode(value)) return [];
  if (value.kind === 'path') return [{ value: value.value, as: 'path' }];
  if (value.kind === 'argument') return [{ value: value.value, as: 'argument' }];
  if (value.kind !== 'reference') return Object.values(value).map((each) => ({ value: each, as }));
  if (!Array.isArray(value.turns)) return [{ value: value.name, as: 'number' }];
  const given = (value.arguments as readonly { readonly value: unknown }[] | undefined) ?? [];
  return [
    { value: value.name, as: value.arguments ? 'block' : as === 'argument' ? as : 'cell' },
    ...given.map((each): Waiting => ({ value: each.value, as: 'argument' })),
  ];
}

function isName(value: unknown): value is Name {
  return isNode(value) && value.kind === 'name';
}

function isNode(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !('text' in value && 'eol' in value);
}
