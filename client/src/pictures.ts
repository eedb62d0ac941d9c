/** The picture of a preview outside of it: saved as SVG or PNG, or opened where it can be printed. */
import { env, UIKind, Uri, window, workspace } from 'vscode';
import type { Exported } from '../../server/src/lsp/requests.ts';

export interface Shown extends Exported {
  /** The file that it shows. */
  readonly uri: string;
}

/** Points of the longer side of a PNG. */
const POINTS = 3000;

/** Draws an SVG as a PNG, in base 64; null when that did not go. */
export type Rasterise = (svg: string, width: number, height: number) => Promise<string | null>;

export async function savePicture(shown: Shown | undefined, rasterise: Rasterise): Promise<void> {
  if (!shown) return nothing();
  const target = await window.showSaveDialog({ defaultUri: beside(shown, 'svg'), filters: { 'SVG picture': ['svg'], 'PNG picture': ['png'] }, title: 'Save the picture' });
  if (!target) return;
  const bytes = await bytesOf(shown, target, rasterise);
  if (!bytes) return void window.showErrorMessage('The picture could not be drawn as a PNG. Save it as an SVG.');
  await workspace.fs.writeFile(target, bytes);
  await told(target);
}

/** Where files open in a browser, the page prints itself from the scratch folder; elsewhere it is saved, to be opened in one. */
export async function printPicture(shown: Shown | undefined, scratch: Uri): Promise<void> {
  if (!shown) return nothing();
  const isHere = env.uiKind === UIKind.Desktop && env.remoteName === undefined;
  const target = isHere ? Uri.joinPath(scratch, `${nameOf(shown)}.html`) : await window.showSaveDialog({ defaultUri: beside(shown, 'html'), filters: { 'Page to print': ['html'] }, title: 'Save a page to print' });
  if (!target) return;
  await workspace.fs.writeFile(target, new TextEncoder().encode(shown.html));
  if (isHere) await env.openExternal(target);
  else void window.showInformationMessage(`Saved ${workspace.asRelativePath(target)}. Open it in a browser: it prints itself.`);
}

async function bytesOf({ svg, width, height }: Shown, target: Uri, rasterise: Rasterise): Promise<Uint8Array | undefined> {
  if (!target.path.toLowerCase().endsWith('.png')) return new TextEncoder().encode(svg);
  const scale = POINTS / Math.max(width, height);
  const png = await rasterise(svg, Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale)));
  return png === null ? undefined : Uint8Array.from(atob(png), (character) => character.charCodeAt(0));
}

async function told(target: Uri): Promise<void> {
  const open = 'Open';
  if ((await window.showInformationMessage(`Saved ${workspace.asRelativePath(target)}.`, open)) === open) await env.openExternal(target);
}

function nothing(): void {
  void window.showInformationMessage('There is no picture yet.');
}

function nameOf({ uri, name }: Shown): string {
  const file = Uri.parse(uri).path.replace(/^.*\//, '').replace(/\.quilt$/, '');
  return `${file}-${name}`;
}

function beside(shown: Shown, end: string): Uri {
  const source = Uri.parse(shown.uri);
  const folder = source.scheme === 'untitled' ? workspace.workspaceFolders?.[0]?.uri : Uri.joinPath(source, '..');
  return folder ? Uri.joinPath(folder, `${nameOf(shown)}.${end}`) : Uri.file(`/${nameOf(shown)}.${end}`);
}
