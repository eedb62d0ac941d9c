// Runs suite.ts in a real editor through @vscode/test-electron. With SCANT_EDITOR=desktop that is the editor it downloads, else the served one.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { runTests, TestRunFailedError } from '@vscode/test-electron';
import { build } from 'esbuild';
import { runProgram } from '../harness/editor/cleanup.ts';
import { copyOfSamples, project } from '../harness/editor/serve.ts';

const harness = join(project, 'test/harness/editor');
const suite = join(project, 'dist/editor-suite.cjs');

await runProgram(main);

async function main(): Promise<number> {
  await bundle();
  const paths = { extensionDevelopmentPath: project, extensionTestsPath: suite, launchArgs: [copyOfSamples()] };
  return runTests({ ...served(), ...paths }).catch(failed);
}

/** The suite has said why already. */
function failed(error: unknown): number {
  if (error instanceof TestRunFailedError) return error.code ?? 1;
  throw error;
}

async function bundle(): Promise<void> {
  await build({
    entryPoints: [join(import.meta.dirname, 'suite.ts')],
    outfile: suite,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    external: ['vscode'],
    logLevel: 'warning',
  });
}

/** The served editor, installed first, in place of one that would be downloaded. */
function served(): { vscodeExecutablePath?: string } {
  if (process.env.SCANT_EDITOR === 'desktop') return {};
  const { status } = spawnSync(process.execPath, [join(harness, 'install.mjs')], { stdio: 'inherit' });
  if (status !== 0) throw new Error('The editor could not be installed.');
  return { vscodeExecutablePath: join(harness, 'executable.ts') };
}
