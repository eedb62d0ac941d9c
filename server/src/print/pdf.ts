/**
 * A tagged PDF document whose bytes depend on nothing but what is drawn: no clock, fonts embedded, language and title set.
 *
 *   const pdf = openPdf({ title, language: 'en', page: PAPER.a4, fonts, scaling: 'none' });
 *   newPage(pdf);                                                     // points, y down, the origin is the upper left corner
 *   const figure = element(pdf, pdf.root, 'Figure', { alt: '…' });     // an element of the reading order
 *   mark(figure, () => drawOutline(pdf, outline, matrix, { stroke: '#000000', width: 0.5 }));
 *   mark(element(pdf, pdf.root, 'P'), () => write(pdf, 'Cut 2.', 72, 90, { font: 'bold', size: 12 }));
 *   artifact(pdf, () => write(pdf, 'page 1', 72, 40, { size: 8 }));   // drawn, but not read out
 *   const bytes = closePdf(pdf);
 *
 * Everything that is drawn stands in `mark` or `artifact`. An element may be marked several times and hold elements.
 * Scenes and outlines are in `picture.ts`.
 */
import PDFDocument from 'pdfkit';
import { escapeXml } from '../drawing/markup.ts';

/** Points: 72 to the inch. */
export interface PageSize {
  readonly width: number;
  readonly height: number;
}

export const POINTS_PER_INCH = 72;

/** ISO 216 A4 is 210 mm by 297 mm; US Letter is 8 1/2 by 11 inches. */
export const PAPER = {
  a4: { width: (210 / 25.4) * POINTS_PER_INCH, height: (297 / 25.4) * POINTS_PER_INCH },
  letter: { width: 8.5 * POINTS_PER_INCH, height: 11 * POINTS_PER_INCH },
} as const satisfies Readonly<Record<string, PageSize>>;

export type FontName = 'regular' | 'bold' | 'italic';

/** TrueType files. */
export type FontFiles = Readonly<Record<FontName, Uint8Array>>;

export interface PdfSetup {
  readonly title: string;
  /** A BCP 47 tag. */
  readonly language: string;
  readonly author?: string;
  readonly page: PageSize;
  readonly fonts: FontFiles;
  /** `none`: a viewer prints at true size unless told otherwise. */
  readonly scaling?: 'none';
}

export interface Pdf {
  readonly doc: PDFKit.PDFDocument;
  readonly page: PageSize;
  /** The element that holds all others. */
  readonly root: Element;
  /** What has been measured: the width of a text in letters of one point, by its font and itself. */
  readonly widths: Map<string, number>;
}

/** The tags in use, by PDF 1.7 (ISO 32000-1, 14.8.4). */
export type Tag = 'Document' | 'Sect' | 'H1' | 'H2' | 'H3' | 'P' | 'L' | 'LI' | 'Lbl' | 'LBody' | 'Table' | 'TR' | 'TH' | 'TD' | 'Figure' | 'Caption' | 'TOC' | 'TOCI' | 'Link' | 'Span' | 'Note';

export interface Element {
  readonly raw: PDFKit.PDFStructureElement;
}

export interface ElementOptions {
  /** What is said instead of a figure. */
  readonly alt?: string;
  readonly title?: string;
  readonly scope?: 'Row' | 'Column';
  /** Where it is another than the document's. */
  readonly language?: string;
}

export interface WriteOptions {
  readonly font?: FontName;
  /** Points; 10 unless given. */
  readonly size?: number;
  /** `#rrggbb`; black unless given. */
  readonly colour?: string;
}

export function openPdf({ title, language, author, page, fonts, scaling }: PdfSetup): Pdf {
  const doc = new PDFDocument({
    pdfVersion: '1.7',
    lang: language,
    tagged: true,
    displayTitle: true,
    autoFirstPage: false,
    size: [page.width, page.height],
    margin: 0,
    // None to begin with: a font that is opened before it has a name is opened again at every use.
    font: null as unknown as string,
    info: { Title: held(title), ...(author !== undefined && { Author: held(author) }), Creator: 'Scant', Producer: 'Scant', CreationDate: EPOCH },
  });
  for (const name of ['regular', 'bold', 'italic'] as const) doc.registerFont(name, bytesOf(fonts[name]));
  const inside = insideOf(doc);
  if (scaling === 'none') inside._root.data.ViewerPreferences.data['PrintScaling'] = 'None';
  inside._addInfo = () => doc.appendXML(metadata(title, language, author));
  const root = doc.struct('Document');
  doc.addStructure(root);
  return { doc, page, root: { raw: root }, widths: new Map() };
}

