/** What of a pattern the booklet takes: its paper, level, language and the words of its author. */
import { describe, expect, test } from 'vitest';
import { bookOf } from '../../../server/src/booklet/book/build.ts';
import type { Block, Book } from '../../../server/src/booklet/book/book.ts';
import type { Snapshot } from '../../../server/src/snapshot.ts';
import { snapshotOfText } from '../../harness/snapshot.ts';

function snapshotWith(said: string, behind = ''): Snapshot {
  return snapshotOfText(`pattern "Ferry" {\n${said}\n}\nfabric ink #22345c\nfabric sand #eadfc8\nblock Four 6" {\n  ink sand\n  sand ink\n}\nquilt {\n  straight 2 by 2\n  place { Four }\n}\n${behind}`);
}

function bookWith(said: string, behind = ''): Book {
  const { pattern, quilts } = snapshotWith(said, behind);
  const [quilt] = quilts;
  if (!quilt) throw new Error('no quilt');
  return bookOf({ pattern, quilts }, quilt);
}

const paragraphs = (blocks: readonly Block[]): readonly unknown[] => blocks.flatMap((block) => (block.kind === 'paragraph' ? [block.text] : block.kind === 'prose' ? [block.markdown] : []));

describe('a booklet', () => {
  test.each([
    ['units inches', 'letter'], ['units centimetres', 'a4'], ['units inches\n paper a4', 'a4'], ['units centimetres\n paper letter', 'letter'],
  ])('%s is printed on %s', (said, paper) => expect(bookWith(said).paper).toBe(paper));

  test('its cover has title, author, size, level and what the pattern is about', () => {
    expect(paragraphs(bookWith('by "Ada"\n level "Beginner"\n about "It is {width} wide, with {Four.count} blocks."').cover)).toEqual([
      'Ferry', 'by Ada', 'Finished size 12" × 12"', 'Level: Beginner', 'It is 12" wide, with 4 blocks.',
    ]);
  });

  test('its own words are in its language, with its decimal mark', () => {
    const german = bookWith('units centimetres\n language de');
    expect(german.language).toBe('de');
    expect(german.chapters.map(({ title }) => title)).toContain('Was du brauchst');
    expect(paragraphs(german.cover)).toContain('Fertige Größe 30,48 cm × 30,48 cm');
    expect(bookWith('').chapters.map(({ title }) => title)).toContain('What you need');
  });

  test('every chapter has an id of its own, and something in it', () => {
    const { chapters } = bookWith('');
    expect(new Set(chapters.map(({ id }) => id)).size).toBe(chapters.length);
    for (const { id, blocks } of chapters) {
      expect(id).toMatch(/^[a-z-]+$/);
      expect(blocks.length).toBeGreaterThan(0);
    }
  });

  test('the author may put words before a block, or in place of all steps', () => {
    const before = bookWith('', 'steps before Four { "Press {Four.count} times." }').chapters.find(({ id }) => id === 'blocks');
    expect(paragraphs(before?.blocks ?? [])).toContain('Press 4 times.');
    const instead = bookWith('', 'steps { "Sew it." }').chapters;
    expect(instead.map(({ id }) => id)).not.toContain('blocks');
    expect(paragraphs(instead.find(({ id }) => id === 'steps')?.blocks ?? [])).toEqual(['Sew it.']);
  });

  test('a colourway recolours the picture and nothing else', () => {
    const colours = bookWith('', 'colorway dusk {\n  ink #4a2545\n}').chapters.find(({ id }) => id === 'colours');
    const figures = colours?.blocks.flatMap((block) => (block.kind === 'figures' ? block.figures : [])) ?? [];
    const fills = figures.map(({ scene }) => [...new Set(scene.blocks.flatMap(({ shapes }) => shapes.map(({ fill }) => fill)))].sort());
    expect(figures.map(({ caption }) => caption)).toEqual(['In dusk', 'In greys, each as light as its fabric']);
    expect(fills[0]).toEqual(['#4a2545', '#eadfc8']);
    for (const grey of fills[1] ?? []) expect(grey).toMatch(/^#(..)\1\1$/);
  });
});

test('braces in `about` that hold no value are told', () => {
  const { problems } = snapshotWith('about "It is {widht} wide."');
  expect(problems.filter(({ rule }) => rule === 'unknown-placeholder').map(({ message }) => message)).toEqual(['there is no value `widht`; did you mean `width`?']);
});
