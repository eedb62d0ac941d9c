/** The colours of a text, for swatches and the picker. */
import type { Snapshot } from '../snapshot.ts';
import { walkStatements } from '../syntax/find.ts';
import { visitParts } from '../syntax/walk.ts';
import { placeIn, type Place } from '../text/place.ts';

export interface ColourAt {
  readonly place: Place;
  /** `#rrggbb`. */
  readonly colour: string;
}

/** In the order of the text. */
export function coloursIn({ tree }: Snapshot): readonly ColourAt[] {
  const found: ColourAt[] = [];
  for (const { node, line } of walkStatements(tree)) {
    if (node.kind !== 'fabric' && node.kind !== 'assorted' && node.kind !== 'recolour') continue;
    visitParts(node, (part) => {
      const written = line.text.slice(part.from, part.to);
      if (part.kind === 'colour' && /^#[\da-f]{6}$/i.test(written)) found.push({ place: placeIn(line, part), colour: written.toLowerCase() });
    });
  }
  return found;
}

/** A colour as the language writes it; parts from 0 to 1. */
export function colourText({ red, green, blue }: { readonly red: number; readonly green: number; readonly blue: number }): string {
  return `#${[red, green, blue].map((part) => Math.round(Math.min(1, Math.max(0, part)) * 255).toString(16).padStart(2, '0')).join('')}`;
}

/** The parts of `#rrggbb`, from 0 to 1. */
export function colourParts(colour: string): { readonly red: number; readonly green: number; readonly blue: number } {
  const part = (at: number): number => parseInt(colour.slice(at, at + 2), 16) / 255;
  return { red: part(1), green: part(3), blue: part(5) };
}
