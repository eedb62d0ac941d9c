/** Generated files that are kept in the repository: written with UPDATE_EXPECTED=1, else compared with what is there. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

export const project = fileURLToPath(new URL('../..', import.meta.url));

/** Expects every file (paths from the project's folder) to be as generated. */
export function expectFresh(files: ReadonlyMap<string, string>): void {
  for (const [path, text] of files) {
    const whole = join(project, path);
    if (process.env.UPDATE_EXPECTED === '1') {
      mkdirSync(dirname(whole), { recursive: true });
      writeFileSync(whole, text);
    }
    expect(existsSync(whole) ? readFileSync(whole, 'utf8') : 'missing: run with UPDATE_EXPECTED=1', path).toBe(text);
  }
}
