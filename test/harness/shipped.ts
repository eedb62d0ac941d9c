/** The programs as they are shipped, bundled once for each test file into a folder of its own. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const project = fileURLToPath(new URL('../..', import.meta.url));
let folder: string | undefined;

/** The folder that holds `client.cjs`, `scant.cjs` and the rest of dist/. */
export function shipped(): string {
  if (folder !== undefined) return folder;
  const made = mkdtempSync(join(tmpdir(), 'scant-shipped-'));
  process.on('exit', () => rmSync(made, { recursive: true, force: true }));
  const { status, stderr } = spawnSync(process.execPath, ['esbuild.config.mjs', '--into', made], { cwd: project, encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  return (folder = made);
}
