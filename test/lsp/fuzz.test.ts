/**
 * Random typing over the connection. After each burst the server must say of the text it has pieced together what it says
 * of the same text opened anew (the text by the protocol's own reference, `vscode-languageserver-textdocument`), answer
 * every question, keep to the text in every range, and log no error. `FUZZ_ROUNDS` makes it longer, `FUZZ_SEED` other.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Range } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { randomFrom } from '../harness/random.ts';
import { startSession, type Session } from './client.ts';

const rounds = Number(process.env.FUZZ_ROUNDS ?? 25);
const samples = new URL('../../samples/', import.meta.url);
const texts = readdirSync(samples).filter((name) => name.endsWith('.quilt')).map((name) => readFileSync(new URL(name, samples), 'utf8'));

const SCRAPS = [
  ' ', '\n', '\r\n', '\r', '{', '}', '(', ')', '"', '"""', '//', '// allow gap', '/', '\\', '|', '-', '<', '^', '@90', '@', '#', ',', '=', '*', '½', '″', '“',
  '🧵', '\uD83E', '\uDDF5', 'é', '\u0000', '\u202E', '\uFEFF', '9', '1/2', '0', '-1', '1e9', '99999999', 'sqrt(2)', '(((((((((', ' in', ' cm', 'block ', 'quilt {\n',
  'border 1" ', 'fabric x #', 'place {', 'turned 4 {\n', 'mirrored {', 'import "', 'size a 1 by ', 'expect ', 'let a = ', 'grid 1 2 by ', 'patch ', 'corner ', 'assorted ',
  'on_point 3 by 2\n', 'straight 2 by 2\n', 'rows 9"\n', 'steps {\n', 'edges ', 'sashing ', 'block A(A) 3" { A }\n', 'block A 3" { B }\nblock B 3" { A }\n',
];

let session: Session;
beforeAll(async () => {
  session = await startSession({ folders: [samples.href], settings: { annotations: true } });
});
afterAll(async () => {
  expect(session.faults).toEqual([]);
  expect(await session.stop()).toBe(0);
});

test.each(texts.map((text, index) => ({ index, text })))('sample $index', async ({ index, text }) => {
  const random = randomFrom(Number(process.env.FUZZ_SEED ?? 1) * 100 + index);
  const uri = new URL(`fuzz-${index}.quilt`, samples).href;
  let mirror = TextDocument.create(uri, 'quilt', 1, text);
  session.open(uri, text);
  for (let round = 0; round < rounds; round++) {
    if (mirror.getText().length > 3 * text.length || random() < 0.05) {
      session.close(uri);
      mirror = TextDocument.create(uri, 'quilt', 1, text);
      session.open(uri, text);
    }
    const changes = Array.from({ length: 1 + Math.floor(random() * 3) }, () => {
      const change = randomChange(mirror, random);
      mirror = TextDocument.update(mirror, [{ range: change, text: change.text }], mirror.version + 1);
      return change;
    });
    session.edit(uri, ...changes);
    await examine(uri, mirror, random);
  }
  expect(session.told.filter(({ method, params }) => method === 'window/logMessage' && (params as { type: number }).type === 1)).toEqual([]);
}, 600_000);

async function examine(uri: string, mirror: TextDocument, random: () => number): Promise<void> {
  const text = mirror.getText();
  const diagnostics = await session.diagnostics(uri);
  const fresh = uri.replace('fuzz-', 'fresh-');
  session.open(fresh, text);
  const expected = await session.diagnostics(fresh);
  session.close(fresh);
  expect(JSON.parse(JSON.stringify(diagnostics).replaceAll(uri, fresh)), text).toEqual(expected);
  const position = mirror.positionAt(Math.floor(random() * (text.length + 1)));
  const textDocument = { uri };
  const answers = await Promise.all([
    session.request('textDocument/hover', { textDocument, position }),
    session.request('textDocument/documentSymbol', { textDocument }),
    session.request('textDocument/formatting', { textDocument, options: { tabSize: 2, insertSpaces: true } }),
    session.request('textDocument/codeAction', { textDocument, range: { start: position, end: position }, context: { diagnostics: [] } }),
    session.request('textDocument/completion', { textDocument, position }),
    session.request('textDocument/semanticTokens/full', { textDocument }),
    session.request('textDocument/definition', { textDocument, position }),
    session.request('textDocument/documentHighlight', { textDocument, position }),
    session.request('textDocument/prepareRename', { textDocument, position }).catch(refused),
    session.request('textDocument/signatureHelp', { textDocument, position }),
    session.request('textDocument/foldingRange', { textDocument }),
    session.request('textDocument/selectionRange', { textDocument, positions: [position] }),
    session.request('textDocument/documentColor', { textDocument }),
    session.request('textDocument/documentLink', { textDocument }),
    session.request('textDocument/inlayHint', { textDocument, range: { start: { line: 0, character: 0 }, end: position } }),
    session.request('textDocument/codeLens', { textDocument }),
    session.request('textDocument/onTypeFormatting', { textDocument, position, ch: '\n', options: { tabSize: 2, insertSpaces: true } }),
    session.request('scant/summary', { uri }),
    session.request('scant/preview', { uri }),
    session.request('scant/shapesAt', { uri, position }),
    session.request('scant/textAt', { uri, x: random() * 60, y: random() * 60 }),
  ]);
  for (const range of [...rangesIn(diagnostics, uri), ...rangesIn(answers.slice(0, 18), uri)]) {
    expect(range.start.line <= range.end.line && range.end.line < mirror.lineCount, JSON.stringify(range)).toBe(true);
  }
}

/** A block that is always there keeps its name. */
function refused(error: unknown): null {
  expect(String(error)).toContain('-32803');
  return null;
}

function randomChange(document: TextDocument, random: () => number): Range & { text: string } {
  const length = document.getText().length;
  const start = Math.floor(random() * (length + 1));
  const taken = random() < 0.5 ? 0 : random() < 0.9 ? Math.floor(random() * 8) : Math.floor(random() * 400);
  const scrap = SCRAPS[Math.floor(random() * SCRAPS.length)] ?? '';
  const text = random() < 0.25 ? '' : random() < 0.9 ? scrap : document.getText().slice(start, start + 200);
  return { start: document.positionAt(start), end: document.positionAt(start + taken), text };
}

/** Every range in an answer, those in other files left out. */
function rangesIn(value: unknown, uri: string): readonly Range[] {
  if (typeof value !== 'object' || value === null || ('uri' in value && value.uri !== uri)) return [];
  const own = 'start' in value && 'end' in value ? [value as Range] : [];
  return [...own, ...Object.values(value).flatMap((each) => rangesIn(each, uri))];
}
