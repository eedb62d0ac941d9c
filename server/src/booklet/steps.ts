/**
 * steps.md: how one size of a quilt is made, from a test seam to the binding, in words that a beginner can follow. Every number is
 * computed. `TEXTS` (`steps-texts.ts`) holds the sentences; the author's own come before, between or instead of them.
 */
import type { Rules } from '../model/pattern.ts';
import { sewingOf } from '../piecing/sewing.ts';
import { plain, sections, table } from './markdown.ts';
import { UNTITLED, type BookletQuilt, type BookletSource } from './source.ts';
import { blockChapters, type Chapter } from './steps-blocks.ts';
import { finishChapters } from './steps-finish.ts';
import { stepsPlan } from './steps-plan.ts';
import { pressLines, pressPictures, pressTable, type PressWords } from './steps-pressing.ts';
import { saidOf } from './steps-said.ts';
import { settingChapters } from './steps-setting.ts';
import { TEXTS } from './steps-texts.ts';
import { testSeam } from './test-seam.ts';
import { printerFor, type Printer } from './words.ts';
import { EN } from './words/en.ts';

/** The steps for one quilt. */
export function stepsMarkdown(source: BookletSource, quilt: BookletQuilt): string {
  const { pattern } = source;
  const { rules } = pattern;
  const print = printerFor(rules.units);
  const sewing = sewingOf(quilt.layout, rules);
  const plan = stepsPlan(sewing);
  const said = saidOf(source, quilt, plan.blocks, print);
  const opening = [
    [TEXTS.title(plain(pattern.title ?? UNTITLED))],
    [TEXTS.sizeOf(quilt.name === null ? 'Size' : `Size ${quilt.name}`, print.widthByHeight(quilt.layout)), TEXTS.seams(print.length(rules.seam))],
    [`## ${TEXTS.cautions}`],
    TEXTS.cautionLines,
  ];
  if (said.instead) return sections([...opening, ['## Steps'], ...paragraphs(said.instead)]);
  const words = { quilt, sewing, plan, rules, print };
  const blocks = plan.blocks.map((block) => {
    const [heading, ...rest] = blockChapters(block, words).map(chapterParts);
    return [...(heading?.slice(0, 1) ?? []), ...paragraphs(said.before(block)), ...(heading?.slice(1) ?? []), ...rest.flat(), ...paragraphs(said.after(block))];
  });
  return sections([
    ...opening,
    [`## ${TEXTS.howTo}`],
    TEXTS.howToLines,
    ...startChapters(quilt, rules, print).flatMap(chapterParts),
    ...blocks.flat(),
    ...pressParts(words),
    ...[...settingChapters(words), ...finishChapters(words)].flatMap(chapterParts),
  ]);
}

function startChapters({ plan }: BookletQuilt, rules: Rules, print: Printer): readonly Chapter[] {
  const { square, pair } = testSeam(rules);
  const pieces = plan.pieces.reduce((total, piece) => total + piece.pieces, 0);
  return [
    { title: TEXTS.test, level: 2, lines: EN.start.testLines(print.length(square), print.length(rules.seam), print.length(pair)) },
    { title: TEXTS.cut, level: 2, lines: TEXTS.cutLines(pieces) },
  ];
}

/** The heading, then the numbered lines. */
function chapterParts({ title, level, lines }: Chapter): readonly (readonly string[])[] {
  return [[`${'#'.repeat(level)} ${title}`], lines.map((line, i) => `${i + 1}. ${line}`)];
}

/** Nothing for a quilt without seams. */
function pressParts(words: PressWords): readonly (readonly string[])[] {
  const { head, rows } = pressTable(words);
  if (rows.length === 0) return [];
  return [[`## ${TEXTS.pressing}`], ...paragraphs(pressLines(words)), table(head, rows), pressPictures(words).map((line) => `- ${line}`)];
}

function paragraphs(texts: readonly string[]): readonly (readonly string[])[] {
  return texts.map((text) => [text]);
}
