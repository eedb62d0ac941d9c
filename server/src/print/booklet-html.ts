/**
 * booklet.html: the same book as one page that stands by itself. No script, nothing loaded from elsewhere, texts escaped; printed, it
 * breaks into pages as the PDF does.
 */
import type { Block, Book, BookChapter, Cell, Figure, Table, Text } from '../booklet/book/book.ts';
import { escapeXml } from '../drawing/markup.ts';
import { svgOf } from '../drawing/svg.ts';
import { CSS } from './booklet-css.ts';
import { proseOf, runsOf, type Run } from './prose.ts';
import { typeset } from './typeset.ts';

/** The same text for the same book. */
export function bookletHtml(book: Book): string {
  const numbered = numbering();
  const cover = book.cover.map((block) => blockMarkup(block, numbered)).join('\n');
  const chapters = book.chapters.map((chapter) => chapterMarkup(chapter, book, numbered));
  return [
    '<!doctype html>',
    `<html lang="${book.language}">`,
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="${POLICY}">`,
    `<title>${escapeXml(book.title)}</title>`,
    `<style>${CSS}\n@page { size: ${book.paper === 'a4' ? 'A4' : 'letter'}; margin: 18mm; }</style>`,
    '</head>',
    '<body>',
    `<header class="cover">\n${cover}\n</header>`,
    contentsMarkup(book),
    `<main>\n${chapters.join('\n')}\n</main>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** Nothing but what stands in the file itself. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src 'none'";

/** Ids of drawings differ within a page. */
type Numbering = () => string;

function numbering(): Numbering {
  let last = 0;
  return () => `f${(last += 1)}-`;
}

function contentsMarkup({ chapters, furniture }: Book): string {
  const items = chapters.map(({ id, title }) => `<li><a href="#${id}">${escapeXml(title)}</a></li>`);
  return `<nav aria-labelledby="contents">\n<h2 id="contents">${escapeXml(furniture.contents)}</h2>\n<ol>\n${items.join('\n')}\n</ol>\n</nav>`;
}

function chapterMarkup({ id, title, begins, language, blocks }: BookChapter, book: Book, numbered: Numbering): string {
  const lang = language !== undefined && language !== book.language ? ` lang="${language}"` : '';
  const heading = `<h2 id="${id}"${lang === '' ? '' : ` lang="${book.language}"`}>${escapeXml(title)}</h2>`;
  return `<section class="${begins}"${lang} aria-labelledby="${id}">\n${heading}\n${blocks.map((block) => blockMarkup(block, numbered)).join('\n')}\n</section>`;
}

function blockMarkup(block: Block, numbered: Numbering): string {
  switch (block.kind) {
    case 'heading':
      return `<h${block.level + 1}>${block.swatch === undefined ? '' : swatch(block.swatch)}${textMarkup(block.text)}</h${block.level + 1}>`;
    case 'paragraph':
      return block.look === 'title' ? `<h1>${textMarkup(block.text)}</h1>` : `<p${block.look === undefined ? '' : ` class="${block.look}"`}>${textMarkup(block.text)}</p>`;
    case 'list':
      return listMarkup(block.ordered, block.items.map(textMarkup));
    case 'table':
      return tableMarkup(block);
    case 'figure':
      return figureMarkup(block, numbered);
    case 'figures':
      return `<div class="figures">\n${block.figures.map((figure) => figureMarkup(figure, numbered)).join('\n')}\n</div>`;
    case 'step':
      return `<div class="step">\n${figureMarkup(block.figure, numbered)}\n${listMarkup(block.list.ordered, block.list.items.map(textMarkup))}\n</div>`;
    case 'caution':
      return `<aside>\n<h3>${textMarkup(block.title)}</h3>\n${listMarkup(false, block.items.map(textMarkup))}\n</aside>`;
    case 'prose':
      return proseOf(block.markdown).map(proseMarkup).join('\n');
  }
}

function proseMarkup(part: ReturnType<typeof proseOf>[number]): string {
  if (part.kind === 'list') return listMarkup(part.ordered, part.items.map(runsMarkup));
  return part.kind === 'heading' ? `<h4>${runsMarkup(part.runs)}</h4>` : `<p>${runsMarkup(part.runs)}</p>`;
}

function listMarkup(ordered: boolean, items: readonly string[]): string {
  const tag = ordered ? 'ol' : 'ul';
  return `<${tag}>\n${items.map((item) => `<li>${item}</li>`).join('\n')}\n</${tag}>`;
}

function tableMarkup({ title, head, rows, strong }: Table): string {
  const stronger = (i: number): string => (i === strong ? ' class="strong"' : '');
  const row = (cells: readonly Cell[]): string => `<tr>${cells.map((cell, i) => (i === 0 ? `<th scope="row">${cellMarkup(cell)}</th>` : `<td${stronger(i)}>${cellMarkup(cell)}</td>`)).join('')}</tr>`;
  return [
    `<table aria-label="${escapeXml(typeset(title))}">`,
    `<thead><tr>${head.map((text, i) => `<th scope="col"${stronger(i)}>${escapeXml(typeset(text))}</th>`).join('')}</tr></thead>`,
    `<tbody>\n${rows.map(row).join('\n')}\n</tbody>`,
    '</table>',
  ].join('\n');
}

function cellMarkup({ text, swatch: colour }: Cell): string {
  return `${colour === undefined ? '' : swatch(colour)}${textMarkup(text)}`;
}

/** A drawing, since browsers leave out backgrounds in print. */
function swatch(colour: string): string {
  return `<svg class="swatch" viewBox="0 0 10 10" aria-hidden="true"><rect width="10" height="10" fill="${escapeXml(colour)}" stroke="#404040" stroke-width="0.5"/></svg>`;
}

function figureMarkup({ scene, alt, caption, size, look }: Figure, numbered: Numbering): string {
  const labels = scene.labels?.map((label) => ({ ...label, text: typeset(label.text) }));
  const drawing = svgOf({ ...scene, ...(labels && { labels }) }, { title: alt, idPrefix: numbered() }).trimEnd();
  const words = caption === undefined ? '' : `\n<figcaption>${escapeXml(typeset(caption))}</figcaption>`;
  return `<figure class="${size}${look === undefined ? '' : ` ${look}`}">\n${drawing}${words}\n</figure>`;
}

function textMarkup(text: Text): string {
  return runsMarkup(runsOf(text));
}

const LOOKS: Readonly<Record<Run['look'], readonly [string, string]>> = { plain: ['', ''], bold: ['<strong>', '</strong>'], italic: ['<em>', '</em>'] };

function runsMarkup(runs: readonly Run[]): string {
  return runs.map(({ text, look }) => (text === '\n' ? '<br>' : `${LOOKS[look][0]}${escapeXml(text)}${LOOKS[look][1]}`)).join('');
}
