/** The page of statements by example, made from the cases in the grammar, which the grammar's own tests run. */
import { GRAMMARS } from '../../server/src/syntax/grammar.ts';
import { PLAIN_LINES, STATEMENT_WORDS, type Context } from '../../server/src/syntax/words.ts';

const INTRODUCTION = `# Every statement, by example

What is read, and after "refused" what is not, line by line. The page is made from the cases in the grammar (\`grammar/quilt.ohm\`), which run as tests; do not edit it by hand. [The language](language.md) says what each means.`;

const TITLES: readonly (readonly [Context, string])[] = [
  ['top', 'At the left edge'],
  ['pattern', 'In `pattern { }`'],
  ['block', 'In a block'],
  ['quilt', 'In `quilt { }`, and in a size'],
  ['colorway', 'In a colourway'],
];

export function statementsPage(): string {
  const cases = casesOf(GRAMMARS.source);
  const told = new Set<string>();
  const chapters = TITLES.map(([context, title]) => {
    const rules = [...new Set([...STATEMENT_WORDS[context].map(({ rule }) => rule), ...plainOf(context)])].filter((rule) => !told.has(rule));
    for (const rule of rules) told.add(rule);
    return [`## ${title}`, ...rules.map((rule) => entryOf(rule, cases.get(rule) ?? []))].join('\n\n');
  });
  return `${[INTRODUCTION, ...chapters].join('\n\n')}\n`;
}

interface Case {
  readonly read: boolean;
  readonly text: string;
}

function casesOf(grammar: string): ReadonlyMap<string, readonly Case[]> {
  const cases = new Map<string, Case[]>();
  for (const [, sign, rule = '', text = ''] of grammar.matchAll(/^\s*\/\/([+-]) (\w+): (.*)$/gm)) {
    cases.set(rule, [...(cases.get(rule) ?? []), { read: sign === '+', text }]);
  }
  return cases;
}

function plainOf(context: Context): readonly string[] {
  const rule = PLAIN_LINES[context];
  return rule === undefined ? [] : [rule];
}

function entryOf(rule: string, cases: readonly Case[]): string {
  const words = [...new Set(Object.values(STATEMENT_WORDS).flat().filter((each) => each.rule === rule).map(({ word }) => `\`${word}\``))];
  const title = words.length > 0 ? words.join(', ') : rule === 'Row' ? 'A row of cells' : 'A new colour';
  return [`### ${title}`, ...fenced(cases, 'read'), ...fenced(cases, 'refused')].join('\n\n');
}

function fenced(cases: readonly Case[], which: 'read' | 'refused'): readonly string[] {
  const lines = cases.filter(({ read }) => read === (which === 'read')).map(({ text }) => text);
  if (lines.length === 0) return [];
  return [...(which === 'refused' ? ['Refused:'] : []), ['```', ...lines, '```'].join('\n')];
}
