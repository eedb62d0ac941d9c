/**
 * A scene as one SVG file that stands by itself: no script, no style sheet, no outside reference. Each distinct block is
 * drawn once, one path per colour, and used often; seams are the outline of those paths, so that nothing is written twice.
 */
import { coordinate, escapeXml, factor } from './markup.ts';
import { IDENTITY, scaleOf, type Matrix } from './matrix.ts';
import { paintsOf } from './paints.ts';
import { pathOf } from './path.ts';
import type { Scene, SceneBlock, SceneLabel, SceneShape, SceneUse } from './scene.ts';

export interface SvgOptions {
  /** What a screen reader says and a tooltip shows; the scene's own title unless given. */
  readonly title?: string;
  /** Put before every id, so that several pictures can stand in one page. Letters, digits, `-`, `_`. */
  readonly idPrefix?: string;
  /**
   * `scaled` (unless given): lines as wide as a pencil's at true size, which every program draws alike, print included.
   * `hairline`: one screen pixel at any zoom, for the preview.
   */
  readonly seams?: 'scaled' | 'hairline' | 'none';
}

/** Width, height and viewBox are in inches, so a printed picture has true size. Ends with a line end. */
export function svgOf(scene: Scene, options: SvgOptions = {}): string {
  const prefix = (options.idPrefix ?? '').replace(/[^\w-]/g, '');
  const title = escapeXml(options.title ?? scene.title);
  const [width, height] = [coordinate(scene.width), coordinate(scene.height)];
  const pen: Pen = { prefix, stroke: options.seams === 'hairline' ? ' vector-effect="non-scaling-stroke"' : '' };
  const blocks = scene.blocks.map((block, index) => blockMarkup(block, pen, blockSeams(scene, index, options)));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}in" height="${height}in" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="${prefix}title">`,
    `<title id="${prefix}title">${title}</title>`,
    ...(blocks.length > 0 ? ['<defs>', ...blocks, '</defs>'] : []),
    `<g${seamMarkup(scene, options)} stroke-linejoin="round">`,
    ...itemsMarkup(scene, pen),
    '</g>',
    ...labelsMarkup(scene.labels ?? []),
    '</svg>',
    '',
  ].join('\n');
}

/** What every piece of markup needs to know. */
interface Pen {
  readonly prefix: string;
  /** On each path: `vector-effect` is not inherited. */
  readonly stroke: string;
}

const SEAM_COLOUR = '#000';
const SEAM_OPACITY = '0.45';

/** Of the longer side; never thinner than a hundredth of an inch, about a pixel. */
function seamWidth(scene: Scene): number {
  return Math.max(Math.max(scene.width, scene.height) / 1500, 0.01);
}

function seamMarkup(scene: Scene, { seams = 'scaled' }: SvgOptions): string {
  if (seams === 'none') return ' stroke="none"';
  const width = seams === 'hairline' ? '1' : coordinate(seamWidth(scene));
  return ` stroke="${SEAM_COLOUR}" stroke-opacity="${SEAM_OPACITY}" stroke-width="${width}"`;
}

/** A block that is set smaller or larger than drawn has its lines widened or narrowed to match the rest. */
function blockSeams(scene: Scene, index: number, options: SvgOptions): string {
  const { seams = 'scaled' } = options;
  if (seams !== 'scaled') return '';
  const use = scene.items.find((item): item is SceneUse => item.kind === 'use' && item.block === index);
  const scale = scaleOf(use?.matrix ?? IDENTITY);
  return scale > 0 && factor(scale) !== '1' ? ` stroke-width="${factor(seamWidth(scene) / scale)}"` : '';
}

function blockMarkup(block: SceneBlock, pen: Pen, seams: string): string {
  return [`<g id="${pen.prefix}${escapeXml(block.id)}"${seams}>`, ...shapesMarkup(block.shapes, pen), '</g>'].join('\n');
}

/** In drawing order; shapes that follow each other share paths. */
function itemsMarkup(scene: Scene, pen: Pen): string[] {
  const markup: string[] = [];
  let run: SceneShape[] = [];
  for (const item of scene.items) {
    if (item.kind === 'shape') {
      run.push(item);
      continue;
    }
    markup.push(...shapesMarkup(run, pen), useMarkup(scene, item, pen));
    run = [];
  }
  return [...markup, ...shapesMarkup(run, pen)];
}

function shapesMarkup(shapes: readonly SceneShape[], pen: Pen): string[] {
  return paintsOf(shapes, pathOf).map(({ fill, outlines }) => `<path fill="${escapeXml(fill)}"${pen.stroke} d="${outlines.join('')}"/>`);
}

/** The baseline lies about a third of the letters' size below their middle. */
function labelsMarkup(labels: readonly SceneLabel[]): string[] {
  if (labels.length === 0) return [];
  const texts = labels.map(({ text, x, y, from, size, fill }) => {
    const anchor = from === 'middle' ? ' text-anchor="middle"' : '';
    return `<text x="${coordinate(x)}" y="${coordinate(y + size * 0.35)}" font-size="${coordinate(size)}" fill="${escapeXml(fill)}"${anchor}>${escapeXml(text)}</text>`;
  });
  return ['<g font-family="sans-serif">', ...texts, '</g>'];
}

function useMarkup(scene: Scene, use: SceneUse, { prefix }: Pen): string {
  const id = scene.blocks[use.block]?.id ?? '';
  return `<use xlink:href="#${prefix}${escapeXml(id)}"${placeMarkup(use.matrix)}/>`;
}

function placeMarkup([a, b, c, d, e, f]: Matrix): string {
  const [x, y] = [coordinate(e), coordinate(f)];
  const linear = [a, b, c, d].map(factor).join(' ');
  if (linear !== '1 0 0 1') return ` transform="matrix(${linear} ${x} ${y})"`;
  return `${x === '0' ? '' : ` x="${x}"`}${y === '0' ? '' : ` y="${y}"`}`;
}
