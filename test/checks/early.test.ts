/** What is said at once: never what the full answer would not say of a fresh text, and kept from the version before where nothing speaks against it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RULES } from '../../server/src/checks/list.ts';
import type { CheckContext } from '../../server/src/checks/rule.ts';
import { snapshotOf, type Snapshot } from '../../server/src/snapshot.ts';
import { documentOf, replaceRange } from '../../server/src/text/document.ts';
import { rangeOf } from '../../server/src/text/place.ts';
import { project } from '../harness/fresh.ts';
import { hostOf } from '../harness/snapshot.ts';

const host = hostOf({ 'blocks/harbour-blocks.quilt': readFileSync(join(project, 'samples/blocks/harbour-blocks.quilt'), 'utf8') });
const TEXT = `fabric ink #22345c "Ink"
fabric sea #24365e "Sea"
block Buoy 6" {
  ink sea
  sea ink
}
block Light 6" {
  box 2 by 2
  patch ink 0,0 2,0 2,2 0,2
}
quilt {
  straight 2 by 2
  place { Buoy Light }
  backing ink
  binding cut 2 1/4" ink
}
expect width 12"
`;

/** The text with each line put in place of another, one edit after another; all is worked out before each. */
function after(...edits: readonly (readonly [line: number, text: string])[]): Snapshot {
  let snapshot = snapshotOf(documentOf('a.quilt', TEXT), 0, host);
  for (const [version, [line, text]] of edits.entries()) {
    expect(snapshot.problems.length).toBeGreaterThan(0);
    const { document } = snapshot;
    const end = { line, character: document.lines[line]?.text.length ?? 0 };
    snapshot = snapshotOf(replaceRange(document, { line, character: 0 }, end, text), version + 1, host, snapshot);
  }
  return snapshot;
}

function rules({ document }: Snapshot, problems: Snapshot['problems']): readonly string[] {
  return problems.map(({ rule, place }) => `${document.numberOf(place.line)} ${rule}`);
}

describe('early', () => {
  test('a name that nothing has is told at once', () => {
    const snapshot = after([3, '  ink lost']);
    expect(rules(snapshot, snapshot.early)).toContain('3 unknown-name');
    expect(snapshot.isWorkedOut).toBe(false);
  });

  test('so is a block that does not tile any more, and that it does again', () => {
    const broken = after([8, '  patch ink 0,0 2,0 2,2']);
    expect(rules(broken, broken.early)).toContain('6 gap');
    const mended = after([8, '  patch ink 0,0 2,0 2,2'], [8, '  patch ink 0,0 2,0 2,2 0,2']);
    expect(rules(mended, mended.early)).not.toContain('6 gap');
  });

  test('what takes longer stays where it was until it is looked at again', () => {
    const kept = after([16, 'expect width 13"'], [8, '  patch ink 0,0 2,0 2,2 0,2 // the lamp']);
    expect(rules(kept, kept.early)).toContain('16 expect-failed');
    const edited = after([16, 'expect width 13"'], [16, 'expect width 12"']);
    expect(rules(edited, edited.early)).not.toContain('16 expect-failed');
    expect(rules(edited, edited.problems)).not.toContain('16 expect-failed');
  });

  test('the same text says the same, and all of it', () => {
    const first = after([3, '  ink lost'], [8, '  patch ink 0,0 2,0 2,2']);
    expect(rules(first, first.problems)).toContain('6 gap');
    const again = snapshotOf(first.document, 9, host, first);
    expect(rules(again, again.early)).toEqual(rules(first, first.problems));
  });

  test('step by step comes to the same as at once', () => {
    const [steps, once] = [after([3, '  ink lost']), after([3, '  ink lost'])];
    expect([...steps.workOut()].length).toBeGreaterThan(3);
    expect(steps.isWorkedOut).toBe(true);
    expect(rules(steps, steps.problems)).toEqual(rules(once, once.problems));
  });

  test('the steps grow in number with the blocks, not in length: the plan and the units are steps too', () => {
    const stepsFor = (blocks: number): number => {
      const names = Array.from({ length: blocks }, (_, i) => `B${i}`);
      const bodies = names.map((name, i) => `block ${name} 4" {\n  ink/sand ${i % 2 === 0 ? 'ink' : 'sand'}\n  sand ink\\sand\n}\n`);
      const text = `fabric ink #22345c\nfabric sand #eadfc8\n${bodies.join('')}quilt {\n  straight ${blocks} by 1\n  place {\n    ${names.join(' ')}\n  }\n}\n`;
      return [...snapshotOf(documentOf('a.quilt', text), 0, host).workOut()].length;
    };
    // Laid out, sewn, looked at, its parts, its needs: each block has steps of its own.
    expect(stepsFor(40) - stepsFor(20)).toBeGreaterThan(20 * 8);
  });

  const SAMPLES = ['harbour-mail', 'lamp-room', 'beacon-star', 'mail-boat-sampler'].map((name) => readFileSync(join(project, 'samples', `${name}.quilt`), 'utf8'));
  test('of a fresh text nothing is said that is not so', () => {
    fc.assert(
      fc.property(fc.constantFrom(...SAMPLES), fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(9), fc.constantFrom('{', '}', '"', ' lost ', '|', '9', ''), (sample, at, cut, text) => {
        const from = Math.floor(at * sample.length);
        const snapshot = snapshotOf(documentOf('a.quilt', sample.slice(0, from) + text + sample.slice(from + cut)), 0, host);
        const say = (problems: Snapshot['problems']): readonly string[] => problems.map((each) => `${JSON.stringify(rangeOf(snapshot.document, each.place))} ${each.rule} ${each.message}`);
        const early = say(snapshot.early);
        const all = new Set(say(snapshot.problems));
        expect(early.filter((each) => !all.has(each))).toEqual([]);
      }),
      { numRuns: Number(process.env.FUZZ_RUNS ?? 40) },
    );
  });

  test.each(RULES.filter(({ when }) => when === undefined))('$id asks nothing that takes long', (rule) => {
    const { tree, pattern, blocks } = after();
    const context: Omit<CheckContext, 'quilts'> = { tree, pattern, blocks: blocks.map(({ layout }) => layout), findings: pattern.findings };
    const asked: CheckContext = { ...context, get quilts(): never { throw new Error(`${rule.id} asks about the quilt: it is for later`); } };
    expect(rule.find(asked)).toEqual(expect.any(Array));
  });
});
