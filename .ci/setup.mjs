// Before every npm script: installs the project's packages when they are not those of package-lock.json, else ends at once. Runs under any Node from 20.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const project = join(import.meta.dirname, '..');
const reason = whyStale();
if (reason !== null) {
  console.log(`Installing the project's packages: ${reason}.`);
  process.exit(install());
}

/** npm keeps its own list of what it put into node_modules: the lock file must be in there. Packages for other machines never are. */
function whyStale() {
  const installed = packagesIn('node_modules/.package-lock.json');
  if (installed === null) return 'node_modules is missing';
  const wanted = Object.entries(packagesIn('package-lock.json') ?? {});
  const stale = wanted.find(([path, { version, optional }]) => path !== '' && !optional && installed[path]?.version !== version);
  return stale ? `${stale[0]} is not at ${stale[1].version}` : null;
}

function packagesIn(file) {
  const path = join(project, file);
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')).packages : null;
}

/** npm runs under the machine's own Node, since it is about to replace the one in node_modules. */
function install() {
  const outside = (process.env.PATH ?? '').split(delimiter).filter((folder) => !folder.includes('node_modules'));
  const { status, error } = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], {
    cwd: project,
    env: { ...process.env, PATH: outside.join(delimiter) },
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (error) console.error(error.message);
  return status ?? 1;
}
