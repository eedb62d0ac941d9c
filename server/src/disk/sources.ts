/** Pattern files on the disk: reading them, finding them in folders, and telling where a workspace ends. */
import { lstatSync, readdirSync, readFileSync, realpathSync, statSync, type Dirent } from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { codeOf, reasonOf } from './failures.ts';

export type Reading =
  | { readonly kind: 'read'; readonly text: string; /** The file began with a byte order mark, which is not in `text`. */ readonly mark: boolean }
  /** `why` completes a sentence: "cannot read a.quilt: …". */
  | { readonly kind: 'failed'; readonly why: string };

/** A file of at most this many bytes is read (language.md, section 10). */
export const LARGEST_FILE = 10 * 1024 * 1024;

/** Reads UTF-8 with or without a byte order mark. Never throws. */
export function readPattern(path: string): Reading {
  try {
    const state = statSync(path);
    if (state.isDirectory()) return failed('it is a folder');
    if (!state.isFile()) return failed('it is not a plain file');
    if (state.size > LARGEST_FILE) return failed(`it has ${(state.size / 1024 / 1024).toFixed(1)} MiB, more than the 10 MiB that a pattern may have`);
    return decoded(readFileSync(path));
  } catch (error) {
    return failed(reasonOf(error));
  }
}

/** Every `*.quilt` file under a folder, by path, in an order of its own. Links to folders are not followed. Throws what node:fs throws. */
export function patternsIn(folder: string): string[] {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return SKIPPED.has(entry.name) ? [] : patternsIn(path);
    return isPattern(entry, path) ? [path] : [];
  });
}

/**
 * The workspace of a file for who has no editor: the nearest folder above it that holds `.git`; else the folder the
 * command runs in, when the file lies in it; else the file's own folder.
 */
export function workspaceOf(path: string, workingFolder: string): string {
  const own = dirname(resolve(workingFolder, path));
  for (let folder = own; ; folder = dirname(folder)) {
    if (exists(join(folder, '.git'))) return folder;
    if (folder === dirname(folder)) break;
  }
  return isInside(workingFolder, own) ? workingFolder : own;
}

/** An absolute path, or why there is none. */
export type Imported = { readonly path: string } | 'missing' | 'outside' | 'unreadable';

/** The file that `import "written"` means in a file, which must lie in one of the folders, links followed. */
export function resolveImport(importer: string, written: string, folders: readonly string[]): Imported {
  const path = resolve(dirname(importer), written);
  if (!folders.some((folder) => isInside(folder, path) || isInside(real(folder), path))) return 'outside';
  try {
    const actual = realpathSync(path);
    return folders.some((folder) => isInside(real(folder), actual)) ? { path } : 'outside';
  } catch (error) {
    return ['ENOENT', 'ENOTDIR'].includes(codeOf(error) ?? '') ? 'missing' : 'unreadable';
  }
}

/** True when a path is a folder or lies in it, as written: links are the caller's affair. */
export function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** A pattern's name for people and folders: the file's name without `.quilt`. */
export function patternName(path: string): string {
  return basename(path).replace(/(.)\.quilt$/i, '$1');
}

/** A path with every link followed; as it stands when it cannot be. */
export function real(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

const SKIPPED = new Set(['node_modules', '.git', 'out']);

function failed(why: string): Reading {
  return { kind: 'failed', why };
}

function decoded(bytes: Buffer): Reading {
  if (bytes.length > LARGEST_FILE) return failed('it grew past 10 MiB while it was read');
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    const mark = text.startsWith('\uFEFF');
    return { kind: 'read', text: mark ? text.slice(1) : text, mark };
  } catch {
    return failed('it is not UTF-8 text');
  }
}

function isPattern(entry: Dirent, path: string): boolean {
  if (!entry.name.endsWith('.quilt')) return false;
  if (!entry.isSymbolicLink()) return entry.isFile();
  return statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;
}

function exists(path: string): boolean {
  try {
    lstatSync(path);
    return true;
  } catch {
    return false;
  }
}
