// Asks the registry for known flaws of the packages. One of a shipped package that is high or critical fails; a registry that cannot be asked does not.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const project = join(import.meta.dirname, '..');
const shipped = new Set([...readFileSync(join(project, 'client/licences.md'), 'utf8').matchAll(/^\| (\S+) \| \d/gm)].map(([, name]) => name));
const found = flaws();
if (found === undefined) console.log('npm audit: this registry cannot be asked for known flaws; nothing was audited.');
else report(found);

/** By package; undefined when the registry gives no answer. */
function flaws() {
  const { stdout } = spawnSync('npm', ['audit', '--json'], { cwd: project, encoding: 'utf8', timeout: 60_000, shell: process.platform === 'win32' });
  try {
    return JSON.parse(stdout).vulnerabilities;
  } catch {
    return undefined;
  }
}

function report(vulnerabilities) {
  const all = Object.values(vulnerabilities);
  const grave = all.filter(({ name, severity }) => shipped.has(name) && (severity === 'high' || severity === 'critical'));
  console.log(`npm audit: ${all.length} packages with known flaws, ${grave.length} of them shipped and grave.`);
  for (const { name, severity } of all) console.log(`  ${name}: ${severity}${shipped.has(name) ? ', shipped' : ''}`);
  if (grave.length > 0) process.exitCode = 1;
}
