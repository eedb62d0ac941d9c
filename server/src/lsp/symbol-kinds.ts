/** The protocol's kinds of symbols for ours. */
import { SymbolKind } from 'vscode-languageserver';
import type { DocumentSymbol } from '../features/symbols.ts';

export const SYMBOL_KINDS: Readonly<Record<DocumentSymbol['kind'], SymbolKind>> = {
  pattern: SymbolKind.File,
  import: SymbolKind.Module,
  number: SymbolKind.Constant,
  fabric: SymbolKind.Variable,
  block: SymbolKind.Class,
  quilt: SymbolKind.Object,
  part: SymbolKind.Property,
  size: SymbolKind.EnumMember,
  colorway: SymbolKind.Enum,
  expectation: SymbolKind.Boolean,
  steps: SymbolKind.String,
};
