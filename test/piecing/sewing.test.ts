/** Whole quilts: rows, borders, counts, findings; every sample is sewn by the verifier. */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { fraction } from '../../server/src/exact/number.ts';
import type { Patch, QuiltLayout } from '../../server/src/geometry/layout.ts';
import { assemble } from '../../server/src/piecing/assembly.ts';
import { patchesIn } from '../../server/src/piecing/plan.ts';
import type { Assembly } from '../../server/src/piecing/plan.ts';
import { blockOutline, rowsOf } from '../../server/src/piecing/setting.ts';
import { sewingOf, sewingOfBlock } from '../../server/src/piecing/sewing.ts';
import type { QuiltSewing } from '../../server/src/piecing/sewing.ts';
import { verifyPlan } from '../../server/src/piecing/verify.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import type { Snapshot } from '../../server/src/snapshot.ts';
import { INK, block, box, fabric, patch, squares } from './layouts.ts';

const FABRICS = 'fabric ink #22345c\nfabric rust #a4502e\nfabric sand #eadfc8\n';
const PLAIN = `${FABRICS}block Nine(a = ink, b = sand) 6" {\n  a b a\n  b a b\n  a b a\n}\n`;

describe('a block on paper', () => {
  const quilt = (says: string): QuiltSewing => {
    const text = `${FABRICS}block Fan 6" {\n  ${says}\n  ink sand ink\n  sand rust sand\n  ink sand ink\n}\nquilt {\n  straight 2 by 2\n  place { Fan }\n}\n`;
    const { shown, pattern } = snapshotOfText(text);
    if (!shown) throw new Error('no quilt');
    return sewingOf(shown.layout, pattern.rules);
  };

  // Nine squares take eight seams, four blocks three more.
  test('has its seams counted and none of them pressed to a chosen side', () => {
    const { seams, pressing } = quilt('foundation');
    expect([seams.count, seams.pressing, pressing.blocks.length]).toEqual([4 * 8 + 3, { nested: 1, open: 0, conflicts: 0 }, 0]);
  });

  test('sewn by hand it is pressed like any other', () => {
    const { seams, pressing } = quilt('press open');
    expect([seams.count, seams.pressing.open, pressing.blocks.length]).toEqual([4 * 8 + 3, 4 * 8, 1]);
  });
});

describe('blocks as they are sewn by custom', () => {
  test('a nine-patch: three rows of three, nothing set in', () => {
    expect(tree(squares('aba', 'bab', 'aba'))).toBe('((0 1 2) (3 4 5) (6 7 8))');
  });

  test('a log cabin: one log after the other', () => {
    const logs = [box(2, 2, 1, 1), box(2, 1, 1, 1), box(3, 1, 1, 2), box(2, 3, 2, 1), box(1, 1, 1, 3), box(1, 0, 3, 1), box(4, 0, 1, 4), box(1, 4, 4, 1), box(0, 0, 1, 5)];
    expect(tree(logs)).toBe('((((((((0 1) 2) 3) 4) 5) 6) 7) 8)');
  });

  test('a square in a square: two opposite corners, then the other two', () => {
    const corners = [patch([[0, 0], [1, 0], [0, 1]]), patch([[1, 0], [2, 0], [2, 1]]), patch([[2, 1], [2, 2], [1, 2]]), patch([[0, 1], [1, 2], [0, 2]])];
    expect(tree([patch([[1, 0], [2, 1], [1, 2], [0, 1]], INK), ...corners])).toMatch(/^\(\(\d 0 \d\) \d \d\)$/);
  });

  test('a pinwheel of half squares by its half squares, not across its diagonals', () => {
    const pin = squares('aa', 'aa').flatMap(({ outline: [a, b, c, d] }, i) => {
      if (!a || !b || !c || !d) return [];
      const halves = i === 0 || i === 3 ? [[a, b, c], [a, c, d]] : [[a, b, d], [b, c, d]];
      return halves.map((outline, k): Patch => ({ ...patch([[0, 0], [1, 0], [0, 1]]), outline, fabric: fabric(k === 0 ? 'dark' : 'light') }));
    });
    expect(tree(pin)).toBe('(((0 1) (2 3)) ((4 5) (6 7)))');
  });

  test('an eight-pointed star: pairs, halves, the whole, then eight corners set in', () => {
    const { blocks } = snapshotOf('samples/beacon-star.quilt');
    const plan = sewingOfBlock(blocks[0]?.layout ?? block('none', 1, 1, [])).assembled?.plan;
    expect([plan?.setIn, plan?.partial]).toEqual([8, 0]);
    expect(plan?.seams.map((seam) => seam.kind)).toEqual([...Array<string>(7).fill('straight'), ...Array<string>(8).fill('set_in')]);
  });

  test("Dutchman's puzzle: geese in pairs, pairs in halves", () => {
    const { blocks } = snapshotOfText(`${FABRICS}block Puzzle 8" {\n  turned 4 {\n    (goose(ink, sand)-goose(ink, sand))\n  }\n}\n`);
    expect(describeTree(sewingOfBlock(blocks[0]?.layout ?? block('none', 1, 1, [])).assembled?.plan.assembly)).toMatch(/^\(\(\(G G\) \(G G\)\) \(\(G G\) \(G G\)\)\)$/);
  });
});

