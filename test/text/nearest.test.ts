/** The word that was probably meant: keywords, names and paths share one ranking. */
import { describe, expect, test } from 'vitest';
import { editDistance as distance, nearestWord } from '../../server/src/text/nearest.ts';
import { STATEMENT_WORDS } from '../../server/src/syntax/words.ts';

const words = STATEMENT_WORDS.quilt.map(({ word }) => word);

describe('the word that was meant', () => {
  test.each([
    ['backi', 'backing'], ['Backing', 'backing'], ['bakcing', 'backing'], ['lining', 'binding'], ['sash', 'sashing'], ['boarder', 'border'], ['onpoint', 'on_point'],
    ['edge', 'edges'], ['quilt', 'quilting'], ['foo', undefined], ['a', undefined], ['Capstan', undefined], ['', undefined],
  ])('%s', (typed, meant) => expect(nearestWord(typed, words)).toBe(meant));

  test.each([['Sand', 'sand'], ['snad', 'sand'], ['capstan', undefined], ['sand', undefined], ['c', undefined], ['ik', 'ink'], ['inky', 'ink']])('of names: %s', (typed, meant) =>
    expect(nearestWord(typed, ['ink', 'sand'])).toBe(meant),
  );

  // The published example of this distance: https://en.wikipedia.org/wiki/Levenshtein_distance.
  test('kitten and sitting', () => expect(distance('kitten', 'sitting')).toBe(3));

  test('a bed without its ending, a beginning of a path', () => {
    expect(nearestWord('twin', ['crib_bed', 'twin_bed', 'twin_xl_bed'])).toBe('twin_bed');
    expect(nearestWord('c.width', ['a.width', 'c.widths'])).toBe('c.widths');
  });

  test('slips are letters put in, left out, changed, or swapped with their neighbour', () => {
    expect(['ab', 'abcd', 'abx', 'acb', 'abc'].map((word) => distance(word, 'abc'))).toEqual([1, 1, 1, 1, 0]);
  });
});
