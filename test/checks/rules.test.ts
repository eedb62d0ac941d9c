/** Every rule speaks in its failing example and is silent in its passing one, through the whole pipeline. */
import { describe, expect, test } from 'vitest';
import { RULES, ruleOf } from '../../server/src/checks/list.ts';
import { explanationOf } from '../../server/src/checks/explain.ts';
import { RULE_IDS } from '../../server/src/text/problem.ts';
import { rangeOf } from '../../server/src/text/place.ts';
import { applyEdits } from '../harness/apply.ts';
import { snapshotOfText } from '../harness/snapshot.ts';

describe.each(RULES.map((rule) => [rule.id, rule] as const))('%s', (id, rule) => {
  test('speaks in its failing example', () => {
    const { document, problems } = snapshotOfText(rule.bad);
    const own = problems.filter((problem) => problem.rule === id);
    expect(own.length, JSON.stringify(problems.map((problem) => problem.message))).toBeGreaterThan(0);
    for (const problem of own) {
      expect(rangeOf(document, problem.place)).toBeDefined();
      expect(problem.message).not.toMatch(/\.$|\bundefined\b|\[object/);
      expect(problem.message).toMatch(/^[a-z`\d]/);
    }
  });

  test('speaks alone there', () => {
    const others = snapshotOfText(rule.bad).problems.filter((problem) => problem.rule !== id && problem.rule !== 'not-yet');
    expect(others.map((problem) => `${problem.rule}: ${problem.message}`)).toEqual([]);
  });

  test('is silent in its passing example, and so is every other', () => {
    const { problems } = snapshotOfText(rule.good);
    expect(problems.map((problem) => `${problem.rule}: ${problem.message}`)).toEqual([]);
  });

  test('is silenced by a comment at the end of the line', () => {
    const { document, problems } = snapshotOfText(rule.bad);
    const lines = document.lines.map((line) => line.text);
    for (const problem of problems.filter((each) => each.rule === id)) {
      const number = document.numberOf(problem.place.line);
      if (!/allow/.test(lines[number] ?? '')) lines[number] = `${lines[number] ?? ''} // allow ${id}`;
    }
    if (id === 'syntax') return expect(lines.join('\n')).toContain('allow');
    expect(snapshotOfText(lines.join('\n')).problems.filter((problem) => problem.rule === id)).toEqual([]);
  });

  test('its fix, where it offers one, mends it', () => {
    const { document, problems } = snapshotOfText(rule.bad);
    const fix = problems.find((problem) => problem.rule === id)?.fix;
    if (!fix) return expect(problems.length).toBeGreaterThan(0);
    const left = snapshotOfText(applyEdits(document, fix.edits).text).problems.filter((problem) => problem.rule === id);
    expect(left.length).toBeLessThan(problems.filter((problem) => problem.rule === id).length);
  });

  test('has a page that says why, shows both examples and the mends', () => {
    const page = explanationOf(rule);
    for (const part of [rule.title, rule.why, rule.bad.trimEnd(), rule.good.trimEnd(), ...rule.mends]) expect(page).toContain(part);
  });
});

test('ids are those of the language, each once', () => {
  expect(new Set(RULES.map((rule) => rule.id)).size).toBe(RULES.length);
  for (const rule of RULES) expect(RULE_IDS).toContain(rule.id);
  expect(ruleOf('nothing-like-it')).toBeUndefined();
});

test('what an argument makes wrong in a block of another file is told where the block is used, once', () => {
  const { document, problems } = snapshotOfText('fabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\nblock Buoy 6" {\n  snowball(ink, sand, c: 2) sand\n  sand ink\n}\nquilt {\n  straight 1 by 1\n  place { Buoy }\n}\n');
  const errors = problems.filter((problem) => problem.message.startsWith('in `snowball(ink, sand, 2)`'));
  expect(errors.length).toBe(1);
  expect(errors.map((problem) => rangeOf(document, problem.place)?.start)).toEqual([{ line: 3, character: 2 }]);
});
