/**
 * The booklet of a sampler of 30 different blocks, from laid-out quilt to bytes, beside the same writer in the same run that only sets
 * words and draws squares on as many pages: what is above that is ours. `npm run bench -- booklet`. Wanted: under 3 s and under 3 MB.
 */
import PDFDocument from 'pdfkit';
import { bookOf } from '../../server/src/booklet/book/build.ts';
import { fontFiles } from '../../server/src/disk/fonts.ts';
import { bookletHtml } from '../../server/src/print/booklet-html.ts';
import { bookletPdf } from '../../server/src/print/booklet-pdf.ts';
import { snapshotOfText } from '../harness/snapshot.ts';
import { sampler } from '../print/patterns.ts';

const MOST_MS = 3000;
const MOST_BYTES = 3e6;

/** The first one, with nothing warm and the sewing not worked out; then the middle one of five. */
const cold = timed(() => booklet());
const warm = median(Array.from({ length: 5 }, () => timed(() => booklet()).ms));
const { pdf, html } = cold.value;
const pages = [...Buffer.from(pdf).toString('latin1').matchAll(/\/Type \/Page\b/g)].length;
const words = html.replace(/<svg[\s\S]*?<\/svg>|<[^>]*>/g, ' ').split(/\s+/).filter((word) => word !== '');
const squares = [...html.matchAll(/[MZ]/g)].length >> 1;
const peer = median(Array.from({ length: 5 }, () => timed(() => plainPages()).ms));

console.log(`${pages} pages, ${words.length} words, ${squares} outlines`);
console.log(`booklet.pdf and booklet.html: first ${cold.ms.toFixed(0)} ms, then ${warm.toFixed(0)} ms (wanted: under ${MOST_MS} ms)`);
console.log(`the writer alone, as many pages, words and squares: ${peer.toFixed(0)} ms; the booklet takes ${(warm / peer).toFixed(2)}x`);
console.log(`booklet.pdf ${(pdf.length / 1e6).toFixed(2)} MB, booklet.html ${(html.length / 1e6).toFixed(2)} MB (wanted: under ${MOST_BYTES / 1e6} MB); the writer alone ${(plainPages() / 1e6).toFixed(2)} MB`);
if (cold.ms > MOST_MS || pdf.length > MOST_BYTES || html.length > MOST_BYTES) process.exitCode = 1;

function booklet(): { readonly pdf: Uint8Array; readonly html: string } {
  const snapshot = snapshotOfText(sampler(30));
  const quilts = snapshot.quilts.map((quilt) => quilt.settled);
  const [quilt] = quilts;
  if (!quilt) throw new Error('no quilt');
  const book = bookOf({ pattern: snapshot.pattern, quilts }, quilt);
  return { pdf: bookletPdf(book, fontFiles()), html: bookletHtml(book) };
}

/** Bytes. */
function plainPages(): number {
  const doc = new PDFDocument({ autoFirstPage: false, font: null as unknown as string });
  doc.registerFont('regular', Buffer.from(fontFiles().regular));
  for (let page = 0; page < pages; page += 1) {
    doc.addPage({ size: 'LETTER', margin: 54 }).font('regular').fontSize(10);
    doc.text(words.slice(Math.floor((page * words.length) / pages), Math.floor(((page + 1) * words.length) / pages)).join(' '), { height: 600 });
    for (let i = 0; i < squares / pages; i += 1) doc.rect((i * 7) % 500, (i * 3) % 700, 5, 5).fillAndStroke('#22345c', '#404040');
  }
  doc.end();
  let bytes = 0;
  for (let part = doc.read() as Buffer | null; part !== null; part = doc.read() as Buffer | null) bytes += part.length;
  return bytes;
}

function timed<T>(work: () => T): { readonly value: T; readonly ms: number } {
  const start = performance.now();
  const value = work();
  return { value, ms: performance.now() - start };
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;
}
