/** Giving a name another one everywhere, in this file and in those that bring it in; refused where it would mean something else. */
import type { Snapshot } from '../snapshot.ts';
import { isReserved } from '../syntax/words.ts';
import type { Position } from '../text/document.ts';
import type { Place } from '../text/place.ts';
import { blockAround, declarationsOf, isSameTarget, occurrenceAt, occurrencesIn, targetOf, type Occurrence, type Target } from './names.ts';
import { foundIn, isShared, type Found } from './references.ts';

export interface Refusal {
  /** One sentence for the maker. */
  readonly refused: string;
}

export interface Renaming {
  readonly edits: readonly { readonly snapshot: Snapshot; readonly place: Place; readonly text: string }[];
}

/** What would be renamed at a position: undefined where there is no name. */
export function renamable(snapshot: Snapshot, position: Position): Occurrence | Refusal | undefined {
  const here = occurrenceAt(snapshot, position);
  if (!here) return undefined;
  const { target } = here;
  return target.place.line.source.startsWith('library:') ? { refused: `\`${target.name}\` is always there and keeps its name` } : here;
}

/** `files`: every file that may use the name, this one and the declaring one included. */
export function renaming(files: readonly Snapshot[], target: Target, name: string): Renaming | Refusal {
  const unfit = unfitName(name);
  if (unfit !== undefined) return { refused: unfit };
  const found = foundIn(isShared(target) ? files : files.filter(({ document }) => document.source === target.place.line.source), target);
  const clash = name === target.name ? undefined : clashOf(found, target, name);
  if (clash !== undefined) return { refused: clash };
  return { edits: found.map(({ snapshot, occurrence }) => ({ snapshot, place: occurrence.place, text: name })) };
}

function unfitName(name: string): string | undefined {
  if (!/^\p{L}[\p{L}\p{M}\d_]*$/u.test(name)) return `\`${name}\` is no name: a letter, then letters, digits and _`;
  return isReserved(name) ? `\`${name}\` is a word of the language and cannot be a name` : undefined;
}

function clashOf(found: readonly Found[], target: Target, name: string): string | undefined {
  for (const file of new Set(found.map(({ snapshot }) => snapshot))) {
    const own = found.filter(({ snapshot }) => snapshot === file).map(({ occurrence }) => occurrence);
    const clash = target.kind === 'parameter' ? parameterClash(file, target, name, own) : declared(file, target, name) ?? captured(file, own, target, name);
    if (clash !== undefined) return clash;
  }
  return undefined;
}

/** Sizes, colourways and imports have names of their own kind; fabrics, blocks and numbers share theirs. */
function declared(file: Snapshot, target: Target, name: string): string | undefined {
  const { kind } = target;
  if (kind === 'size' || kind === 'colorway' || kind === 'import') {
    const other = occurrencesIn(file).find((each) => each.as === 'declaration' && each.target.kind === kind && each.target.name === name);
    return other && `there is a ${kind === 'colorway' ? 'colourway' : kind} \`${name}\` already`;
  }
  const own = declarationsOf(file).get(name);
  return own && !isSameTarget(own, target) ? `\`${name}\` is declared already` : undefined;
}

/** Where the new name would stand for something else, or take the place of what an old one stands for. */
function captured(file: Snapshot, own: readonly Occurrence[], target: Target, name: string): string | undefined {
  if (!isShared(target)) return undefined;
  for (const { statement, as } of own) {
    const there = as === 'use' && plain(file, own) ? targetOf(file, statement, name) : undefined;
    if (there?.kind === 'parameter') return `\`${name}\` is a parameter of \`${blockAround(statement)?.node.name?.text ?? ''}\``;
    if (there && !there.place.line.source.startsWith('library:')) return `\`${name}\` stands for something else in ${fileName(file)}`;
  }
  const hidden = plain(file, own) && occurrencesIn(file).find(({ target: each, place }) => each.place.line.source.startsWith('library:') && place.line.text.slice(place.from, place.to) === name);
  return hidden ? `\`${name}\` is a block that is always there and is used in ${fileName(file)}` : undefined;
}

/** Whether a file calls it by its bare name, not by `lib.NAME`. */
function plain(file: Snapshot, own: readonly Occurrence[]): boolean {
  return own.some(({ place }) => place.line.source === file.document.source && place.line.text[place.from - 1] !== '.');
}

function parameterClash(file: Snapshot, target: Target, name: string, own: readonly Occurrence[]): string | undefined {
  const declaration = own.find(({ as }) => as === 'declaration');
  const block = declaration && blockAround(declaration.statement);
  if (!block) return undefined;
  if (block.node.parameters.some((each) => each.name.text === name)) return `\`${block.node.name?.text ?? ''}\` has a parameter \`${name}\` already`;
  const within = occurrencesIn(file).filter((each) => blockAround(each.statement) === block && each.as === 'use' && !isSameTarget(each.target, target));
  return within.some(({ place }) => place.line.text.slice(place.from, place.to) === name) ? `\`${name}\` stands for something else in \`${block.node.name?.text ?? ''}\`` : undefined;
}

function fileName({ document }: Snapshot): string {
  return document.source.slice(document.source.lastIndexOf('/') + 1);
}
