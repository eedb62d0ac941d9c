/**
 * Faults of the machine: full and read-only disks, builds that are killed or meet, outputs replaced under the builder's hands, sources
 * that change meanwhile, storms of events, clocks set back. Nothing half-written, nothing lost, nothing followed out of the folder.
 */
import { spawn, spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, onTestFinished, test } from 'vitest';
import { alone, lockOf } from '../../server/src/disk/lock.ts';
import { MANIFEST_FILE } from '../../server/src/disk/manifest.ts';
import { replaceFile } from '../../server/src/disk/replace.ts';
import { writeOutputs } from '../../server/src/disk/write.ts';
import { bench, GOOD } from '../cli/command-line.ts';
import { temporaryFolder, type Folder } from '../disk/folder.ts';
import { shipped } from '../harness/shipped.ts';
import { startSession } from '../lsp/client.ts';

const program = join(shipped(), 'scant.cjs');
const IN_A_NAMESPACE = ['-m', 'sh', '-c'] as const;
/** Mounting in a namespace of one's own takes Linux and its rights; elsewhere these tests are told as skipped. */
const canMount = process.platform === 'linux' && spawnSync('unshare', [...IN_A_NAMESPACE, 'mount -t tmpfs none /mnt']).status === 0;
if (!canMount) console.log('SKIPPED: full and read-only disks, for this machine lets nobody mount one.');

/** Files of a folder by path, with their bytes. */
function contentOf(folder: Folder): ReadonlyMap<string, string> {
  return new Map(folder.list().map((path) => [path, folder.read(path)]));
}

describe.skipIf(!canMount)('a disk', () => {
  /** Runs a script where `out` of a folder is a small disk of its own; `$S` is the program. */
  const onDisk = (folder: Folder, options: string, script: string): SpawnSyncReturns<string> => {
    mkdirSync(folder.at('out'), { recursive: true });
    const whole = `mount -t tmpfs -o ${options} none out && ${script}`;
    return spawnSync('unshare', [...IN_A_NAMESPACE, whole], { cwd: folder.path, encoding: 'utf8', env: { ...process.env, N: process.execPath, S: program } });
  };

  test('that is full: it is said, and no part of an output is left', () => {
    const folder = temporaryFolder({ 'a.quilt': GOOD });
    const { stdout } = onDisk(folder, 'size=16k', '$N $S build a.quilt 2>&1; echo "code $?"; find out -type f | sort');
    expect(stdout).toMatch(/cannot write out\/a\/[^\n]+: the disk is full\n|cannot write [^\n]+: the disk is full\n/);
    expect(stdout).toMatch(/code 2\n$/);
  });

  test('that fills up: the outputs of the build before stay whole', () => {
    const folder = temporaryFolder({ 'a.quilt': GOOD });
    const script = `$N $S build a.quilt >/dev/null 2>&1; find out -type f -exec sha256sum {} + | sort > before; dd if=/dev/zero of=out/ballast bs=1k count=99999 2>/dev/null
      sed -i 's/#22345c/#445566/' a.quilt; $N $S build a.quilt >told 2>&1; echo "code $?"; rm out/ballast; find out -type f -exec sha256sum {} + | sort > after; cmp before after && echo same
      $N $S build a.quilt >/dev/null 2>&1; echo "code $?"; grep -c 445566 out/a/quilt.svg`;
    const { stdout } = onDisk(folder, 'size=2m', script);
    expect(stdout).toMatch(/^code 2\nsame\ncode 0\n[1-9]/);
    expect(folder.read('told')).toContain('the disk is full');
  });

  test('that is read-only: it is said', () => {
    const folder = temporaryFolder({ 'a.quilt': GOOD });
    const { stdout } = onDisk(folder, 'size=2m', 'mount -o remount,ro out; $N $S build a.quilt 2>&1; echo "code $?"; ls -A out');
    expect(stdout).toMatch(/cannot write [^\n]+: the disk is read-only\ncode 2\n$/);
  });

  test('that is read-only: the layout of a pattern stays as it was', () => {
    const folder = temporaryFolder();
    const { stdout } = onDisk(folder, 'size=2m', "printf 'let  a = 1\\n' > out/b.quilt; mount -o remount,ro out; $N $S format out/b.quilt 2>&1; echo \"code $?\"; cat out/b.quilt");
    expect(stdout).toBe('scant: cannot write out/b.quilt: the disk is read-only\ncode 2\nlet  a = 1\n');
  });
});

