/** How light colours are. */
import { describe, expect, test } from 'vitest';
import { DARK_BELOW, LIGHT_FROM, greyOf, lightness, valueOf } from '../../server/src/text/colour.ts';
import { NAMED_COLOURS } from './named-colours.ts';

describe('lightness', () => {
  test('of every named colour of CSS, to three decimals', () => {
    expect(NAMED_COLOURS.length).toBeGreaterThan(100);
    for (const [hex, expected] of NAMED_COLOURS) expect(lightness(hex), hex).toBeCloseTo(expected, 3);
  });

  test('from black to white', () => {
    expect(lightness('#000000')).toBe(0);
    expect(lightness('#ffffff')).toBeCloseTo(100, 10);
    expect(lightness('#FFFFFF')).toBeCloseTo(100, 10);
  });

  test.each(['', '#fff', 'red', '#12345', '#gggggg'])('%j is no colour', (text) => {
    expect(lightness(text)).toBeUndefined();
    expect(valueOf(text)).toBe('medium');
  });
});

describe('grey', () => {
  test('is as light as the named colours of CSS, to the nearest of 256 greys', () => {
    const levels = Array.from({ length: 256 }, (_, level) => `#${level.toString(16).padStart(2, '0').repeat(3)}`);
    for (const [hex, expected] of NAMED_COLOURS) {
      const best = Math.min(...levels.map((grey) => Math.abs((lightness(grey) ?? 0) - expected)));
      expect(Math.abs((lightness(greyOf(hex)) ?? 0) - expected), hex).toBeLessThan(best + 0.1);
    }
  });

  test('of a grey is itself, and what is no colour stays', () => {
    for (let level = 0; level < 256; level++) {
      const grey = `#${level.toString(16).padStart(2, '0').repeat(3)}`;
      expect(greyOf(grey)).toBe(grey);
    }
    expect(greyOf('none')).toBe('none');
  });
});

describe('value', () => {
  test.each([
    ['#22345c', 'dark'],
    ['#a4502e', 'medium'],
    ['#eadfc8', 'light'],
  ])('%s is %s', (hex, value) => expect(valueOf(hex)).toBe(value));

  test('the limits are in order, and belong to the lighter side', () => {
    expect(DARK_BELOW).toBeLessThan(LIGHT_FROM);
    const grey = (level: number): string => `#${level.toString(16).padStart(2, '0').repeat(3)}`;
    const values = Array.from({ length: 256 }, (_, level) => valueOf(grey(level)));
    expect([...new Set(values)]).toEqual(['dark', 'medium', 'light']);
  });
});
