/** What the extension brings into the editor: snippets that are patterns, files that are there, commands that exist. */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { snapshotOfText } from '../harness/snapshot.ts';

const project = new URL('../../', import.meta.url);
const read = (path: string): unknown => JSON.parse(readFileSync(new URL(path, project), 'utf8'));

interface Snippet {
  readonly prefix: string;
  readonly body: readonly string[];
}

interface Manifest {
  readonly contributes?: {
    readonly commands: readonly { readonly command: string }[];
    readonly languages: readonly { readonly configuration: string; readonly icon: { readonly light: string; readonly dark: string } }[];
    readonly grammars: readonly { readonly path: string }[];
    readonly snippets: readonly { readonly path: string }[];
  };
}

const snippets = read('client/snippets/quilt.json') as Readonly<Record<string, Snippet>>;

/** As the editor fills it in when nothing is typed: the defaults, the first of each choice. */
function filledIn({ body }: Snippet): string {
  return `${body.join('\n').replace(/\$\{\d+:([^}]*)\}/g, '$1').replace(/\$\{\d+\|([^,|]*)[^}]*\}/g, '$1').replace(/\$\d/g, '')}\n`;
}

describe.each(Object.entries(snippets))('%s', (name, snippet) => {
  test('is written as the language wants it', () => {
    const text = filledIn(snippet);
    const inside = /^(Sashing|Border)$/.test(name) ? `quilt {\n${text}}\n` : text;
    const { problems } = snapshotOfText(inside);
    expect(problems.filter(({ rule }) => rule === 'syntax').map(({ message }) => message)).toEqual([]);
  });
});

test('the snippet of a whole pattern has no problem at all', () => {
  const whole = snippets['A whole pattern'];
  const { problems, shown } = snapshotOfText(whole ? filledIn(whole) : '');
  expect(problems.map(({ message }) => message)).toEqual([]);
  expect(shown?.layout.placements.length).toBe(20);
});

test('every file that is named is there, and every command is registered', () => {
  const file = existsSync(new URL('client/contributes.json', project)) ? 'client/contributes.json' : 'package.json';
  const { contributes } = read(file) as Manifest;
  const files = contributes ? [...contributes.languages.flatMap(({ configuration, icon }) => [configuration, icon.light, icon.dark]), ...[...contributes.grammars, ...contributes.snippets].map(({ path }) => path)] : [];
  expect(files.length).toBeGreaterThan(4);
  expect(files.filter((path) => !existsSync(new URL(path, project)))).toEqual([]);
  const folder = new URL('client/src/', project);
  const source = readdirSync(folder).filter((name) => name.endsWith('.ts')).map((name) => readFileSync(new URL(name, folder), 'utf8')).join('\n');
  expect(contributes?.commands.filter(({ command }) => !source.includes(`'${command}'`))).toEqual([]);
});
