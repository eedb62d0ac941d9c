/** What may be written at a position: statements, the options of the line, names, units, rules to allow, computed values. */
import { RULES } from '../checks/list.ts';
import type { Snapshot } from '../snapshot.ts';
import { contextAt, statementAt } from '../syntax/find.ts';
import { scanLine } from '../syntax/scan.ts';
import { PLAIN_LINES, STATEMENT_WORDS, TURN_WORDS, ruleOf, type Context } from '../syntax/words.ts';
import type { Position } from '../text/document.ts';
import type { Columns } from '../text/place.ts';
import type { Completion, Spot } from './completion-item.ts';
import { argumentNames, namesFor } from './completion-names.ts';
import { optionsFor, unitsFor } from './completion-options.ts';
import { NO_PATHS, pathBefore, pathsFor, type Paths } from './completion-paths.ts';
import { pathsOf } from './placeholders.ts';
import { helpOf } from './statements.ts';

export type { Completion } from './completion-item.ts';

export interface Completions {
  /** The columns of the line that a completion takes the place of. */
  readonly columns: Columns;
  readonly items: readonly Completion[];
}

export function completionsAt(snapshot: Snapshot, position: Position, paths: Paths = NO_PATHS): Completions {
  const line = snapshot.document.lines[position.line]?.text ?? '';
  const before = line.slice(0, position.character);
  const answer = (word: string, items: readonly Completion[]): Completions => ({ columns: { from: before.length - word.length, to: position.character }, items });
  const comment = scanLine(line).comment;
  if (comment !== undefined && comment < before.length) return answer(/[a-z-]*$/.exec(before)?.[0] ?? '', ruleNames(before.slice(comment)));
  const written = pathBefore(before);
  if (written !== undefined) return answer(written, pathsFor(snapshot, paths));
  const { context } = contextAt(snapshot.tree, position);
  const path = context === 'steps' || statementAt(snapshot.tree, position)?.node.kind === 'about' ? /\{([\p{L}\p{M}\d_.]*)$/u.exec(before)?.[1] : undefined;
  if (path !== undefined) return answer(path, values(snapshot, path));
  const word = /(?:\p{L}[\p{L}\p{M}\d_]*)?$/u.exec(before)?.[0] ?? '';
  const afterTurn = before.endsWith('@') || /@\d+$/.test(before);
  if (afterTurn) return answer(/\d*$/.exec(before)?.[0] ?? '', TURN_WORDS.map((text) => ({ text, kind: 'option', detail: text === 'mirror' ? 'left to right' : text === 'flip' ? 'top to bottom' : 'degrees clockwise' })));
  if (isInText(before)) return answer(word, []);
  const lead = before.slice(0, before.length - word.length);
  const dotted = /(?:\p{L}[\p{L}\p{M}\d_]*\.)+$/u.exec(lead)?.[0] ?? '';
  return answer(dotted + word, itemsAt(spotAt(snapshot, position, context, lead.slice(0, lead.length - dotted.length)), dotted));
}

function spotAt(snapshot: Snapshot, position: Position, context: Context, whole: string): Spot {
  const inner = whole.lastIndexOf('{') > whole.lastIndexOf('}') ? whole.lastIndexOf('{') + 1 : whole.lastIndexOf('}') + 1;
  const lead = whole.slice(inner).trimStart();
  const first = /^[\p{L}_]+/u.exec(lead)?.[0];
  return { snapshot, position, context, lead, first, rule: first === undefined ? undefined : ruleOf(context, first) };
}

function itemsAt(spot: Spot, dotted: string): readonly Completion[] {
  const { snapshot, context, lead, rule } = spot;
  if (lead.endsWith('#') || lead.endsWith('@')) return [];
  if (lead === '' && dotted === '') return [...statements(context), ...(PLAIN_LINES[context] ? namesFor(spot) : [])];
  if (rule === 'Expect' && /^expect\s+(?:cut\s+)?$/.test(lead)) return expected(snapshot, lead.includes('cut') ? 'cut' : 'plain', dotted);
  if (isInSum(spot)) return namesFor(spot).filter(({ kind }) => kind === 'number' || kind === 'parameter' || kind === 'import');
  const named = (items: readonly Completion[]): readonly Completion[] => items.filter(({ text }) => text.startsWith(dotted));
  if (/[\d½¼¾⅓⅔⅛⅜⅝⅞)]$/.test(lead)) return unitsFor(spot);
  const options = dotted === '' ? optionsFor(spot) : { items: [], only: false };
  if (options.only) return options.items;
  return [...options.items, ...(dotted === '' ? [...unitsFor(spot), ...argumentNames(spot)] : []), ...named(namesFor(spot))];
}

