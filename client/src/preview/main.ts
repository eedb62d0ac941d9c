/** The preview's page: shows what the extension sends, keeps the view over every edit, and says where it was clicked. */
import './preview.css';
import type { Preview } from '../../../server/src/lsp/requests.ts';
import { ZOOM_STEP, listenTo } from './gestures.ts';
import { BACKGROUNDS, asPageState, withFile, type Background, type FileState, type FromPage, type PageState, type ToPage, type View } from './messages.ts';
import { BASE, sheetIn } from './picture.ts';
import { toolsIn } from './tools.ts';
import { fitted, inPicture, moved, zoomed, type Extent, type Spot } from './view.ts';
import { badgeFor, noteFor } from './words.ts';

declare function acquireVsCodeApi(): { postMessage: (message: FromPage) => void; getState: () => unknown; setState: (state: PageState) => void };

const editor = acquireVsCodeApi();
const stage = found('stage');
const sheetElement = found('sheet');
const note = found('note');
const badge = found('badge');
const sheet = sheetIn(sheetElement);
let state = asPageState(editor.getState(), backgroundOf(document.documentElement.dataset.background));
let file: FileState | undefined;
let view: View | undefined;

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

listenTo(stage, {
  move: (by) => place((now, page, picture) => moved(now, by, page, picture)),
  zoom,
  fit,
  click,
  rest: settle,
});
new ResizeObserver(layOut).observe(stage);
window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
  if (data.type === 'show') show(data);
  else if (data.type === 'lock') lock(data.locked);
  else if (data.uri === file?.uri) sheet.outline(data.path, data.version);
});
paint();
editor.postMessage({ type: 'ready' });

function show({ uri, name, locked, preview }: ToPage & { type: 'show' }): void {
  if (uri !== file?.uri) {
    file = uri === null ? undefined : (state.files.find((each) => each.uri === uri) ?? { uri, size: null, colorway: null });
    view = file?.view;
  }
  sheet.show(preview);
  tools.showPreview(preview);
  stage.setAttribute('aria-label', name === '' ? 'Preview' : `Preview of ${name}`);
  say(uri, preview);
  remember({ ...(file ? withFile(state, file) : state), uri });
  lock(locked);
  layOut();
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
  if (!file?.view) view = fitted(page(), picture);
  apply();
}

function fit(): void {
  if (file) file = { uri: file.uri, size: file.size, colorway: file.colorway };
  layOut();
}

function zoom(factor: number, spot?: Spot): void {
  place((now, { width, height }) => zoomed(now, factor, spot ?? { x: width / 2, y: height / 2 }));
}

function place(change: (view: View, page: Extent, picture: Extent) => View): void {
  const picture = sheet.extent();
  if (!view || !picture || !file) return;
  view = change(view, page(), picture);
  file = { ...file, view };
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

function click(spot: Spot): void {
  if (!view || !file) return;
  const { x, y } = inPicture(view, spot);
  const origin = sheet.origin();
  editor.postMessage({ type: 'click', uri: file.uri, x: x - origin.x, y: y - origin.y });
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
