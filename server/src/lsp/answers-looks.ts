/** What is asked about how a text looks: colours of names, swatches, folds, selections, links, figures beside the text. */
import { FoldingRangeKind, InlayHintKind, type CodeLens, type Connection, type DocumentLink, type FoldingRange, type InlayHint, type SelectionRange, type SemanticTokens, type SemanticTokensDelta } from 'vscode-languageserver';
import { colourParts, coloursIn, colourText } from '../features/colours.ts';
import { foldsIn, type Fold } from '../features/folding.ts';
import { inlaysIn } from '../features/inlays.ts';
import { lensesIn } from '../features/lenses.ts';
import { linksIn } from '../features/links.ts';
import { selectionsAt } from '../features/selection.ts';
import type { Snapshot } from '../snapshot.ts';
import { rangeOf, type Range } from '../text/place.ts';
import type { AnswerContext } from './context.ts';
import { locationOf, START } from './convert.ts';
import { tokenStore } from './tokens.ts';

export function answerLooks(connection: Connection, { guard, snapshotOf, client, settings, recoder }: AnswerContext): void {
  const of = ({ textDocument }: { readonly textDocument: { readonly uri: string } }): Snapshot | undefined => snapshotOf(textDocument.uri);
  const tokens = tokenStore(recoder);
  connection.languages.semanticTokens.on(guard.request('semanticTokens', { data: [] }, (params): SemanticTokens => {
    const snapshot = of(params);
    return snapshot ? tokens.whole(snapshot) : { data: [] };
  }));
  connection.languages.semanticTokens.onDelta(guard.request('semanticTokensDelta', { data: [] }, (params): SemanticTokens | SemanticTokensDelta => {
    const snapshot = of(params);
    return snapshot ? tokens.since(snapshot, params.previousResultId) : { data: [] };
  }));
  connection.languages.semanticTokens.onRange(guard.placed('semanticTokensRange', { data: [] }, (params): SemanticTokens => {
    const snapshot = of(params);
    return snapshot ? { data: tokens.part(snapshot, params.range) } : { data: [] };
  }));
  connection.onDocumentColor(guard.request('documentColor', [], (params) => {
    const snapshot = of(params);
    return snapshot ? coloursIn(snapshot).map(({ place, colour }) => ({ range: rangeOf(snapshot.document, place) ?? START, color: { ...colourParts(colour), alpha: 1 } })) : [];
  }));
  connection.onColorPresentation(guard.placed('colorPresentation', [], ({ color, range }) => [{ label: colourText(color), textEdit: { range, newText: colourText(color) } }]));
  connection.onFoldingRanges(guard.request('foldingRange', null, (params): FoldingRange[] | null => {
    const snapshot = of(params);
    return snapshot ? foldsIn(snapshot).map(foldOf) : null;
  }));
  connection.onSelectionRanges(guard.placed('selectionRange', null, (params): SelectionRange[] | null => {
    const snapshot = of(params);
    return snapshot ? params.positions.map((position) => nested(selectionsAt(snapshot, position)) ?? { range: { start: position, end: position } }) : null;
  }));
  connection.onDocumentLinks(guard.request('documentLink', null, (params): DocumentLink[] | null => {
    const snapshot = of(params);
    if (!snapshot) return null;
    return linksIn(snapshot).flatMap(({ place, to }): DocumentLink[] => {
      const target = to.kind === 'file' ? locationOf(snapshot, to.start)?.uri : client()?.explanationLink(to.rule);
      const range = rangeOf(snapshot.document, place);
      return target === undefined || !range ? [] : [{ range, target, tooltip: to.kind === 'file' ? 'Open the file' : 'Explain the rule' }];
    });
  }));
  connection.languages.inlayHint.on(guard.placed('inlayHint', null, (params): InlayHint[] | null => {
    const snapshot = settings().annotations === 'show' ? of(params) : undefined;
    if (!snapshot) return null;
    return inlaysIn(snapshot, params.range).map(({ line, column, text, kind }) => ({
      position: { line, character: column }, label: text, ...(kind === 'parameter' ? { kind: InlayHintKind.Parameter, paddingRight: true } : { paddingLeft: true }),
    }));
  }));
  connection.onCodeLens(guard.request('codeLens', null, (params): CodeLens[] | null => {
    const snapshot = settings().annotations === 'show' ? of(params) : undefined;
    if (!snapshot) return null;
    const isOurs = client()?.isOurs === true;
    return lensesIn(snapshot).filter(({ opens }) => !opens || isOurs).map(({ place, text, opens }) => ({
      range: rangeOf(snapshot.document, place) ?? START, command: { title: text, command: opens ? 'scant.openPreview' : '' },
    }));
  }));
}

const FOLD_KINDS: Readonly<Record<Fold['kind'], FoldingRangeKind | undefined>> = { braces: undefined, comment: FoldingRangeKind.Comment, imports: FoldingRangeKind.Imports, region: FoldingRangeKind.Region };

function foldOf({ from, to, kind }: Fold): FoldingRange {
  const known = FOLD_KINDS[kind];
  return { startLine: from, endLine: to, ...(known !== undefined && { kind: known }) };
}

/** The smallest with the larger ones as its parents. */
function nested(ranges: readonly Range[]): SelectionRange | undefined {
  return ranges.reduceRight<SelectionRange | undefined>((parent, range) => ({ range, ...(parent && { parent }) }), undefined);
}
