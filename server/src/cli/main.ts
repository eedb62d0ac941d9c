#!/usr/bin/env node
/** The `scant` program: the process around the command line. */
import { FAILED, type Io } from './io.ts';
import { run } from './run.ts';

// A reader that has seen enough (`scant check … | head`) is no failure.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
}

const terminal = process.stdout.isTTY;

const io: Io = {
  folder: process.cwd(),
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  terminal,
  colour: terminal && !process.env['NO_COLOR'] && process.env['TERM'] !== 'dumb',
  stop,
};

run(process.argv.slice(2), io).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    process.exitCode = FAILED;
    io.err(`scant: something went wrong inside; please report it\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  },
);

function stop(): AbortSignal {
  const controller = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => controller.abort());
  return controller.signal;
}
