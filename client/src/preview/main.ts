/** The preview's page: shows what the extension sends, keeps the view over every edit, and says where it was clicked. */
import './preview.css';
import type { Preview, Tile } from '../../../server/src/lsp/requests.ts';
import { barIn } from './bar.ts';
import { besidesIn } from './beside.ts';
import { ZOOM_STEP, listenTo } from './gestures.ts';
import { BACKGROUNDS, asPageState, newFile, withFile, type Background, type FileState, type FromPage, type PageState, type ToPage, type View } from './messages.ts';
import { BASE, sheetIn } from './picture.ts';
import { rasterised } from './raster.ts';
import { tilesIn } from './tiles.ts';
import { toolsIn } from './tools.ts';
import { fitted, inPicture, inSight, moved, zoomed, type Extent, type Spot } from './view.ts';
import { badgeFor, noteFor } from './words.ts';

declare function acquireVsCodeApi(): { postMessage: (message: FromPage) => void; getState: () => unknown; setState: (state: PageState) => void };

const editor = acquireVsCodeApi();
const stage = found('stage');
const sheetElement = found('sheet');
const note = found('note');
const badge = found('badge');
const words = found('words');
const tileLayer = document.createElement('div');
tileLayer.className = 'layer tiles';
const sheet = sheetIn(sheetElement, tileLayer);
const besides = besidesIn(words);
let state = asPageState(editor.getState(), backgroundOf(document.documentElement.dataset.background));
let file: FileState | undefined;
let view: View | undefined;
let wordsWanted = true;
let hasSteps = false;

const tools = toolsIn(found('tools'), {
  zoomIn: () => zoom(ZOOM_STEP),
  zoomOut: () => zoom(1 / ZOOM_STEP),
  fit,
  background: () => {
    const next = BACKGROUNDS[(BACKGROUNDS.indexOf(state.background) + 1) % BACKGROUNDS.length] ?? 'theme';
    remember({ ...state, background: next });
    paint();
  },
  lock: () => editor.postMessage({ type: 'toggleLock' }),
  choose: (choice) => {
    if (!file) return;
    file = { ...file, ...choice };
    remember(withFile(state, file));
    editor.postMessage({ type: 'choose', uri: file.uri, ...choice });
  },
});
const bar = barIn(found('bar'), {
  look: (name) => look(name, file?.step ?? 1),
  step: (number) => look(state.look, number),
  words: (open) => {
    wordsWanted = open;
    showWords(words.childElementCount > 0);
  },
  save: () => editor.postMessage({ type: 'save' }),
  print: () => editor.postMessage({ type: 'print' }),
  ownWindow: () => editor.postMessage({ type: 'ownWindow' }),
});
const tiles = tilesIn(tileLayer, { choose: write, reach });

listenTo(stage, {
  move: (by) => place((now, page, picture) => moved(now, by, page, picture)),
  zoom,
  fit,
  click,
  step: (by) => hasSteps && look(state.look, (file?.step ?? 1) + by),
  rest: settle,
});
// The browser scrolls what has the focus into view; the picture is moved instead.
stage.addEventListener('scroll', () => stage.scrollTo(0, 0));
new ResizeObserver(layOut).observe(stage);
window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
  if (data.type === 'show') show(data);
  else if (data.type === 'lock') lock(data.locked);
  else if (data.type === 'rasterise') void rasterised(data.svg, data.width, data.height).then((png) => editor.postMessage({ type: 'rastered', png }));
  else if (data.uri === file?.uri) sheet.outline(data.path, data.version);
});
paint();
editor.postMessage({ type: 'ready' });

function show({ uri, name, locked, preview }: ToPage & { type: 'show' }): void {
  if (uri !== file?.uri) file = uri === null ? undefined : (state.files.find((each) => each.uri === uri) ?? newFile(uri));
  if (file && preview) file = { ...file, block: preview.block ?? file.block, step: preview.step?.number ?? file.step, colorway: preview.colorway ?? file.colorway };
  hasSteps = preview?.step !== undefined && preview.step !== null;
  remember({ ...(file ? withFile(state, file) : state), uri, look: preview?.view ?? state.look });
  view = file?.views[state.look];
  sheet.show(preview);
  tools.showPreview(preview);
  bar.show(preview);
  if (!preview || preview.svg !== null) tiles.show(preview?.tiles ?? []);
  showWords(besides.show(preview));
  stage.setAttribute('aria-label', name === '' ? 'Preview' : `${preview?.views.find((each) => each.name === preview.view)?.title ?? 'Preview'} of ${name}`);
  say(uri, preview);
  lock(locked);
  layOut();
}

