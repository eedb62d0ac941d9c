/** Laws of laying atoms on pages, on streams at random. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placeAll, type Atom, type Stream } from '../../server/src/print/flow.ts';

const ROOM = { top: 50, bottom: 750 };

interface Named extends Atom {
  readonly id: number;
}

interface NamedStream extends Stream {
  readonly atoms: readonly Named[];
}

const drawn: { id: number; y: number }[] = [];

const streams = fc.array(
  fc.record({
    begins: fc.constantFrom('page' as const, 'here' as const),
    atoms: fc.array(fc.record({ height: fc.integer({ min: 1, max: 300 }), gap: fc.integer({ min: 0, max: 30 }), glued: fc.boolean(), hasHead: fc.boolean() }), { maxLength: 30 }),
  }),
  { maxLength: 5 },
).map((made): readonly NamedStream[] => {
  let id = 0;
  return made.map(({ begins, atoms }) => ({
    begins,
    atoms: atoms.map(({ height, gap, glued, hasHead }) => {
      const own = (id += 1);
      return { id: own, height, gap, glued, ...(hasHead && { head: { height: 20, draw: (y: number) => void drawn.push({ id: -own, y }) } }), draw: (y: number) => void drawn.push({ id: own, y }) };
    }),
  }));
});

interface At {
  readonly atom: Named;
  readonly page: number;
  readonly y: number;
}

function laid(all: readonly NamedStream[]): { readonly placed: readonly At[]; readonly heads: ReadonlyMap<number, { readonly page: number; readonly y: number }> } {
  const atoms = new Map(all.flatMap((stream) => stream.atoms.map((atom) => [atom.id, atom] as const)));
  const placed: At[] = [];
  const heads = new Map<number, { page: number; y: number }>();
  for (const { page, y, draw } of placeAll(all, ROOM)) {
    drawn.length = 0;
    draw(y);
    const id = drawn[0]?.id ?? 0;
    const atom = atoms.get(id);
    if (atom) placed.push({ atom, page, y });
    else heads.set(-id, { page, y });
  }
  return { placed, heads };
}

describe('laying out', () => {
  test('everything is placed once, in order, within the page, and nothing lies on anything', () => {
    fc.assert(fc.property(streams, (all) => {
      const { placed } = laid(all);
      expect(placed.map(({ atom }) => atom.id)).toEqual(all.flatMap((stream) => stream.atoms.map(({ id }) => id)));
      placed.forEach(({ atom, page, y }, i) => {
        expect(y).toBeGreaterThanOrEqual(ROOM.top);
        expect(y + atom.height).toBeLessThanOrEqual(ROOM.bottom);
        const before = placed[i - 1];
        if (before && before.page === page) expect(y).toBeGreaterThanOrEqual(before.y + before.atom.height + atom.gap);
        else if (before) expect(page).toBe(before.page + 1);
      });
    }), { numRuns: 300 });
  });

  test('what is glued stays on one page where it fits on one', () => {
    fc.assert(fc.property(streams, (all) => {
      const { placed } = laid(all);
      const pageOf = new Map(placed.map(({ atom, page }) => [atom.id, page]));
      for (const { atoms } of all) {
        let chunk: Named[] = [];
        for (const atom of atoms) {
          chunk.push(atom);
          if (atom.glued) continue;
          const height = chunk.reduce((sum, each) => sum + each.gap + each.height, chunk[0]?.head ? 20 : 0);
          if (height <= ROOM.bottom - ROOM.top) expect(new Set(chunk.map(({ id }) => pageOf.get(id))).size).toBe(1);
          chunk = [];
        }
      }
    }), { numRuns: 300 });
  });

  test('a head stands again over what begins a page, and nowhere else', () => {
    fc.assert(fc.property(streams, (all) => {
      const { placed, heads } = laid(all);
      const expected = placed.filter(({ atom, page }, i) => atom.head && (i === 0 || placed[i - 1]?.page !== page));
      expect([...heads.keys()]).toEqual(expected.map(({ atom }) => atom.id));
      for (const { atom, page, y } of expected) expect(heads.get(atom.id)).toEqual({ page, y: y - 20 });
    }), { numRuns: 300 });
  });
});