/** In parentheses that hold a number: behind nothing that could be given arguments, and in no row of cells. */
function isInSum({ lead, rule, context }: Spot): boolean {
  return rule !== undefined && rule !== 'Place' && rule !== 'Between' && rule !== 'QuiltRow' && context !== 'pieced' && /(?:^|[\s,(*/+-])\([^()|\\]*$/u.test(lead);
}

function statements(context: Context): readonly Completion[] {
  return STATEMENT_WORDS[context].filter(({ word }) => word !== 'center').map(({ word }): Completion => {
    const help = helpOf(context, word);
    return { text: word, kind: 'statement', detail: help?.says ?? 'statement', ...(help?.snippet !== undefined && { snippet: help.snippet }) };
  });
}

/** `allow` after two slashes, and then every rule that is no error and not there yet. */
function ruleNames(comment: string): readonly Completion[] {
  if (/^\/\/\s*[a-z]*$/.test(comment)) return [{ text: 'allow', kind: 'option', detail: 'silences a rule in this line', snippet: 'allow ', goesOn: true }];
  if (!/^\/\/\s*allow\s/.test(comment)) return [];
  const there = comment.replace(/[a-z-]*$/, '').split(/[\s,]+/);
  return RULES.filter(({ id, severity }) => severity !== 'error' && !there.includes(id)).map(({ id, title }) => ({ text: id, kind: 'rule', detail: title }));
}

/** What a path in wording or an expectation can end in: the whole paths, a size before them where one is written. */
function values(snapshot: Snapshot, written: string): readonly Completion[] {
  const { pattern } = snapshot;
  const paths = pathsOf(snapshot);
  const size = pattern.sizes.find(({ name }) => written.startsWith(`${name}.`));
  const prefix = size ? `${size.name}.` : '';
  const sizes = size ? [] : pattern.sizes.map(({ name }): Completion => ({ text: name, kind: 'size', detail: 'one size alone', snippet: `${name}.`, goesOn: true }));
  return [...sizes, ...paths.map(({ path, value }): Completion => ({ text: prefix + path, kind: 'value', detail: size ? '' : value }))];
}

function expected(snapshot: Snapshot, as: 'plain' | 'cut', dotted: string): readonly Completion[] {
  if (as === 'plain') return [...values(snapshot, dotted), ...(dotted === '' ? [{ text: 'cut', kind: 'option', detail: 'the cut size of a fabric in a block' } as const] : [])];
  const quilt = snapshot.shown ?? snapshot.quilts[0];
  const pairs = new Set((quilt?.plan.pieces ?? []).flatMap(({ for: use, shared = [use], fabric }) => shared.map((name) => `${name}.${fabric.name}`)).filter((path) => /^[\p{L}\p{M}\d_.]+$/u.test(path)));
  return [...pairs].map((text) => ({ text, kind: 'value', detail: 'cut size' }));
}

/** After an opening quote. A quote that touches a number before it is an inch mark. */
function isInText(before: string): boolean {
  return (before.replace(/\\./g, '').match(/(?<![\d)½¼¾⅓⅔⅛⅜⅝⅞])"/g) ?? []).length % 2 === 1;
}
