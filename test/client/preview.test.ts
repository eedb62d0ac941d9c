import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { pace } from '../../client/src/pace.ts';
import { ruleOf } from '../../client/src/pages.ts';
import { asPageState, newFile, withFile } from '../../client/src/preview/messages.ts';
import { badgeFor, noteFor } from '../../client/src/preview/words.ts';
import type { Preview } from '../../server/src/lsp/requests.ts';

describe('pace', () => {
  beforeEach(() => vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] }));
  afterEach(() => vi.useRealTimers());

  test('the first run is at once, then there is one in a while', async () => {
    const runs: number[] = [];
    const { ask } = pace(300, () => Promise.resolve(void runs.push(performance.now())));
    const start = performance.now();
    for (let key = 0; key < 100; key++) {
      ask();
      await vi.advanceTimersByTimeAsync(10);
    }
    await vi.advanceTimersByTimeAsync(1000);
    expect(runs[0]).toBe(start);
    expect(runs.length).toBe(5);
    runs.slice(1).forEach((at, index) => expect(at - (runs[index] ?? 0)).toBeGreaterThanOrEqual(300));
  });

  test('no run begins before the last has ended, and what was asked meanwhile is one run', async () => {
    let running = 0;
    let most = 0;
    let runs = 0;
    const { ask } = pace(300, async () => {
      running += 1;
      most = Math.max(most, running);
      await new Promise((resolve) => setTimeout(resolve, 2000));
      running -= 1;
      runs += 1;
    });
    ask();
    await vi.advanceTimersByTimeAsync(500);
    ask();
    ask();
    await vi.advanceTimersByTimeAsync(10_000);
    expect([most, runs]).toEqual([1, 2]);
  });

  test('a run that fails does not end the pace, and a stopped one runs no more', async () => {
    let runs = 0;
    const { ask, stop } = pace(300, () => {
      runs += 1;
      return Promise.reject(new Error('no'));
    });
    ask();
    ask();
    await vi.advanceTimersByTimeAsync(1000);
    expect(runs).toBe(2);
    ask();
    stop();
    ask();
    await vi.advanceTimersByTimeAsync(1000);
    expect(runs).toBe(3);
  });
});

describe('what a page remembers', () => {
  test('any old state becomes one that can be used', () => {
    for (const value of [undefined, null, 7, 'x', [], { files: 'no', background: 'pink', uri: 3 }, { files: [null, { uri: 1 }, { uri: 'file:///a' }] }]) {
      const state = asPageState(value, 'grey');
      expect(state.background).toBe('grey');
      expect(state.files.every(({ uri }) => typeof uri === 'string')).toBe(true);
    }
  });

  test('a file is remembered once, and not all of them for ever', () => {
    let state = asPageState(undefined, 'theme');
    for (let n = 0; n < 80; n++) state = withFile(state, newFile(`file:///${n % 60}`));
    expect(state.files.length).toBe(50);
    expect(state.files.at(-1)?.uri).toBe('file:///19');
  });
});

test('what the preview says', () => {
  const preview: Preview = { uri: 'a', version: 1, title: '', svg: null, kind: 'quilt', width: 0, height: 0, labels: [], errors: 0, partial: false, sizes: [], colorways: [], size: null, colorway: null, views: [], view: 'whole', block: null, tiles: [], notes: [], table: null, step: null };
  expect(noteFor(null, null)).toMatch(/Open a .quilt file/);
  expect(noteFor('a', null)).toMatch(/no longer there/);
  expect(noteFor('a', preview)).toMatch(/Nothing to draw/);
  expect(noteFor('a', { ...preview, errors: 1 })).toMatch(/has errors/);
  expect(badgeFor(preview, 'the newest')).toBe('');
  expect(badgeFor({ ...preview, errors: 1 }, 'the last good one')).toBe('1 error: this is the last good picture');
  expect(badgeFor({ ...preview, errors: 2, partial: true, svg: '<svg/>' }, 'both')).toBe('2 errors: dim parts are from the last good picture');
  expect(badgeFor({ ...preview, errors: 2, partial: true, svg: '<svg/>' }, 'the newest')).toBe('2 errors: parts are missing');
  expect(badgeFor({ ...preview, errors: 1, svg: '<svg/>' }, 'the newest')).toBe('1 error');
});

test('the address of a rule page names its rule', () => {
  expect(ruleOf('/low-contrast.md')).toBe('low-contrast');
});
