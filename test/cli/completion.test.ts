/** `scant completion`, asked in the shells themselves: bash is everywhere; fish and zsh where they are installed. */
import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { RULES } from '../../server/src/checks/list.ts';
import { run } from '../../server/src/cli/run.ts';
import { temporaryFolder } from '../disk/folder.ts';

const scripts = new Map<string, string>();
for (const shell of ['bash', 'zsh', 'fish']) scripts.set(shell, await said('completion', shell));

async function said(...words: readonly string[]): Promise<string> {
  let out = '';
  await run(words, { folder: '/', out: (text) => void (out += text), err: () => undefined, terminal: false, colour: false, stop: () => AbortSignal.abort() });
  return out;
}
const isThere = (shell: string): boolean => {
  const there = spawnSync(shell, ['--version']).status === 0;
  if (!there) console.log(`SKIPPED: completions in ${shell}, which is not installed here.`);
  return there;
};

/** What bash offers behind these words; the last one is being typed. */
function inBash(...words: readonly string[]): readonly string[] {
  const folder = temporaryFolder({ script: scripts.get('bash') ?? '', 'harbour mail.quilt': '', 'notes.md': '' });
  const ask = `source ./script; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _scant; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { stdout, stderr } = spawnSync('bash', ['-c', ask, 'bash', 'scant', ...words], { cwd: folder.path, encoding: 'utf8' });
  expect(stderr).toBe('');
  return stdout.trim().split('\n').sort();
}

describe('bash', () => {
  it('completes commands', () => {
    expect(inBash('')).toEqual(['--help', '--version', 'build', 'check', 'completion', 'explain', 'format', 'help', 'lsp', 'new']);
    expect(inBash('co')).toEqual(['completion']);
  });
  it('completes options and their values', () => {
    expect(inBash('check', '--f')).toEqual(['--format']);
    expect(inBash('check', '--format', 's')).toEqual(['sarif']);
    expect(inBash('build', '--only', 'cu')).toEqual(['cutting']);
  });
  it('completes rules and files', () => {
    expect(inBash('explain', '')).toEqual(RULES.map(({ id }) => id).sort());
    expect(inBash('check', 'no')).toEqual(['notes.md']);
  });
});

it.skipIf(!isThere('fish'))('fish completes commands, options, values and rules', () => {
  const folder = temporaryFolder({ 'scant.fish': scripts.get('fish') ?? '' });
  const offered = (line: string): readonly string[] => {
    const { stdout, stderr } = spawnSync('fish', ['--no-config', '-c', `function scant; end; source scant.fish; complete -C '${line}'`], { cwd: folder.path, encoding: 'utf8', env: { ...process.env, HOME: folder.path } });
    expect(stderr).toBe('');
    return stdout.trim().split('\n').map((each) => each.split('\t')[0] ?? '');
  };
  expect(offered('scant co')).toEqual(['completion']);
  expect(offered('scant check --fo')).toEqual(['--format']);
  expect(offered('scant check --format s')).toEqual(['sarif']);
  expect(offered('scant explain ga')).toEqual(['gap']);
});

it.skipIf(!isThere('zsh'))('zsh takes the script as a completion of scant', () => {
  const folder = temporaryFolder({ _scant: scripts.get('zsh') ?? '' });
  const { stdout, stderr } = spawnSync('zsh', ['-f', '-c', `fpath=($PWD $fpath); autoload -Uz compinit; compinit -u -d dump; print $_comps[scant]; zsh -n ./_scant && print sound`], { cwd: folder.path, encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(stdout).toBe('_scant\nsound\n');
});

it('knows every option that the help texts name', async () => {
  const help = (await Promise.all(['check', 'build', 'format', 'lsp'].map((command) => said('help', command)))).join('');
  const named = new Set([...help.matchAll(/--[a-z][a-z-]+/g)].map(([option]) => option));
  expect([...named].filter((option) => !(scripts.get('bash') ?? '').includes(option))).toEqual([]);
});