function showWords(isThere: boolean): void {
  words.hidden = !isThere || !wordsWanted;
  bar.showWords(!isThere ? 'none' : wordsWanted ? 'open' : 'closed');
}

/** Another view or step; what is shown changes when the answer comes. */
function look(name: string, step: number): void {
  if (file) file = { ...file, step };
  remember({ ...(file ? withFile(state, file) : state), look: name });
  editor.postMessage({ type: 'look', uri: file?.uri ?? null, view: name, step });
}

function say(uri: string | null, preview: Preview | null): void {
  note.textContent = sheet.extent() ? '' : noteFor(uri, preview);
  badge.textContent = preview ? badgeFor(preview, sheet.shown()) : '';
  badge.hidden = badge.textContent === '';
}

function lock(locked: boolean): void {
  remember({ ...state, locked });
  tools.showLock(locked);
}

/** A picture that nobody has moved fills the page, whatever becomes of either. */
function layOut(): void {
  const picture = sheet.extent();
  if (!picture) tools.showScale(undefined);
  if (!picture || stage.clientWidth === 0) return;
  if (!file?.views[state.look]) view = fitted(page(), picture);
  apply();
}

function fit(): void {
  if (file) file = { ...file, views: Object.fromEntries(Object.entries(file.views).filter(([name]) => name !== state.look)) };
  layOut();
}

function zoom(factor: number, spot?: Spot): void {
  place((now, { width, height }) => zoomed(now, factor, spot ?? { x: width / 2, y: height / 2 }));
}

function place(change: (view: View, page: Extent, picture: Extent) => View): void {
  const picture = sheet.extent();
  if (!view || !picture || !file) return;
  view = change(view, page(), picture);
  file = { ...file, views: { ...file.views, [state.look]: view } };
  apply();
}

function apply(): void {
  if (!view) return;
  sheetElement.style.transform = `translate(${view.x}px, ${view.y}px) scale(${view.scale / BASE})`;
  tools.showScale(view.scale);
  if (!stage.classList.contains('moving')) settle();
}

/**
 * Where things lie is remembered, and lines and names get their widths back: not while the picture moves, because all of it
 * is painted anew for that.
 */
function settle(): void {
  if (view) sheetElement.style.setProperty('--unscale', `${BASE / view.scale}`);
  if (file) remember(withFile(state, file));
}

/** A tile is chosen; with the key that follows links, its text is shown as that of any shape is. */
function click(spot: Spot, follows: boolean): void {
  if (!view || !file) return;
  const at = inPicture(view, spot);
  const origin = sheet.origin();
  const own = { x: at.x - origin.x, y: at.y - origin.y };
  const tile = follows ? undefined : tiles.at(own);
  if (tile) write(tile);
  else editor.postMessage({ type: 'click', uri: file.uri, ...own });
}

function write(tile: Tile): void {
  if (file && tile.action !== null) editor.postMessage({ type: 'write', uri: file.uri, tile: tile.id });
}

function reach({ x, y, width, height }: Tile): void {
  const origin = sheet.origin();
  const part = { x: x + origin.x, y: y + origin.y, width, height };
  if (view && inSight(view, page(), part) !== view) place((now, within) => inSight(now, within, part));
}

function page(): Extent {
  return { width: stage.clientWidth, height: stage.clientHeight };
}

function paint(): void {
  document.documentElement.dataset.background = state.background;
}

function remember(next: PageState): void {
  state = next;
  editor.setState(next);
}

function backgroundOf(name: string | undefined): Background {
  return BACKGROUNDS.find((each) => each === name) ?? 'theme';
}

function found(id: string): HTMLElement {
  const element = document.getElementById(id);
  if (!element) throw new Error(`The page has no #${id}.`);
  return element;
}
