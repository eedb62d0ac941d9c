/** The kinds of outputs, and the words that choose them. */

/** What this version writes. */
export const OUTPUT_KINDS = ['quilt', 'blocks', 'cutting.md', 'cutting.csv', 'cutting.svg', 'steps.md', 'steps.svg', 'booklet.pdf', 'booklet.html', 'templates.pdf', 'pattern.svg', 'pattern.xlsx', 'pattern'] as const;

export type OutputKind = (typeof OUTPUT_KINDS)[number];

export type Chosen =
  | { readonly kind: 'chosen'; readonly kinds: readonly OutputKind[] }
  | { readonly kind: 'unknown'; readonly word: string };

/** The kinds that words name: a kind, a file name (`cutting.csv`) or a file format (`svg`). */
export function chosenKinds(words: readonly string[]): Chosen {
  const kinds = new Set<OutputKind>();
  for (const word of words) {
    const named = WORDS[word.toLowerCase()];
    if (named === undefined) return { kind: 'unknown', word };
    for (const kind of named) kinds.add(kind);
  }
  return { kind: 'chosen', kinds: OUTPUT_KINDS.filter((kind) => kinds.has(kind)) };
}

/** The words to tell people. */
export const KIND_WORDS = ['quilt', 'blocks', 'cutting', 'pattern', 'steps', 'booklet', 'templates'] as const;

const WORDS: Readonly<Record<string, readonly OutputKind[] | undefined>> = {
  quilt: ['quilt'],
  'quilt.svg': ['quilt'],
  blocks: ['blocks'],
  svg: ['quilt', 'blocks', 'cutting.svg', 'steps.svg', 'pattern.svg'],
  cutting: ['cutting.md', 'cutting.csv', 'cutting.svg'],
  'cutting.md': ['cutting.md'],
  md: ['cutting.md', 'steps.md'],
  'cutting.csv': ['cutting.csv'],
  csv: ['cutting.csv'],
  pattern: ['pattern'],
  'pattern.json': ['pattern'],
  json: ['pattern'],
  'pattern.svg': ['pattern.svg'],
  'pattern.xlsx': ['pattern.xlsx'],
  xlsx: ['pattern.xlsx'],
  steps: ['steps.md', 'steps.svg'],
  'steps.md': ['steps.md'],
  booklet: ['booklet.pdf', 'booklet.html'],
  'booklet.pdf': ['booklet.pdf'],
  'booklet.html': ['booklet.html'],
  html: ['booklet.html'],
  templates: ['templates.pdf'],
  'templates.pdf': ['templates.pdf'],
  pdf: ['booklet.pdf', 'templates.pdf'],
};
