/** The pages of pictures: cover, colouring page, other colours, and the back page with the pattern at a glance. */
import { sceneOfQuilt } from '../../drawing/build.ts';
import type { Scene } from '../../drawing/scene.ts';
import type { Colorway, Pattern } from '../../model/pattern.ts';
import { greyOf } from '../../text/colour.ts';
import { filledIn } from '../steps-said.ts';
import type { Block, BookChapter, Figure } from './book.ts';
import { boughtText, cell, fabricTitle, type BookContext } from './context.ts';
import { recoloured } from './recolour.ts';

export function coverBlocks(context: BookContext): readonly Block[] {
  const { source: { pattern, quilts }, quilt, words: { cover, listed }, print } = context;
  const others = quilts.filter(({ name }) => name !== quilt.name).map(({ name, layout }) => `${name ?? ''} (${print.widthByHeight(layout)})`);
  return [
    { kind: 'paragraph', text: titleOf(context), look: 'title' },
    ...(pattern.by === undefined ? [] : [{ kind: 'paragraph', text: cover.by(pattern.by), look: 'lead' } as const]),
    { kind: 'figure', scene: sceneOfQuilt(quilt.layout), alt: cover.quilt(titleOf(context)), size: 'cover' },
    { kind: 'paragraph', text: cover.size(quilt.name, print.widthByHeight(quilt.layout)), look: 'lead' },
    ...(others.length > 0 ? [{ kind: 'paragraph', text: cover.also(listed(others)) } as const] : []),
    ...(pattern.level === undefined ? [] : [{ kind: 'paragraph', text: cover.level(pattern.level) } as const]),
    ...about(context),
  ];
}

export function titleOf({ source: { pattern }, words }: BookContext): string {
  return pattern.title ?? words.untitled;
}

function about({ source: { pattern, quilts }, quilt, print }: BookContext): readonly Block[] {
  return pattern.about === undefined ? [] : [{ kind: 'prose', markdown: filledIn(pattern.about, { pattern, quilts, quilt, print }) }];
}

export function colouringChapter({ quilt, words: { pictures } }: BookContext): BookChapter {
  const lines = recoloured(sceneOfQuilt(quilt.layout), () => '#ffffff');
  return {
    id: 'colouring',
    title: pictures.colouring,
    begins: 'page',
    blocks: [
      { kind: 'paragraph', text: pictures.colouringNote },
      { kind: 'figure', scene: lines, alt: pictures.colouringAlt, size: 'page', look: 'line' },
    ],
  };
}

/** Every colourway, and the quilt in greys. */
export function coloursChapter({ source: { pattern }, quilt, words: { pictures } }: BookContext): BookChapter {
  const scene = sceneOfQuilt(quilt.layout);
  const ways = pattern.colorways.map((way): Figure => ({
    kind: 'figure',
    scene: inColours(scene, way, pattern),
    alt: pictures.colourwayAlt(way.name),
    caption: pictures.colourway(way.name),
    size: 'middle',
  }));
  const greys: Figure = { kind: 'figure', scene: recoloured(scene, (_, colour) => greyOf(colour)), alt: pictures.valuesAlt, caption: pictures.values, size: ways.length > 0 ? 'middle' : 'page' };
  const blocks: readonly Block[] = ways.length > 0 ? [{ kind: 'figures', figures: [...ways, greys] }] : [greys];
  return { id: 'colours', title: ways.length > 0 ? pictures.colours : pictures.valueTitle, begins: 'page', blocks };
}

function inColours(scene: Scene, { colours }: Colorway, { fabrics }: Pattern): Scene {
  return recoloured(scene, (name, colour) => colours.get(name)?.colour ?? fabrics.get(name)?.colour ?? colour);
}

export function backChapter(context: BookContext): BookChapter {
  const { source: { pattern, quilts }, quilt, words: { pictures, cover, need }, print } = context;
  const fabrics = quilt.plan.fabrics.map((plan) => [{ text: fabricTitle(plan.fabric), swatch: plan.fabric.colour }, cell(boughtText(plan, context))]);
  return {
    id: 'back',
    title: pictures.back,
    begins: 'page',
    blocks: [
      { kind: 'paragraph', text: titleOf(context), look: 'lead' },
      ...(pattern.by === undefined ? [] : [{ kind: 'paragraph', text: cover.by(pattern.by) } as const]),
      { kind: 'figure', scene: sceneOfQuilt(quilt.layout), alt: cover.quilt(titleOf(context)), size: 'middle' },
      ...about(context),
      { kind: 'heading', level: 2, text: pictures.sizes },
      { kind: 'list', ordered: false, items: quilts.map(({ name, layout }) => cover.size(name, print.widthByHeight(layout))) },
      ...(fabrics.length > 0 ? [{ kind: 'heading', level: 2, text: pictures.fabrics } as const, { kind: 'table', title: pictures.fabrics, head: [need.item, need.amount], rows: fabrics } as const] : []),
      { kind: 'paragraph', text: pictures.made, look: 'note' },
    ],
  };
}
