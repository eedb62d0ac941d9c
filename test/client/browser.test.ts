/** What runs in a browser holds nothing of Node: the bundles as they are shipped. */
import { join } from 'node:path';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { textFiles } from '../../grammar/module.mjs';
import { project } from '../harness/fresh.ts';

const PROGRAMS = [
  { entry: 'client/src/browser.ts', external: ['vscode'] },
  { entry: 'server/src/lsp/worker.ts', external: [] },
];

test.each(PROGRAMS)('$entry', async ({ entry, external }) => {
  const { outputFiles, metafile } = await build({
    entryPoints: [join(project, entry)], bundle: true, platform: 'browser', target: 'es2022', format: 'cjs', external, ...textFiles, write: false, metafile: true, outdir: 'out', logLevel: 'silent',
  });
  const imports = Object.values(metafile.outputs).flatMap((output) => output.imports.map(({ path }) => path));
  expect([...new Set(imports)]).toEqual(external);
  expect(Object.keys(metafile.inputs).filter((path) => /server\/src\/(disk\/(?!shelf|kinds|names)|cli|print|lsp\/(machine|main|thread)\.ts)/.test(path))).toEqual([]);
  const [code] = outputFiles.map(({ text }) => text);
  expect(/\bprocess\.(?:cwd|argv|stdin)\b|\brequire\("node:/.exec(code ?? '')).toBeNull();
});
