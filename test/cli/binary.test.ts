/** The program as it is shipped: bundled, as a process of its own, in pipes and as an editor starts it. */
import { spawn, spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BAD, GOOD } from './command-line.ts';
import { temporaryFolder } from '../disk/folder.ts';
import { shipped } from '../harness/shipped.ts';

const program = join(shipped(), 'scant.cjs');

function scant(argv: readonly string[], cwd: string, env: Readonly<Record<string, string>> = {}): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, [program, ...argv], { cwd, encoding: 'utf8', env: { PATH: process.env['PATH'], ...env } });
}

/** Every Node from version 20 on that is on the path, each version once. */
function nodes(): (readonly [version: string, path: string])[] {
  const found = (process.env['PATH'] ?? '').split(delimiter).flatMap((folder): (readonly [string, string])[] => {
    const { stdout, status } = spawnSync(join(folder, 'node'), ['--version'], { encoding: 'utf8' });
    const version = status === 0 ? stdout.trim().slice(1) : '0';
    return Number.parseInt(version, 10) >= 20 ? [[version, join(folder, 'node')]] : [];
  });
  return [...new Map(found)];
}

describe('the program', () => {
  it('runs from anywhere, with the grammar and the library in it', () => {
    const folder = temporaryFolder({ 'a.quilt': GOOD, 'b.quilt': BAD });
    expect(scant(['check', 'a.quilt'], folder.path)).toMatchObject({ status: 0, stdout: 'no problems in 1 file\n', stderr: '' });
    expect(scant(['check', '.'], folder.path)).toMatchObject({ status: 1, stderr: '' });
    expect(scant(['build', 'a.quilt'], folder.path)).toMatchObject({ status: 0 });
    expect(folder.list()).toContain('out/a/quilt.svg');
    expect(scant(['bogus'], folder.path)).toMatchObject({ status: 2, stdout: '' });
    expect(scant(['--version'], folder.path)).toMatchObject({ status: 0 });
  });
  it.each(nodes())('runs in Node %s', (_, node) => {
    const folder = temporaryFolder({ 'a.quilt': GOOD });
    // Not the whole error: a bundle's stack is a megabyte.
    const { stdout, stderr } = spawnSync(node, [program, 'check', 'a.quilt'], { cwd: folder.path, encoding: 'utf8' });
    expect(stdout + stderr.slice(-300)).toBe('no problems in 1 file\n');
  });
  it('begins with a line that makes it run by itself', () => {
    const { stdout } = spawnSync('head', ['-1', program], { encoding: 'utf8' });
    expect(stdout).toBe('#!/usr/bin/env node\n');
  });
  it.skipIf(process.platform === 'win32')('is no failure when the reader of its pipe has gone', () => {
    const folder = temporaryFolder();
    writeFileSync(folder.at('many.quilt'), Array.from({ length: 20_000 }, (_, index) => `bogus${index}\n`).join(''));
    const { stdout, stderr } = spawnSync('bash', ['-c', `set -o pipefail; "${process.execPath}" "${program}" check many.quilt | head -2 | wc -l; echo "\${PIPESTATUS[0]}"`], { cwd: folder.path, encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(stdout.split('\n')[0]?.trim()).toBe('2');
  });
  it('ends --watch with 0 when it is told to stop', async () => {
    const folder = temporaryFolder({ 'a.quilt': GOOD });
    const child = spawn(process.execPath, [program, 'build', 'a.quilt', '--watch'], { cwd: folder.path, stdio: ['ignore', 'ignore', 'pipe'] });
    const code = new Promise((resolve) => child.once('exit', resolve));
    let said = '';
    await new Promise<void>((resolve) => child.stderr.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes('watching')) resolve();
    }));
    child.kill('SIGINT');
    expect(await code).toBe(0);
  });
  it('answers an editor', async () => {
    const folder = temporaryFolder();
    const child = spawn(process.execPath, [program, 'lsp', '--stdio'], { cwd: folder.path, stdio: ['pipe', 'pipe', 'pipe'] });
    const code = new Promise((resolve) => child.once('exit', resolve));
    const send = (message: object): void => {
      const body = JSON.stringify({ jsonrpc: '2.0', ...message });
      child.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
    };
    let said = '';
    const heard = (text: string): Promise<void> => new Promise((resolve) => {
      const listen = (chunk?: Buffer): void => {
        said += chunk?.toString() ?? '';
        if (said.includes(text)) resolve();
      };
      child.stdout.on('data', listen);
      listen();
    });
    send({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
    await heard('"capabilities"');
    send({ id: 2, method: 'shutdown' });
    await heard('"id":2');
    send({ method: 'exit' });
    expect(await code).toBe(0);
  });
});
