import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileNames } from '../../server/src/disk/names.ts';

describe('fileNames', () => {
  it.each([
    [['Capstan', 'Nine(rust)'], ['Capstan', 'Nine-rust']],
    [['Star(d: 1/3)', 'lib.Star'], ['Star-d-1-3', 'lib-Star']],
    [['../../etc/passwd', '/', '..', ''], ['etc-passwd', 'unnamed', 'unnamed-2', 'unnamed-3']],
    [['Star', 'star', 'STAR'], ['Star', 'star-2', 'STAR-3']],
    [['con', 'Nul', 'com1', 'lpt9', 'console'], ['con_', 'Nul_', 'com1_', 'lpt9_', 'console']],
    [['Ñandú', 'N\u0303andu\u0301'], ['Ñandú', 'Ñandú-2']],
    [['-rf', 'a"b<c>|d:e*f?'], ['rf', 'a-b-c-d-e-f']],
    [['a\u0000b\n', 'x'.repeat(300)], ['a-b', 'x'.repeat(48)]],
    [['Straße', 'STRASSE'], ['Straße', 'STRASSE-2']],
  ])('%j', (names, files) => {
    expect(fileNames(names)).toEqual(files);
  });
  it('makes short, distinct, harmless names of anything', () => {
    fc.assert(fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 80 })), (names) => {
      const files = fileNames(names);
      expect(new Set(files.map((file) => file.normalize('NFKD').toLowerCase())).size).toBe(names.length);
      for (const file of files) {
        expect(file).toMatch(/^[\p{L}\p{M}\p{N}_-]+$/u);
        expect(Buffer.byteLength(`${file}.svg`)).toBeLessThan(255);
      }
    }));
  });
});
