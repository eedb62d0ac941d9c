// `npm run editor`: builds Scant and serves an editor that has it, on a copy of the samples, until Ctrl-C. `--once` ends as soon as it answers.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { runProgram } from './cleanup.ts';
import { addressOf, copyOfSamples, project, serveEditor } from './serve.ts';

await runProgram(main);

async function main(): Promise<number> {
  run(join(import.meta.dirname, 'install.mjs'));
  run('esbuild.config.mjs');
  const editor = await serveEditor({ extensions: [project] });
  const address = addressOf(editor, copyOfSamples());
  console.log(`\nOpen this address in a browser:\n\n  ${address}\n`);
  if (process.argv.includes('--once')) return answers(address);
  console.log('It is a copy of the samples folder. Ctrl-C ends the editor and removes the copy.');
  await editor.ended;
  return 1;
}

function run(script: string): void {
  const { status } = spawnSync(process.execPath, [script], { cwd: project, stdio: 'inherit' });
  if (status !== 0) throw new Error(`${script} failed.`);
}

async function answers(address: string): Promise<number> {
  const response = await fetch(address);
  const found = response.ok && (await response.text()).includes('workbench');
  console.log(found ? 'The editor answers.' : `The editor answered ${String(response.status)}.`);
  return found ? 0 : 1;
}
