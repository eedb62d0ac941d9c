/** The bar of buttons: zoom, fit, background, lock, and which size and colourway is shown. */
import type { Preview } from '../../../server/src/lsp/requests.ts';

export interface Wishes {
  readonly zoomIn: () => void;
  readonly zoomOut: () => void;
  readonly fit: () => void;
  readonly background: () => void;
  readonly lock: () => void;
  readonly choose: (choice: { readonly size: string | null; readonly colorway: string | null }) => void;
}

export interface Tools {
  readonly showPreview: (preview: Preview | null) => void;
  readonly showLock: (locked: boolean) => void;
  /** Undefined while there is no picture. */
  readonly showScale: (pixelsAnInch: number | undefined) => void;
}

/** Drawn on a 16 by 16 sheet, stroked with the text's colour. */
const ICONS = {
  minus: 'M3 8h10',
  plus: 'M3 8h10M8 3v10',
  fit: 'M2.5 6V2.5H6M10 2.5h3.5V6M13.5 10v3.5H10M6 13.5H2.5V10',
  background: 'M2.5 2.5h11v11h-11zM13.5 2.5l-11 11M13.5 7l-6.5 6.500M13.5 11.200l-2.3 2.3',
  open: 'M3.5 7.500h9v6h-9zM5.5 7.500v-2.500a2.5 2.5 0 0 1 4.8-1',
  locked: 'M3.5 7.500h9v6h-9zM5.5 7.500v-2.500a2.5 2.5 0 0 1 5 0v2.5',
  back: 'M10 3l-5 5 5 5',
  on: 'M6 3l5 5-5 5',
  words: 'M2.5 4h11M2.5 7h11M2.5 10h11M2.5 13h6',
  save: 'M8 2v8M4.5 7L8 10.500 11.5 7M2.5 13.500h11',
  print: 'M4.5 6V2.500h7V6M4.5 11h-2V6h11v5h-2M4.5 9h7v4.500h-7z',
  window: 'M6.5 3.500h-4v9h9v-3M9 2.500h4.500V7M13 3L8 8',
} as const;

const SVG = 'http://www.w3.org/2000/svg';
/** A screen's pixels an inch, as style sheets count them: where a picture is as large as the quilt. */
const LIFE_SIZE = 96;

export function toolsIn(bar: HTMLElement, wishes: Wishes): Tools {
  const size = chooser('Size');
  const colorway = chooser('Colourway');
  const choose = (): void => wishes.choose({ size: size.value(), colorway: colorway.value() });
  size.element.addEventListener('change', choose);
  colorway.element.addEventListener('change', choose);
  const scale = document.createElement('output');
  const lock = button('open', 'Stay with this file', wishes.lock);
  bar.replaceChildren(
    size.element,
    colorway.element,
    button('minus', 'Zoom out (−)', wishes.zoomOut),
    scale,
    button('plus', 'Zoom in (+)', wishes.zoomIn),
    button('fit', 'Show all (0)', wishes.fit),
    button('background', 'Change the background', wishes.background),
    lock,
  );
  return {
    showPreview: (preview) => {
      size.offer(preview?.sizes ?? [], preview?.size ?? null);
      colorway.offer(preview?.colorways ?? [], preview?.colorway ?? null);
    },
    showLock: (locked) => {
      lock.replaceChildren(icon(locked ? 'locked' : 'open'));
      lock.setAttribute('aria-pressed', `${locked}`);
      lock.title = locked ? 'Follow the active file' : 'Stay with this file';
      lock.setAttribute('aria-label', 'Stay with this file');
    },
    showScale: (pixelsAnInch) => {
      scale.textContent = pixelsAnInch === undefined ? '' : percentOf((pixelsAnInch / LIFE_SIZE) * 100);
    },
  };
}

/** Two digits below 100, whole above. */
function percentOf(value: number): string {
  return `${value < 99.5 ? Number(value.toPrecision(2)) : Math.round(value)}%`;
}

interface Chooser {
  readonly element: HTMLSelectElement;
  readonly value: () => string | null;
  readonly offer: (names: readonly string[], chosen: string | null) => void;
}

/** Hidden while there is nothing to choose; its first entry is what the file shows by itself. */
function chooser(label: string): Chooser {
  const element = document.createElement('select');
  element.setAttribute('aria-label', label);
  element.title = label;
  const offer = (names: readonly string[], chosen: string | null): void => {
    const options = [new Option(label, ''), ...names.map((name) => new Option(name, name))];
    element.replaceChildren(...options);
    element.value = chosen ?? '';
    element.hidden = names.length === 0;
  };
  offer([], null);
  return { element, offer, value: () => (element.value === '' ? null : element.value) };
}

/** A button with a drawing on it; its title is its name. */
export function button(name: keyof typeof ICONS, title: string, act: () => void): HTMLButtonElement {
  const element = document.createElement('button');
  element.type = 'button';
  element.title = title;
  element.setAttribute('aria-label', title);
  element.append(icon(name));
  element.addEventListener('click', act);
  return element;
}

function icon(name: keyof typeof ICONS): SVGSVGElement {
  const root = document.createElementNS(SVG, 'svg');
  root.setAttribute('viewBox', '0 0 16 16');
  root.setAttribute('aria-hidden', 'true');
  const path = document.createElementNS(SVG, 'path');
  path.setAttribute('d', ICONS[name]);
  root.append(path);
  return root;
}
