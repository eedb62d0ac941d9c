/** What stands at a path, links not followed. */
import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { codeOf } from './failures.ts';

export function kindOf(path: string): 'absent' | 'file' | 'folder' | 'link' | 'other' | 'unreadable' {
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

/** Undefined when it cannot be read. */
export function contentOf(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

/** What is in a folder; nothing when it is none, or cannot be read. */
export function namesIn(path: string): readonly string[] {
  try {
    return kindOf(path) === 'folder' ? readdirSync(path) : [];
  } catch {
    return [];
  }
}
