/**
 * What a stranger's pattern can do: nothing. Hostile text in every place that takes text comes out of every output as text; the
 * bundles evaluate nothing and reach nowhere; what stands outside the folder stays there.
 */
import { readFileSync, readdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { DOMParser } from '@xmldom/xmldom';
import { unzipSync } from 'fflate';
import MarkdownIt from 'markdown-it';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { hoverAt } from '../../server/src/features/hover.ts';
import { markdownOf } from '../../server/src/features/hover-text.ts';
import { bench } from '../cli/command-line.ts';
import { project } from '../harness/fresh.ts';
import { shipped } from '../harness/shipped.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

/** Each would do something where one of the outputs took it for more than text. */
const HOSTILE = [
  '</title></svg><script>alert(1)</script>', '<img src=x onerror=alert(1)>', ']]><!ENTITY x SYSTEM "file:///etc/passwd">&x;&lt;', '" onload="alert(1)', `' onmouseover='alert(1)`,
  'javascript:alert(1)', '![x](http://nowhere.invalid/x.png)', '[go](javascript:alert(1))', '<http://nowhere.invalid>', 'http://nowhere.invalid/bare', '`</code>`', '| a | b |', '# heading',
  `=cmd|'/C calc'!A0`, '+1+1', '-2+3', '@SUM(A1)', '\t=1', '*/ url(http://nowhere.invalid) /*', '%s%n{{7*7}}${7*7}', '\u202Etxt.exe',
];

const quoted = (text: string): string => `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;

/** In words that may hold computed values, braces would be taken for those. */
function hostilePattern(text: string): string {
  const words = quoted(text.replace(/[{}]/g, ''));
  return `pattern ${quoted(text)} {
  by ${quoted(text)}
  about ${words}
}
fabric ink #22345c ${quoted(text)}
fabric sand #eadfc8 ${quoted(`x ${text}`)}
block Lamp 6" { ink/sand sand }
quilt {
  straight 2 by 2
  place { Lamp }
  border 2" ink
  backing sand
  binding cut 2 1/4" ink
  quilting ${quoted(text)}
}
colorway dusk {
  ink #553366 ${quoted(text)}
}
steps before Lamp {
  ${words}
}
`;
}

describe.each(HOSTILE)('%s', (text) => {
  test('is text in pictures, pages, tables and lists', async () => {
    const table = bench({ 'a.quilt': hostilePattern(text) });
    const { code, err } = await table.scant(['build', 'a.quilt', '--only', 'svg,html,md,csv,xlsx']);
    expect(err).not.toContain(' error ');
    expect(code).toBe(0);
    const outputs = table.list().filter((path) => path.startsWith('out/'));
    const of = (ending: string): readonly string[] => outputs.filter((path) => path.endsWith(ending));
    expect(of('.svg').length).toBeGreaterThan(2);
    for (const path of of('.svg')) expect(harmIn(table.read(path), 'image/svg+xml'), path).toEqual([]);
    for (const path of of('.html')) expect(harmIn(table.read(path), 'text/html'), path).toEqual([]);
    for (const path of of('.md')) expect(harmInMarkdown(table.read(path), path.endsWith('steps.md') ? 'the author’s' : 'ours'), path).toEqual([]);
    for (const path of of('.csv')) expect(formulasIn(table.read(path)), path).toEqual([]);
    for (const path of of('.xlsx')) expect(formulasInBook(readFileSync(table.at(path))), path).toEqual([]);
  });

  test('is text in a hover', () => {
    const snapshot = snapshotOfText(hostilePattern(text));
    const lines = snapshot.document.lines.map((line) => line.text);
    for (const start of ['fabric ink', 'fabric sand', 'block Lamp', '  border']) {
      const hover = hoverAt(snapshot, { line: lines.findIndex((line) => line.startsWith(start)), character: 8 });
      if (hover) expect(harmInMarkdown(markdownOf(hover))).toEqual([]);
    }
  });
});

/** Elements and attributes that a picture or a page of ours never has. */
function harmIn(text: string, type: 'image/svg+xml' | 'text/html'): readonly string[] {
  const faults: string[] = [];
  const document = new DOMParser({ onError: (level, message) => {
    if (type === 'image/svg+xml') faults.push(`${level}: ${message}`);
  } }).parseFromString(text, type);
  const elements = [...document.getElementsByTagName('*')];
  const harm = elements.flatMap((element) => [
    ...(/^(script|iframe|object|embed|foreignObject|form|link|base|animate|set|handler)$/i.test(element.tagName) ? [element.tagName] : []),
    ...(/^meta$/i.test(element.tagName) && element.hasAttribute('http-equiv') && element.getAttribute('http-equiv') !== 'Content-Security-Policy' ? ['meta'] : []),
    ...[...element.attributes].filter(({ name, value }) => /^on/i.test(name) || (/href|src/i.test(name) && !/^(#|data:image\/(svg\+xml|png)|data:font\/)/.test(value)) ).map(({ name, value }) => `${element.tagName} ${name}=${value.slice(0, 60)}`),
  ]);
  return [...faults, ...harm];
}

/** As a reader that allows HTML would show it; in the author's own words Markdown's links and pictures are meant. */
function harmInMarkdown(text: string, words: 'ours' | 'the author’s' = 'ours'): readonly string[] {
  const html = new MarkdownIt({ html: true, linkify: false }).render(text);
  const tags = [...html.matchAll(/<(\/?[a-z][a-z0-9]*)([^>]*)>/gi)].map(([whole]) => whole);
  const own = /^<\/?(h[1-6]|p|ul|ol|li|strong|em|code|pre|table|thead|tbody|tr|th|td|br|hr|blockquote)( start="\d+"| style="text-align:\w+")?\s*\/?>$/;
  const picture = /^<img src="(steps|cutting|blocks)\/[\w-]+\.svg"[^>]*>$|^<img src="quilt\.svg"[^>]*>$/;
  const meant = /^<\/a>$|^<a href="http:[^"]*">$|^<img src="http:[^"]*" alt="x">$/;
  return tags.filter((tag) => !own.test(tag) && !picture.test(tag) && !(words === 'the author’s' && meant.test(tag)));
}

/** Cells that a spreadsheet would work out (OWASP, CSV injection). */
function formulasIn(text: string): readonly string[] {
  return cellsOf(text).filter((cell) => /^[=+\-@\t\r]/.test(cell) && !/^-?\d[\d./ "]*$/.test(cell));
}

/** RFC 4180. */
function cellsOf(text: string): readonly string[] {
  return [...text.matchAll(/(?:^|,|\r?\n)(?:"((?:[^"]|"")*)"|([^",\r\n]*))/g)].map(([, inQuotes, bare]) => inQuotes?.replaceAll('""', '"') ?? bare ?? '');
}

/** In the sheets of a workbook `<f>` is a formula (ECMA-376, 18.3.1.40). A cell of text stays text whatever it begins with. */
function formulasInBook(bytes: Uint8Array): readonly string[] {
  const sheets = Object.entries(unzipSync(bytes)).filter(([name]) => name.startsWith('xl/worksheets/'));
  return sheets.filter(([, sheet]) => /<f[ >]/.test(Buffer.from(sheet).toString())).map(([name]) => name);
}

describe('the bundles', () => {
  const files = readdirSync(shipped()).filter((name) => /\.c?js$/.test(name));
  const calls = new Map(files.map((name) => [name, callsIn(readFileSync(join(shipped(), name), 'utf8'))]));

  test('evaluate no text', () => {
    expect(files).toEqual(expect.arrayContaining(['client.cjs', 'scant.cjs', 'print.cjs', 'preview.js']));
    const evaluating = [...calls].flatMap(([name, made]) => made.filter((call) => /^(new )?(eval|Function)$/.test(call)).map((call) => `${name}: ${call}`));
    expect(evaluating).toEqual([]);
  });

  test('reach nothing on a network', () => {
    const NETWORK = /^(new )?(fetch|XMLHttpRequest|WebSocket|EventSource|RTCPeerConnection|navigator\.sendBeacon|importScripts)$|^require (node:)?(http|https|http2|dns|dgram|tls|undici)(\/|$)/;
    const reaching = [...calls].flatMap(([name, made]) => made.filter((call) => NETWORK.test(call)).map((call) => `${name}: ${call}`));
    expect(reaching).toEqual([]);
    // The protocol's library can speak over a local pipe; nothing of ours asks it to.
    const sources = ['server/src', 'client/src'].flatMap((folder) => readdirSync(join(project, folder), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts')).map((name) => join(project, folder, name)));
    expect(sources.filter((path) => /from 'node:(net|http|https|http2|tls|dgram|dns)'|\bfetch\(|XMLHttpRequest|new WebSocket/.test(readFileSync(path, 'utf8')))).toEqual([]);
  });
});

describe('the web view', () => {
  const page = readFileSync(join(project, 'client/src/page.ts'), 'utf8');
  const policy = /Content-Security-Policy" content="([^"]+)"/.exec(page)?.[1] ?? '';

  test('may run one script and load nothing but its own files', () => {
    const rules = Object.fromEntries(policy.split(';').map((rule) => rule.trim().split(/ (.*)/).slice(0, 2) as [string, string]));
    expect(rules['default-src']).toBe("'none'");
    expect(rules['script-src']).toBe("'nonce-${nonce}'");
    expect(rules['base-uri']).toBe("'none'");
    expect(rules['form-action']).toBe("'none'");
    expect(policy).not.toMatch(/unsafe|\*|https?:/);
    expect(rules['connect-src']).toBeUndefined();
    expect(rules['img-src'] ?? "'none'").toMatch(/^('none'|data:( blob:)?|blob:)$/);
  });
});

describe('imports', () => {
  test.each(['../secret.quilt', '/etc/passwd', 'file:///etc/passwd', '\\\\host\\share\\secret.quilt', '//host/share/secret.quilt', 'C:\\secret.quilt', '..\\secret.quilt', 'sub/../../secret.quilt', 'link.quilt', 'far/secret.quilt', 'LINK.QUILT', './\0/secret.quilt', 'https://nowhere.invalid/a.quilt'])('%s brings nothing in', async (path) => {
    const table = bench({ 'ws/.git/HEAD': '', 'ws/a.quilt': `import ${quoted(path)}\nblock A 6" { leak }\n`, 'secret.quilt': 'fabric leak #112233 "Leaked"\n', 'ws/sub/x.quilt': '' });
    symlinkSync(table.at('secret.quilt'), table.at('ws/link.quilt'));
    symlinkSync(table.path, table.at('ws/far'));
    const { code, out } = await table.scant(['check', 'a.quilt'], { folder: 'ws' });
    expect(code).toBe(1);
    expect(out).toMatch(/ error (import-missing|syntax)/);
    expect(out).not.toContain('root:');
  });
});

/** What a program calls by a plain name, and what it requires. */
function callsIn(text: string): readonly string[] {
  const found = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
      const { expression, arguments: given } = node;
      const [first] = given ?? [];
      const lead = ts.isNewExpression(node) ? 'new ' : '';
      if (ts.isIdentifier(expression) && expression.text === 'require' && first && ts.isStringLiteral(first)) found.add(`require ${first.text}`);
      else if (ts.isIdentifier(expression) || /^(navigator|globalThis|window|self)\./.test(expression.getText())) found.add(lead + expression.getText().replace(/^(globalThis|window|self)\./, ''));
      if (expression.kind === ts.SyntaxKind.ImportKeyword && first && ts.isStringLiteral(first)) found.add(`require ${first.text}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('bundle.js', text, ts.ScriptTarget.Latest, true, ts.ScriptKind.JS));
  return [...found];
}
