/** One preview: a web view panel that shows a file in a view and keeps step with its text. Nothing runs while it is hidden. */
import { commands, Disposable, Uri, window, workspace, type Position, type TextEditor, type WebviewPanel } from 'vscode';
import type { Preview, PreviewParams, SourceRange } from '../../server/src/lsp/requests.ts';
import { choicesFrom } from './choices.ts';
import { pace } from './pace.ts';
import { pageOf } from './page.ts';
import type { FromPage, PageState, ToPage } from './preview/messages.ts';
import { printPicture, savePicture, type Shown } from './pictures.ts';
import { reveal } from './reveal.ts';
import type { Server } from './server.ts';
import { writeTile } from './write.ts';

export interface PreviewPanel {
  readonly panel: WebviewPanel;
  readonly uri: () => string | undefined;
  readonly locked: () => boolean;
  /** Shows another file from now on. */
  readonly show: (uri: string) => void;
  /** Shows the file in another view. */
  readonly look: (view: string) => void;
  readonly toggleLock: () => void;
  readonly save: () => Promise<void>;
  readonly print: () => Promise<void>;
  readonly moveToOwnWindow: () => Promise<void>;
  /** The file's picture may be another. */
  readonly changed: () => void;
  /** The cursor stands somewhere else. */
  readonly moved: (editor: TextEditor) => void;
  readonly dispose: () => void;
}

const RENDER_EVERY = 300;
const OUTLINE_EVERY = 60;

export interface Folders {
  /** The page's script and style. */
  readonly dist: Uri;
  /** The extension's own, for pages that are opened elsewhere. */
  readonly scratch: Uri;
}

/** Fills a panel that the editor made, or kept over a restart. */
export function previewIn(panel: WebviewPanel, { dist, scratch }: Folders, server: Server, state: PageState): PreviewPanel {
  let { uri, locked, look: view } = state;
  let shown: Preview | null = null;
  let clicked = { at: '', next: 0 };
  let rastered: ((png: string | null) => void) | undefined;
  /** Where a click in this preview has put the cursor: the view stays with its block while it is there. */
  let led = '';
  const { choice, choose } = choicesFrom(state.files);
  const post = (message: ToPage): Thenable<boolean> => panel.webview.postMessage(message);
  const cursor = (): Position | undefined => window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri)?.selection.active;
  const asking = (of: string): PreviewParams => {
    const at = cursor();
    return { uri: of, ...choice(of), view, ...(at && placeOf(at) !== led && { position: { line: at.line, character: at.character } }) };
  };

  const renders = pace(RENDER_EVERY, async () => {
    const asked = uri;
    if (!panel.visible) return;
    const preview = asked === null ? null : await server.ask('scant/preview', asking(asked));
    if (preview === undefined || asked !== uri) return;
    shown = preview;
    if (preview?.block && asked !== null) choose(asked, { block: preview.block });
    await post({ type: 'show', uri, name: nameOf(uri), locked, preview });
    outlines.ask();
  });
  const outlines = pace(OUTLINE_EVERY, async () => {
    const at = cursor();
    if (!panel.visible || uri === null || !at || !shown) return;
    const shapes = await server.ask('scant/shapesAt', { ...asking(uri), position: { line: at.line, character: at.character }, block: shown.block });
    if (!shapes) return;
    if (shapes.block !== shown.block && placeOf(at) !== led) renders.ask();
    else await post({ type: 'outline', uri, version: shapes.version, path: shapes.path });
  });

  const rename = (): void => {
    panel.title = uri === null ? 'Preview' : `${locked ? 'Locked' : 'Preview'}: ${nameOf(uri)}`;
  };
  const show = (next: string): void => {
    if (next === uri) return;
    uri = next;
    shown = null;
    rename();
    renders.ask();
  };
  const look = (next: string): void => {
    view = next;
    renders.ask();
  };
  const toggleLock = (): void => {
    locked = !locked;
    rename();
    void post({ type: 'lock', locked });
  };
  const click = async (message: FromPage & { type: 'click' }): Promise<void> => {
    if (message.uri !== uri) return;
    const places = (await server.ask('scant/textAt', { uri, ...choice(uri), view, block: shown?.block ?? null, x: message.x, y: message.y })) ?? [];
    const place = nextPlace(places);
    if (!place) return;
    led = placeOf(place.range.end);
    await reveal(place, panel.viewColumn);
  };
  /** The innermost text first; the same shape again gives what it stands in. */
  const nextPlace = (places: readonly SourceRange[]): SourceRange | undefined => {
    const at = JSON.stringify(places);
    const index = clicked.at === at ? clicked.next % places.length : 0;
    clicked = { at, next: index + 1 };
    return places[index];
  };
  const write = async (of: string, tile: string): Promise<void> => {
    const written = await server.ask('scant/write', { ...asking(of), block: shown?.block ?? null, tile });
    if (!written || !(await writeTile(written)) || written.colorway === null) return;
    choose(of, { colorway: written.colorway });
    renders.ask();
  };
  const picture = async (): Promise<Shown | undefined> => {
    const exported = uri === null ? undefined : await server.ask('scant/export', { ...asking(uri), block: shown?.block ?? null });
    return exported && uri !== null ? { ...exported, uri } : undefined;
  };
  const rasterise = (svg: string, width: number, height: number): Promise<string | null> =>
    new Promise((resolve) => {
      rastered?.(null);
      rastered = resolve;
      void post({ type: 'rasterise', svg, width, height });
    });
  const save = async (): Promise<void> => savePicture(await picture(), rasterise);
  const print = async (): Promise<void> => printPicture(await picture(), scratch);
  const moveToOwnWindow = async (): Promise<void> => {
    panel.reveal(undefined, false);
    await commands.executeCommand('workbench.action.moveEditorToNewWindow');
  };
  const listen = (message: FromPage): void => {
    switch (message.type) {
      case 'ready':
        return renders.ask();
      case 'click':
        return void click(message);
      case 'choose':
        choose(message.uri, { size: message.size, colorway: message.colorway });
        return renders.ask();
      case 'look':
        if (message.uri !== null) choose(message.uri, { step: message.step });
        return look(message.view);
      case 'write':
        return void write(message.uri, message.tile);
      case 'rastered':
        return rastered?.(message.png);
      case 'toggleLock':
        return toggleLock();
      case 'save':
        return void save();
      case 'print':
        return void print();
      case 'ownWindow':
        return void moveToOwnWindow();
    }
  };

  const parts = [
    panel.webview.onDidReceiveMessage(listen),
    panel.onDidChangeViewState(() => panel.visible && renders.ask()),
    new Disposable(() => [renders, outlines].forEach((each) => each.stop())),
  ];
  panel.webview.options = { enableScripts: true, localResourceRoots: [dist] };
  panel.webview.html = pageOf(panel.webview, dist, state.background);
  rename();
  return {
    panel,
    uri: () => uri ?? undefined,
    locked: () => locked,
    show,
    look,
    toggleLock,
    save,
    print,
    moveToOwnWindow,
    changed: renders.ask,
    moved: (editor) => {
      if (editor.document.uri.toString() !== uri) return;
      if (placeOf(editor.selection.active) !== led) led = '';
      outlines.ask();
    },
    dispose: () => {
      Disposable.from(...parts).dispose();
    },
  };
}

function placeOf({ line, character }: Pick<Position, 'line' | 'character'>): string {
  return `${line}:${character}`;
}

function nameOf(uri: string | null): string {
  if (uri === null) return '';
  const path = Uri.parse(uri).path;
  return workspace.asRelativePath(path.slice(path.lastIndexOf('/') + 1));
}
