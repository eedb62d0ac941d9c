/** The handbook's configurations, as people copy them, in the editors themselves where they are installed. */
import { spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder, type Folder } from '../disk/folder.ts';
import { handbookBlock } from '../harness/handbook.ts';
import { shipped } from '../harness/shipped.ts';

const TEXT = 'fabric ink #22345c "Night"\nblock Four(a = ink) 6" {\n  a ink\n  ink lost\n}\n';

/** A home of its own, with `scant` on the path and a pattern with one mistake. */
function home(): { readonly folder: Folder; readonly env: NodeJS.ProcessEnv } {
  const folder = temporaryFolder({ 'a.quilt': TEXT, 'bin/scant': `#!/bin/sh\nexec "${process.execPath}" "${join(shipped(), 'scant.cjs')}" "$@"\n` });
  chmodSync(folder.at('bin/scant'), 0o755);
  const env = { ...process.env, HOME: folder.path, XDG_STATE_HOME: folder.path, XDG_CACHE_HOME: folder.path, XDG_DATA_HOME: folder.path, PATH: `${folder.at('bin')}${delimiter}${process.env['PATH'] ?? ''}` };
  return { folder, env };
}

function isThere(program: string, ...words: readonly string[]): boolean {
  const there = spawnSync(program, words).status === 0;
  if (!there) console.log(`SKIPPED: the handbook's configuration for ${program}, which is not installed here.`);
  return there;
}

test.skipIf(!isThere('nvim', '--version'))('Neovim', { timeout: 60_000 }, () => {
  const { folder, env } = home();
  folder.write('init.lua', handbookBlock('editors.md', 'Neovim', 'lua'));
  folder.write('ask.lua', `vim.wait(15000, function() return #vim.diagnostic.get(0) > 0 end, 50)
for _, each in ipairs(vim.diagnostic.get(0)) do io.stdout:write('SAID ' .. each.message .. '\\n') end
vim.cmd('qa!')`);
  const { stdout, stderr } = spawnSync('nvim', ['--headless', '-n', '-u', 'init.lua', 'a.quilt', '-c', 'luafile ask.lua'], { cwd: folder.path, env, encoding: 'utf8', timeout: 50_000 });
  expect(stdout + stderr).toMatch(/SAID .*`lost`/);
});

test.skipIf(!isThere('emacs', '--batch', '--eval', "(require 'eglot)"))('Emacs', { timeout: 60_000 }, () => {
  const { folder, env } = home();
  folder.write('init.el', handbookBlock('editors.md', 'Emacs', 'elisp'));
  folder.write('ask.el', `(setq eglot-sync-connect 30 eglot-connect-timeout 30)
(find-file "a.quilt")
(run-hooks 'post-command-hook)
(flymake-start)
(let ((end (+ (float-time) 20)))
  (while (and (< (float-time) end) (not (flymake-diagnostics))) (accept-process-output nil 0.1)))
(dolist (each (flymake-diagnostics)) (message "SAID %s" (flymake-diagnostic-text each)))
(goto-char (point-min))
(forward-line 2)
(forward-char 2)
(let ((hover (jsonrpc-request (eglot--current-server-or-lose) :textDocument/hover (eglot--TextDocumentPositionParams))))
  (message "HOVER %s" (plist-get (plist-get hover :contents) :value)))
(eglot-shutdown (eglot--current-server-or-lose))`);
  const { stdout, stderr } = spawnSync('emacs', ['--batch', '-l', 'init.el', '-l', 'ask.el'], { cwd: folder.path, env, encoding: 'utf8', timeout: 50_000 });
  expect(stdout + stderr).toMatch(/SAID .*`lost`/);
  expect(stdout + stderr).toMatch(/HOVER .*in Four/s);
});
