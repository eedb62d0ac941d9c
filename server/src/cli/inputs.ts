/** The files a command works on: those named, and those found in the folders named. */
import { statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { reasonOf } from '../disk/failures.ts';
import { diskHost, type DiskHost } from '../disk/host.ts';
import { patternsIn, readPattern, workspaceOf } from '../disk/sources.ts';
import { snapshotOf, type Snapshot } from '../snapshot.ts';
import { documentOf } from '../text/document.ts';
import { harmless, UsageError, type Io } from './io.ts';

export interface Input {
  /** As given; for a file found in a folder, the folder as given and the way from it. */
  readonly path: string;
  readonly absolute: string;
  /** The folder argument that it was found in. */
  readonly folder?: string;
}

export interface Inputs {
  readonly inputs: readonly Input[];
  /** Sentences about what cannot be read. */
  readonly failures: readonly string[];
}

/** Each file once, in the order named. Throws `UsageError` when nothing is named. */
export function inputsOf(paths: readonly string[], io: Io): Inputs {
  if (paths.length === 0) throw new UsageError('name a file or a folder');
  const inputs = new Map<string, Input>();
  const failures: string[] = [];
  for (const path of paths) {
    try {
      const found = foundIn(path, io);
      if (found.length === 0) failures.push(`no *.quilt file in ${path}`);
      for (const input of found) if (!inputs.has(input.absolute)) inputs.set(input.absolute, input);
    } catch (error) {
      failures.push(`cannot read ${path}: ${reasonOf(error)}`);
    }
  }
  return { inputs: [...inputs.values()], failures };
}

export type Loaded =
  | { readonly kind: 'loaded'; readonly snapshot: Snapshot; readonly host: DiskHost }
  | { readonly kind: 'failed'; readonly why: string };

/** The file as a snapshot, with the files it imports. */
export function load(input: Input, io: Io): Loaded {
  const reading = readPattern(input.absolute);
  if (reading.kind === 'failed') return { kind: 'failed', why: `cannot read ${input.path}: ${reading.why}` };
  const host = diskHost([workspaceOf(input.absolute, io.folder)]);
  return { kind: 'loaded', snapshot: snapshotOf(documentOf(input.absolute, reading.text), 0, host), host };
}

/** One line on the error output. */
export function complain(message: string, io: Io): void {
  io.err(`scant: ${harmless(message)}\n`);
}

function foundIn(path: string, io: Io): Input[] {
  const absolute = resolve(io.folder, path);
  if (!statSync(absolute).isDirectory()) return [{ path, absolute }];
  return patternsIn(absolute).map((each) => ({ path: join(path, each.slice(absolute.length)), absolute: each, folder: path }));
}
