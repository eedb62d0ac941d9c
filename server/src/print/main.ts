/** The bundle that prints: loaded when a booklet is asked for, and not before. */
export { bookletHtml } from './booklet-html.ts';
export { bookletPdf } from './booklet-pdf.ts';
export { workbookBytes } from './sheet.ts';
export { templatesPdf } from './templates.ts';
