// Bundles the programs: extension host client, preview web view, the command line with the language server in it.
// `node esbuild.config.mjs` builds once into dist/, or where `--into DIR` says; `--watch` keeps building.
import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { build, context } from 'esbuild';
import { textFiles } from './grammar/module.mjs';

const into = process.argv.includes('--into') ? process.argv[process.argv.indexOf('--into') + 1] : 'dist';

const shared = {
  bundle: true,
  sourcemap: 'linked',
  minify: true,
  keepNames: false,
  legalComments: 'linked',
  ...textFiles,
  logLevel: process.argv.includes('--into') ? 'warning' : 'info',
};
const node = { ...shared, platform: 'node', target: 'node20', format: 'cjs', define: { 'import.meta.dirname': '__dirname' }, outExtension: { '.js': '.cjs' }, outdir: into };

/** What prints is large: a bundle of its own, loaded when a booklet is asked for. */
const printApart = {
  name: 'print-apart',
  setup: ({ onLoad, onResolve }) => {
    onResolve({ filter: /^\.\/print\.cjs$/ }, ({ path }) => ({ path, external: true }));
    onLoad({ filter: /disk[\\/]printing\.ts$/ }, () => ({ contents: "export const printing = () => require('./print.cjs');", loader: 'ts' }));
  },
};

/** For editors that run in a browser. */
const browser = { ...shared, platform: 'browser', target: 'es2022', outdir: into };

const programs = [
  { ...node, entryPoints: { client: 'client/src/extension.ts' }, external: ['vscode'] },
  { ...node, entryPoints: { scant: 'server/src/cli/main.ts', search: 'server/src/lsp/search-worker.ts' }, plugins: [...node.plugins, printApart] },
  // The PDF writer asks where it is.
  { ...node, entryPoints: { print: 'server/src/print/main.ts' }, define: { ...node.define, 'import.meta.url': 'ownUrl' }, banner: { js: "const ownUrl = require('node:url').pathToFileURL(__filename).href;" } },
  { ...browser, entryPoints: { 'client-browser': 'client/src/browser.ts' }, format: 'cjs', outExtension: { '.js': '.cjs' }, external: ['vscode'] },
  { ...browser, entryPoints: { 'server-worker': 'server/src/lsp/worker.ts' }, format: 'iife' },
  { ...shared, entryPoints: { preview: 'client/src/preview/main.ts' }, platform: 'browser', target: 'es2022', format: 'iife', outdir: into },
];

/** The fonts that are printed with, and their licence. */
const fonts = ['400Regular/SourceSans3_400Regular.ttf', '600SemiBold/SourceSans3_600SemiBold.ttf', '400Regular_Italic/SourceSans3_400Regular_Italic.ttf', 'LICENSE_FONT'];
mkdirSync(join(into, 'fonts'), { recursive: true });
for (const font of fonts) copyFileSync(join('node_modules/@expo-google-fonts/source-sans-3', font), join(into, 'fonts', basename(font)));

if (process.argv.includes('--watch')) {
  for (const program of programs) await (await context(program)).watch();
} else {
  const built = await Promise.all(programs.map((program) => build({ ...program, metafile: true })));
  // What went into them, for who asks whose work it is.
  writeFileSync(join(into, 'inputs.json'), JSON.stringify([...new Set(built.flatMap(({ metafile }) => Object.keys(metafile.inputs)))].sort()));
}
