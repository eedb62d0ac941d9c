/**
 * From a keystroke to problems, and from opening to the first ones, beside the language services of JSON and YAML in one run:
 * `npm run bench -- service`. Ours is the shipped server over stdio, asked as an editor asks; the peers are called in process, which
 * leaves out their way over the wire: how long a message with nothing to do takes there and back is printed beside them. The larger
 * text comes second, when all are warm. Medians in ms, then ours as a part of each peer's. Last, both servers over stdio, started for
 * the text: YAML's tells its problems by itself, after a rest of its own.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { setTimeout as pause } from 'node:timers/promises';
import { kindsOf } from './parts/edits.ts';
import { median, project } from './parts/measure.ts';
import { jsonPeer, yamlPeer, type Peer } from './parts/peers.ts';
import { SCHEMA, patternOf, yamlOf } from './parts/texts.ts';
import { bundledServer, startWire } from './parts/wire.ts';

/** Keystrokes of each kind; the first quarter warms up. */
const EDITS = 40;
/** The last ones are followed until the server has no more to say, in a text of no more than 2,000 lines. */
const settledIn = (lines: number): number => (lines > 2_000 ? 0 : 3);
/** Between keystrokes, in milliseconds, of ours and of the peers. */
const PAUSE = 30;
const SIZES = (process.env.BENCH_LINES ?? '').split(',').map(Number).filter((lines) => lines > 0);

/** Cold starts of each server. */
const STARTS = 5;

const server = await bundledServer(project);
const wire = await startWire(server);
console.log('lines    what                        ours      JSON      YAML    ours/JSON  ours/YAML');
for (const lines of SIZES.length > 0 ? SIZES : [1_000, 10_000]) {
  const ours = await measureOurs(lines);
  const json = await measured(await jsonPeer(lines));
  const yaml = await measured(await yamlPeer(lines));
  print(lines, 'open to first problems', ours.open, json.open, yaml.open);
  console.log(`${String(lines).padEnd(9)}${'there and back'.padEnd(24)}${(await thereAndBack()).toFixed(2).padStart(10)}`);
  for (const [kind, times] of ours.kinds) print(lines, `key, ${kind}`, median(times.first), json.keystroke, yaml.keystroke);
  for (const [kind, times] of ours.kinds) if (times.all.length > 0) print(lines, `to all of them, ${kind}`, median(times.all), json.keystroke, yaml.keystroke);
}
wire.end();
await printColdStarts(10_000);

function print(lines: number, what: string, ours: number, json: number, yaml: number): void {
  const number = (value: number): string => value.toFixed(2).padStart(10);
  console.log(`${String(lines).padEnd(9)}${what.padEnd(24)}${number(ours)}${number(json)}${number(yaml)}${number(ours / json)}x${number(ours / yaml)}x`);
}

async function measured({ open, keystroke }: Peer): Promise<{ readonly open: number; readonly keystroke: number }> {
  const times: number[] = [];
  for (let turn = 0; turn < EDITS; turn += 1) {
    const from = performance.now();
    await keystroke();
    times.push(performance.now() - from);
    await pause(PAUSE);
  }
  return { open, keystroke: median(times.slice(EDITS / 4)) };
}

interface Ours {
  readonly open: number;
  readonly kinds: readonly (readonly [string, { readonly first: readonly number[]; readonly all: readonly number[] }])[];
}

async function measureOurs(lines: number): Promise<Ours> {
  const text = patternOf(lines);
  const uri = `untitled:${lines}.quilt`;
  const textDocument = { uri };
  const start = performance.now();
  wire.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'quilt', version: 1, text } });
  await wire.request('textDocument/diagnostic', { textDocument });
  const open = performance.now() - start;
  if (settledIn(lines) > 0) await settled();
  let version = 1;
  const kinds: [string, { first: number[]; all: number[] }][] = [];
  for (const [kind, edit] of kindsOf(text)) {
    const times = { first: [] as number[], all: [] as number[] };
    for (let turn = 0; turn < EDITS; turn += 1) {
      const { line, character, was, is } = edit[turn % 2] ?? edit[0];
      const range = { start: { line, character }, end: { line, character: character + was.length } };
      const from = performance.now();
      wire.notify('textDocument/didChange', { textDocument: { uri, version: (version += 1) }, contentChanges: [{ range, text: is }] });
      await wire.request('textDocument/diagnostic', { textDocument });
      times.first.push(performance.now() - from);
      if (turn < EDITS - settledIn(lines)) await pause(PAUSE);
      else {
        await settled();
        times.all.push(performance.now() - from);
      }
    }
    kinds.push([kind, { first: times.first.slice(EDITS / 4), all: times.all }]);
  }
  wire.notify('textDocument/didClose', { textDocument });
  return { open, kinds };
}

/** A question about a text that is not there. */
async function thereAndBack(): Promise<number> {
  const times: number[] = [];
  for (let turn = 0; turn < EDITS; turn += 1) {
    const from = performance.now();
    await wire.request('textDocument/diagnostic', { textDocument: { uri: 'untitled:none' } });
    times.push(performance.now() - from);
    await pause(PAUSE);
  }
  return median(times.slice(EDITS / 4));
}

async function printColdStarts(lines: number): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'scant-bench-'));
  const schema = join(folder, 'schema.json');
  writeFileSync(schema, JSON.stringify(SCHEMA));
  const yaml = `# yaml-language-server: $schema=${pathToFileURL(schema).href}\n${yamlOf(lines)}`;
  const [ours, theirs] = [[] as number[], [] as number[]];
  for (let turn = 0; turn < STARTS; turn += 1) {
    ours.push(await coldOpen(server, { uri: 'untitled:a.quilt', languageId: 'quilt', version: 1, text: patternOf(lines) }));
    theirs.push(await coldOpen(join(project, 'node_modules/yaml-language-server/bin/yaml-language-server'), { uri: pathToFileURL(join(folder, 'a.yaml')).href, languageId: 'yaml', version: 1, text: yaml }));
  }
  rmSync(folder, { recursive: true });
  console.log(`${lines} lines opened in a server just started, over stdio: ours ${median(ours).toFixed(0)}, YAML ${median(theirs).toFixed(0)}, ${(median(ours) / median(theirs)).toFixed(2)}x`);
}

/** From the message that opens a text to its first problems: those that are told, or else asked for. */
async function coldOpen(module: string, textDocument: { readonly uri: string; readonly languageId: string; readonly version: number; readonly text: string }): Promise<number> {
  const fresh = await startWire(module);
  const told = fresh.heard('textDocument/publishDiagnostics');
  const start = performance.now();
  fresh.notify('textDocument/didOpen', { textDocument });
  await (textDocument.languageId === 'quilt' ? fresh.request('textDocument/diagnostic', { textDocument: { uri: textDocument.uri } }) : told);
  const time = performance.now() - start;
  fresh.end();
  return time;
}

/** When the server has no more to say about the text. */
async function settled(): Promise<void> {
  await wire.request('scant/settled', {});
}
