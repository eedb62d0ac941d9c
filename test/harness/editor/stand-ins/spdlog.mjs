// Stands in for @vscode/spdlog, the editor's native log writer, so that nothing has to be compiled: the same functions, plain file appends.
import { appendFileSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';

const levels = ['trace', 'debug', 'info', 'warn', 'error', 'critical'];

export class Logger {
  #file;
  #level = 2;
  #bare = false;

  constructor(_kind, _name, file) {
    mkdirSync(dirname(file), { recursive: true });
    this.#file = file;
  }

  getLevel() {
    return this.#level;
  }

  setLevel(level) {
    this.#level = level;
  }

  setPattern() {}

  clearFormatters() {
    this.#bare = true;
  }

  flush() {}

  drop() {}

  write(level, message) {
    if (level < this.#level) return;
    try {
      appendFileSync(this.#file, this.#bare ? message : `${new Date().toISOString()} [${levels[level]}] ${message}\n`);
    } catch {
      // The log folder is removed when the editor ends: the last lines have nowhere to go.
    }
  }
}
levels.forEach((name, level) => {
  Logger.prototype[name] = function log(message) {
    this.write(level, message);
  };
});

export const version = 0;

export function setLevel() {}

export function setFlushOn() {}

export async function createRotatingLogger(name, file) {
  return new Logger('rotating', name, file);
}

export async function createAsyncRotatingLogger(name, file) {
  return new Logger('rotating_async', name, file);
}
