/** What templates.pdf says, a catalogue a language: every sentence is a text or a function of what is in it. */
import { counted, listed } from '../booklet/words.ts';
import type { Language } from '../booklet/words/catalogue.ts';

export interface TemplateWords {
  readonly document: (title: string) => string;
  readonly head: string;
  readonly page: (number: number, of: number) => string;
  readonly inch: string;
  readonly centimetres: string;
  /** Beside the two squares, a line each. */
  readonly printing: readonly string[];
  readonly template: (letters: readonly string[]) => string;
  readonly cut: (count: number, turnedOver: number) => string;
  readonly templateAlt: (name: string) => string;
  readonly gauges: string;
  readonly sheet: (number: number, of: number) => string;
  readonly sheetMap: string;
  readonly overlap: string;
  readonly section: (block: string, letter: string | undefined) => string;
  readonly copies: (count: number) => string;
  readonly order: string;
  readonly joins: (joins: readonly string[]) => string;
  readonly joined: (one: readonly string[], other: readonly string[]) => string;
  readonly sectionAlt: (name: string) => string;
  readonly listed: (items: readonly string[]) => string;
  readonly onPaper: readonly string[];
  readonly notOnPaper: (block: string, why: string) => string;
  readonly why: { readonly curve: string; readonly innerCorner: string; readonly noLine: (patches: number) => string; readonly tooMany: (patches: number, most: number) => string };
}

const EN: TemplateWords = {
  document: (title) => `${title}: templates`,
  head: 'Templates',
  page: (number, of) => `page ${number} of ${of}`,
  inch: '1 inch',
  centimetres: '5 centimetres',
  printing: ['Print at 100 %, with scaling off.', 'Measure both squares before you cut.', 'Solid line: cut. Dashed line: sew.', 'The arrow lies along the straight grain.', 'Dots and notches are matched with the neighbours.'],
  template: (letters) => `Template ${listed(letters)}`,
  cut: (count, turnedOver) => `cut ${count}${turnedOver === 0 ? '' : turnedOver === count ? ' with the template turned over' : `, ${turnedOver} of them with the template turned over`}`,
  templateAlt: (name) => `${name} at true size, with its cutting line, seam line, grain arrow and matching marks.`,
  gauges: 'Squares to measure: 1 inch and 5 centimetres.',
  sheet: (number, of) => `sheet ${number} of ${of}`,
  sheetMap: 'How the sheets lie',
  overlap: 'Sheets overlap as far as the dotted lines; the crossed circles lie on each other.',
  section: (block, letter) => (letter === undefined ? `${block} on paper` : `${block} on paper, section ${letter}`),
  copies: (count) => `Print ${counted(count, 'copy', 'copies')}.`,
  order: 'In the order of the numbers:',
  joins: (joins) => `Then sew ${joins.join('; then ')}.`,
  joined: (one, other) => `${listed(one)} to ${listed(other)}`,
  sectionAlt: (name) => `${name} at true size, mirrored, with the lines to sew along, the order of sewing and the seam allowance.`,
  listed,
  onPaper: ['On paper: fabric on the blank side, sew on the printed side.', 'The print is mirrored; the block comes out as drawn.', 'Trim along the dashed outer line.'],
  notOnPaper: (block, why) => `${block} cannot be sewn on paper: ${why}. It is cut and sewn as usual.`,
  why: { curve: 'it has curved seams', innerCorner: 'a patch has an inner corner', noLine: (patches) => `no straight line runs across ${counted(patches, 'patch', 'patches')} of it`, tooMany: (patches, most) => `it has ${patches} patches, and ${most} are looked at` },
};

const DE: TemplateWords = {
  document: (title) => `${title}: Schablonen`,
  head: 'Schablonen',
  page: (number, of) => `Seite ${number} von ${of}`,
  inch: '1 Zoll',
  centimetres: '5 Zentimeter',
  printing: ['Mit 100 % drucken, ohne Anpassung.', 'Vor dem Schneiden beide Quadrate messen.', 'Durchgezogene Linie: schneiden. Gestrichelt: nähen.', 'Der Pfeil liegt im Fadenlauf.', 'Punkte und Striche treffen auf die der Nachbarn.'],
  template: (letters) => `Schablone ${listedIn(letters)}`,
  cut: (count, turnedOver) => `${count} zuschneiden${turnedOver === 0 ? '' : turnedOver === count ? ', mit gewendeter Schablone' : `, davon ${turnedOver} mit gewendeter Schablone`}`,
  templateAlt: (name) => `${name} in Originalgröße mit Schnittlinie, Nahtlinie, Fadenlauf und Passzeichen.`,
  gauges: 'Quadrate zum Nachmessen: 1 Zoll und 5 Zentimeter.',
  sheet: (number, of) => `Blatt ${number} von ${of}`,
  sheetMap: 'Lage der Blätter',
  overlap: 'Die Blätter überlappen bis zu den punktierten Linien; die Kreise mit Kreuz liegen aufeinander.',
  section: (block, letter) => (letter === undefined ? `${block} auf Papier` : `${block} auf Papier, Teil ${letter}`),
  copies: (count) => `${count} Mal drucken.`,
  order: 'In der Reihenfolge der Nummern:',
  joins: (joins) => `Dann zusammennähen: ${joins.join('; dann ')}.`,
  joined: (one, other) => `${listedIn(one)} an ${listedIn(other)}`,
  sectionAlt: (name) => `${name} in Originalgröße, gespiegelt, mit Nählinien, Reihenfolge und Nahtzugabe.`,
  listed: listedIn,
  onPaper: ['Auf Papier: Stoff auf die leere Seite, auf der bedruckten Seite nähen.', 'Der Druck ist gespiegelt; der Block wird wie gezeichnet.', 'An der gestrichelten Außenlinie beschneiden.'],
  notOnPaper: (block, why) => `${block} lässt sich nicht auf Papier nähen: ${why}. Der Block wird wie üblich zugeschnitten und genäht.`,
  why: { curve: 'er hat runde Nähte', innerCorner: 'ein Teil hat eine innere Ecke', noLine: (patches) => `keine gerade Linie läuft durch ${patches === 1 ? 'ein Teil' : `${patches} Teile`}`, tooMany: (patches, most) => `er hat ${patches} Teile, und bis zu ${most} werden betrachtet` },
};

function listedIn(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} und ${last}`;
}

const WORDS: Readonly<Record<Language, TemplateWords>> = { en: EN, de: DE };

export function templateWords(language: Language = 'en'): TemplateWords {
  return WORDS[language];
}
