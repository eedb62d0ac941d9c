/** Runs jobs again whenever a file they were made from changes, until the signal. */
import { watch as watchFolder, type FSWatcher } from 'node:fs';
import { basename, dirname } from 'node:path';
import { FINE, type Io } from './io.ts';

/** Does its work and names the files it was made from (absolute paths), present or not. */
export type Job = () => readonly string[];

/** Runs every job once, then each whose files have changed. Resolves with the exit code when the signal comes. */
export function watch(jobs: readonly Job[], io: Io): Promise<number> {
  const signal = io.stop();
  const sources = new Map<Job, ReadonlySet<string>>();
  const watchers = new Map<string, FSWatcher>();
  const changed = new Set<string>();
  let timer: NodeJS.Timeout | undefined;

  const run = (job: Job): void => {
    sources.set(job, new Set(job()));
  };
  const attend = (): void => {
    const folders = new Set([...sources.values()].flatMap((paths) => [...paths].map(dirname)));
    for (const [folder, watcher] of watchers) {
      if (folders.has(folder)) continue;
      watcher.close();
      watchers.delete(folder);
    }
    for (const folder of folders) if (!watchers.has(folder)) attendTo(folder);
  };
  const attendTo = (folder: string): void => {
    try {
      // Folders, not files: editors save by putting a new file in the place of the old one.
      const watcher = watchFolder(folder, (_, name) => notice(folder, name));
      watcher.on('error', () => {
        watcher.close();
        watchers.delete(folder);
      });
      watchers.set(folder, watcher);
    } catch {
      // A folder that is not there (an import of a missing file): nothing to see until something else changes.
    }
  };
  const notice = (folder: string, name: string | null): void => {
    for (const path of [...sources.values()].flatMap((paths) => [...paths])) if (dirname(path) === folder && (name === null || basename(path) === name)) changed.add(path);
    if (changed.size === 0) return;
    clearTimeout(timer);
    timer = setTimeout(settle, PAUSE);
  };
  const settle = (): void => {
    const paths = [...changed];
    changed.clear();
    for (const job of jobs) if (paths.some((path) => sources.get(job)?.has(path))) run(job);
    attend();
  };

  jobs.forEach(run);
  attend();
  io.err('watching; stop with Ctrl+C\n');
  return new Promise((resolve) => {
    const stop = (): void => {
      clearTimeout(timer);
      for (const watcher of watchers.values()) watcher.close();
      resolve(FINE);
    };
    if (signal.aborted) stop();
    else signal.addEventListener('abort', stop, { once: true });
  });
}

/** Milliseconds of quiet before a change counts: a save is several events. */
const PAUSE = 100;
