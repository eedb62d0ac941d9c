/** The catalogues by language. */
import type { Language, Words } from './catalogue.ts';
import { CUTTING_DE } from './cutting-de.ts';
import { CUTTING_EN } from './cutting-en.ts';
import type { CuttingWords } from './cutting-words.ts';
import { DE } from './de.ts';
import { EN } from './en.ts';

const LANGUAGES: Readonly<Record<Language, Words>> = { en: EN, de: DE };

/** English unless the pattern says otherwise. */
export function wordsOf(language: Language | undefined): Words {
  return LANGUAGES[language ?? 'en'];
}

const CUTTING: Readonly<Record<Language, CuttingWords>> = { en: CUTTING_EN, de: CUTTING_DE };

/** Those of cutting.md, as `wordsOf`. */
export function cuttingWordsOf(language: Language | undefined): CuttingWords {
  return CUTTING[language ?? 'en'];
}
