/** The kinds of outputs, and the words that choose them. */

/** What this version writes. */
export const OUTPUT_KINDS = ['quilt', 'blocks', 'cutting.md', 'cutting.csv', 'steps.md', 'steps.svg', 'pattern'] as const;

export type OutputKind = (typeof OUTPUT_KINDS)[number];

export type Chosen =
  | { readonly kind: 'chosen'; readonly kinds: readonly OutputKind[] }
  | { readonly kind: 'not yet' | 'unknown'; readonly word: string };

/** The kinds that words name: a kind, a file name (`cutting.csv`) or a file format (`svg`). */
export function chosenKinds(words: readonly string[]): Chosen {
  const kinds = new Set<OutputKind>();
  for (const word of words) {
    const named = WORDS[word.toLowerCase()];
    if (named === undefined) return { kind: 'unknown', word };
    if (named === 'not yet') return { kind: 'not yet', word };
    for (const kind of named) kinds.add(kind);
  }
  return { kind: 'chosen', kinds: OUTPUT_KINDS.filter((kind) => kinds.has(kind)) };
}

/** The words to tell people. */
export const KIND_WORDS = ['quilt', 'blocks', 'cutting', 'pattern', 'steps', 'booklet', 'templates'] as const;

const WORDS: Readonly<Record<string, readonly OutputKind[] | 'not yet' | undefined>> = {
  quilt: ['quilt'],
  'quilt.svg': ['quilt'],
  blocks: ['blocks'],
  svg: ['quilt', 'blocks', 'steps.svg'],
  cutting: ['cutting.md', 'cutting.csv'],
  'cutting.md': ['cutting.md'],
  md: ['cutting.md', 'steps.md'],
  'cutting.csv': ['cutting.csv'],
  csv: ['cutting.csv'],
  pattern: ['pattern'],
  'pattern.json': ['pattern'],
  json: ['pattern'],
  steps: ['steps.md', 'steps.svg'],
  'steps.md': ['steps.md'],
  booklet: 'not yet',
  'booklet.pdf': 'not yet',
  templates: 'not yet',
  'templates.pdf': 'not yet',
  pdf: 'not yet',
};
