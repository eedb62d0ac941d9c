import { describe, expect, test } from 'vitest';
import { closest } from '../../server/src/syntax/suggest.ts';
import { editDistance as distance } from '../../server/src/text/nearest.ts';
import { STATEMENT_WORDS } from '../../server/src/syntax/words.ts';

const words = STATEMENT_WORDS.quilt.map(({ word }) => word);

describe('the word that was meant', () => {
  test.each([
    ['backi', 'backing'], ['Backing', 'backing'], ['bakcing', 'backing'], ['lining', 'binding'], ['sash', 'sashing'], ['boarder', 'border'], ['onpoint', 'on_point'],
    ['edge', 'edges'], ['quilt', 'quilting'], ['foo', undefined], ['a', undefined], ['Capstan', undefined], ['', undefined],
  ])('%s', (typed, meant) => expect(closest(typed, words)).toBe(meant));

  test('slips are letters put in, left out, changed, or swapped with their neighbour', () => {
    expect(['ab', 'abcd', 'abx', 'acb', 'abc'].map((word) => distance(word, 'abc'))).toEqual([1, 1, 1, 1, 0]);
  });
});
