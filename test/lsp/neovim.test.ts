/** Neovim's built-in client, headless, as a second real editor. Skipped where Neovim is not installed. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { serverCommand } from './client.ts';

const isThere = spawnSync('nvim', ['--version']).status === 0;
if (!isThere) console.log('SKIPPED: Neovim, which is not installed here.');
const TEXT = 'fabric ink #22345c "Größe 🧵"\nblock Four(a = ink) 6" {\n  a ink\n     ink a\n  ink lost\n}\n';

interface Said {
  readonly problems: readonly string[];
  readonly encoding: string;
  readonly hover: string;
  readonly completions: readonly string[];
  readonly renamed: readonly string[];
  readonly formatted: readonly string[];
}

test.skipIf(!isThere)('Neovim shows problems, hovers, completes, renames and lays out', { timeout: 60_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'scant-neovim-'));
  const file = join(folder, 'a.quilt');
  writeFileSync(file, TEXT);
  const env = { ...process.env, SCANT_COMMAND: [process.execPath, ...serverCommand()].join('\n'), SCANT_FILE: file, XDG_STATE_HOME: folder, XDG_CACHE_HOME: folder, XDG_DATA_HOME: folder };
  const script = fileURLToPath(new URL('neovim.lua', import.meta.url));
  const { stdout, stderr } = spawnSync('nvim', ['--headless', '-u', 'NONE', '-n', '-c', `luafile ${script}`], { env, encoding: 'utf8', timeout: 50_000 });
  rmSync(folder, { recursive: true });
  const line = /SAID (.*)/.exec(stdout)?.[1];
  expect(line, stdout + stderr).toBeDefined();
  const said = JSON.parse(line ?? '{}') as Said;
  expect(said.problems.join('\n')).toContain('`lost`');
  expect(said.hover).toContain('in Four');
  expect(said.completions).toEqual(expect.arrayContaining(['grid', 'ink', 'four_patch']));
  expect(said.renamed.slice(0, 3)).toEqual(['fabric navy #22345c "Größe 🧵"', 'block Four(a = navy) 6" {', '  a navy']);
  expect(said.formatted.slice(2, 5)).toEqual(['  a    navy', '  navy a', '  navy lost']);
});
