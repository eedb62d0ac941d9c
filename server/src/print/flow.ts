/** What is printed as a row of atoms, and atoms on pages: which fits where is worked out before anything is drawn. */

/** Something that is drawn in one go: a line, a row of a table, a figure. */
export interface Atom {
  readonly height: number;
  /** Above it; left out at the top of a page. */
  readonly gap: number;
  /** No page ends behind it. */
  readonly glued: boolean;
  /** Drawn before it again where it begins a page. */
  readonly head?: Pick<Atom, 'height' | 'draw'>;
  readonly draw: (y: number) => void;
}

/** A chapter's atoms in order. */
export interface Stream {
  readonly begins: 'page' | 'here';
  readonly atoms: readonly Atom[];
}

export interface Placed {
  /** The number of the page, from 0. */
  readonly page: number;
  readonly y: number;
  readonly stream: number;
  readonly draw: (y: number) => void;
}

export interface Room {
  readonly top: number;
  readonly bottom: number;
}

/** Where everything goes, in reading order; a chunk that is higher than a page is broken where it must be. */
export function placeAll(streams: readonly Stream[], { top, bottom }: Room): readonly Placed[] {
  const placed: Placed[] = [];
  let [page, y] = [0, top];
  const turn = (): void => {
    page += 1;
    y = top;
  };
  const put = (atom: Atom, stream: number): void => {
    const isFirst = y === top;
    if (isFirst && atom.head) {
      placed.push({ page, y, stream, draw: atom.head.draw });
      y += atom.head.height;
    } else if (!isFirst) y += atom.gap;
    placed.push({ page, y, stream, draw: atom.draw });
    y += atom.height;
  };
  streams.forEach(({ begins, atoms }, stream) => {
    if (begins === 'page' && atoms.length > 0 && y > top) turn();
    for (const chunk of chunksOf(atoms)) {
      if (y > top && y + heightOf(chunk) > bottom) turn();
      for (const atom of chunk) {
        if (y > top && y + atom.gap + atom.height > bottom) turn();
        put(atom, stream);
      }
    }
  });
  return placed;
}

/** Atoms in one, drawn one below the other. */
export function stacked(atoms: readonly Atom[], options: Pick<Atom, 'gap' | 'glued'>): Atom {
  return {
    ...options,
    height: heightOf(atoms) - (atoms[0]?.gap ?? 0),
    draw: (y) => {
      let at = y;
      atoms.forEach((atom, i) => {
        if (i > 0) at += atom.gap;
        atom.draw(at);
        at += atom.height;
      });
    },
  };
}

/** Gaps included. */
export function heightOf(atoms: readonly Atom[]): number {
  return atoms.reduce((sum, { gap, height }) => sum + gap + height, 0);
}

/** Atoms that stay together: each glued one with the next. */
function chunksOf(atoms: readonly Atom[]): readonly (readonly Atom[])[] {
  const chunks: Atom[][] = [];
  let open = false;
  for (const atom of atoms) {
    if (open) chunks.at(-1)?.push(atom);
    else chunks.push([atom]);
    open = atom.glued;
  }
  return chunks;
}