describe('a build', () => {
  test('that is killed at any moment leaves every file whole, and the next one goes on', async () => {
    const folder = temporaryFolder({ 'a.quilt': GOOD });
    const colours = Array.from({ length: 12 }, (_, index) => `#${(0x223344 + index * 0x010101).toString(16)}`);
    let killed = 0;
    for (const [index, colour] of colours.entries()) {
      folder.write('a.quilt', GOOD.replace('#22345c', colour));
      const child = spawn(process.execPath, [program, 'build', 'a.quilt'], { cwd: folder.path, stdio: 'ignore' });
      const ended = new Promise<NodeJS.Signals | null>((resolve) => child.once('exit', (_, signal) => resolve(signal)));
      setTimeout(() => child.kill('SIGKILL'), 60 + 25 * index);
      if ((await ended) === 'SIGKILL') killed += 1;
      for (const path of folder.list().filter((each) => each.endsWith('.svg'))) expect(folder.read(path)).toMatch(/<\/svg>\n$/);
    }
    expect(killed).toBeGreaterThan(0);
    const { status, stderr } = spawnSync(process.execPath, [program, 'build', 'a.quilt'], { cwd: folder.path, encoding: 'utf8' });
    expect(stderr).toMatch(/ written, \d+ unchanged\n$/);
    expect(status).toBe(0);
    expect(folder.list().filter((path) => path.endsWith('.tmp'))).toEqual([]);
  });

  test('that was killed between two files is known by the next one, whatever the pattern says by then', () => {
    const folder = temporaryFolder();
    const files = (text: string) => ['one.md', 'two.md'].map((path) => ({ path, content: text }));
    writeOutputs(folder.path, files('first'));
    const before = JSON.parse(folder.read(MANIFEST_FILE)) as { files: Record<string, string> };
    writeOutputs(folder.path, files('second'));
    const after = JSON.parse(folder.read(MANIFEST_FILE)) as { files: Record<string, string> };
    // As it lies there when the second build has put the first file in place.
    folder.write(MANIFEST_FILE, JSON.stringify({ files: Object.fromEntries(Object.keys(after.files).map((path) => [path, [before.files[path], after.files[path]]])) }));
    folder.write('two.md', 'first');
    folder.write('.two.md.99999-0.tmp', 'sec');
    folder.write('.mine.md.99999-0.tmp', 'no output is called so');
    expect(writeOutputs(folder.path, files('third'))).toMatchObject({ kind: 'written', written: ['one.md', 'two.md'] });
    expect(folder.list()).toEqual(['.mine.md.99999-0.tmp', MANIFEST_FILE, 'one.md', 'two.md']);
    expect(JSON.parse(folder.read(MANIFEST_FILE))).toMatchObject({ files: { 'one.md': expect.any(String) as string } });
  });

  test('waits for another one of the same folder, and says so when that does not end', () => {
    const folder = temporaryFolder();
    onTestFinished(() => rmSync(lockOf(folder.path), { force: true }));
    writeFileSync(lockOf(folder.path), `${process.ppid}`);
    expect(writeOutputs(folder.path, [{ path: 'a', content: 'a' }])).toEqual({ kind: 'refused', reasons: [`another build (process ${process.ppid}) is writing to ${folder.path}; try again when it has ended`] });
    writeFileSync(lockOf(folder.path), '4194304999');
    expect(alone(folder.path, () => readFileSync(lockOf(folder.path), 'utf8'))).toBe(`${process.pid}`);
    expect(alone(folder.path, () => 'again')).toBe('again');
  });

  test('beside another one of the same file: both end, and the outputs are those of one of them', async () => {
    const folder = temporaryFolder({ 'a.quilt': GOOD });
    for (const colour of ['#111111', '#222222', '#333333']) {
      folder.write('a.quilt', GOOD.replace('#22345c', colour));
      const codes = await Promise.all([0, 1, 2].map(() => new Promise((resolve) => spawn(process.execPath, [program, 'build', 'a.quilt'], { cwd: folder.path, stdio: 'ignore' }).once('exit', resolve))));
      expect(codes).toEqual([0, 0, 0]);
      expect(folder.read('out/a/quilt.svg')).toContain(colour);
      expect(folder.list().filter((path) => path.endsWith('.tmp'))).toEqual([]);
    }
  });

  test('while the outputs are deleted and replaced: nothing of the maker’s is touched, nothing is written elsewhere', async () => {
    const folder = temporaryFolder({ 'own/a.quilt': GOOD, 'far/keep': 'mine' });
    const replaced: readonly (() => void)[] = [
      () => rmSync(folder.at('own/out'), { recursive: true, force: true }),
      () => mkdirSync(folder.at('own/out/a/quilt.svg'), { recursive: true }),
      () => symlinkSync(folder.at('far'), folder.at('own/out')),
      () => writeFileSync(folder.at('own/out'), 'a file of mine'),
    ];
    for (let round = 0; round < 12; round++) {
      const child = spawn(process.execPath, [program, 'build', 'a.quilt'], { cwd: folder.at('own'), stdio: 'ignore' });
      const ended = new Promise((resolve) => child.once('exit', resolve));
      await pause(100 + 40 * round);
      try {
        rmSync(folder.at('own/out'), { recursive: true, force: true });
        replaced[round % replaced.length]?.();
      } catch {
        // The build has put something there in between, as it may.
      }
      expect([0, 2]).toContain(await ended);
      rmSync(folder.at('own/out'), { recursive: true, force: true });
      expect(contentOf(folder)).toEqual(new Map([['far/keep', 'mine'], ['own/a.quilt', GOOD]]));
    }
  });
});

