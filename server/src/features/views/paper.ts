/** A view to keep or to print: one SVG with its names in it, and a page with the picture, its words and its figures. Both stand by themselves. */
import { escapeXml } from '../../drawing/markup.ts';
import type { Scene, SceneLabel } from '../../drawing/scene.ts';
import { svgOf } from '../../drawing/svg.ts';
import type { Label } from '../sheet.ts';
import type { Table, View } from './view.ts';

export interface Paper {
  readonly svg: string;
  readonly html: string;
}

/** Undefined when nothing is drawn. */
export function paperOf({ scene, labels, notes, table, step }: View, title: string): Paper | undefined {
  if (!scene) return undefined;
  const svg = svgOf(withNames(scene, labels), { title });
  const words = [...(step ? [`Step ${step.number} of ${step.count}. ${step.title}. ${step.text}`] : []), ...notes];
  const html = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'">
<title>${escapeXml(title)}</title>
<style>
@page { margin: 12mm; }
body { font: 11pt sans-serif; color: #000; background: #fff; }
svg { display: block; width: 100%; height: auto; max-height: 75vh; }
table { border-collapse: collapse; page-break-inside: avoid; }
th, td { border: 1px solid #888; padding: 2px 6px; text-align: left; }
</style>
</head>
<body onload="print()">
<h1>${escapeXml(title)}</h1>
${svg}${words.map((each) => `<p>${escapeXml(each)}</p>\n`).join('')}${table ? tableMarkup(table) : ''}</body>
</html>
`;
  return { svg, html };
}

/** A letter's width, of its height. */
const LETTER = 0.56;

/** Names under what they name, as large as their room allows. */
function withNames(scene: Scene, labels: readonly Label[]): Scene {
  const usual = Math.max(scene.width, scene.height) / 50;
  const names = labels.map(({ text, x, y, room }): SceneLabel => {
    const size = Math.min(usual, (room ?? Infinity) / Math.max(text.length * LETTER, 1));
    return { text, x, y: y + size, from: 'middle', size, fill: '#222222' };
  });
  return names.length === 0 ? scene : { ...scene, labels: [...(scene.labels ?? []), ...names] };
}

function tableMarkup({ caption, heads, rows }: Table): string {
  const head = heads.map((cell) => `<th scope="col">${escapeXml(cell)}</th>`).join('');
  const lines = rows.map(([name = '', ...cells]) => `<tr><th scope="row">${escapeXml(name)}</th>${cells.map((cell) => `<td>${escapeXml(cell)}</td>`).join('')}</tr>\n`);
  return `<table>\n<caption>${escapeXml(caption)}</caption>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${lines.join('')}</tbody>\n</table>\n`;
}
