/** A folder of its own for each test, removed afterwards. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

export interface Folder {
  readonly path: string;
  at(path: string): string;
  write(path: string, content: string | Uint8Array): string;
  read(path: string): string;
  /** Every file and link below, with `/`, in order. */
  list(): string[];
}

export function temporaryFolder(files: Readonly<Record<string, string>> = {}): Folder {
  const path = realpathSync(mkdtempSync(join(tmpdir(), 'scant-')));
  onTestFinished(() => {
    rmSync(path, { recursive: true, force: true });
  });
  const folder: Folder = {
    path,
    at: (each) => join(path, each),
    write: (each, content) => {
      mkdirSync(dirname(join(path, each)), { recursive: true });
      writeFileSync(join(path, each), content);
      return join(path, each);
    },
    read: (each) => readFileSync(join(path, each), 'utf8'),
    list: () => readdirSync(path, { recursive: true, withFileTypes: true })
      .filter((entry) => !entry.isDirectory())
      .map((entry) => join(entry.parentPath, entry.name).slice(path.length + 1).replaceAll('\\', '/'))
      .sort(),
  };
  for (const [each, content] of Object.entries(files)) folder.write(each, content);
  return folder;
}