describe('a source that changes meanwhile', () => {
  test('is not overwritten by its own layout', () => {
    const folder = temporaryFolder({ 'a.quilt': 'typed in the meantime' });
    expect(() => replaceFile(folder.at('a.quilt'), 'laid out', 'as it was read')).toThrow('it has changed meanwhile');
    expect(contentOf(folder)).toEqual(new Map([['a.quilt', 'typed in the meantime']]));
  });

  test('is built again: after a storm of saves the outputs are those of the last one, and other files wake nobody', async () => {
    const table = bench({ 'a.quilt': GOOD });
    const stop = new AbortController();
    let builds = 0;
    const done = table.scant(['build', 'a.quilt', '--watch', '--only', 'quilt'], { stop: stop.signal, onOutput: (text) => void (builds += text.includes('unchanged') ? 1 : 0) });
    await pause(200);
    for (let save = 0; save < 150; save++) {
      table.write('a.quilt', GOOD.replace('#22345c', `#${(0x100000 + save).toString(16)}`));
      for (let other = 0; other < 10; other++) table.write(`notes-${other}.md`, `${save}`);
      await pause(12);
    }
    await until(() => table.read('out/a/quilt.svg').includes('#100095'));
    const whileStorming = builds;
    await pause(400);
    stop.abort();
    expect((await done).code).toBe(0);
    expect(whileStorming).toBeGreaterThan(2);
    expect(builds).toBeLessThan(30);
  });

  test('is still watched when its folder was taken away and came back', async () => {
    const table = bench({ 'p/a.quilt': GOOD });
    const stop = new AbortController();
    const done = table.scant(['build', 'p/a.quilt', '--watch', '--only', 'quilt'], { stop: stop.signal });
    await pause(200);
    renameSync(table.at('p'), table.at('away'));
    await pause(200);
    table.write('p/a.quilt', GOOD.replace('#22345c', '#765432'));
    await until(() => statSync(table.at('p/out/a/quilt.svg'), { throwIfNoEntry: false }) !== undefined && table.read('p/out/a/quilt.svg').includes('#765432'));
    stop.abort();
    expect((await done).code).toBe(0);
  });
});

describe('the server', () => {
  test('reads a file anew that its editor tells of, though size and clock are as they were', async () => {
    const folder = temporaryFolder({ 'lib.quilt': 'fabric ink #112233 "Ink"\n', 'a.quilt': 'import "lib.quilt"\nblock A 6" { ink }\n' });
    const uri = pathToFileURL(folder.at('a.quilt')).href;
    const session = await startSession({ folders: [pathToFileURL(folder.path).href] });
    session.open(uri, folder.read('a.quilt'));
    expect(await session.diagnostics(uri)).toEqual([]);
    const { mtime } = statSync(folder.at('lib.quilt'));
    writeFileSync(folder.at('lib.quilt'), 'fabric inc #112233 "Ink"\n');
    utimesSync(folder.at('lib.quilt'), mtime, mtime);
    session.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: pathToFileURL(folder.at('lib.quilt')).href, type: 2 }] });
    expect((await session.diagnostics(uri)).map(({ code }) => code)).toContain('unknown-name');
    expect(await session.stop()).toBe(0);
  });

  test('asks its editor to look again once, however many files have changed', async () => {
    const folder = temporaryFolder({ 'lib.quilt': 'fabric ink #112233 "Ink"\n' });
    const uri = pathToFileURL(folder.at('a.quilt')).href;
    const session = await startSession({ folders: [pathToFileURL(folder.path).href] });
    session.open(uri, 'import "lib.quilt"\nblock A 6" { ink }\n');
    await session.diagnostics(uri);
    const changes = Array.from({ length: 5000 }, (_, index) => ({ uri: pathToFileURL(folder.at(index % 2 === 0 ? 'lib.quilt' : `other-${index}.quilt`)).href, type: 2 }));
    const before = session.asked.filter(({ method }) => method.endsWith('/refresh')).length;
    session.notify('workspace/didChangeWatchedFiles', { changes });
    await session.diagnostics(uri);
    await pause(200);
    expect(session.asked.filter(({ method }) => method.endsWith('/refresh')).length - before).toBe(1);
    expect(await session.stop()).toBe(0);
  });
});

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

async function until(holds: () => boolean): Promise<void> {
  const end = performance.now() + 15_000;
  while (!holds()) {
    if (performance.now() > end) throw new Error('it never came about');
    await pause(30);
  }
}
