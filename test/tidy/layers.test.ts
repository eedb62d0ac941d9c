/** The house rules that a reader can check by eye are checked here by reading the files. */
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const project = fileURLToPath(new URL('../..', import.meta.url));
const source = join(project, 'server', 'src');

describe('layers', () => {
  const order = layersOfHandbook();
  const imports = filesBelow(source, '.ts').flatMap(importsOf);

  test('the handbook names every folder of the server, and no other', () => {
    const folders = readdirSync(source, { withFileTypes: true }).filter((entry) => entry.isDirectory()).map((entry) => entry.name);
    const named = order.flat().filter((layer) => layer !== 'snapshot' && layer !== 'client');
    expect(named.filter((layer) => !folders.includes(layer) && layer !== 'piecing')).toEqual([]);
    expect(folders.filter((folder) => !named.includes(folder))).toEqual([]);
  });

  test('a folder imports only from folders before it', () => {
    expect(imports.length).toBeGreaterThan(100);
    const upward = imports.filter(({ from, to }) => rank(order, layerOf(to)) > rank(order, layerOf(from)) || isSibling(order, layerOf(from), layerOf(to)));
    expect(upward.map(describeImport)).toEqual([]);
  });

  test('no file imports itself by a ring', () => {
    expect(ringIn(imports)).toEqual([]);
  });

  test('only the client imports vscode', () => {
    const offenders = filesBelow(source, '.ts').filter((file) => /from 'vscode'/.test(readFileSync(file, 'utf8')));
    expect(offenders).toEqual([]);
  });

  test('only disk, lsp and cli touch files and processes', () => {
    const offenders = filesBelow(source, '.ts')
      .filter((file) => !['disk', 'lsp', 'cli'].includes(layerOf(file)))
      .filter((file) => /from 'node:/.test(readFileSync(file, 'utf8')));
    expect(offenders.map((file) => relative(project, file))).toEqual([]);
  });
});

describe('files', () => {
  test('every source file opens with a sentence that says what it does', () => {
    const files = [...filesBelow(source, '.ts'), ...filesBelow(join(project, 'client', 'src'), '.ts')];
    const bare = files.filter((file) => !/^(#!.*\n)?(\/\*\*|\/\/|\/\* )/.test(readFileSync(file, 'utf8')));
    expect(bare.map((file) => relative(project, file))).toEqual([]);
  });

  test('the top level is as the house plan says', () => {
    const planned = ['client', 'server', 'grammar', 'syntaxes', 'test', 'samples', 'package.json', 'tsconfig.json', 'README.md', 'DEVELOPERS.md'];
    const tools = ['package-lock.json', 'CHANGELOG.md', 'LICENSE', 'eslint.config.mjs', 'esbuild.config.mjs', 'vitest.config.ts', '.ci', '.vscode', '.gitignore', '.gitattributes', '.vscodeignore', '.npmignore', '.pre-commit-hooks.yaml'];
    const left = ['.git', 'node_modules', 'dist', '.cache'];
    const found = readdirSync(project).filter((name) => !name.endsWith('.vsix'));
    expect(planned.filter((name) => !found.includes(name))).toEqual([]);
    expect(found.filter((name) => ![...planned, ...tools, ...left].includes(name))).toEqual([]);
  });
});

interface Import {
  readonly from: string;
  readonly to: string;
}

/** `[['text', 'exact'], ['syntax'], …]`, from the line in DEVELOPERS.md. */
function layersOfHandbook(): readonly (readonly string[])[] {
  const line = readFileSync(join(project, 'DEVELOPERS.md'), 'utf8').split('\n').find((each) => each.includes(' → ')) ?? '';
  return line.split(' → ').map((group) => group.split(', ').map((layer) => layer.trim()));
}

function rank(order: readonly (readonly string[])[], layer: string): number {
  return order.findIndex((group) => group.includes(layer));
}

function isSibling(order: readonly (readonly string[])[], a: string, b: string): boolean {
  return a !== b && rank(order, a) === rank(order, b);
}

/** The layer a file belongs to: its first folder below `server/src`, or its name when it stands there itself. */
function layerOf(file: string): string {
  return relative(source, file).split(/[\\/]/)[0]?.replace(/\.ts$/, '') ?? '';
}

function importsOf(file: string): Import[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/(?:from|import)\s+'(\.[^']+)'/g)]
    .map((match) => resolve(dirname(file), match[1] ?? ''))
    .filter((to) => to.startsWith(source) && to.endsWith('.ts'))
    .map((to) => ({ from: file, to }));
}

function ringIn(imports: readonly Import[]): string[] {
  const next = Map.groupBy(imports, (each) => each.from);
  const done = new Set<string>();
  const visit = (file: string, way: readonly string[]): string[] => {
    if (way.includes(file)) return [...way.slice(way.indexOf(file)), file].map((each) => relative(source, each));
    if (done.has(file)) return [];
    done.add(file);
    for (const { to } of next.get(file) ?? []) {
      const ring = visit(to, [...way, file]);
      if (ring.length > 0) return ring;
    }
    return [];
  };
  return [...next.keys()].map((file) => visit(file, [])).find((ring) => ring.length > 0) ?? [];
}

function describeImport({ from, to }: Import): string {
  return `${relative(source, from)} imports ${relative(source, to)}`;
}

function filesBelow(folder: string, ending: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => join(entry.parentPath, entry.name));
}