describe('settings', () => {
  test('straight: rows from left to right, from top to bottom', () => {
    const { setting } = sewn(`${PLAIN}quilt {\n  straight 3 by 4\n  place { Nine }\n}\n`);
    expect(rowsOf(setting)).toEqual([[0, 1, 2], [3, 4, 5], [6, 7, 8], [9, 10, 11]]);
  });

  test('on point: along the diagonals, each row between two setting triangles', () => {
    const { setting, seams } = sewn(`${PLAIN}quilt {\n  on_point 3 by 3\n  place { Nine }\n  between { Nine(rust) }\n  edges sand\n}\n`);
    const rows = rowsOf(setting);
    // The first and the last are corner triangles, the longest row has the other two at its ends.
    expect(rows.map((row) => row.length)).toEqual([1, 3, 5, 7, 5, 3, 1]);
    for (const row of rows.slice(1, -1)) {
      const roles = row.map((part) => setting.parts[part]?.patch?.role ?? 'block');
      expect([roles[0], roles.at(-1)].every((role) => role !== 'block')).toBe(true);
      expect(roles.slice(1, -1).every((role) => role === 'block')).toBe(true);
    }
    expect([seams.setIn, seams.partial, seams.count]).toEqual([0, 0, 13 * 9 + 8 + 4 - 1]);
  });

  test('sashing with cornerstones goes in rows, long sashes between rows as they are', () => {
    const stones = sewn(`${PLAIN}quilt {\n  straight 2 by 2\n  place { Nine }\n  sashing 1" ink cornerstones rust\n}\n`);
    expect(rowsOf(stones.setting).map((row) => row.length)).toEqual([3, 3, 3]);
    const long = sewn(`${PLAIN}quilt {\n  straight 2 by 2\n  place { Nine }\n  sashing 1" ink\n}\n`);
    expect(rowsOf(long.setting).map((row) => row.length)).toEqual([3, 1, 3]);
  });

  test('the rows are those inside the borders', () => {
    const { setting } = sewn(`${PLAIN}quilt {\n  straight 3 by 2\n  place { Nine }\n  border 1" rust\n  border 3" ink corners squares rust\n}\n`);
    expect(rowsOf(setting)).toEqual([[0, 1, 2], [3, 4, 5]]);
    const one = sewn(`${PLAIN}quilt {\n  straight 3 by 1\n  place { Nine }\n  border 1" rust\n}\n`);
    expect(rowsOf(one.setting)).toEqual([[0, 1, 2]]);
  });

  test('borders from the inside out; mitred ones have four corners set in, and nothing is said about it', () => {
    const { setting, seams, findings } = sewn(`${PLAIN}quilt {\n  straight 2 by 2\n  place { Nine }\n  border 1" rust\n  border 3" ink corners mitred\n}\n`);
    expect(seams.setIn).toBe(4);
    expect(findings).toEqual([]);
    const order = (setting.assembled?.plan.seams ?? []).flatMap((seam) => seam.stretches.flatMap(({ left, right }) => [...left, ...right])).map((part) => setting.parts[part]?.patch?.fabric.name ?? 'block');
    expect(order.lastIndexOf('block')).toBeLessThan(order.indexOf('ink'));
  });
});

