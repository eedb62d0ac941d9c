/** What the handbook gives people for git and continuous integration, as they copy it. */
import { spawnSync } from 'node:child_process';
import { chmodSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder, type Folder } from '../disk/folder.ts';
import { project } from '../harness/fresh.ts';
import { handbookBlock } from '../harness/handbook.ts';
import { shipped } from '../harness/shipped.ts';
import { BAD, GOOD } from './command-line.ts';

function repository(files: Readonly<Record<string, string>>): Folder & { readonly git: (...words: readonly string[]) => { readonly status: number | null; readonly said: string }; readonly env: NodeJS.ProcessEnv } {
  const folder = temporaryFolder(files);
  const bin = temporaryFolder({ scant: `#!/bin/sh\nexec "${process.execPath}" "${join(shipped(), 'scant.cjs')}" "$@"\n` });
  chmodSync(bin.at('scant'), 0o755);
  const env = { ...process.env, HOME: folder.path, GIT_CONFIG_NOSYSTEM: '1', PATH: `${bin.path}${delimiter}${process.env['PATH'] ?? ''}` };
  const git = (...words: readonly string[]) => {
    const { status, stdout, stderr } = spawnSync('git', ['-c', 'user.name=a', '-c', 'user.email=a@b', '-c', 'init.defaultBranch=main', ...words], { cwd: folder.path, env, encoding: 'utf8' });
    return { status, said: stdout + stderr };
  };
  git('init', '-q');
  return { ...folder, git, env };
}

test('the hook lets a sound pattern pass, and stops one with an error or another layout', () => {
  const place = repository({ 'harbour mail.quilt': GOOD, 'notes.md': 'none' });
  place.write('.git/hooks/pre-commit', handbookBlock('command-line.md', 'Before each commit', 'sh'));
  chmodSync(place.at('.git/hooks/pre-commit'), 0o755);
  place.git('add', '.');
  expect(place.git('commit', '-m', 'sound')).toMatchObject({ status: 0 });
  place.write('harbour mail.quilt', BAD);
  place.git('add', '.');
  const refused = place.git('commit', '-m', 'unsound');
  expect(refused.status).not.toBe(0);
  expect(refused.said).toContain('harbour mail.quilt:11:14: error unknown-name');
  place.write('harbour mail.quilt', GOOD.replace('seam  1/4"', 'seam 1/4"'));
  place.git('add', '.');
  expect(place.git('commit', '-m', 'untidy').status).not.toBe(0);
  place.git('reset', '-q', '--hard');
  place.write('notes.md', 'other');
  place.git('add', '.');
  expect(place.git('commit', '-m', 'no pattern').status).toBe(0);
});

test('the steps of the workflow do what they say', () => {
  const place = repository({ 'a.quilt': GOOD });
  const steps = [...handbookBlock('command-line.md', 'In continuous integration', 'yaml').matchAll(/^ +- run: (scant .*)$/gm)].map(([, step]) => step ?? '');
  expect(steps.length).toBe(3);
  const run = (step: string) => spawnSync('sh', ['-c', step], { cwd: place.path, env: place.env, encoding: 'utf8' });
  for (const step of steps) expect(run(step).status, step).toBe(0);
  place.write('a.quilt', BAD);
  expect(run(steps[0] ?? '').stdout).toMatch(/^::error file=a\.quilt,line=11/);
  expect(run(steps[0] ?? '').status).toBe(1);
});

test('the hooks for the pre-commit program run commands that there are', () => {
  const hooks = readFileSync(join(project, '.pre-commit-hooks.yaml'), 'utf8');
  const entries = [...hooks.matchAll(/^ {2}entry: scant (.*)$/gm)].map(([, words]) => (words ?? '').split(' '));
  const place = repository({ 'a.quilt': GOOD });
  expect(entries).toEqual([['check'], ['format', '--check']]);
  for (const words of entries) expect(spawnSync('scant', [...words, 'a.quilt'], { cwd: place.path, env: place.env }).status).toBe(0);
});
