// Bundles the four programs: extension host client, preview web view, language server, command line.
// `node esbuild.config.mjs` builds once; `--watch` keeps building.
import { build, context } from 'esbuild';
import { textFiles } from './grammar/module.mjs';

const shared = {
  bundle: true,
  sourcemap: 'linked',
  minify: true,
  keepNames: false,
  legalComments: 'linked',
  ...textFiles,
  logLevel: 'info',
};
const node = { ...shared, platform: 'node', target: 'node20', format: 'cjs', outExtension: { '.js': '.cjs' }, outdir: 'dist' };

const programs = [
  { ...node, entryPoints: { client: 'client/src/extension.ts' }, external: ['vscode'] },
  { ...node, entryPoints: { server: 'server/src/lsp/main.ts', scant: 'server/src/cli/main.ts' } },
  { ...shared, entryPoints: { preview: 'client/src/preview/main.ts' }, platform: 'browser', target: 'es2022', format: 'iife', outdir: 'dist' },
];

if (process.argv.includes('--watch')) {
  for (const program of programs) await (await context(program)).watch();
} else {
  await Promise.all(programs.map((program) => build(program)));
}
