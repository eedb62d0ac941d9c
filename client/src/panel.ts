/** One preview: a web view panel that shows a file's picture and keeps step with its text. Nothing runs while it is hidden. */
import { Disposable, Uri, window, workspace, type TextEditor, type WebviewPanel } from 'vscode';
import type { Preview, SourceRange } from '../../server/src/lsp/requests.ts';
import { pace } from './pace.ts';
import { pageOf } from './page.ts';
import type { FileState, FromPage, PageState, ToPage } from './preview/messages.ts';
import { reveal } from './reveal.ts';
import type { Server } from './server.ts';

export interface PreviewPanel {
  readonly panel: WebviewPanel;
  readonly uri: () => string | undefined;
  readonly locked: () => boolean;
  /** Shows another file from now on. */
  readonly show: (uri: string) => void;
  readonly toggleLock: () => void;
  /** The file's picture may be another. */
  readonly changed: () => void;
  /** The cursor stands somewhere else. */
  readonly moved: (editor: TextEditor) => void;
  readonly dispose: () => void;
}

const RENDER_EVERY = 300;
const OUTLINE_EVERY = 60;

/** Fills a panel that the editor made, or kept over a restart. */
export function previewIn(panel: WebviewPanel, dist: Uri, server: Server, state: PageState): PreviewPanel {
  let { uri, locked } = state;
  let shown: Preview | null = null;
  let clicked = { at: '', next: 0 };
  const choices = new Map<string, Pick<FileState, 'size' | 'colorway'>>(state.files.map((file) => [file.uri, file]));
  const choice = (of: string): Pick<FileState, 'size' | 'colorway'> => choices.get(of) ?? { size: null, colorway: null };
  const post = (message: ToPage): Thenable<boolean> => panel.webview.postMessage(message);

  const renders = pace(RENDER_EVERY, async () => {
    const asked = uri;
    if (!panel.visible) return;
    const preview = asked === null ? null : await server.ask('scant/preview', { uri: asked, ...choice(asked) });
    if (preview === undefined || asked !== uri) return;
    shown = preview;
    await post({ type: 'show', uri, name: nameOf(uri), locked, preview });
    outlines.ask();
  });
  const outlines = pace(OUTLINE_EVERY, async () => {
    const editor = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri);
    if (!panel.visible || uri === null || !editor || !shown) return;
    const { line, character } = editor.selection.active;
    const shapes = await server.ask('scant/shapesAt', { uri, position: { line, character }, ...choice(uri) });
    if (shapes) await post({ type: 'outline', uri, version: shapes.version, path: shapes.path });
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
  const toggleLock = (): void => {
    locked = !locked;
    rename();
    void post({ type: 'lock', locked });
  };
  const click = async (message: FromPage & { type: 'click' }): Promise<void> => {
    if (message.uri !== uri) return;
    const places = (await server.ask('scant/textAt', { uri, x: message.x, y: message.y, ...choice(uri) })) ?? [];
    const place = nextPlace(places);
    if (place) await reveal(place, panel.viewColumn);
  };
  /** The innermost text first; the same shape again gives what it stands in. */
  const nextPlace = (places: readonly SourceRange[]): SourceRange | undefined => {
    const at = JSON.stringify(places);
    const index = clicked.at === at ? clicked.next % places.length : 0;
    clicked = { at, next: index + 1 };
    return places[index];
  };
  const listen = (message: FromPage): void => {
    if (message.type === 'ready') renders.ask();
    else if (message.type === 'click') void click(message);
    else if (message.type === 'toggleLock') toggleLock();
    else {
      choices.set(message.uri, { size: message.size, colorway: message.colorway });
      renders.ask();
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
    toggleLock,
    changed: renders.ask,
    moved: (editor) => editor.document.uri.toString() === uri && outlines.ask(),
    dispose: () => {
      Disposable.from(...parts).dispose();
    },
  };
}

function nameOf(uri: string | null): string {
  if (uri === null) return '';
  const path = Uri.parse(uri).path;
  return workspace.asRelativePath(path.slice(path.lastIndexOf('/') + 1));
}
