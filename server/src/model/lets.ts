/** `let` statements, in any order: each is worked out after those it names; a ring of them is reported once and stays unknown. */
import { placeIn } from '../text/place.ts';
import { onLine, type Context } from './context.ts';
import { evaluate } from './evaluate.ts';
import { mentionsOf } from './mentions.ts';
import type { KnownNames, Let, Meaning } from './pattern.ts';
import type { StatementOf } from './statements.ts';

export type LetStatement = StatementOf<'let'>;

/** The values of the statements by name (the caller has seen to it that names are distinct). A name without a value is left out. */
export function evaluateLets(context: Context, statements: ReadonlyMap<string, LetStatement>): ReadonlyMap<string, Let> {
  const lets = new Map<string, Let>();
  const meaning = (name: string): Meaning | undefined => {
    const value = lets.get(name);
    if (value) return { kind: 'number', value: value.value, place: value.place };
    return statements.has(name) ? { kind: 'broken' } : context.meaning(name);
  };
  const known = (): KnownNames => ({ ...context.known(), numbers: [...statements.keys(), ...context.known().numbers] });
  for (const name of inOrder(statements, (ring) => reportRing(context, ring))) {
    const one = evaluateLet({ ...context, known, meaning }, statements.get(name));
    if (one) lets.set(name, one);
  }
  return new Map([...statements.keys()].flatMap((name): [string, Let][] => {
    const value = lets.get(name);
    return value ? [[name, value]] : [];
  }));
}

function evaluateLet(context: Context, statement: LetStatement | undefined): Let | undefined {
  if (!statement?.node.name || !statement.node.value) return undefined;
  const value = evaluate(onLine(context, statement.line), statement.node.value);
  return value && { name: statement.node.name.text, value, place: placeIn(statement.line, statement.node.name) };
}

/** The names, each after those it needs. Walked in a loop: a text may hold thousands in a chain. */
function inOrder(statements: ReadonlyMap<string, LetStatement>, onRing: (ring: readonly LetStatement[]) => void): readonly string[] {
  const state = new Map<string, 'open' | 'done'>();
  const order: string[] = [];
  for (const start of statements.keys()) {
    const way = [{ name: start, next: needs(statements, start) }];
    if (state.has(start)) continue;
    state.set(start, 'open');
    for (let top = way.at(-1); top; top = way.at(-1)) {
      const needed = top.next.pop();
      if (needed === undefined) {
        state.set(top.name, 'done');
        order.push(top.name);
        way.pop();
      } else if (state.get(needed) === 'open') {
        onRing(way.slice(way.findIndex(({ name }) => name === needed)).flatMap(({ name }) => statements.get(name) ?? []));
      } else if (!state.has(needed)) {
        state.set(needed, 'open');
        way.push({ name: needed, next: needs(statements, needed) });
      }
    }
  }
  return order;
}

function needs(statements: ReadonlyMap<string, LetStatement>, name: string): string[] {
  const statement = statements.get(name);
  return statement ? mentionsOf(statement.node).map((mention) => mention.name).filter((each) => statements.has(each)).reverse() : [];
}

function reportRing(context: Context, ring: readonly LetStatement[]): void {
  const [first] = ring;
  if (!first?.node.name) return;
  const names = ring.map(({ node }) => node.name?.text ?? '');
  const chain = [...names, names[0] ?? ''].join(' → ');
  context.report({ rule: 'wrong-argument', place: placeIn(first.line, first.node.name), problem: `\`${first.node.name.text}\` is made from itself: ${chain}` });
}
