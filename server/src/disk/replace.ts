/** Putting files in place: each whole, from a new one written beside it. */
import { chmodSync, mkdirSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { codeOf, reasonOf } from './failures.ts';
import { contentOf, kindOf, namesIn } from './look.ts';
import { MANIFEST_FILE } from './manifest.ts';
import { isInside, real } from './sources.ts';

export interface OutputFile {
  /** In the output folder, with `/`. */
  readonly path: string;
  /** Bytes for what is no text. */
  readonly content: string | Uint8Array;
}

/** An output folder, and where it was, every link followed, when it was looked at: nothing is written anywhere else. */
export interface OutputPlace {
  readonly folder: string;
  readonly home: string;
}

/** Whether a folder still lies where it was: a link that was put there meanwhile leads out. */
export function isAtHome({ home }: OutputPlace, folder: string): boolean {
  return isInside(home, real(folder));
}

/** The manifest's two texts. */
export interface Books {
  /** What may be there while the files are put in place, and what is there then. */
  readonly during: string;
  readonly after: string;
}

/**
 * Replaces one file whole, its permissions kept, links followed. Throws what node:fs throws, and when the file no longer says
 * `was`; the old file is untouched then.
 */
export function replaceFile(path: string, text: string, was?: string): void {
  const target = real(path);
  const temporary = writeAside(target, text);
  try {
    if (was !== undefined && contentOf(target)?.toString() !== was) throw new Error('it has changed meanwhile');
    const mode = statSync(target, { throwIfNoEntry: false })?.mode;
    if (mode !== undefined) chmodSync(temporary, mode & 0o7777);
    renameSync(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
}

/**
 * All new contents stand beside their files before the first one is put in place, and the manifest knows both before and after.
 * Returns a sentence on failure.
 */
export function replaceAll(place: OutputPlace, files: readonly OutputFile[], books: Books | undefined): string | undefined {
  const { folder } = place;
  const ready: { readonly temporary: string; readonly path: string }[] = [];
  const fresh: string[] = [];
  let at = folder;
  try {
    for (const file of files) {
      at = join(folder, file.path);
      for (const each of missingFolders(dirname(at))) if (makeFolder(each) === 'made') fresh.push(each);
      ready.push({ temporary: writeBeside(place, at, file.content), path: at });
    }
    at = join(folder, MANIFEST_FILE);
    if (books) {
      ready.unshift({ temporary: writeBeside(place, at, books.during), path: at });
      ready.push({ temporary: writeBeside(place, at, books.after), path: at });
    }
    for (const { temporary, path } of ready) {
      at = path;
      if (!isAtHome(place, dirname(path))) throw new Error(MOVED);
      renameSync(temporary, path);
    }
    return undefined;
  } catch (error) {
    for (const { temporary } of ready) rmSync(temporary, { force: true });
    for (const each of fresh.reverse()) removeEmpty(each);
    return `cannot write ${at}: ${reasonOf(error)}`;
  }
}

const MOVED = 'its folder has become another one meanwhile';

function writeBeside(place: OutputPlace, path: string, content: string | Uint8Array): string {
  if (!isAtHome(place, dirname(path))) throw new Error(MOVED);
  return writeAside(path, content);
}

/** What a build that was killed left beside its files. Nobody else writes now, and no other program gives such names. */
export function removeLeftovers(place: OutputPlace, files: readonly OutputFile[]): void {
  const own = new Set([MANIFEST_FILE, ...files.map(({ path }) => path)].map((path) => join(place.folder, path)));
  for (const each of new Set([...own].map(dirname))) {
    if (!isAtHome(place, each)) continue;
    for (const name of namesIn(each)) {
      const beside = /^\.(.+)\.\d+-\d+\.tmp$/.exec(name)?.[1];
      if (beside !== undefined && own.has(join(each, beside)) && kindOf(join(each, name)) === 'file') rmSync(join(each, name), { force: true });
    }
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
function writeAside(path: string, content: string | Uint8Array): string {
  for (let number = 0; ; number++) {
    const temporary = join(dirname(path), `.${basename(path)}.${process.pid}-${number}.tmp`);
    try {
      writeFileSync(temporary, content, { flag: 'wx' });
      return temporary;
    } catch (error) {
      if (codeOf(error) === 'EEXIST') continue;
      if (codeOf(error) !== 'ENOENT') rmSync(temporary, { force: true });
      throw error;
    }
  }
}

/** Removes a folder if nothing is in it. */
export function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder);
  } catch {
    // Something is in it, or it is gone: either is fine.
  }
}
