/** Runs jobs again whenever a file they were made from changes, until the signal. */
import { statSync, watch as watchFolder, type FSWatcher } from 'node:fs';
import { basename, dirname } from 'node:path';
import { FINE, type Io } from './io.ts';

/** Does its work and names the files it was made from (absolute paths), present or not. */
export type Job = () => readonly string[];

/** Milliseconds of quiet before a change counts, for a save is several events; and how long a change waits at most. */
const PAUSE = 100;
const PATIENCE = 1000;

/** How often folders are looked at that cannot be watched, or are others than they were. */
const ROUND = 1000;

/** Runs every job once, then each whose files have changed. Resolves with the exit code when the signal comes. */
export function watch(jobs: readonly Job[], io: Io): Promise<number> {
  const signal = io.stop();
  const sources = new Map<Job, ReadonlySet<string>>();
  const changed = new Set<string>();
  let timer: NodeJS.Timeout | undefined;
  let since = 0;

  const notice = (paths: readonly string[]): void => {
    if (paths.length === 0) return;
    if (changed.size === 0) since = performance.now();
    for (const path of paths) changed.add(path);
    clearTimeout(timer);
    timer = setTimeout(settle, Math.max(Math.min(PAUSE, since + PATIENCE - performance.now()), 0));
  };
  const folders = watchedFolders((folder, name) => notice([...sources.values()].flatMap((paths) => [...paths].filter((path) => dirname(path) === folder && (name === null || basename(path) === name)))));
  const run = (job: Job): void => void sources.set(job, new Set(job()));
  const attend = (): void => folders.attend(new Set([...sources.values()].flatMap((paths) => [...paths].map(dirname))));
  const settle = (): void => {
    const paths = [...changed];
    changed.clear();
    for (const job of jobs) if (paths.some((path) => sources.get(job)?.has(path))) run(job);
    attend();
  };

  jobs.forEach(run);
  attend();
  const rounds = setInterval(folders.look, ROUND);
  io.err('watching; stop with Ctrl+C\n');
  return new Promise((resolve) => {
    const stop = (): void => {
      clearTimeout(timer);
      clearInterval(rounds);
      folders.attend(new Set());
      resolve(FINE);
    };
    if (signal.aborted) stop();
    else signal.addEventListener('abort', stop, { once: true });
  });
}

interface Folders {
  /** Watches these, and no others. */
  readonly attend: (wanted: ReadonlySet<string>) => void;
  /** Finds those that have come, gone or been replaced unseen. */
  readonly look: () => void;
}

interface Watched {
  readonly watcher: FSWatcher | undefined;
  /** Another one when the folder is another; undefined when there is none. */
  readonly identity: string | undefined;
}

/** Folders, not files: editors save by putting a new file in the place of the old one. `name` null: anything in it. */
function watchedFolders(notice: (folder: string, name: string | null) => void): Folders {
  const watched = new Map<string, Watched>();
  const attendTo = (folder: string): void => void watched.set(folder, { watcher: watcherOf(folder, (name) => notice(folder, name)), identity: identityOf(folder) });
  return {
    attend: (wanted) => {
      for (const [folder, { watcher }] of watched) {
        if (wanted.has(folder)) continue;
        watcher?.close();
        watched.delete(folder);
      }
      for (const folder of wanted) if (!watched.has(folder)) attendTo(folder);
    },
    look: () => {
      for (const [folder, { watcher, identity }] of watched) {
        if (identityOf(folder) === identity) continue;
        watcher?.close();
        attendTo(folder);
        notice(folder, null);
      }
    },
  };
}

/** Undefined for a folder that is not there (an import of a missing file), or when the system has no watchers left. */
function watcherOf(folder: string, notice: (name: string | null) => void): FSWatcher | undefined {
  try {
    const watcher = watchFolder(folder, (_, name) => notice(name));
    watcher.on('error', () => watcher.close());
    return watcher;
  } catch {
    return undefined;
  }
}

function identityOf(folder: string): string | undefined {
  const state = statSync(folder, { throwIfNoEntry: false });
  return state && `${state.dev} ${state.ino}`;
}