export function newPage({ doc, page }: Pdf): void {
  doc.addPage({ size: [page.width, page.height], margin: 0 });
}

/** An element within another, in reading order. */
export function element({ doc }: Pdf, parent: Element, tag: Tag, { alt, title, scope, language }: ElementOptions = {}): Element {
  const raw = doc.struct(tag, { ...(alt !== undefined && { alt: held(alt) }), ...(title !== undefined && { title: held(title) }), ...(scope && { scope }), ...(language !== undefined && { lang: language }) });
  parent.raw.add(raw);
  return { raw };
}

/** What is drawn on the page that is open, as content of the element. */
export function mark({ raw }: Element, draw: () => void): void {
  raw.add(draw);
}

/** What is drawn as no part of the text: running heads, rules, backgrounds. */
export function artifact({ doc }: Pdf, draw: () => void): void {
  doc.markContent('Artifact');
  draw();
  doc.endMarkedContent();
}

/** One line of text, its baseline at `y`. Characters that the font has not become its empty box. */
export function write({ doc }: Pdf, text: string, x: number, y: number, { font = 'regular', size = 10, colour = '#000000' }: WriteOptions = {}): void {
  doc.font(font).fontSize(size).fillColor(colour);
  doc.text(held(text), x, y, { lineBreak: false, baseline: 'alphabetic' });
}

/** In points. */
export function widthOf({ doc, widths }: Pdf, text: string, { font = 'regular', size = 10 }: WriteOptions = {}): number {
  const key = `${font} ${text}`;
  const known = widths.get(key) ?? doc.font(font).fontSize(UNIT).widthOfString(held(text)) / UNIT;
  widths.set(key, known);
  return known * size;
}

/** Widths are measured in letters of this size, in points. */
const UNIT = 1000;

/** A place that links lead to: the top of what stands at `y` on the open page. Ids are ASCII. */
export function destination({ doc }: Pdf, id: string, y: number): void {
  doc.addNamedDestination(id, 'XYZ', null, y, null);
}

/** A box on the open page that leads to a destination; what is in it has been drawn in the same element. */
export function link({ doc }: Pdf, { raw }: Element, box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }, to: string, says: string): void {
  // The writer takes a name for a PDF name, a String object for a text.
  doc.goTo(box.x, box.y, box.width, box.height, to, { structParent: raw, Contents: new String(held(says)) } as unknown as PDFKit.Mixins.AnnotationOption);
  raw.end();
}

export function closePdf({ doc }: Pdf): Uint8Array {
  doc.end();
  const parts: Buffer[] = [];
  for (let part = doc.read() as Buffer | null; part !== null; part = doc.read() as Buffer | null) parts.push(part);
  return Buffer.concat(parts);
}

/** Every document says that it was made then: PDF wants a date, and the same text must give the same bytes. */
const EPOCH = new Date(0);

/** Parts of the writer that its types leave out. */
interface Inside {
  readonly _root: { readonly data: { readonly ViewerPreferences: { readonly data: Record<string, unknown> } } };
  _addInfo: () => void;
}

function insideOf(doc: PDFKit.PDFDocument): Inside {
  return doc as unknown as Inside;
}

/** The writer puts texts into its XMP unescaped, so this one is our own. */
function metadata(title: string, language: string, author: string | undefined): string {
  const made = author === undefined ? '' : `<dc:creator><rdf:Seq><rdf:li>${escapeXml(author)}</rdf:li></rdf:Seq></dc:creator>`;
  return [
    '<rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/"><xmp:CreateDate>1970-01-01T00:00:00Z</xmp:CreateDate><xmp:CreatorTool>Scant</xmp:CreatorTool></rdf:Description>',
    `<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(title)}</rdf:li></rdf:Alt></dc:title>${made}<dc:language><rdf:Bag><rdf:li>${escapeXml(language)}</rdf:li></rdf:Bag></dc:language></rdf:Description>`,
    '<rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"><pdf:Producer>Scant</pdf:Producer></rdf:Description>',
  ].join('\n');
}

/** Text that a PDF can hold on one line. */
function held(text: string): string {
  return text.toWellFormed().replace(/[\u0000-\u001F\u007F]+/g, ' ');
}

function bytesOf(font: Uint8Array): Buffer {
  return Buffer.from(font.buffer, font.byteOffset, font.byteLength);
}
