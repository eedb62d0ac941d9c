/** The catalogues by language. */
import type { Language, Words } from './catalogue.ts';
import { DE } from './de.ts';
import { EN } from './en.ts';

const LANGUAGES: Readonly<Record<Language, Words>> = { en: EN, de: DE };

/** English unless the pattern says otherwise. */
export function wordsOf(language: Language | undefined): Words {
  return LANGUAGES[language ?? 'en'];
}
