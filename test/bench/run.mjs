// Bundles a bench and runs it: `npm run bench -- syntax`; without a name, all of them.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { textFiles } from '../../grammar/module.mjs';

const project = join(import.meta.dirname, '../..');
const known = readdirSync(import.meta.dirname).filter((name) => name.endsWith('.ts')).map((name) => name.slice(0, -3));
const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !known.includes(name));
if (unknown.length > 0) {
  console.error(`No bench is called ${unknown.join(', ')}. There are: ${known.join(', ')}.`);
  process.exit(2);
}

for (const name of wanted.length > 0 ? wanted : known) {
  const outfile = join(project, '.cache/bench', `${name}.mjs`);
  await build({ entryPoints: [join(import.meta.dirname, `${name}.ts`)], outfile, bundle: true, platform: 'node', format: 'esm', packages: 'external', ...textFiles, logLevel: 'error' });
  console.log(`\n${name}`);
  const { status } = spawnSync(process.execPath, [outfile], { stdio: 'inherit', cwd: project });
  if (status !== 0) process.exit(status ?? 1);
}
