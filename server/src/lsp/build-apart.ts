/** Builds in a process of its own, so that no key waits for a booklet; a newer save of a pattern ends the build before it. */
import { spawn, type ChildProcess } from 'node:child_process';
import { realpathSync } from 'node:fs';
import { basename } from 'node:path';

const running = new Map<string, ChildProcess>();

/**
 * Writes every output of the pattern at an absolute path; what goes wrong is said in the server's output. A build that is ended
 * leaves whole files. Does nothing where the program is not the command line (run from its sources).
 */
export function buildApart(path: string): void {
  const program = commandLine();
  if (program === undefined) return;
  running.get(path)?.kill();
  // In an editor the program that runs is the editor itself, which takes the part of Node when it is told to.
  const child = spawn(process.execPath, [program, 'build', path], { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' } });
  const forget = (): void => {
    if (running.get(path) === child) running.delete(path);
  };
  child.on('error', forget).on('exit', forget);
  running.set(path, child);
}

function commandLine(): string | undefined {
  try {
    const program = realpathSync(process.argv[1] ?? '');
    return basename(program) === 'scant.cjs' ? program : undefined;
  } catch {
    return undefined;
  }
}
