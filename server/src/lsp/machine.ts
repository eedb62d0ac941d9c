/** What the server needs from a machine with a disk. */
import { statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build, type Built } from '../disk/build.ts';
import type { OutputKind } from '../disk/kinds.ts';
import { isInside, patternsIn, readPattern, resolveImport, workspaceOf } from '../disk/sources.ts';
import { buildApart } from './build-apart.ts';
import type { BuildAnswer } from './requests.ts';
import type { Services } from './services.ts';
import { searchApart } from './thread.ts';

export function machine(): Services {
  return {
    keyOf: (uri) => pathOf(uri) ?? uri,
    read: (uri) => {
      const path = pathOf(uri);
      const stamp = path === undefined ? undefined : stampOf(path);
      if (path === undefined || stamp === undefined) return undefined;
      const reading = readPattern(path);
      return reading.kind === 'read' ? { text: reading.text, stamp } : undefined;
    },
    stamp: (uri) => {
      const path = pathOf(uri);
      return path === undefined ? undefined : stampOf(path);
    },
    resolve: (importer, written, folders) => {
      const path = pathOf(importer);
      if (path === undefined) return 'missing';
      const found = resolveImport(path, written, foldersAround(path, folders));
      if (found === 'missing') return { uri: pathToFileURL(resolve(dirname(path), written)).href, state: 'missing' };
      return typeof found === 'string' ? found : { uri: pathToFileURL(found.path).href, state: 'there' };
    },
    list: (folders) => [...new Set(folders.flatMap((folder) => filesIn(pathOf(folder))))].map((path) => pathToFileURL(path).href),
    search: searchApart,
    build: (snapshot, uri, what) => {
      const path = pathOf(uri);
      if (path === undefined) return { folder: null, written: [], unchanged: 0, refused: { why: 'unsaved', message: 'Save the pattern first: its outputs are written beside it.' } };
      const answer = answerOf(build(snapshot, path, what === 'everything' ? {} : { only: PREVIEW_AND_CUT_LIST }));
      if (what === 'on_save' && answer.refused === null) buildApart(path);
      return answer;
    },
  };
}

/** A folder that cannot be read has none. */
function filesIn(folder: string | undefined): readonly string[] {
  try {
    return folder === undefined ? [] : patternsIn(folder);
  } catch {
    return [];
  }
}

const PREVIEW_AND_CUT_LIST: readonly OutputKind[] = ['quilt', 'blocks', 'cutting.md', 'cutting.csv', 'cutting.svg'];

function answerOf(built: Built): BuildAnswer {
  const folder = pathToFileURL(built.folder).href;
  if (built.kind === 'written') return { folder, written: [...built.written], unchanged: built.unchanged.length, refused: null };
  const [first = 'nothing was written', ...more] = built.reasons;
  const message = `${first.charAt(0).toUpperCase()}${first.slice(1)}${more.length > 0 ? ` (and ${more.length} more)` : ''}`;
  return { folder, written: [], unchanged: 0, refused: { why: built.why, message } };
}

/** The workspace's folders for a file in one of them; for any other file the folder that the command line would take. */
function foldersAround(path: string, folders: readonly string[]): readonly string[] {
  const known = folders.flatMap((folder) => pathOf(folder) ?? []);
  return known.some((folder) => isInside(folder, path)) ? known : [workspaceOf(path, process.cwd())];
}

/** Undefined for what has no place on this machine's disk. Drives have small letters, as editors write them. */
function pathOf(uri: string): string | undefined {
  if (!uri.startsWith('file:')) return undefined;
  try {
    return fileURLToPath(uri).replace(/^[A-Z]:/, (drive) => drive.toLowerCase());
  } catch {
    return undefined;
  }
}

function stampOf(path: string): string | undefined {
  try {
    const { mtimeMs, size, ino } = statSync(path);
    return `${mtimeMs} ${size} ${ino}`;
  } catch {
    return undefined;
  }
}
