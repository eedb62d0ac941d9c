import fc from 'fast-check';
import type { Node } from 'ohm-js';
import { describe, expect, test } from 'vitest';
import { GRAMMARS } from '../../server/src/syntax/grammar.ts';
import { scanLine } from '../../server/src/syntax/scan.ts';

const nodes = GRAMMARS.quilt.createSemantics();

/** The braces of a line and the column of its comment, as the grammar has them; undefined where it refuses the line. */
function byGrammar(line: string): { readonly braces: readonly string[]; readonly comment: number | undefined } | undefined {
  const match = GRAMMARS.quilt.match(line, 'line');
  if (!match.succeeded()) return undefined;
  const braces: string[] = [];
  let comment: number | undefined;
  const visit = (node: Node): void => {
    if (node.ctorName === 'brace') braces.push(`${node.source.startIdx}${node.sourceString}`);
    else if (node.ctorName === 'comment') comment = node.source.startIdx;
    else node.children.forEach(visit);
  };
  visit(nodes(match) as unknown as Node);
  return { braces, comment };
}

function byHand(line: string): { readonly braces: readonly string[]; readonly comment: number | undefined } {
  const { pieces, comment } = scanLine(line);
  return { braces: pieces.filter(({ kind }) => kind !== 'code').map(({ kind, from }) => `${from}${kind}`), comment };
}

describe('cutting up a line', () => {
  test('is what the grammar says', () => {
    const token = fc.constantFrom('{', '}', '"', '"""', '\\', '//', '/', ' ', '\t', '\u00A0', 'a', 'a1', '7', '1/2', '½', ')', '(', '#12345', '#123456', '.', '-', '_', 'é', '😀', 'text');
    fc.assert(fc.property(fc.array(token, { maxLength: 14 }).map((tokens) => tokens.join('')), (line) => {
      const expected = byGrammar(line);
      if (expected) expect(byHand(line)).toEqual(expected);
    }), { seed: 7, numRuns: 3000 });
  });

  test.each([
    ['quilt { straight 3 by 3 } // 3 by 3', ['quilt', '{', 'straight 3 by 3', '}']],
    ['steps { "a { b } // c" }', ['steps', '{', '"a { b } // c"', '}']],
    ['block A 3" { a } {}//x', ['block A 3"', '{', 'a', '}', '{', '}']],
    ['border (1/2)" ink', ['border (1/2)" ink']],
    ['a//b', ['a//b']],
    ['', []],
  ])('%s', (line, pieces) => {
    expect(scanLine(line).pieces.map(({ from, to }) => line.slice(from, to))).toEqual(pieces);
  });
});
