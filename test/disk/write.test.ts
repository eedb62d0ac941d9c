/** Writing outputs: whole or not at all, only what differs, nothing of the maker's, nothing outside. */
import { lstatSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { replaceFile, type OutputFile } from '../../server/src/disk/replace.ts';
import { writeOutputs } from '../../server/src/disk/write.ts';
import { temporaryFolder, type Folder } from './folder.ts';

const FILES: readonly OutputFile[] = [
  { path: 'quilt.svg', content: '<svg/>\n' },
  { path: 'blocks/Star.svg', content: '<svg>star</svg>\n' },
  { path: 'cutting.csv', content: 'a,b\nc,d\n' },
];

function built(): Folder {
  const folder = temporaryFolder();
  expect(writeOutputs(folder.at('out/x'), FILES).kind).toBe('written');
  return folder;
}

const PATHS = ['out/x/.scant', 'out/x/blocks/Star.svg', 'out/x/cutting.csv', 'out/x/quilt.svg'];

describe('a first build', () => {
  it('makes the folder and the files', () => {
    const folder = temporaryFolder();
    expect(writeOutputs(folder.at('out/x'), FILES)).toEqual({ kind: 'written', written: ['quilt.svg', 'blocks/Star.svg', 'cutting.csv'], unchanged: [], removed: [] });
    expect(folder.list()).toEqual(PATHS);
    expect(folder.read('out/x/blocks/Star.svg')).toBe('<svg>star</svg>\n');
  });
  it('makes nothing of nothing', () => {
    const folder = temporaryFolder();
    expect(writeOutputs(folder.at('out/x'), [])).toEqual({ kind: 'written', written: [], unchanged: [], removed: [] });
    expect(folder.list()).toEqual([]);
  });
});

describe('a second build', () => {
  it('touches nothing when nothing differs', () => {
    const folder = built();
    for (const path of PATHS) utimesSync(folder.at(path), 1, 1);
    expect(writeOutputs(folder.at('out/x'), FILES)).toEqual({ kind: 'written', written: [], unchanged: ['quilt.svg', 'blocks/Star.svg', 'cutting.csv'], removed: [] });
    for (const path of PATHS) expect(statSync(folder.at(path)).mtimeMs).toBe(1000);
  });
  it('writes what differs', () => {
    const folder = built();
    utimesSync(folder.at('out/x/quilt.svg'), 1, 1);
    const result = writeOutputs(folder.at('out/x'), FILES.map((file) => (file.path === 'cutting.csv' ? { ...file, content: 'new\n' } : file)));
    expect(result).toMatchObject({ written: ['cutting.csv'] });
    expect(statSync(folder.at('out/x/quilt.svg')).mtimeMs).toBe(1000);
    expect(folder.list()).toEqual(PATHS);
  });
  it('refuses what a person has edited, names all of it, and changes nothing', () => {
    const folder = built();
    folder.write('out/x/cutting.csv', 'mine\n');
    folder.write('out/x/quilt.svg', 'mine too\n');
    const result = writeOutputs(folder.at('out/x'), FILES.map((file) => ({ ...file, content: `${String(file.content)}new\n` })));
    expect(result).toEqual({
      kind: 'refused',
      reasons: ['quilt.svg', 'cutting.csv'].map((path) => `${folder.at(`out/x/${path}`)} has been edited by hand; move it away (scant build --force overwrites it)`),
    });
    expect(folder.read('out/x/blocks/Star.svg')).toBe('<svg>star</svg>\n');
    expect(folder.list()).toEqual(PATHS);
  });
  it('overwrites it when told to, and knows it again', () => {
    const folder = built();
    folder.write('out/x/cutting.csv', 'mine\n');
    expect(writeOutputs(folder.at('out/x'), FILES, { edited: 'overwrite' })).toMatchObject({ written: ['cutting.csv'] });
    expect(writeOutputs(folder.at('out/x'), FILES.map((file) => ({ ...file, content: 'new\n' })))).toMatchObject({ kind: 'written' });
  });
  it('refuses a file it never wrote', () => {
    const folder = temporaryFolder({ 'out/x/quilt.svg': 'a drawing of mine' });
    expect(writeOutputs(folder.at('out/x'), FILES).kind).toBe('refused');
    expect(folder.list()).toEqual(['out/x/quilt.svg']);
  });
  it('takes line ends changed by version control for its own', () => {
    const folder = built();
    folder.write('out/x/cutting.csv', 'a,b\r\nc,d\r\n');
    expect(writeOutputs(folder.at('out/x'), FILES)).toMatchObject({ written: ['cutting.csv'] });
    folder.write('out/x/cutting.csv', 'a,b\r\nc,d\r\n');
    expect(writeOutputs(folder.at('out/x'), FILES.map((file) => ({ ...file, content: 'new\n' }))).kind).toBe('written');
  });
  it('treats everything as edited when the manifest is broken, unless it is right already', () => {
    const folder = built();
    folder.write('out/x/.scant', '<<<<<<< HEAD');
    expect(writeOutputs(folder.at('out/x'), FILES)).toMatchObject({ kind: 'written', written: [] });
    folder.write('out/x/.scant', '{"files":[]}');
    expect(writeOutputs(folder.at('out/x'), FILES.map((file) => ({ ...file, content: 'new\n' }))).kind).toBe('refused');
  });
});

describe('what is no longer made', () => {
  const fewer = FILES.filter((file) => !file.path.startsWith('blocks/'));
  it('stays unless told', () => {
    const folder = built();
    expect(writeOutputs(folder.at('out/x'), fewer)).toMatchObject({ removed: [] });
    expect(folder.list()).toEqual(PATHS);
    expect(writeOutputs(folder.at('out/x'), fewer, { stale: 'remove' })).toMatchObject({ removed: ['blocks/Star.svg'] });
  });
  it('goes with its folder when nobody has edited it', () => {
    const folder = built();
    folder.write('out/x/notes.md', 'mine');
    expect(writeOutputs(folder.at('out/x'), fewer, { stale: 'remove' })).toMatchObject({ removed: ['blocks/Star.svg'] });
    expect(folder.list()).toEqual(['out/x/.scant', 'out/x/cutting.csv', 'out/x/notes.md', 'out/x/quilt.svg']);
    expect(() => lstatSync(folder.at('out/x/blocks'))).toThrow();
  });
  it('stays when edited, or when beside something of the maker’s', () => {
    const folder = built();
    folder.write('out/x/blocks/Star.svg', 'mine');
    folder.write('out/x/blocks/mine.svg', 'mine');
    expect(writeOutputs(folder.at('out/x'), fewer, { stale: 'remove' })).toMatchObject({ removed: [] });
    expect(folder.read('out/x/blocks/Star.svg')).toBe('mine');
  });
  it('is never looked for outside the folder, whatever the manifest says', () => {
    const folder = built();
    const secret = folder.write('secret', 'a,b\nc,d\n');
    const sum = (JSON.parse(folder.read('out/x/.scant')) as { files: Record<string, string> }).files['cutting.csv'];
    folder.write('out/x/.scant', JSON.stringify({ files: { '../../secret': sum, [secret]: sum, '..\\..\\secret': sum } }));
    expect(writeOutputs(folder.at('out/x'), FILES, { stale: 'remove' })).toMatchObject({ removed: [] });
    expect(folder.read('secret')).toBe('a,b\nc,d\n');
  });
  it('is not what a change of case has renamed', () => {
    const folder = built();
    expect(writeOutputs(folder.at('out/x'), [{ path: 'blocks/star.svg', content: 'new' }, ...fewer], { stale: 'remove' })).toMatchObject({ removed: [] });
  });
});

describe('what stands in the way', () => {
  const refuses = (prepare: (folder: Folder) => void, says: RegExp): void => {
    const folder = built();
    prepare(folder);
    const before = folder.list();
    const result = writeOutputs(folder.at('out/x'), FILES.map((file) => ({ ...file, content: 'new\n' })), { edited: 'overwrite', stale: 'remove' });
    expect(result.kind === 'refused' ? result.reasons.join('\n') : result).toMatch(says);
    expect(folder.list()).toEqual(before);
    if (folder.list().includes('out/x/cutting.csv')) expect(folder.read('out/x/cutting.csv')).toBe('a,b\nc,d\n');
  };
  it('a folder instead of a file', () => {
    refuses((folder) => {
      rmSync(folder.at('out/x/quilt.svg'));
      mkdirSync(folder.at('out/x/quilt.svg'));
    }, /quilt\.svg is a folder/);
  });
  it('a link instead of a file', () => {
    refuses((folder) => {
      folder.write('secret', 'keep');
      rmSync(folder.at('out/x/quilt.svg'));
      symlinkSync(folder.at('secret'), folder.at('out/x/quilt.svg'));
    }, /quilt\.svg is a link/);
  });
  it('a link instead of a subfolder', () => {
    refuses((folder) => {
      mkdirSync(folder.at('elsewhere'));
      rmSync(folder.at('out/x/blocks'), { recursive: true });
      symlinkSync(folder.at('elsewhere'), folder.at('out/x/blocks'));
    }, /blocks is a link/);
  });
  it('a file instead of a subfolder', () => {
    refuses((folder) => {
      rmSync(folder.at('out/x/blocks'), { recursive: true });
      folder.write('out/x/blocks', 'mine');
    }, /blocks is in the way/);
  });
  it('a folder or a link instead of the manifest', () => {
    refuses((folder) => {
      rmSync(folder.at('out/x/.scant'));
      mkdirSync(folder.at('out/x/.scant'));
    }, /\.scant is a folder/);
    refuses((folder) => {
      rmSync(folder.at('out/x/.scant'));
      symlinkSync('/dev/zero', folder.at('out/x/.scant'));
    }, /\.scant is a link/);
  });
  it('a file instead of the output folder', () => {
    const folder = temporaryFolder({ out: 'mine' });
    expect(writeOutputs(folder.at('out/x'), FILES)).toMatchObject({ kind: 'refused' });
    expect(folder.read('out')).toBe('mine');
  });
  it('an output folder that leads out of where it must lie', () => {
    const folder = temporaryFolder({ 'ws/p.quilt': '', 'far/keep': '' });
    symlinkSync(folder.at('far'), folder.at('ws/out'));
    expect(writeOutputs(folder.at('ws/out/p'), FILES, { within: folder.at('ws') })).toEqual({
      kind: 'refused',
      reasons: [`${folder.at('ws/out')} is a link that leads out of ${folder.at('ws')} (scant build --out writes there)`],
    });
    expect(readdirSync(folder.at('far'))).toEqual(['keep']);
    expect(writeOutputs(folder.at('ws/out/p'), FILES).kind).toBe('written');
  });
  it.skipIf(process.platform !== 'linux')('a place where nobody may write', () => {
    expect(writeOutputs('/proc/scant/out', FILES)).toMatchObject({ kind: 'refused', reasons: [expect.stringMatching(/^cannot write \/proc\/scant\/out\/quilt\.svg: /)] });
  });
  it('a failure half way leaves no trace', () => {
    const folder = temporaryFolder();
    const bad: OutputFile = { path: `b/${'x'.repeat(300)}`, content: '' };
    expect(writeOutputs(folder.at('out/x'), [...FILES, bad])).toMatchObject({ kind: 'refused', reasons: [expect.stringContaining('the name is too long')] });
    expect(folder.list()).toEqual([]);
    expect(() => lstatSync(folder.at('out'))).toThrow();
  });
});

describe('replaceFile', () => {
  it('keeps permissions and follows a link', () => {
    const folder = temporaryFolder({ 'a.quilt': 'old' });
    writeFileSync(folder.at('run.quilt'), 'old', { mode: 0o750 });
    symlinkSync(folder.at('run.quilt'), folder.at('link.quilt'));
    replaceFile(folder.at('link.quilt'), 'new');
    expect(readFileSync(folder.at('run.quilt'), 'utf8')).toBe('new');
    expect(statSync(folder.at('run.quilt')).mode & 0o777).toBe(0o750);
    expect(lstatSync(folder.at('link.quilt')).isSymbolicLink()).toBe(true);
    expect(folder.list()).toEqual(['a.quilt', 'link.quilt', 'run.quilt']);
  });
});