describe('settings of every kind are sewn by the verifier', () => {
  const more = `${PLAIN}block Bar 2" by 6" {\n  ink-sand-ink\n}\nblock Unit 3" {\n  ink/sand\n}\nblock Half 6" {\n  ink\\sand\n}\n`;
  test.each([
    ['on_point 3 by 3', 'place { Nine }', 'edges Half'],
    ['on_point 2 by 2', 'place { Nine }', 'edges sand', 'float 1"', 'border 2" ink'],
    ['on_point 2 by 3', 'place { Nine }', 'edges sand', 'sashing 1" ink cornerstones rust outer'],
    ['on_point 2 by 3', 'place { Nine }', 'edges sand', 'sashing 1" ink'],
    ['straight 3 by 2', 'place { Nine }', 'sashing Bar cornerstones rust outer', 'border 2" ink corners squares rust'],
    ['straight 3 by 3', 'place { Nine }', 'border pieced Unit corner Unit', 'border pieced Unit meet'],
    ['straight 2 by 2', 'place { Nine }', 'border 2" ink corners mitred', 'border 1" rust corners mitred', 'border 3" sand corners mitred'],
    ['rows 36"', 'row Nine Half', 'row 2" ink', 'row Half Nine'],
    ['straight 4 by 4', 'place turned 4 {', 'Half', '}'],
  ])('%s, %s, %s …', (...lines) => {
    const snapshot = snapshotOfText(`${more}quilt {\n  ${lines.join('\n  ')}\n}\n`);
    const [quilt] = snapshot.quilts;
    if (!quilt || snapshot.hasErrors) throw new Error(snapshot.problems.map((problem) => problem.message).join('\n'));
    const { setting, findings } = sewingOf(quilt.layout, snapshot.pattern.rules);
    expect(setting.assembled && verifySetting(quilt.layout, setting)).toEqual([]);
    expect(findings.filter((finding) => finding.rule !== 'bulky-point')).toEqual([]);
    expect(setting.assembled?.plan.setIn).toBe(lines.filter((line) => line.includes('mitred')).length > 0 ? 4 : 0);
  });

  test('a pieced border is sewn side by side, and then on', () => {
    const { setting } = sewn(`${more}quilt {\n  straight 3 by 3\n  place { Nine }\n  border pieced Unit corner Unit\n}\n`);
    const isBorder = (part: number): boolean => setting.parts[part]?.placement?.part === 'border';
    const strips = rowsAround(setting.assembled?.plan.assembly).filter((row) => row.every(isBorder));
    expect(strips.map((row) => row.length).sort()).toEqual([6, 6, 8, 8]);
  });
});

describe('counts and findings', () => {
  test('a piece more needs a seam more', () => {
    for (const snapshot of samples()) {
      for (const { layout } of snapshot.quilts) {
        const { seams, blocks, setting } = sewingOf(layout, snapshot.pattern.rules);
        const pieces = setting.parts.length + blocks.reduce((sum, each) => sum + each.count * (each.layout.patches.length - 1), 0);
        expect(seams.count).toBe(pieces - 1);
      }
    }
  });

  test('a piece set in is named where it is written, once with how often', () => {
    const { findings } = sewingOfBlock(snapshotOf('samples/beacon-star.quilt').blocks[0]?.layout ?? block('none', 1, 1, []));
    expect(findings.map((finding) => ('count' in finding ? `${finding.count} ${finding.rule} in ${finding.block ?? 'the setting'}` : ''))).toEqual([
      '4 set-in-seam in Beacon',
      '4 set-in-seam in Beacon',
      '1 bulky-point in Beacon',
    ]);
    expect(findings.map(({ place }) => place.line.text.trim().split(/\s+/).slice(0, 2).join(' '))).toEqual(['patch sky', 'patch sky', 'patch second']);
  });

  test('a ring around a centre is named with where the first seam stops', () => {
    const ring = [box(0, 0, 2, 1, INK), box(2, 0, 1, 2, INK), box(1, 2, 2, 1, INK), box(0, 1, 1, 2, INK), box(1, 1, 1, 1)];
    const [finding, ...more] = sewingOfBlock(block('Ring', 3, 3, ring)).findings;
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ rule: 'partial-seam', block: 'Ring', count: 1 });
  });

  test('what does not tile is not sewn, and does not throw', () => {
    const gap = sewingOfBlock(block('Gap', 3, 1, [box(0, 0, 1, 1), box(2, 0, 1, 1)]));
    const overlap = sewingOfBlock(block('Overlap', 2, 1, [box(0, 0, 2, 1), box(1, 0, 1, 1), box(0, 0, 1, 1)]));
    const none = sewingOfBlock(block('None', 2, 1, []));
    expect([gap, overlap, none].map((each) => [each.assembled, each.findings])).toEqual([[undefined, []], [undefined, []], [undefined, []]]);
  });

  test('a log cabin deeper than anybody sews is given up, and said to be', () => {
    expect(sewingOfBlock(block('Two', 2, 1, squares('ab'))).gaveUp).toBe(false);
    const deep = [box(0, 0, 1, 1)];
    for (let i = 1; i < 1100; i += 1) deep.push(i % 2 === 1 ? box(Math.ceil(i / 2), 0, 1, Math.ceil(i / 2)) : box(0, i / 2, i / 2 + 1, 1));
    expect(sewingOfBlock(block('Deep', 550, 550, deep))).toMatchObject({ assembled: undefined, gaveUp: true, findings: [] });
  });

  test('asked twice, worked out once', () => {
    const snapshot = snapshotOf('samples/harbour-mail.quilt');
    const [quilt] = snapshot.quilts;
    if (!quilt) throw new Error('no quilt');
    expect(sewingOf(quilt.layout, snapshot.pattern.rules)).toBe(sewingOf(quilt.layout, snapshot.pattern.rules));
  });
});

