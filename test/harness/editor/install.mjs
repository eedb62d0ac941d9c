// Installs the editor, browser and fonts that Scant is tried in, into .cache/editor. Ends at once when they are there. Needs Node 20 or later, npm and the npm registry: no compiler.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const here = import.meta.dirname;
const home = join(here, '../../../.cache/editor');
const fresh = `${home}-${process.pid}`;
const sources = ['package.json', 'package-lock.json', 'install.mjs', 'stand-ins/spdlog.mjs', 'stand-ins/native-watchdog.mjs'];

const stamp = stampOf(sources);
if (stampAt(home) !== stamp) {
  console.log('Installing the editor into .cache/editor: about 0.9 GB, half a minute.');
  try {
    await install();
    moveIntoPlace();
  } finally {
    rmSync(fresh, { recursive: true, force: true });
  }
  console.log('The editor is installed.');
}

/** Everything goes into a fresh folder first, so that an install cut short never looks done. */
async function install() {
  mkdirSync(fresh, { recursive: true });
  for (const file of ['package.json', 'package-lock.json']) copyFileSync(join(here, file), join(fresh, file));
  npm(fresh, 'ci');
  const vscode = join(fresh, 'node_modules/code-server/lib/vscode');
  npm(vscode, 'install', '--omit=dev');
  for (const name of ['spdlog', 'native-watchdog']) replaceNative(join(vscode, 'node_modules/@vscode', name), name);
  if (process.platform === 'linux' && process.arch === 'x64') await unpackBrowser();
  writeFileSync(join(fresh, 'fonts.conf'), fontSettings());
  writeFileSync(join(fresh, 'stamp'), stamp);
}

/** The two native modules that the editor does not start without, and that would need a compiler. */
function replaceNative(folder, name) {
  copyFileSync(join(here, `stand-ins/${name}.mjs`), join(folder, 'index.mjs'));
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ name: `@vscode/${name}`, main: 'index.mjs' }));
}

/** Another install may have won the race: then its folder, the same to the byte, is kept. */
function moveIntoPlace() {
  if (stampAt(home) === stamp) return;
  rmSync(home, { recursive: true, force: true });
  renameSync(fresh, home);
}

function npm(folder, ...command) {
  const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const { status, error, stdout, stderr } = spawnSync('npm', [...command, ...quiet], {
    cwd: folder,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  if (status === 0) return;
  console.error(stdout ?? '', stderr ?? '', error?.message ?? '');
  throw new Error(`npm ${command.join(' ')} failed in ${folder}. It needs the npm registry and about 1 GB of disk.`);
}

/** The package unpacks into the temporary folder, and its libraries only where it thinks itself on AWS. */
async function unpackBrowser() {
  process.env.TMPDIR = join(fresh, 'browser');
  mkdirSync(process.env.TMPDIR);
  const packed = join(fresh, 'node_modules/@sparticuz/chromium');
  const { inflate } = await import(join(packed, 'build/index.js'));
  for (const file of ['chromium.br', 'al2023.tar.br', 'fonts.tar.br']) await inflate(join(packed, 'bin', file));
}

/** The same letters on every machine: Open Sans for the editor's own text, DejaVu for code and signs. */
function fontSettings() {
  const prefer = (family, font) => `<alias binding="strong"><family>${family}</family><prefer><family>${font}</family></prefer></alias>`;
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${home}/browser/fonts</dir>
  <dir>${home}/node_modules/dejavu-fonts-ttf/ttf</dir>
  <cachedir>${home}/browser/fonts-cache</cachedir>
  ${prefer('monospace', 'DejaVu Sans Mono')}
  ${prefer('serif', 'DejaVu Serif')}
  ${prefer('sans-serif', 'Open Sans')}
  ${prefer('system-ui', 'Open Sans')}
</fontconfig>
`;
}

function stampOf(files) {
  const hash = createHash('sha256');
  for (const file of files) hash.update(readFileSync(join(here, file)));
  return hash.digest('hex');
}

function stampAt(folder) {
  const file = join(folder, 'stamp');
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}
