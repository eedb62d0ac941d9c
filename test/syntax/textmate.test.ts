import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';
import type { IGrammar } from 'vscode-textmate';
import { ALL_STATEMENT_WORDS, OPTION_WORDS, TURN_WORDS, UNIT_WORDS, VALUE_WORDS } from '../../server/src/syntax/words.ts';

const path = new URL('../../syntaxes/quilt.tmLanguage.json', import.meta.url);
const source = readFileSync(path, 'utf8');
let grammar: IGrammar | null = null;

beforeAll(async () => {
  const wasm = readFileSync(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm'));
  await oniguruma.loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({ createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns), createOnigString: (text) => new oniguruma.OnigString(text) }),
    loadGrammar: () => Promise.resolve(textmate.parseRawGrammar(source, path.pathname)),
  });
  grammar = await registry.loadGrammar('source.quilt');
});

/** The tokens of some lines that have a scope of their own: text and last scope without `.quilt`. */
function tokens(text: string): string[] {
  let stack = textmate.INITIAL;
  return text.split('\n').flatMap((line) => {
    const result = grammar?.tokenizeLine(line, stack);
    stack = result?.ruleStack ?? stack;
    return (result?.tokens ?? []).flatMap(({ startIndex, endIndex, scopes }) => {
      const scope = scopes.at(-1)?.replace(/\.quilt$/, '');
      const written = line.slice(startIndex, endIndex).trim();
      return written === '' || scope === 'source' ? [] : [`${written} ${scope}`];
    });
  });
}

describe('colouring', () => {
  test('a declaration, its colour and its label', () => {
    expect(tokens('fabric top #22345c "Night \\" ferry"')).toEqual([
      'fabric keyword.control', 'top entity.name.type', '#22345c constant.other.color.rgb-value', '" punctuation.definition.string.begin', 'Night string.quoted.double',
      '\\" constant.character.escape', 'ferry string.quoted.double', '" punctuation.definition.string.end',
    ]);
  });

  test('an inch mark begins no text', () => {
    expect(tokens('  border cut 6 1/2" ink corners mitred')).toEqual([
      'border keyword.control', 'cut keyword.other', '6 1/2 constant.numeric', '" keyword.other.unit', 'ink variable.other', 'corners keyword.other', 'mitred keyword.other',
    ]);
    expect(tokens('block A (unit + ½)" by 2 cm')).toContain('" keyword.other.unit');
    expect(tokens('binding 2.5 cm rust')).toEqual(['binding keyword.control', '2.5 constant.numeric', 'cm keyword.other.unit', 'rust variable.other']);
  });

  test('rows: names, seams, turns, weights; option words are names there', () => {
    expect(tokens('  top/light  Nine(rust)@90 a*2|b < ^')).toEqual([
      'top variable.other', '/ keyword.operator.seam', 'light variable.other', 'Nine entity.name.function', '( punctuation.section.parens', 'rust variable.other', ') punctuation.section.parens',
      '@90 keyword.operator.turn', 'a variable.other', '* keyword.operator.weight', '2 constant.numeric', '| keyword.operator.seam', 'b variable.other', '< keyword.operator', '^ keyword.operator',
    ]);
  });

  test('statements in one line of braces, and comments', () => {
    expect(tokens('quilt { straight 3 by 3 } // allow low-contrast')).toEqual([
      'quilt keyword.control', '{ punctuation.section.braces', 'straight keyword.control', '3 constant.numeric', 'by keyword.other', '3 constant.numeric', '} punctuation.section.braces',
      '// punctuation.definition.comment', 'allow keyword.other.directive', 'low-contrast support.constant.rule',
    ]);
    expect(tokens('edges sand // the rest')).toEqual(['edges keyword.control', 'sand variable.other', '// punctuation.definition.comment', 'the rest comment.line.double-slash']);
  });

  test('a text that spans lines, with a placeholder', () => {
    expect(tokens('steps { """Sew {Capstan.count}\nquilt { } """ }')).toEqual([
      'steps keyword.control', '{ punctuation.section.braces', '""" punctuation.definition.string.begin', 'Sew string.quoted.triple', '{Capstan.count} variable.other.placeholder',
      'quilt { } string.quoted.triple', '""" punctuation.definition.string.end', '} punctuation.section.braces',
    ]);
  });

  test('an open text ends with its line', () => {
    expect(tokens('fabric a #123456 "open\nfabric b #123456 "b"').filter((token) => token.startsWith('fabric'))).toEqual(['fabric keyword.control', 'fabric keyword.control']);
  });
});

describe('words', () => {
  const { repository } = JSON.parse(source) as { repository: Record<string, object> };
  const wordsIn = (...rules: readonly string[]): Set<string> => new Set(rules.flatMap((rule) => [...JSON.stringify(repository[rule]).matchAll(/[(|]((?:[a-z_\d]+\|)+[a-z_\d]+|sqrt)\)/g)].flatMap(([, words = '']) => words.split('|'))));

  test('are those of the language', () => {
    expect(wordsIn('statement')).toEqual(ALL_STATEMENT_WORDS);
    expect(wordsIn('option')).toEqual(new Set([...Object.values(OPTION_WORDS).flat(), ...VALUE_WORDS]));
    expect(wordsIn('number')).toEqual(new Set(UNIT_WORDS));
    expect(wordsIn('turn')).toEqual(new Set(TURN_WORDS));
  });
});

describe('language configuration', () => {
  const { wordPattern, indentationRules } = JSON.parse(readFileSync(new URL('../../syntaxes/language-configuration.json', import.meta.url), 'utf8')) as {
    wordPattern: { pattern: string; flags: string };
    indentationRules: { increaseIndentPattern: string; decreaseIndentPattern: string };
  };

  test('a double click takes a name, a colour, a number', () => {
    expect('sand/ink  #22345c é1_b 2.5'.match(new RegExp(wordPattern.pattern, `g${wordPattern.flags}`))).toEqual(['sand', 'ink', '#22345c', 'é1_b', '2.5']);
  });

  test('braces indent', () => {
    const opens = new RegExp(indentationRules.increaseIndentPattern);
    expect(['quilt {', 'quilt { // on point', '// quilt {', 'place { A }'].map((line) => opens.test(line))).toEqual([true, true, false, false]);
    expect(new RegExp(indentationRules.decreaseIndentPattern).test('  }')).toBe(true);
  });
});
