/**
 * Hours of typing over a real connection, compressed: keys, corrections, jumps, pastes, undone work, files opened and closed, with
 * all that an editor asks for meanwhile. Every answer must be of the newest text; what the server holds is measured as it goes.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { randomFrom } from '../harness/random.ts';
import { startSession, type Session } from '../lsp/client.ts';

export interface SoakOptions {
  readonly keystrokes: number;
  /** How fast they come; flat out unless given. */
  readonly perSecond?: number;
  /** How often the heap is measured, with nothing open; the first half is warming up. */
  readonly marks: number;
  readonly onMark?: (mark: Mark, done: number) => void;
}

export interface Mark {
  /** Bytes that are left after collecting garbage. */
  readonly heap: number;
  /** What the event loop waits for, and open files of the process. */
  readonly handles: number;
  readonly files: number;
}

export interface Soaked {
  readonly seconds: number;
  readonly answers: number;
  /** From a key to the problems of its text, milliseconds. */
  readonly median: number;
  readonly worst: number;
  /** Answers of another version than the newest, and texts of which the server said something else than of the same text opened anew. */
  readonly stale: number;
  readonly wrong: number;
  /** Questions that were called off, and those of them that were answered as called off. */
  readonly called: number;
  readonly calledOff: number;
  /** What was wrong with the server's messages. */
  readonly faults: readonly string[];
  readonly marks: readonly Mark[];
  /** After warming up: the largest heap over the smallest, and the fewest handles of the last three marks over the fewest before (a timer that happens to run is none that stays). */
  readonly growth: number;
  readonly handleGrowth: number;
}

const samples = new URL('../../samples/', import.meta.url);
const PAUSE = 10;

interface Desk {
  readonly session: Session;
  readonly random: () => number;
  readonly texts: readonly string[];
  readonly counts: { answers: number; stale: number; wrong: number; called: number; calledOff: number; files: number };
  readonly delays: number[];
}

/** One text under the hand: where it is, what it says, where the cursor stands. */
interface Sheet {
  readonly uri: string;
  text: TextDocument;
  cursor: number;
  readonly script: string;
}

export async function soak({ keystrokes, perSecond, marks: wanted, onMark }: SoakOptions): Promise<Soaked> {
  const session = await startSession({ folders: [samples.href], settings: { annotations: true }, execArgv: ['--expose-gc', '--import', new URL('heap.mjs', import.meta.url).href] });
  const texts = readdirSync(samples).filter((name) => name.endsWith('.quilt')).map((name) => readFileSync(new URL(name, samples), 'utf8'));
  const desk: Desk = { session, random: randomFrom(7), texts, counts: { answers: 0, stale: 0, wrong: 0, called: 0, calledOff: 0, files: 0 }, delays: [] };
  const marks: Mark[] = [];
  const start = performance.now();
  let sheet = opened(desk);
  for (let key = 1; key <= keystrokes; key++) {
    await typed(desk, sheet);
    if (key % 11 === 0) await asked(desk, sheet);
    if (key % 97 === 0) await calledOff(desk, sheet);
    if (key % 233 === 0) sheet = await exchanged(desk, sheet);
    if (perSecond !== undefined) await until(start + (1000 * key) / perSecond);
    if (key % Math.floor(keystrokes / wanted) === 0) {
      // With nothing open, so that one text is not compared with a longer one.
      session.close(sheet.uri);
      marks.push(await marked(session));
      onMark?.(marks.at(-1) as Mark, key);
      sheet = opened(desk);
    }
  }
  const seconds = (performance.now() - start) / 1000;
  const faults = [...session.faults, ...session.told.filter(({ method, params }) => method === 'window/logMessage' && (params as { type: number }).type === 1).map(({ params }) => JSON.stringify(params))];
  if ((await session.stop()) !== 0) faults.push('the server did not end with 0');
  const delays = desk.delays.sort((a, b) => a - b);
  const settled = marks.slice(Math.ceil(marks.length / 2));
  const { answers, stale, wrong, called, calledOff: off } = desk.counts;
  return {
    seconds, answers, stale, wrong, called, calledOff: off, faults, marks,
    median: delays[delays.length >> 1] ?? 0,
    worst: delays.at(-1) ?? 0,
    growth: ratio(settled.map(({ heap }) => heap)),
    handleGrowth: least(settled.slice(-3)) / least(settled.slice(0, -3)),
  };
}

function opened({ session, random, texts, counts }: Desk): Sheet {
  const script = texts[Math.floor(random() * texts.length)] ?? '';
  const uri = new URL(`soak-${(counts.files += 1)}.quilt`, samples).href;
  const text = TextDocument.create(uri, 'quilt', 1, random() < 0.5 ? script : '');
  session.open(uri, text.getText());
  return { uri, text, cursor: text.getText().length, script };
}

