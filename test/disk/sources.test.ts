/** Reading files, finding them, and where imports may lead. */
import { execFileSync } from 'node:child_process';
import { symlinkSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isInside, patternName, patternsIn, readPattern, resolveImport, workspaceOf } from '../../server/src/disk/sources.ts';
import { temporaryFolder } from './folder.ts';

describe('readPattern', () => {
  it('reads UTF-8 with and without a byte order mark', () => {
    const folder = temporaryFolder({ 'a.quilt': 'fabric ñ\r\n', 'b.quilt': '\uFEFFfabric', 'c.quilt': '' });
    expect(readPattern(folder.at('a.quilt'))).toEqual({ kind: 'read', text: 'fabric ñ\r\n', mark: false });
    expect(readPattern(folder.at('b.quilt'))).toEqual({ kind: 'read', text: 'fabric', mark: true });
    expect(readPattern(folder.at('c.quilt'))).toEqual({ kind: 'read', text: '', mark: false });
  });
  it('says why it cannot', () => {
    const folder = temporaryFolder({ 'file': '' });
    folder.write('utf16.quilt', Buffer.from('\uFEFFfabric', 'utf16le'));
    folder.write('large.quilt', Buffer.alloc(10 * 1024 * 1024 + 1, 'x'));
    const why = (path: string): string => {
      const reading = readPattern(folder.at(path));
      return reading.kind === 'failed' ? reading.why : 'read';
    };
    expect(why('none.quilt')).toBe('no such file or folder');
    expect(why('.')).toBe('it is a folder');
    expect(why('file/a.quilt')).toBe('a file stands where a folder should');
    expect(why('utf16.quilt')).toBe('it is not UTF-8 text');
    expect(why('large.quilt')).toBe('it has 10.0 MiB, more than the 10 MiB that a pattern may have');
  });
  it('takes a file of exactly 10 MiB', () => {
    const path = temporaryFolder().write('large.quilt', Buffer.alloc(10 * 1024 * 1024, 'x'));
    expect(readPattern(path).kind).toBe('read');
  });
  it.skipIf(process.platform === 'win32')('does not wait for a pipe', () => {
    const folder = temporaryFolder();
    execFileSync('mkfifo', [folder.at('pipe.quilt')]);
    expect(readPattern(folder.at('pipe.quilt'))).toEqual({ kind: 'failed', why: 'it is not a plain file' });
  });
});

describe('patternsIn', () => {
  it('finds patterns below, in an order of its own, and skips what holds none of the maker’s', () => {
    const folder = temporaryFolder({
      'b.quilt': '', 'a.quilt': '', 'notes.md': '', 'sub/c.quilt': '', 'sub/out/x.quilt': '', 'node_modules/m.quilt': '', '.git/g.quilt': '', 'out/o.quilt': '',
      'x.quilt/inner.quilt': '',
    });
    symlinkSync(folder.at('.'), folder.at('round'));
    symlinkSync(folder.at('a.quilt'), folder.at('linked.quilt'));
    symlinkSync(folder.at('nowhere'), folder.at('broken.quilt'));
    expect(patternsIn(folder.path).map((path) => path.slice(folder.path.length + 1))).toEqual(['a.quilt', 'b.quilt', 'linked.quilt', 'sub/c.quilt', 'x.quilt/inner.quilt']);
  });
});

describe('resolveImport', () => {
  it('stays in the workspace, links followed', () => {
    const folder = temporaryFolder({ 'ws/a/p.quilt': '', 'ws/lib.quilt': '', 'secret.quilt': '', 'far/x.quilt': '' });
    symlinkSync(folder.at('secret.quilt'), folder.at('ws/link.quilt'));
    symlinkSync(folder.at('far'), folder.at('ws/far'));
    symlinkSync(folder.at('ws/lib.quilt'), folder.at('ws/inner.quilt'));
    symlinkSync(folder.at('ws'), folder.at('door'));
    symlinkSync(folder.at('ws/round.quilt'), folder.at('ws/round.quilt'));
    const from = (written: string): unknown => resolveImport(folder.at('ws/a/p.quilt'), written, [folder.at('ws')]);
    expect(from('../lib.quilt')).toEqual({ path: folder.at('ws/lib.quilt') });
    expect(from('../inner.quilt')).toEqual({ path: folder.at('ws/inner.quilt') });
    expect(from('../none.quilt')).toBe('missing');
    expect(from('p.quilt/none.quilt')).toBe('missing');
    expect(from('../../secret.quilt')).toBe('outside');
    expect(from('../../none.quilt')).toBe('outside');
    expect(from('/etc/passwd')).toBe('outside');
    expect(from('../link.quilt')).toBe('outside');
    expect(from('../far/x.quilt')).toBe('outside');
    expect(from('../round.quilt')).toBe('unreadable');
    expect(from('../../ws/lib.quilt')).toEqual({ path: folder.at('ws/lib.quilt') });
    expect(resolveImport(folder.at('door/a/p.quilt'), '../lib.quilt', [folder.at('door')])).toEqual({ path: folder.at('door/lib.quilt') });
    expect(resolveImport(folder.at('door/a/p.quilt'), '../link.quilt', [folder.at('door')])).toBe('outside');
  });
});

describe('workspaceOf', () => {
  it('is the repository, else the working folder around the file, else its own folder', () => {
    const folder = temporaryFolder({ 'repo/.git/HEAD': '', 'repo/a/b/p.quilt': '', 'plain/a/p.quilt': '', 'worktree/.git': 'gitdir: x', 'worktree/p.quilt': '' });
    expect(workspaceOf(folder.at('repo/a/b/p.quilt'), folder.at('repo/a'))).toBe(folder.at('repo'));
    expect(workspaceOf('p.quilt', folder.at('worktree'))).toBe(folder.at('worktree'));
    expect(workspaceOf(folder.at('plain/a/p.quilt'), folder.at('plain'))).toBe(folder.at('plain'));
    expect(workspaceOf(folder.at('plain/a/p.quilt'), folder.at('repo'))).toBe(folder.at('plain/a'));
  });
});

describe('names', () => {
  it.each([['/a', '/a/b', true], ['/a', '/a', true], ['/a', '/ab', false], ['/a', '/', false], ['/a', '/a/..b', true], ['/', '/x', true]])('%s holds %s: %s', (folder, path, inside) => {
    expect(isInside(folder, path)).toBe(inside);
  });
  it.each([['a/Harbour Mail.quilt', 'Harbour Mail'], ['a.QUILT', 'a'], ['a.quilt.quilt', 'a.quilt'], ['.quilt', '.quilt'], ['notes.txt', 'notes.txt']])('%s is %s', (path, name) => {
    expect(patternName(path)).toBe(name);
  });
});
