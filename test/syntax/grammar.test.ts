import { describe, expect, test } from 'vitest';
import { GRAMMARS } from '../../server/src/syntax/grammar.ts';
import { ALL_STATEMENT_WORDS, OPTION_WORDS, PLAIN_LINES, STATEMENT_WORDS, TURN_WORDS, UNIT_WORDS, VALUE_WORDS } from '../../server/src/syntax/words.ts';

const { quilt, tolerant, source } = GRAMMARS;

/** Rules of a part of a statement: the tolerant grammar reads what it can of them, not every text. */
const PARTS = ['Size', 'quantity', 'sum', 'text', 'line'];

const cases = [...source.matchAll(/^\s*\/\/([+-]) (\w+): (.*)$/gm)].map(([, sign = '', rule = '', text = '']) => ({ sign, rule, text }));

describe('the cases in the grammar', () => {
  test.each(cases)('$sign $rule: $text', ({ sign, rule, text }) => {
    const match = quilt.match(text, rule);
    expect(match.succeeded(), match.failed() ? match.message : '').toBe(sign === '+');
    if (!PARTS.includes(rule)) expect(tolerant.match(text, rule).succeeded()).toBe(true);
  });

  test('every statement has one', () => {
    const rules = new Set(Object.values(STATEMENT_WORDS).flat().map(({ rule }) => rule));
    const tried = new Set(cases.filter(({ sign }) => sign === '+').map(({ rule }) => rule));
    expect([...rules].filter((rule) => !tried.has(rule))).toEqual([]);
  });
});

interface Expression {
  readonly obj?: string;
  readonly terms?: readonly Expression[];
  readonly factors?: readonly Expression[];
  readonly expr?: Expression;
  readonly ruleName?: string;
  readonly args?: readonly Expression[];
}

/** The words of the language that a rule, or one it goes into, is written with. */
function wordsOf(rule: string, seen = new Set<string>()): Set<string> {
  if (seen.has(rule)) return new Set();
  seen.add(rule);
  const body = quilt.rules[rule] as unknown as { readonly body: Expression } | undefined;
  return body ? new Set(wordsIn(body.body, seen)) : new Set();
}

function wordsIn({ obj, terms = [], factors = [], expr, ruleName, args = [] }: Expression, seen: Set<string>): string[] {
  const own = obj !== undefined && /^[a-z]\w+$|^[a-z]\d$|^m$/.test(obj) ? [obj] : [];
  const inner = [...terms, ...factors, ...args, ...(expr ? [expr] : [])].flatMap((each) => wordsIn(each, seen));
  return [...own, ...inner, ...(ruleName === undefined ? [] : wordsOf(ruleName, seen))];
}

describe('the table of words', () => {
  const statements = Object.values(STATEMENT_WORDS).flat();
  const rules = [...new Set([...statements.map(({ rule }) => rule), ...Object.values(PLAIN_LINES)])];

  test.each(rules)('%s', (rule) => {
    const first = statements.filter((each) => each.rule === rule).map(({ word }) => word);
    const everywhere: readonly string[] = [...UNIT_WORDS, ...VALUE_WORDS, ...TURN_WORDS];
    const written = [...wordsOf(rule)].filter((word) => !everywhere.includes(word));
    expect(new Set(written)).toEqual(new Set([...first, ...(OPTION_WORDS[rule] ?? [])]));
  });

  test('no word of the grammar is missing', () => {
    const known = new Set<string>([...ALL_STATEMENT_WORDS, ...Object.values(OPTION_WORDS).flat(), ...UNIT_WORDS, ...VALUE_WORDS, ...TURN_WORDS]);
    const all = Object.keys(quilt.rules).flatMap((rule) => [...wordsOf(rule)]);
    expect([...new Set(all)].filter((word) => !known.has(word))).toEqual([]);
  });
});
