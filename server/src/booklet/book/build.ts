/** The booklet of one size of a quilt. */
import type { BookletQuilt, BookletSource } from '../source.ts';
import { wordsOf } from '../words/languages.ts';
import { printerFor } from '../words.ts';
import type { Book } from './book.ts';
import type { BookContext } from './context.ts';
import { cuttingChapter } from './cutting.ts';
import { makingChapters } from './making.ts';
import { needChapter, startChapter } from './need.ts';
import { backChapter, coloursChapter, colouringChapter, coverBlocks, titleOf } from './pictures.ts';

/** Paper by the pattern's word, else by its units. */
export function bookOf(source: BookletSource, quilt: BookletQuilt): Book {
  const { pattern } = source;
  const words = wordsOf(pattern.language);
  const context: BookContext = { source, quilt, words, print: printerFor(pattern.rules.units, words.voice) };
  return {
    language: words.tag,
    paper: pattern.paper ?? (pattern.rules.units === 'inches' ? 'letter' : 'a4'),
    title: titleOf(context),
    ...(pattern.by !== undefined && { by: pattern.by }),
    ...(quilt.name !== null && { size: quilt.name }),
    cover: coverBlocks(context),
    chapters: [
      needChapter(context),
      startChapter(context),
      cuttingChapter(context),
      ...makingChapters(context),
      colouringChapter(context),
      coloursChapter(context),
      backChapter(context),
    ],
    furniture: { contents: words.contents, page: words.page },
  };
}
