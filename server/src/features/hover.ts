/**
 * What a maker is told about the text under the cursor: a patch, a block, a fabric, a number, a length, or what comes of a
 * statement. Every figure is one that an output would show.
 */
import type { Context } from '../model/context.ts';
import { evaluate, inInches } from '../model/evaluate.ts';
import type { Meaning } from '../model/pattern.ts';
import type { Snapshot } from '../snapshot.ts';
import type { Length, Quantity, Statement } from '../syntax/tree.ts';
import type { Part } from '../syntax/walk.ts';
import { bracesOf } from '../syntax/words.ts';
import type { Position } from '../text/document.ts';
import { placeIn, type Place } from '../text/place.ts';
import { lengthHover } from './hover-length.ts';
import { fabricHover } from './hover-fabric.ts';
import { blockHover, numberHover, parameterHover } from './hover-names.ts';
import { patchHover } from './hover-patch.ts';
import { statementHover } from './hover-quilt.ts';
import { seamHover } from './hover-seam.ts';
import { saidHover } from './hover-said.ts';
import { fact, type Hover } from './hover-text.ts';
import { helpOf } from './statements.ts';
import { under, type Under } from './under.ts';

export type { Hover } from './hover-text.ts';

/** Undefined where there is nothing to say. */
export function hoverAt(snapshot: Snapshot, position: Position): Hover | undefined {
  const said = saidHover(snapshot, position);
  if (said) return said;
  const found = under(snapshot.tree, position);
  if (!found) return undefined;
  const seam = seamHover(snapshot, found, position.character);
  if (seam) return seam;
  for (const part of found.parts) {
    const hover = partHover(snapshot, found, part);
    if (hover) return hover;
  }
  return wordHover(snapshot, found, position) ?? patchHover(snapshot, found.statement.place);
}

function partHover(snapshot: Snapshot, found: Under, part: Part): Hover | undefined {
  const place = found.placeOf(part);
  const length = lengthAt(found, part);
  if (length) return ofLength(snapshot, found, length);
  return patchHover(snapshot, place) ?? (isNamed(part) ? nameHover(snapshot, found, part, place) : undefined);
}

/** The length that a written number is, with its `cut`; a measure inside a sum is a length of its own. */
function lengthAt(found: Under, part: Part): Length | undefined {
  if (isLength(part)) return part;
  const around = found.parts[found.parts.indexOf(part) + 1];
  if (around && isLength(around) && (isMeasure(part) || part.kind === 'number')) return around;
  if (around && isMeasure(around)) return lengthAt(found, around);
  return isMeasure(part) ? { kind: 'length', cut: false, value: part, from: part.from, to: part.to } : undefined;
}

function ofLength(snapshot: Snapshot, { statement }: Under, { cut, value, from, to }: Length): Hover | undefined {
  const found = evaluate(contextOf(snapshot, statement.line), value);
  if (!found) return undefined;
  const inches = inInches(found, snapshot.pattern.rules.units);
  return lengthHover(snapshot.pattern, placeIn(statement.line, { from, to }), { inches, cut, statement: statement.node.kind });
}

/** Names are looked up as the model does, and nothing is reported. */
export function contextOf({ pattern }: Snapshot, line: Context['line']): Context {
  const { names, known, libraryOf } = pattern.workings;
  return { line, units: pattern.rules.units, seam: pattern.rules.seam, known: () => known, meaning: (name) => names.get(name), libraryOf, report: () => undefined };
}

function nameHover(snapshot: Snapshot, found: Under, part: Part & { readonly text: string }, place: Place): Hover | undefined {
  const parameter = parameterAt(snapshot, found, part.text, place);
  if (parameter) return parameter;
  const meaning = snapshot.pattern.workings.names.get(part.text) ?? declared(snapshot, part.text);
  if (!meaning || meaning.kind === 'broken') return undefined;
  if (meaning.kind === 'number') return numberHover(snapshot, place, part.text, meaning.value);
  if (meaning.kind === 'fabric') return fabricHover(snapshot, place, meaning.fabric);
  const outer = found.parts[found.parts.findIndex((each) => each.from === part.from && each.to === part.to) + 1];
  return blockHover(snapshot, place, meaning.definition, outer && isCell(outer) ? found.placeOf(outer) : undefined);
}

/** Names that mean something only by where they are declared. */
function declared({ pattern }: Snapshot, name: string): Meaning | undefined {
  const fabric = pattern.fabrics.get(name);
  if (fabric) return { kind: 'fabric', fabric };
  const definition = pattern.blocks.get(name);
  return definition && { kind: 'block', definition, turns: [] };
}

/** A parameter of the block that the line stands in. */
function parameterAt(snapshot: Snapshot, { statement }: Under, name: string, place: Place): Hover | undefined {
  let outer = statement;
  while (outer.parent) outer = outer.parent;
  const definition = [...snapshot.pattern.blocks.values()].find((block) => block.statement === outer);
  const parameter = definition?.parameters.find((each) => each.name === name);
  return definition && parameter ? parameterHover(place, parameter, definition.name, []) : undefined;
}

/** A size and an expectation are told of over what they name too. */
function headEnd(node: Statement['node']): number {
  if (node.kind === 'size') return node.name?.to ?? node.word.to;
  return node.kind === 'expect' ? (node.path.at(-1)?.to ?? node.word.to) : node.word.to;
}

/** Over a statement's first word. */
function wordHover(snapshot: Snapshot, { statement }: Under, { character }: Position): Hover | undefined {
  const { node, line } = statement;
  if (character < node.word.from || character > headEnd(node)) return undefined;
  if ((node.kind === 'block' || node.kind === 'fabric' || node.kind === 'assorted') && node.name) {
    const meaning = declared(snapshot, node.name.text);
    const place = placeIn(line, node.word);
    if (meaning?.kind === 'block') return blockHover(snapshot, place, meaning.definition);
    if (meaning?.kind === 'fabric') return fabricHover(snapshot, place, meaning.fabric);
  }
  const hover = statementHover(snapshot, statement) ?? helpHover(statement);
  return hover && { ...hover, place: placeIn(line, { from: node.word.from, to: headEnd(node) }) };
}

/** What a statement is for, where there are no figures. */
function helpHover({ line, node, parent }: Statement): Hover | undefined {
  const word = line.text.slice(node.word.from, node.word.to);
  const help = node.kind === 'junk' || node.kind === 'row_of_cells' ? undefined : helpOf(parent ? (bracesOf(parent.node) ?? 'unknown') : 'top', word);
  return help && { place: placeIn(line, node.word), heading: word, facts: fact('', help.says) };
}

function isLength(part: Part): part is Length {
  return part.kind === 'length';
}

function isMeasure(part: Part): part is Quantity & { readonly kind: 'measure' } {
  return part.kind === 'measure';
}

function isNamed(part: Part): part is Part & { readonly text: string } {
  return part.kind === 'name' && 'text' in part && typeof part.text === 'string';
}

function isCell(part: Part): boolean {
  return part.kind === 'reference' && 'turns' in part;
}
