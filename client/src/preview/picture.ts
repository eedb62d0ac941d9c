/**
 * The sheet: the picture, the last good one dimmed behind it when errors took something out, outlines and names on top.
 * Each picture stands in a shadow tree of its own, so that the ids in one never meet those of the other.
 */
import type { Label, Preview } from '../../../server/src/lsp/requests.ts';
import type { Extent, Spot } from './view.ts';
import type { Shown } from './words.ts';

export interface Sheet {
  /** Swaps what is shown; the view stays. */
  readonly show: (preview: Preview | null) => void;
  /** The outlines of shapes, as an SVG path in inches of the picture of that version. */
  readonly outline: (path: string, version: number) => void;
  /** In inches; undefined while there is nothing to see. */
  readonly extent: () => Extent | undefined;
  /** Where the newest picture's corner lies on the sheet, in inches. */
  readonly origin: () => Spot;
  readonly shown: () => Shown;
}

/** The sheet's own pixels an inch; the wrapper's transform does the rest. */
export const BASE = 10;
const SVG = 'http://www.w3.org/2000/svg';

interface Picture extends Extent {
  readonly kind: Preview['kind'];
  readonly host: HTMLElement;
}

/** `tiles` lies in front and moves with the newest picture. */
export function sheetIn(sheet: HTMLElement, tiles: HTMLElement): Sheet {
  const layers = { back: layer('back'), front: layer('front'), labels: layer('labels'), outline: outlineLayer() };
  sheet.replaceChildren(layers.back, layers.front, layers.labels, layers.outline.root, tiles);
  let key = '';
  let about: string | null = null;
  let version = -1;
  let good: Picture | undefined;
  let fresh: Picture | undefined;

  const origin = (): Spot => {
    if (!good || !fresh) return { x: 0, y: 0 };
    return { x: (good.width - fresh.width) / 2, y: (good.height - fresh.height) / 2 };
  };
  const extent = (): Extent | undefined => {
    if (!good) return fresh;
    return fresh ? { width: Math.max(good.width, fresh.width), height: Math.max(good.height, fresh.height) } : good;
  };
  const arrange = (): void => {
    const size = extent();
    sheet.hidden = !size;
    if (!size) return;
    sheet.style.width = `${size.width * BASE}px`;
    sheet.style.height = `${size.height * BASE}px`;
    for (const each of [layers.front, layers.labels, layers.outline.root, tiles]) {
      each.style.transform = `translate(${origin().x * BASE}px, ${origin().y * BASE}px)`;
    }
    layers.outline.size(fresh ?? size);
  };
  const show = (preview: Preview | null): void => {
    // What cannot be drawn any more does not say which block it is about: it is the one before.
    if (preview?.svg) about = preview.block;
    const next = preview ? [preview.uri, preview.size, preview.colorway, preview.view, about, preview.step?.number].join('\n') : '';
    if (next !== key) good = undefined;
    if (next !== key || version !== preview?.version) layers.outline.stale();
    key = next;
    version = preview?.version ?? -1;
    const picture = preview ? pictureOf(preview) : undefined;
    if (preview && picture && !preview.partial) [good, fresh] = [picture, undefined];
    else if (preview && (preview.partial || preview.errors > 0)) fresh = good && picture?.kind !== good.kind ? undefined : picture;
    else [good, fresh] = [undefined, undefined];
    layers.back.replaceChildren(...(good ? [good.host] : []));
    layers.front.replaceChildren(...(fresh ? [fresh.host] : []));
    layers.labels.replaceChildren(...(preview && (picture === good || picture === fresh) ? preview.labels.map(labelOf) : []));
    sheet.classList.toggle('dim', good !== undefined && good !== picture);
    arrange();
  };
  return {
    show,
    outline: (path, of) => of === version && layers.outline.draw(path),
    extent,
    origin,
    shown: () => (!sheet.classList.contains('dim') ? 'the newest' : fresh ? 'both' : 'the last good one'),
  };
}

function layer(name: string): HTMLElement {
  const element = document.createElement('div');
  element.className = `layer ${name}`;
  return element;
}

/** The picture of our own server, read as XML: nothing in it can run. */
function pictureOf({ svg, width, height, kind }: Preview): Picture | undefined {
  if (svg === null || width <= 0 || height <= 0) return undefined;
  const read = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (read.namespaceURI !== SVG || read.localName !== 'svg' || read.querySelector('parsererror, script, foreignObject')) return undefined;
  read.setAttribute('width', `${width * BASE}`);
  read.setAttribute('height', `${height * BASE}`);
  const host = document.createElement('div');
  host.className = 'picture';
  const shadow = host.attachShadow({ mode: 'open' });
  shadow.adoptedStyleSheets = [hairlines];
  shadow.append(document.adoptNode(read));
  return { kind, host, width, height };
}

/** Seams keep one pixel: the wrapper's zoom, which the picture does not know of, is taken back. */
const hairlines = new CSSStyleSheet();
hairlines.replaceSync('g { stroke-width: calc(1px * var(--unscale, 1)); }');

function labelOf({ text, x, y, room, tall }: Label): HTMLElement {
  const element = document.createElement('span');
  element.textContent = text;
  element.style.left = `${x * BASE}px`;
  element.style.top = `${y * BASE}px`;
  if (room !== undefined) element.style.setProperty('--room', `${room * BASE}px`);
  if (tall !== undefined) element.style.setProperty('--tall', `${tall * BASE}px`);
  return element;
}

interface Outline {
  readonly root: SVGSVGElement;
  readonly draw: (path: string) => void;
  /** Another picture is there: what is drawn is kept until the new outline comes, but never for long. */
  readonly stale: () => void;
  readonly size: (extent: Extent) => void;
}

/** Two strokes, one over the other, so that the outline shows on any colour. */
function outlineLayer(): Outline {
  const root = document.createElementNS(SVG, 'svg');
  root.setAttribute('class', 'layer outline');
  root.setAttribute('aria-hidden', 'true');
  const strokes = ['halo', 'line'].map((name) => {
    const path = document.createElementNS(SVG, 'path');
    path.setAttribute('class', name);
    root.append(path);
    return path;
  });
  let timer: ReturnType<typeof setTimeout> | undefined;
  const draw = (path: string): void => {
    clearTimeout(timer);
    strokes.forEach((stroke) => stroke.setAttribute('d', path));
  };
  const stale = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => draw(''), 250);
  };
  const size = ({ width, height }: Extent): void => {
    root.setAttribute('viewBox', `0 0 ${width} ${height}`);
    root.setAttribute('width', `${width * BASE}`);
    root.setAttribute('height', `${height * BASE}`);
  };
  return { root, draw, stale, size };
}
