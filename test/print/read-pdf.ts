/** What a PDF says, by pdf.js: a reader that shares no code with the writer. */
import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface PageRead {
  /** In points. */
  readonly width: number;
  readonly height: number;
  readonly lines: readonly LineRead[];
  readonly tags: readonly Tagged[];
  readonly links: number;
}

/** The texts on one baseline, from left to right. */
export interface LineRead {
  readonly text: string;
  /** Points from the lower edge. */
  readonly y: number;
  readonly size: number;
}

export interface Tagged {
  readonly tag: string;
  readonly alt?: string;
}

export interface PdfRead {
  readonly pages: readonly PageRead[];
  readonly title: unknown;
  readonly language: unknown;
  readonly isTagged: boolean;
  readonly printScaling: unknown;
  readonly outline: readonly string[];
}

export async function readPdf(bytes: Uint8Array): Promise<PdfRead> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false, disableFontFace: true });
  const document = await task.promise;
  try {
    const [{ info }, marks, preferences, outline] = await Promise.all([document.getMetadata(), document.getMarkInfo(), document.getViewerPreferences() as Promise<Readonly<Record<string, unknown>> | null>, document.getOutline()]);
    const said = info as Readonly<Record<string, unknown>>;
    const titles = (items: readonly { readonly title: string; readonly items: readonly unknown[] }[]): readonly string[] => items.flatMap((item) => [item.title, ...titles(item.items as typeof items)]);
    return {
      pages: await pagesOf(document),
      title: said['Title'],
      language: said['Language'],
      isTagged: (marks as { readonly Marked?: boolean } | null)?.Marked === true,
      printScaling: preferences?.['PrintScaling'],
      outline: titles(outline ?? []),
    };
  } finally {
    await task.destroy();
  }
}

/** All of its text, lines and pages joined. */
export function textOf({ pages }: PdfRead): string {
  return pages.flatMap(({ lines }) => lines.map(({ text }) => text)).join('\n');
}

async function pagesOf(document: PDFDocumentProxy): Promise<readonly PageRead[]> {
  const pages: PageRead[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { items } = await page.getTextContent();
    const tree = (await page.getStructTree()) as unknown;
    const annotations = (await page.getAnnotations()) as readonly { readonly subtype: string }[];
    pages.push({ width, height, lines: linesOf(items as readonly Item[]), tags: tagsIn(tree), links: annotations.filter(({ subtype }) => subtype === 'Link').length });
  }
  return pages;
}

interface Item {
  readonly str?: string;
  readonly transform?: readonly number[];
}

function linesOf(items: readonly Item[]): readonly LineRead[] {
  const lines = new Map<string, { text: string; y: number; size: number; x: number; order: number }[]>();
  items.forEach(({ str = '', transform = [] }, order) => {
    const [size = 0, , , , x = 0, y = 0] = transform;
    if (str.trim() === '') return;
    const key = y.toFixed(1);
    lines.set(key, [...(lines.get(key) ?? []), { text: str, y, size, x, order }]);
  });
  return [...lines.values()].map((parts) => {
    const sorted = parts.sort((a, b) => a.x - b.x);
    return { text: sorted.map(({ text }) => text).join(' '), y: sorted[0]?.y ?? 0, size: Math.max(...sorted.map(({ size }) => size)) };
  });
}

function tagsIn(node: unknown): readonly Tagged[] {
  if (typeof node !== 'object' || node === null) return [];
  const { role, alt, children } = node as { readonly role?: string; readonly alt?: string; readonly children?: readonly unknown[] };
  const own = role === undefined || role === 'Root' ? [] : [{ tag: role, ...(alt !== undefined && { alt }) }];
  return [...own, ...(children ?? []).flatMap(tagsIn)];
}

/** Measures as pattern.json writes them: `7½″` and `7.5 cm` in any language become `7 1/2"` and `7.5 cm`. */
export function unset(text: string): string {
  return text
    .replace(/(?<=\d)(?=[½⅓⅔¼¾⅛⅜⅝⅞⁰¹²³⁴⁵⁶⁷⁸⁹])/g, ' ')
    .normalize('NFKC')
    .replaceAll('⁄', '/')
    .replaceAll('″', '"')
    // NFKC writes ″ as two primes.
    .replaceAll('′′', '"')
    .replace(/(?<=\d),(?=\d)/g, '.')
    .replace(/\s+/g, ' ');
}
