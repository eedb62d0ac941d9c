/** What is handed out: the extension's package and the npm package are whole, small, and hold nothing that is nobody's business. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { GOOD } from '../cli/command-line.ts';
import { temporaryFolder } from '../disk/folder.ts';
import { expectFresh, project } from '../harness/fresh.ts';
import { licencesPage } from '../harness/licences.ts';
import { shipped } from '../harness/shipped.ts';

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly main: string;
  readonly icon: string;
  readonly license: string;
  readonly categories: readonly string[];
  readonly keywords: readonly string[];
  readonly bin: Readonly<Record<string, string>>;
  readonly dependencies?: unknown;
  readonly engines: Readonly<Record<string, string>>;
}

const manifest = JSON.parse(readFileSync(join(project, 'package.json'), 'utf8')) as Manifest;
const THREE_MEGABYTES = 3_000_000;
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'scant-package-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('the extension’s package', () => {
  let files: Readonly<Record<string, Uint8Array>> = {};
  let size = 0;
  beforeAll(() => {
    expect(existsSync(join(project, 'dist/client.cjs')), 'npm run build comes first').toBe(true);
    const vsix = join(folder, 'scant.vsix');
    const { status, stdout, stderr } = spawnSync(process.execPath, ['node_modules/@vscode/vsce/vsce', 'package', '--no-dependencies', '--allow-missing-repository', '--no-rewrite-relative-links', '-o', vsix], { cwd: project, encoding: 'utf8' });
    expect(status, stdout + stderr).toBe(0);
    expect(stderr.replace(/^.*(DEP0|node --trace|Node\.js).*$/gm, '').trim()).toBe('');
    files = unzipSync(readFileSync(vsix));
    size = statSync(vsix).size;
  }, 120_000);

  test('is smaller than 3 MB', () => {
    console.log(`the .vsix has ${(size / 1_000_000).toFixed(2)} MB in ${Object.keys(files).length} files`);
    expect(size).toBeLessThan(THREE_MEGABYTES);
  });
  test('has what a marketplace shows: a readme, a changelog, a licence, an icon, categories, keywords', () => {
    const names = Object.keys(files).map((name) => name.toLowerCase());
    for (const wanted of ['extension/readme.md', 'extension/changelog.md', 'extension/license.txt', `extension/${manifest.icon}`, 'extension/client/licences.md']) expect(names).toContain(wanted);
    const icon = Buffer.from(files[`extension/${manifest.icon}`] ?? []);
    // A PNG says its size at bytes 16 to 23 (W3C, PNG, 11.2.2): 128 by 128 is what the marketplace asks for at least.
    expect([icon.readUInt32BE(16), icon.readUInt32BE(20)].every((side) => side >= 128)).toBe(true);
    expect(manifest.license).toBe('MIT');
    expect(manifest.categories.length).toBeGreaterThan(0);
    expect(manifest.keywords.length).toBeGreaterThan(0);
    expect(manifest.keywords.length).toBeLessThanOrEqual(30);
    expect(Buffer.from(files['extension/changelog.md'] ?? files['extension/CHANGELOG.md'] ?? []).toString()).toContain(manifest.version);
  });
  test('has all that its manifest and its programs name, and no maps, tests or sources', () => {
    const names = Object.keys(files);
    const programs = ['client.cjs', 'scant.cjs', 'print.cjs', 'search.cjs', 'preview.js', 'preview.css'].map((name) => `extension/dist/${name}`);
    for (const wanted of [manifest.main, ...Object.values(manifest.bin)].map((path) => join('extension', path)).concat(programs)) expect(names).toContain(wanted);
    expect(names.filter((name) => /\.map$|\.ts$|^extension\/(test|server|node_modules|\.)/.test(name))).toEqual([]);
  });
});

describe('licences', () => {
  test('of every bundled package are on the page that is shipped', () => {
    const inputs = JSON.parse(readFileSync(join(shipped(), 'inputs.json'), 'utf8')) as string[];
    const page = licencesPage(project, inputs);
    expectFresh(new Map([['client/licences.md', page]]));
    // All may be used in a program under the MIT licence with their texts beside them.
    const licences = [...page.matchAll(/^\| \S+ \| \S+ \| (.+) \|$/gm)].map(([, licence]) => licence).filter((licence) => licence !== '---' && licence !== 'licence');
    expect(licences.filter((licence) => !/^(MIT|ISC|BSD-[23]-Clause|Apache-2\.0|BlueOak-1\.0\.0|OFL-1\.1|MIT AND OFL-1\.1|0BSD|see its text)$/.test(licence ?? ''))).toEqual([]);
  });
});

describe('the npm package', () => {
  let home = '';
  const installed = (...words: readonly string[]) => spawnSync(join(home, 'node_modules/.bin/scant'), words, { cwd: home, encoding: 'utf8' });
  beforeAll(() => {
    const npm = (args: readonly string[], cwd: string) => spawnSync('npm', args, { cwd, encoding: 'utf8', shell: process.platform === 'win32' });
    const packed = npm(['pack', '--ignore-scripts', '--json', '--pack-destination', folder], project);
    expect(packed.status, packed.stderr).toBe(0);
    home = join(folder, 'home');
    const made = npm(['install', '--prefix', home, '--offline', '--no-audit', '--no-fund', '--ignore-scripts', join(folder, `${manifest.name}-${manifest.version}.tgz`)], folder);
    expect(made.status, made.stderr).toBe(0);
  }, 120_000);

  test('needs nothing else: all it uses is bundled', () => {
    expect(manifest.dependencies).toBeUndefined();
    expect(manifest.engines['node']).toBe('>=20');
  });
  test('installs into an empty folder without a network, and runs', () => {
    expect(installed('--version').stdout).toBe(`scant ${manifest.version}\n`);
    expect(installed('new', 'lamp').stdout).toBe('lamp.quilt\n');
    expect(installed('check', 'lamp.quilt').stdout).toBe('no problems in 1 file\n');
    const { status, stdout } = installed('build', 'lamp.quilt');
    expect(status).toBe(0);
    expect(stdout).toContain('booklet.pdf');
    expect(installed('explain', 'gap').stdout).toContain('(`gap`)');
  });
});

/** A network of its own, with nothing on it, takes Linux and its rights. */
const canCutOff = process.platform === 'linux' && spawnSync('unshare', ['-n', 'true']).status === 0;
if (!canCutOff) console.log('SKIPPED: a machine without a network, for this one lets nobody take it away.');

test.skipIf(!canCutOff)('without a network everything is built all the same', () => {
  const place = temporaryFolder({ 'a.quilt': GOOD });
  const program = join(shipped(), 'scant.cjs');
  for (const words of [['check', 'a.quilt'], ['build', 'a.quilt'], ['format', 'a.quilt']]) {
    const { status, stderr } = spawnSync('unshare', ['-n', process.execPath, program, ...words], { cwd: place.path, encoding: 'utf8' });
    expect(status, stderr).toBe(0);
  }
  expect(place.list()).toContain('out/a/booklet.pdf');
});
