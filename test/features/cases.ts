/**
 * Cases in plain files (`test/cases/features`): a heading `=== name`, a pattern with `‸` where the cursor is (and `«` … `»`
 * round a range), `--- other.quilt` before each further file, and `>>>` before what is expected. `UPDATE_EXPECTED=1` writes
 * what came out into the file.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { Snapshot } from '../../server/src/snapshot.ts';
import type { Position } from '../../server/src/text/document.ts';
import type { Range } from '../../server/src/text/place.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

export interface Case {
  readonly snapshot: Snapshot;
  /** Where `‸` was; the start of the text when there was none. */
  readonly position: Position;
  readonly range: Range;
}

interface Written {
  readonly name: string;
  /** Marks and further files included. */
  readonly text: string;
  readonly expected: string;
}

/** One test for each case of a file: `say` gives what is compared. */
export function checkCases(file: string, say: (input: Case) => string): void {
  const path = fileURLToPath(new URL(`../cases/features/${file}`, import.meta.url));
  const cases = readCases(readFileSync(path, 'utf8'));
  const said = new Map<string, string>();
  test.each(cases)('$name', (one) => {
    const came = say(prepared(one.text)).trimEnd();
    said.set(one.name, came);
    if (process.env.UPDATE_EXPECTED !== '1') expect(came).toBe(one.expected);
    else if (said.size === cases.length) writeFileSync(path, cases.map((each) => writtenCase(each, said.get(each.name) ?? '')).join('\n'));
  });
}

function readCases(text: string): readonly Written[] {
  return text.split(/^=== /m).slice(1).map((part) => {
    const [head = '', expected = ''] = part.split(/^>>>\n?/m);
    const line = head.indexOf('\n');
    return { name: head.slice(0, line), text: head.slice(line + 1), expected: expected.trimEnd() };
  });
}

function writtenCase({ name, text }: Written, came: string): string {
  return `=== ${name}\n${text}>>>\n${came}\n`;
}

function prepared(text: string): Case {
  const [own = '', ...others] = text.split(/^--- /m);
  const files = Object.fromEntries(others.map((part) => [part.slice(0, part.indexOf('\n')), part.slice(part.indexOf('\n') + 1)]));
  const marks = { cursor: markIn(own, '‸'), start: markIn(own, '«'), end: markIn(own, '»') };
  const snapshot = snapshotOfText(own.replace(/[‸«»]/g, ''), files);
  const position = marks.cursor ?? marks.start ?? { line: 0, character: 0 };
  return { snapshot, position, range: { start: marks.start ?? position, end: marks.end ?? position } };
}

function markIn(text: string, mark: string): Position | undefined {
  const at = text.indexOf(mark);
  if (at < 0) return undefined;
  const before = text.slice(0, at).replace(/[‸«»]/g, '').split('\n');
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}