/** One key, one paste or one correction, and the problems after it. */
async function typed({ session, random, counts, delays }: Desk, sheet: Sheet): Promise<void> {
  const { uri, text, script } = sheet;
  const length = text.getText().length;
  const dice = random();
  if (dice < 0.06) sheet.cursor = Math.floor(random() * (length + 1));
  const next = script[sheet.cursor % Math.max(script.length, 1)] ?? ' ';
  const lineStart = script.lastIndexOf('\n', sheet.cursor % script.length) + 1;
  const [from, to, fresh] =
    length > 3 * script.length || dice > 0.997 ? [0, length, script]
    : dice < 0.16 ? [Math.max(sheet.cursor - 1, 0), sheet.cursor, '']
    : dice < 0.19 ? [sheet.cursor, Math.min(sheet.cursor + 30, length), '']
    : dice < 0.22 ? [sheet.cursor, sheet.cursor, script.slice(lineStart, lineStart + 80)]
    : [sheet.cursor, sheet.cursor, next];
  const range = { start: text.positionAt(from), end: text.positionAt(to) };
  sheet.text = TextDocument.update(text, [{ range, text: fresh }], text.version + 1);
  sheet.cursor = from + fresh.length;
  const before = performance.now();
  session.edit(uri, { ...range, text: fresh });
  await session.diagnostics(uri);
  delays.push(performance.now() - before);
  counts.answers += 1;
}

/** What an editor asks for while one types. */
async function asked({ session, counts }: Desk, { uri, text, cursor }: Sheet): Promise<void> {
  const position = text.positionAt(cursor);
  const textDocument = { uri };
  const [preview, shapes] = await Promise.all([
    session.request('scant/preview', { uri }),
    session.request('scant/shapesAt', { uri, position }),
    session.request('textDocument/hover', { textDocument, position }),
    session.request('textDocument/completion', { textDocument, position }),
    session.request('textDocument/semanticTokens/full', { textDocument }),
    session.request('textDocument/inlayHint', { textDocument, range: { start: { line: 0, character: 0 }, end: position } }),
    session.request('textDocument/documentSymbol', { textDocument }),
    session.request('textDocument/codeAction', { textDocument, range: { start: position, end: position }, context: { diagnostics: [] } }),
    session.request('scant/summary', { uri }),
  ]);
  counts.answers += 9;
  if (preview?.version !== text.version || shapes?.version !== text.version) counts.stale += 1;
}

/** A long question about the whole folder, and a picture, called off as soon as they were asked. */
async function calledOff({ session, counts }: Desk, { uri }: Sheet): Promise<void> {
  const sent = session.together(() => {
    const questions = [session.respond('workspace/symbol', { query: 's' }), session.respond('scant/preview', { uri })];
    for (const { id } of questions) session.notify('$/cancelRequest', { id });
    return questions;
  });
  const answers = await Promise.all(sent.map(({ response }) => response));
  counts.called += answers.length;
  counts.calledOff += answers.filter(({ error }) => error?.code === -32800).length;
}

/** The same text opened anew must have the same problems; then another sheet is taken. */
async function exchanged(desk: Desk, { uri, text }: Sheet): Promise<Sheet> {
  const { session, counts } = desk;
  const fresh = uri.replace('soak-', 'fresh-');
  session.open(fresh, text.getText());
  const [kept, anew] = [await session.diagnostics(uri), await session.diagnostics(fresh)];
  if (JSON.stringify(kept).replaceAll(uri, fresh) !== JSON.stringify(anew)) counts.wrong += 1;
  session.close(fresh);
  session.close(uri);
  return opened(desk);
}

async function marked(session: Session): Promise<Mark> {
  const before = session.stderr().length;
  process.kill(session.pid, 'SIGUSR2');
  let found: RegExpExecArray | null = null;
  while ((found = /HEAP (.*)\n/.exec(session.stderr().slice(before))) === null) await pause(PAUSE);
  return { ...(JSON.parse(found[1] ?? '') as { heap: number; handles: number }), files: filesOf(session.pid) };
}

/** Open files of a process, where the system tells (Linux). */
function filesOf(pid: number): number {
  try {
    return readdirSync(`/proc/${pid}/fd`).length;
  } catch {
    return 0;
  }
}

function least(marks: readonly Mark[]): number {
  return Math.min(...marks.map(({ handles, files }) => handles + files));
}

function ratio(numbers: readonly number[]): number {
  return Math.max(...numbers) / Math.max(Math.min(...numbers), 1);
}

async function until(time: number): Promise<void> {
  const left = time - performance.now();
  if (left > 1) await pause(left);
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
