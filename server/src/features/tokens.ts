/** What every name is, for colouring: the text alone cannot tell a parameter called `top` from the word. */
import type { Snapshot } from '../snapshot.ts';
import type { Range } from '../text/place.ts';
import { occurrencesIn, type Occurrence, type TargetKind } from './names.ts';

export const TOKEN_TYPES = ['variable', 'class', 'parameter', 'enumMember', 'namespace'] as const;
export const TOKEN_MODIFIERS = ['declaration', 'readonly', 'defaultLibrary', 'imported'] as const;

export interface Token {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly type: (typeof TOKEN_TYPES)[number];
  readonly modifiers: readonly (typeof TOKEN_MODIFIERS)[number][];
}

const TYPES: Readonly<Record<TargetKind, Token['type']>> = {
  fabric: 'variable', number: 'variable', block: 'class', parameter: 'parameter', size: 'enumMember', colorway: 'enumMember', import: 'namespace',
};

/** In the order of the text; with `within`, those of its lines. */
export function tokensIn(snapshot: Snapshot, within?: Range): readonly Token[] {
  const { document } = snapshot;
  return occurrencesIn(snapshot).flatMap((occurrence) => {
    const { place } = occurrence;
    const line = document.numberOf(place.line);
    if (within && (line < within.start.line || line > within.end.line)) return [];
    return [{ line, from: place.from, to: place.to, type: TYPES[occurrence.target.kind], modifiers: modifiersOf(snapshot, occurrence) }];
  });
}

/** A number of `let` never changes. */
function modifiersOf({ document }: Snapshot, { target, as }: Occurrence): Token['modifiers'] {
  const { source } = target.place.line;
  return [
    ...(as === 'declaration' ? (['declaration'] as const) : []),
    ...(target.kind === 'number' ? (['readonly'] as const) : []),
    ...(source.startsWith('library:') ? (['defaultLibrary'] as const) : source === document.source ? [] : (['imported'] as const)),
  ];
}
