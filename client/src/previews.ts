/** All previews of a window: opening, following the active file, and bringing them back after a restart. */
import { Disposable, Uri, ViewColumn, window, workspace, type ExtensionContext, type WebviewPanel } from 'vscode';
import { previewIn, type PreviewPanel } from './panel.ts';
import { BACKGROUNDS, FIRST_VIEW, asPageState, type Background, type PageState } from './preview/messages.ts';
import type { Server } from './server.ts';

export interface Previews {
  /** Opens the preview that follows the active file, or shows the one that is there. */
  readonly openFollowing: () => void;
  /** Opens one more preview, which stays with the active file. */
  readonly openLocked: () => void;
  readonly toggleLock: () => void;
  /** Shows a view in the preview at hand, or in a new one. */
  readonly look: (view: string) => void;
  readonly save: () => Promise<void> | undefined;
  readonly print: () => Promise<void> | undefined;
  readonly moveToOwnWindow: () => Promise<void> | undefined;
  readonly dispose: () => void;
}

const KIND = 'scant.preview';

export function offerPreviews(context: ExtensionContext, server: Server): Previews {
  const open = new Set<PreviewPanel>();
  const folders = { dist: Uri.joinPath(context.extensionUri, 'dist'), scratch: context.globalStorageUri };

  const adopt = (panel: WebviewPanel, state: PageState): void => {
    const preview = previewIn(panel, folders, server, state);
    open.add(preview);
    panel.onDidDispose(() => {
      open.delete(preview);
      preview.dispose();
    });
  };
  const create = (uri: string | null, { locked, look = FIRST_VIEW }: Pick<PageState, 'locked'> & Partial<Pick<PageState, 'look'>>): void => {
    const panel = window.createWebviewPanel(KIND, 'Preview', { viewColumn: ViewColumn.Beside, preserveFocus: true });
    adopt(panel, { uri, locked, look, background: background(), files: [] });
  };
  /** The one that is active, else one that can be seen. */
  const atHand = (): PreviewPanel | undefined => [...open].find(({ panel }) => panel.active) ?? [...open].find(({ panel }) => panel.visible);
  const openFollowing = (): void => {
    const uri = activeQuilt();
    const following = [...open].find((each) => !each.locked());
    if (!following) return create(uri ?? null, { locked: false });
    if (uri !== undefined) following.show(uri);
    following.panel.reveal(undefined, true);
  };
  const openLocked = (): void => {
    const uri = activeQuilt();
    if (uri === undefined) return void window.showInformationMessage('Open a .quilt file to preview it.');
    create(uri, { locked: true });
  };
  const toggleLock = (): void => atHand()?.toggleLock();
  const look = (view: string): void => {
    const preview = atHand();
    if (preview) preview.look(view);
    else create(activeQuilt() ?? null, { locked: false, look: view });
  };
  const follow = (): void => {
    const uri = activeQuilt();
    for (const preview of open) if (uri !== undefined && !preview.locked()) preview.show(uri);
  };
  const changed = (uris: readonly string[] | undefined): void => {
    for (const preview of open) if (!uris || uris.includes(preview.uri() ?? '')) preview.changed();
  };
  const listeners = [
    server.onChanged(changed),
    window.onDidChangeActiveTextEditor(follow),
    window.onDidChangeTextEditorSelection(({ textEditor }) => open.forEach((preview) => preview.moved(textEditor))),
    workspace.onDidRenameFiles(({ files }) => {
      for (const { oldUri, newUri } of files) for (const preview of open) if (preview.uri() === oldUri.toString()) preview.show(newUri.toString());
    }),
    window.registerWebviewPanelSerializer(KIND, {
      deserializeWebviewPanel: (panel, state) => Promise.resolve(adopt(panel, asPageState(state, background()))),
    }),
  ];
  const dispose = (): void => {
    Disposable.from(...listeners, ...open).dispose();
  };
  return { openFollowing, openLocked, toggleLock, look, save: () => atHand()?.save(), print: () => atHand()?.print(), moveToOwnWindow: () => atHand()?.moveToOwnWindow(), dispose };
}

/** The active file, or the one on screen when the preview itself is active. */
function activeQuilt(): string | undefined {
  const editors = window.activeTextEditor ? [window.activeTextEditor] : window.visibleTextEditors;
  return editors.find(({ document }) => document.languageId === 'quilt')?.document.uri.toString();
}

function background(): Background {
  const wanted = workspace.getConfiguration('scant').get<string>('preview.background');
  return BACKGROUNDS.find((each) => each === wanted) ?? 'theme';
}
