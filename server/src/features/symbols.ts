/** The outline of a file: what is declared, and what the quilt is made of. */
import type { Snapshot } from '../snapshot.ts';
import type { Statement, StatementNode } from '../syntax/tree.ts';
import { placeIn, type Columns, type Place } from '../text/place.ts';

export type SymbolKind = 'pattern' | 'import' | 'number' | 'fabric' | 'block' | 'quilt' | 'part' | 'size' | 'colorway' | 'expectation' | 'steps';

export interface DocumentSymbol {
  readonly name: string;
  readonly kind: SymbolKind;
  readonly detail: string;
  readonly place: Place;
  /** What is selected when it is gone to; lies in `place`. */
  readonly selection: Place;
  readonly children: readonly DocumentSymbol[];
}

/** In the order of the text. */
export function symbolsOf({ tree }: Snapshot): readonly DocumentSymbol[] {
  return tree.statements.flatMap(symbolOf);
}

function symbolOf(statement: Statement): readonly DocumentSymbol[] {
  const { node, line, place, body } = statement;
  const named = nameOf(statement);
  if (!named) return [];
  const { name, kind, columns } = named;
  const written = line.text.slice(node.from, node.to).replace(/\s*\{?\s*$/, '');
  const selection = columns && columns.to <= node.to ? placeIn(line, columns) : placeIn(line, node.word);
  return [{ name, kind, detail: detailOf(node, written), place, selection, children: kind === 'quilt' || kind === 'size' ? partsOf(body?.statements ?? []) : [] }];
}

interface Named {
  readonly name: string;
  readonly kind: SymbolKind;
  readonly columns?: Columns;
}

function nameOf({ node, line }: Statement): Named | undefined {
  switch (node.kind) {
    case 'pattern':
      return { name: shown(node.title?.value) ?? 'pattern', kind: 'pattern' };
    case 'import':
      return node.path && { name: shown(node.as?.text ?? node.path.value) ?? 'import', kind: 'import', columns: node.as ?? node.path };
    case 'let':
      return node.name && { name: node.name.text, kind: 'number', columns: node.name };
    case 'fabric':
    case 'assorted':
      return node.name && { name: node.name.text, kind: 'fabric', columns: node.name };
    case 'block':
      return node.name && { name: node.name.text, kind: 'block', columns: node.name };
    case 'quilt':
      return { name: 'quilt', kind: 'quilt' };
    case 'size':
      return node.name && { name: node.name.text, kind: 'size', columns: node.name };
    case 'colorway':
      return node.name && { name: node.name.text, kind: 'colorway', columns: node.name };
    case 'expect':
      return { name: shown(line.text.slice(node.word.to, node.to)) ?? 'expect', kind: 'expectation' };
    case 'steps':
      return { name: 'steps', kind: 'steps' };
    default:
      return undefined;
  }
}

/** Statements in braces, by their words: `border 1" rust`. */
function partsOf(statements: readonly Statement[]): readonly DocumentSymbol[] {
  return statements.flatMap(({ node, line, place }): DocumentSymbol[] => {
    if (node.kind === 'junk' || node.word.to <= node.word.from) return [];
    const name = line.text.slice(node.word.from, node.word.to);
    const detail = line.text.slice(node.word.to, node.to).replace(/\s*\{.*$/, '').trim();
    return [{ name, kind: 'part', detail, place, selection: placeIn(line, node.word), children: [] }];
  });
}

function detailOf(node: StatementNode, written: string): string {
  if (node.kind === 'fabric') return [node.colour?.value, node.label?.value].filter((part) => part !== undefined).join(' ');
  if ((node.kind === 'block' || node.kind === 'size' || node.kind === 'let') && node.name) return written.slice(node.name.to - node.from).replace(/^\s*=/, '').trim();
  return '';
}

/** A name that an outline can show: one line, not empty. */
function shown(text: string | undefined): string | undefined {
  const line = text?.replace(/\s+/g, ' ').trim() ?? '';
  return line === '' ? undefined : line;
}
