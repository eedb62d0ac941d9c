/** What can be folded: braces, texts over several lines, runs of comments and of imports, marked regions. */
import type { Snapshot } from '../snapshot.ts';
import { walkStatements } from '../syntax/find.ts';
import type { Statement } from '../syntax/tree.ts';
import type { Document } from '../text/document.ts';
import { rangeOf } from '../text/place.ts';

export interface Fold {
  /** Line numbers; the first stays in sight. */
  readonly from: number;
  readonly to: number;
  readonly kind: 'braces' | 'comment' | 'imports' | 'region';
}

/** In the order of the text. */
export function foldsIn({ document, tree }: Snapshot): readonly Fold[] {
  const braces = [...walkStatements(tree)].flatMap((statement) => [...bodyFold(document, statement), ...textFold(document, statement)]);
  return [...braces, ...runs(document, tree.statements), ...regions(document)].filter(({ from, to }) => to > from).sort((a, b) => a.from - b.from || b.to - a.to);
}

/** The closing brace stays in sight. */
function bodyFold(document: Document, { body, line }: Statement): readonly Fold[] {
  const from = document.numberOf(line);
  const close = body?.close && rangeOf(document, body.close)?.start.line;
  return body ? [{ from, to: close === undefined ? document.lines.length - 1 : close - 1, kind: 'braces' }] : [];
}

function textFold(document: Document, { node, body, place }: Statement): readonly Fold[] {
  if (body || !place.endLine || node.kind === 'junk') return [];
  const range = rangeOf(document, place);
  return range ? [{ from: range.start.line, to: range.end.line, kind: 'braces' }] : [];
}

function runs(document: Document, statements: readonly Statement[]): readonly Fold[] {
  const imports = new Set(statements.filter(({ node }) => node.kind === 'import').map(({ line }) => line));
  const kindOf = (number: number): Fold['kind'] | undefined => {
    const line = document.lines[number];
    if (!line) return undefined;
    return imports.has(line) ? 'imports' : /^\s*\/\/(?!\s*#(?:end)?region)/.test(line.text) ? 'comment' : undefined;
  };
  const found: Fold[] = [];
  for (let from = 0; from < document.lines.length; from += 1) {
    const kind = kindOf(from);
    if (!kind) continue;
    let to = from;
    while (kindOf(to + 1) === kind) to += 1;
    found.push({ from, to, kind });
    from = to;
  }
  return found;
}

function regions(document: Document): readonly Fold[] {
  const open: number[] = [];
  const found: Fold[] = [];
  for (const [number, { text }] of document.lines.entries()) {
    if (/^\s*\/\/\s*#region\b/.test(text)) open.push(number);
    const from = /^\s*\/\/\s*#endregion\b/.test(text) ? open.pop() : undefined;
    if (from !== undefined) found.push({ from, to: number, kind: 'region' });
  }
  return found;
}
