/**
 * Writing outputs: every file whole or not at all, only where bytes differ, never through a link, never over what a
 * person has edited. Everything is looked at before anything is changed, so what is refused leaves the folder as it was.
 */
import { chmodSync, lstatSync, mkdirSync, readFileSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { codeOf, reasonOf } from './failures.ts';
import { MANIFEST_FILE, manifestText, readManifest, sumOf, type Manifest } from './manifest.ts';
import { isInside, real } from './sources.ts';

export interface OutputFile {
  /** In the output folder, with `/`. */
  readonly path: string;
  readonly text: string;
}

export interface WriteOptions {
  /** `overwrite` takes files that a person has edited; links and folders in the way stay. Unless given: `keep`. */
  readonly edited?: 'keep' | 'overwrite';
  /** `remove` takes away what an earlier build wrote, nobody edited and this one no longer makes. Unless given: `keep`. */
  readonly stale?: 'keep' | 'remove';
  /** The folder must lie in this one, links followed. */
  readonly within?: string;
}

/** Paths as in `OutputFile`, in order. */
export interface Written {
  readonly kind: 'written';
  readonly written: readonly string[];
  readonly unchanged: readonly string[];
  readonly removed: readonly string[];
}

/** Nothing was written; one sentence for each reason, paths joined to the folder's. */
export interface Refused {
  readonly kind: 'refused';
  readonly reasons: readonly string[];
}

/** Makes the folder hold these files. Never throws. */
export function writeOutputs(folder: string, files: readonly OutputFile[], options: WriteOptions = {}): Written | Refused {
  const astray = options.within === undefined ? undefined : leavesFolder(folder, options.within);
  if (astray !== undefined) return { kind: 'refused', reasons: [astray] };
  const manifest = readManifest(folder);
  const states = files.map((file) => stateOf(folder, file, manifest));
  const reasons = [...states, bookState(folder)].map((state) => refusal(folder, state, options)).filter((reason) => reason !== undefined);
  if (reasons.length > 0) return { kind: 'refused', reasons };
  const changed = files.filter((_, index) => states[index]?.now !== 'same');
  const stale = options.stale === 'remove' ? staleIn(folder, files, manifest) : [];
  const sums = new Map([...manifest].filter(([path]) => !stale.includes(path)));
  for (const file of files) sums.set(file.path, sumOf(file.text));
  const book = { path: MANIFEST_FILE, text: manifestText(sums) };
  const bookChanged = files.length > 0 && contentOf(join(folder, MANIFEST_FILE))?.toString() !== book.text;
  const failure = replaceAll(folder, bookChanged ? [...changed, book] : changed);
  if (failure !== undefined) return { kind: 'refused', reasons: [failure] };
  removeAll(folder, stale);
  const written = changed.map((file) => file.path);
  return { kind: 'written', written, unchanged: files.map((file) => file.path).filter((path) => !written.includes(path)), removed: stale };
}

/** Replaces one file whole, its permissions kept, links followed. Throws what node:fs throws, the old file untouched. */
export function replaceFile(path: string, text: string): void {
  const target = real(path);
  const temporary = writeAside(target, text);
  try {
    const mode = statSync(target, { throwIfNoEntry: false })?.mode;
    if (mode !== undefined) chmodSync(temporary, mode & 0o7777);
    renameSync(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
}

interface FileState {
  /** `edited`: other bytes than this build's, and not those the manifest knows. */
  readonly now: 'absent' | 'same' | 'ours' | 'edited' | 'folder' | 'link' | 'other' | 'unreadable';
  /** The part of the path that is in the way. */
  readonly at: string;
}

function stateOf(folder: string, file: OutputFile, manifest: Manifest): FileState {
  const parts = file.path.split('/');
  for (let length = 1; length < parts.length; length++) {
    const at = parts.slice(0, length).join('/');
    const kind = kindOf(join(folder, at));
    if (kind === 'absent') return { now: 'absent', at };
    if (kind !== 'folder') return { now: kind === 'file' ? 'other' : kind, at };
  }
  const at = file.path;
  const kind = kindOf(join(folder, at));
  if (kind !== 'file') return { now: kind, at };
  const content = contentOf(join(folder, at));
  if (!content) return { now: 'unreadable', at };
  if (content.equals(Buffer.from(file.text))) return { now: 'same', at };
  const sum = sumOf(content);
  return { now: sum === sumOf(file.text) || knownSums(manifest, at).includes(sum) ? 'ours' : 'edited', at };
}

/** Under any case: on some disks `Star.svg` is what stands in the way of `star.svg`. */
function knownSums(manifest: Manifest, path: string): string[] {
  return [...manifest].filter(([known]) => known.toLowerCase() === path.toLowerCase()).map(([, sum]) => sum);
}

/** The manifest is the tool's own, whatever it holds, but it must be a file. */
function bookState(folder: string): FileState {
  const kind = kindOf(join(folder, MANIFEST_FILE));
  return { now: kind === 'file' ? 'ours' : kind, at: MANIFEST_FILE };
}

function refusal(folder: string, { now, at }: FileState, options: WriteOptions): string | undefined {
  const path = join(folder, at);
  if (now === 'folder') return `${path} is a folder; a file of that name would be written there`;
  if (now === 'link') return `${path} is a link, and links are not followed; move it away`;
  if (now === 'other') return `${path} is in the way; move it away`;
  if (now === 'unreadable') return `${path} cannot be read`;
  if (now === 'edited' && options.edited !== 'overwrite') return `${path} has been edited by hand; move it away (scant build --force overwrites it)`;
  return undefined;
}

function kindOf(path: string): 'absent' | 'file' | 'folder' | 'link' | 'other' | 'unreadable' {
  try {
    const state = lstatSync(path);
    if (state.isSymbolicLink()) return 'link';
    if (state.isDirectory()) return 'folder';
    return state.isFile() ? 'file' : 'other';
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return 'absent';
    return codeOf(error) === 'ENOTDIR' ? 'other' : 'unreadable';
  }
}

function contentOf(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

/** A sentence when the folder, its links followed, does not lie in the other. */
function leavesFolder(folder: string, within: string): string | undefined {
  let nearest = folder;
  while (kindOf(nearest) === 'absent' && nearest !== dirname(nearest)) nearest = dirname(nearest);
  if (isInside(real(within), real(nearest))) return undefined;
  return `${nearest} is a link that leads out of ${within} (scant build --out writes there)`;
}

/** What the manifest knows, this build does not make, and nobody has edited or replaced. */
function staleIn(folder: string, files: readonly OutputFile[], manifest: Manifest): string[] {
  const made = new Set(files.map((file) => file.path.toLowerCase()));
  return [...manifest]
    .filter(([path, sum]) => !made.has(path.toLowerCase()) && stateOf(folder, { path, text: '' }, new Map([[path, sum]])).now === 'ours')
    .map(([path]) => path);
}

/** All new contents stand beside their files before the first one is put in place. Returns a sentence on failure. */
function replaceAll(folder: string, files: readonly OutputFile[]): string | undefined {
  const ready: { readonly temporary: string; readonly path: string }[] = [];
  const fresh: string[] = [];
  let at = folder;
  try {
    for (const file of files) {
      at = join(folder, file.path);
      for (const each of missingFolders(dirname(at))) if (makeFolder(each) === 'made') fresh.push(each);
      ready.push({ temporary: writeAside(at, file.text), path: at });
    }
    for (const { temporary, path } of ready) {
      at = path;
      renameSync(temporary, path);
    }
    return undefined;
  } catch (error) {
    for (const { temporary } of ready) rmSync(temporary, { force: true });
    for (const each of fresh.reverse()) removeEmpty(each);
    return `cannot write ${at}: ${reasonOf(error)}`;
  }
}

/** The folders of a path that are not there yet, the outermost first. (A recursive `mkdir` of Node hangs where nothing can be made.) */
function missingFolders(folder: string): string[] {
  const missing: string[] = [];
  for (let each = folder; kindOf(each) === 'absent' && each !== dirname(each); each = dirname(each)) missing.unshift(each);
  return missing;
}

/** Another build may have made it a moment ago. */
function makeFolder(folder: string): 'made' | 'there' {
  try {
    mkdirSync(folder);
    return 'made';
  } catch (error) {
    if (codeOf(error) === 'EEXIST' && kindOf(folder) === 'folder') return 'there';
    throw error;
  }
}

/** Writes a new file in the same folder and returns its path. */
function writeAside(path: string, text: string): string {
  for (let number = 0; ; number++) {
    const temporary = join(dirname(path), `.${basename(path)}.${process.pid}-${number}.tmp`);
    try {
      writeFileSync(temporary, text, { flag: 'wx' });
      return temporary;
    } catch (error) {
      if (codeOf(error) === 'EEXIST') continue;
      if (codeOf(error) !== 'ENOENT') rmSync(temporary, { force: true });
      throw error;
    }
  }
}

function removeAll(folder: string, paths: readonly string[]): void {
  for (const path of paths) {
    try {
      rmSync(join(folder, path));
    } catch {
      continue;
    }
    if (path.includes('/')) removeEmpty(dirname(join(folder, path)));
  }
}

/** Removes a folder if nothing is in it. */
function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder);
  } catch {
    // Something is in it, or it is gone: either is fine.
  }
}