test('every sample is sewn by the verifier, blocks and settings', () => {
  let sewnPlans = 0;
  for (const snapshot of samples()) {
    for (const { layout } of snapshot.quilts) {
      const { blocks, setting } = sewingOf(layout, snapshot.pattern.rules);
      for (const { layout: made, assembled } of blocks) {
        if (!assembled) throw new Error(`${made.instance.name} has no plan`);
        expect(verifyPlan({ patches: made.patches, outline: blockOutline(made), seam: fraction(1, 4) }, assembled.plan)).toEqual([]);
      }
      if (!setting.assembled) throw new Error('no plan of the setting');
      expect(verifySetting(layout, setting)).toEqual([]);
      sewnPlans += blocks.length + 1;
    }
  }
  expect(sewnPlans).toBeGreaterThan(10);
});

function verifySetting(layout: QuiltLayout, { parts, assembled }: QuiltSewing['setting']): unknown {
  const patches = parts.map(({ outline }): Patch => ({ ...box(0, 0, 1, 1), outline }));
  return assembled && verifyPlan({ patches, outline: blockOutline(layout), seam: fraction(1, 4) }, assembled.plan);
}

function samples(): Snapshot[] {
  return readdirSync(new URL('../../samples/', import.meta.url)).filter((name) => name.endsWith('.quilt')).map((name) => snapshotOf(`samples/${name}`));
}

function snapshotOf(path: string): Snapshot {
  const read = (name: string): string => readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8');
  const others = readdirSync(new URL('../../samples/blocks/', import.meta.url)).filter((name) => name.endsWith('.quilt'));
  return snapshotOfText(read(path), Object.fromEntries(others.map((name) => [`blocks/${name}`, read(`samples/blocks/${name}`)])));
}

function sewn(text: string): QuiltSewing {
  const snapshot = snapshotOfText(text);
  const layout = snapshot.quilts[0]?.layout;
  if (!layout || snapshot.hasErrors) throw new Error(snapshot.problems.map((problem) => problem.message).join('\n'));
  return sewingOf(layout, snapshot.pattern.rules);
}

function tree(patches: readonly Patch[]): string {
  const plan = assemble(patches)?.plan;
  if (!plan) throw new Error('no plan');
  expect([plan.setIn, plan.partial]).toEqual([0, 0]);
  return show(plan.assembly);
}

function show(node: Assembly): string {
  return node.kind === 'patch' ? `${node.patch}` : node.kind === 'join' ? `(${node.parts.map(show).join(' ')})` : show(node.part);
}

/** Geese, of three patches, as G. */
function describeTree(node: Assembly | undefined): string {
  if (!node) return '';
  if (patchesIn(node).length === 3) return 'G';
  return node.kind === 'join' ? `(${node.parts.map(describeTree).join(' ')})` : '';
}

/** Every part of the tree that is not a single patch, as its patches. */
function rowsAround(node: Assembly | undefined): (readonly number[])[] {
  return node?.kind === 'join' ? [patchesIn(node), ...node.parts.flatMap(rowsAround)] : [];
}
