/** `scant check`: formats, exit codes, folders, and files that cannot be read. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { BAD, bench, GOOD, WARNED } from './command-line.ts';

interface JsonReport {
  readonly files: readonly { readonly path: string; readonly problems: readonly { readonly rule: string; readonly severity: string; readonly message: string; readonly range: unknown; readonly related: readonly unknown[] }[] }[];
}

describe('exit codes', () => {
  it.each([
    ['a pattern without errors', { 'a.quilt': GOOD }, ['a.quilt'], 0],
    ['a pattern with errors', { 'a.quilt': BAD }, ['a.quilt'], 1],
    ['warnings', { 'a.quilt': WARNED }, ['a.quilt'], 0],
    ['warnings taken for errors', { 'a.quilt': WARNED }, ['a.quilt', '--warnings-as-errors'], 1],
    ['a missing file', {}, ['a.quilt'], 2],
    ['a missing file beside one with errors', { 'a.quilt': BAD }, ['none.quilt', 'a.quilt'], 2],
    ['errors in the second file', { 'a.quilt': GOOD, 'b.quilt': BAD }, ['a.quilt', 'b.quilt'], 1],
    ['a folder', { 'p/a.quilt': GOOD, 'p/sub/b.quilt': BAD, 'p/out/c.quilt': BAD }, ['p'], 1],
    ['a folder without patterns', { 'p/notes.md': '' }, ['p'], 2],
  ])('%s', async (_, files, argv, code) => {
    expect((await bench(files as Record<string, string>).scant(['check', ...argv])).code).toBe(code);
  });
});

describe('text', () => {
  it('is one problem a line, then the counts', async () => {
    const { out, err } = await bench({ 'a.quilt': BAD, 'b.quilt': GOOD }).scant(['check', 'a.quilt', 'b.quilt']);
    expect(err).toBe('');
    expect(out).toMatch(/^a\.quilt:11:14: error unknown-name: [^\n]*inc[^\n]*\n1 error in 2 files\n$/);
  });
  it('keeps paths as given and finds those in folders', async () => {
    const table = bench({ 'p/a.quilt': BAD });
    expect((await table.scant(['check', './p/../p'])).out).toMatch(/^p\/a\.quilt:11:14: /);
    expect((await table.scant(['check', './p/a.quilt'])).out).toMatch(/^\.\/p\/a\.quilt:11:14: /);
    expect((await table.scant(['check', table.at('p/a.quilt')])).out.startsWith(`${table.at('p/a.quilt')}:11:14: `)).toBe(true);
  });
  it('takes a file once however often it is named', async () => {
    expect((await bench({ 'p/a.quilt': GOOD }).scant(['check', 'p', 'p/a.quilt', './p'])).out).toBe('no problems in 1 file\n');
  });
  it('shows the line and marks the place on a terminal', async () => {
    const { out } = await bench({ 'a.quilt': BAD }).scant(['check', 'a.quilt'], { terminal: true });
    expect(out.split('\n').slice(1, 3)).toEqual(['      sand\\ink   inc        ink\\sand', '                 ^^^']);
  });
  it('has colour only where asked', async () => {
    expect((await bench({ 'a.quilt': BAD }).scant(['check', 'a.quilt'])).out).not.toContain('\u001b');
    expect((await bench({ 'a.quilt': BAD }).scant(['check', 'a.quilt'], { colour: true })).out).toContain('\u001b[31merror\u001b[0m');
  });
  it('lets nothing of a text steer the terminal', async () => {
    const table = bench({ 'a.quilt': GOOD.replace('   ink        ink', '   \u001b]0;x\u0007\u202E ink') });
    const { code, out } = await table.scant(['check', 'a.quilt'], { terminal: true });
    expect(code).toBe(1);
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202e]/);
  });
  it('shows a window of a very long line', async () => {
    const { out } = await bench({ 'a.quilt': `fabric a #000000 "${'x'.repeat(3000)}" bogus\n` }).scant(['check', 'a.quilt'], { terminal: true });
    for (const line of out.split('\n')) expect(line.length).toBeLessThan(400);
  });
});

describe('json', () => {
  it('has the shape of the contract', async () => {
    const { code, out, err } = await bench({ 'p/a.quilt': BAD, 'b.quilt': GOOD }).scant(['check', './p', 'b.quilt', '--format', 'json']);
    expect({ code, err }).toEqual({ code: 1, err: '' });
    const report = JSON.parse(out) as JsonReport;
    expect(report.files.map((file) => file.path)).toEqual(['p/a.quilt', 'b.quilt']);
    expect(report.files[1]?.problems).toEqual([]);
    expect(report.files[0]?.problems).toEqual([{
      rule: 'unknown-name',
      severity: 'error',
      message: expect.stringContaining('inc') as string,
      range: { start: { line: 10, character: 13 }, end: { line: 10, character: 16 } },
      related: expect.any(Array) as unknown[],
    }]);
  });
  it('counts UTF-16 units, after a byte order mark and CRLF', async () => {
    const text = `\uFEFFfabric sand #eadfc8 "🧵"\r\nfabric sand #000000 "🧵" bogus\r\n`;
    const { out } = await bench({ 'a.quilt': text }).scant(['check', 'a.quilt', '--format=json']);
    const problems = (JSON.parse(out) as JsonReport).files[0]?.problems ?? [];
    expect(problems.map(({ range }) => range)).toContainEqual({ start: { line: 1, character: 25 }, end: { line: 1, character: 30 } });
  });
  it('is whole when a file cannot be read', async () => {
    const { code, out, err } = await bench({ 'a.quilt': GOOD }).scant(['check', 'none.quilt', 'a.quilt', '--format', 'json']);
    expect(code).toBe(2);
    expect((JSON.parse(out) as JsonReport).files.map((file) => file.path)).toEqual(['a.quilt']);
    expect(err).toBe('scant: cannot read none.quilt: no such file or folder\n');
  });
});

describe('sarif', () => {
  it('is as the schema of OASIS wants it, whatever stands in the text', async () => {
    const schema = createRequire(import.meta.url).resolve('@microsoft/jest-sarif').replace(/lib.*$/, 'lib/schemas/sarif-2.1.0-rtm.5.json');
    const { definitions, properties, required, additionalProperties } = JSON.parse(readFileSync(schema, 'utf8')) as Record<string, object>;
    const addFormats = createRequire(import.meta.url)('ajv-formats') as (ajv: Ajv) => Ajv;
    const valid = addFormats(new Ajv({ strict: false, allErrors: true, unicodeRegExp: false })).compile({ type: 'object', definitions, properties, required, additionalProperties });
    const table = bench({ 'a.quilt': BAD, 'good.quilt': GOOD, 'odd name%.quilt': 'fabric \0 "<b>\u202E"\n}\n', 'sub/b.quilt': `import "../a.quilt"\n${WARNED}` });
    for (const path of ['.', '../good.quilt', '..']) {
      valid(JSON.parse((await table.scant(['check', path, '--format', 'sarif'], { folder: 'sub' })).out));
      expect(valid.errors).toBeNull();
    }
    expect(valid({ version: '2.1.0' })).toBe(false);
  });
  it('is a 2.1.0 log with its rules and 1-based regions', async () => {
    const { out } = await bench({ 'my patterns/a.quilt': BAD }).scant(['check', 'my patterns', '--format', 'sarif']);
    const log = JSON.parse(out) as { version: string; runs: { tool: { driver: { name: string; rules: { id: string }[] } }; results: { ruleId: string; ruleIndex: number; level: string; locations: unknown[] }[] }[] };
    const [run] = log.runs;
    const [result] = run?.results ?? [];
    expect(log.version).toBe('2.1.0');
    expect(run?.tool.driver.name).toBe('scant');
    expect(run?.tool.driver.rules[result?.ruleIndex ?? -1]?.id).toBe('unknown-name');
    expect(result).toMatchObject({ ruleId: 'unknown-name', level: 'error' });
    expect(result?.locations).toEqual([{
      physicalLocation: { artifactLocation: { uri: 'my%20patterns/a.quilt', index: 0 }, region: { startLine: 11, startColumn: 14, endLine: 11, endColumn: 17 } },
    }]);
  });
  it('names a file outside the working folder by a file URI', async () => {
    const table = bench({ 'a.quilt': BAD, 'w/b.quilt': GOOD });
    const { out } = await table.scant(['check', '../a.quilt', '--format', 'sarif'], { folder: 'w' });
    expect(out).toContain(`"uri": "file://${table.at('a.quilt')}"`);
  });
});

describe('github', () => {
  it('is one annotation a problem, escaped', async () => {
    const { out } = await bench({ 'a,b.quilt': BAD }).scant(['check', 'a,b.quilt', '--format', 'github']);
    expect(out).toMatch(/^::error file=a%2Cb\.quilt,line=11,endLine=11,col=14,endColumn=16,title=unknown-name::[^\n]+\n$/);
  });
});

describe('imports', () => {
  it('are read in the workspace and refused outside', async () => {
    const table = bench({ 'ws/.git/HEAD': '', 'ws/a/p.quilt': 'import "../lib.quilt" as lib\n', 'ws/lib.quilt': 'let unit = 3"\n', 'secret.quilt': '', 'ws/b/p.quilt': 'import "../../secret.quilt"\n', 'ws/c.quilt': 'import "none.quilt"\n' });
    expect((await table.scant(['check', 'ws/a/p.quilt'])).code).toBe(0);
    expect((await table.scant(['check', 'ws/b/p.quilt'])).out).toMatch(/error import-missing: .*outside/);
    expect((await table.scant(['check', 'ws/c.quilt'])).out).toMatch(/error import-missing: /);
  });
  it('stops at a ring', async () => {
    const { out } = await bench({ 'a.quilt': 'import "b.quilt"\n', 'b.quilt': 'import "a.quilt"\n' }).scant(['check', '.']);
    expect(out).toMatch(/a\.quilt:1:8: error import-cycle/);
  });
});
