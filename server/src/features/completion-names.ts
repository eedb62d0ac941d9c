/** The names that may stand at a position: fabrics with their colours, blocks with what they are given, numbers, parameters. */
import { textOf } from '../model/evaluate.ts';
import type { BlockDefinition, Fabric } from '../model/pattern.ts';
import type { Snapshot } from '../snapshot.ts';
import { contextAt } from '../syntax/find.ts';
import { valueOf } from '../text/colour.ts';
import type { Completion, Spot } from './completion-item.ts';
import { blockAround } from './names.ts';
import { labelOf } from './signature.ts';

/** By grammar rule: what a name in the line can stand for. Rows of cells take everything. */
const WANTED: Readonly<Record<string, readonly Completion['kind'][]>> = {
  Pattern: [], Import: [], By: [], About: [], Units: [], Paper: [], Colorway: [], Steps: ['block'], Quilting: ['number'], Batting: ['number'],
  Seam: ['number'], RoundUp: ['number'], Yardage: ['number'], Let: ['number'], Fabric: ['number'], Assorted: ['fabric'], Block: ['fabric', 'block', 'number'],
  NamedSize: ['number'], Straight: ['number'], OnPoint: ['number'], Grid: ['number', 'parameter'], Box: ['number', 'parameter'], Rows: ['number'], Float: ['number'],
  Corner: ['fabric', 'number', 'parameter'], Strip: ['fabric', 'number', 'parameter'], Round: ['fabric', 'number', 'parameter'], Patch: ['fabric', 'number', 'parameter'],
  Backing: ['fabric'], Sleeve: ['fabric'], Layers: ['number'], Binding: ['fabric', 'number'], Turned: [], Mirrored: [], Method: [], Press: [], Templates: [], Foundation: [],
};

/** Nearest first: parameters of the block, then fabrics, blocks, numbers. */
export function namesFor(spot: Spot): readonly Completion[] {
  const { snapshot, context, rule, lead } = spot;
  if (context === 'colorway') return recoloured(snapshot);
  const wanted = rule === undefined ? undefined : WANTED[rule];
  const isPieced = rule === 'Border' && /\bpieced\s+$/.test(lead);
  const all = [...parameters(spot), ...fabrics(snapshot), ...blocks(snapshot), ...numbers(snapshot), ...imports(snapshot)];
  return all.filter(({ kind }) => (isPieced ? kind === 'block' || kind === 'import' : wanted === undefined || wanted.length > 0 && (wanted.includes(kind) || kind === 'import')));
}

/** `b: ` for each parameter of the block whose arguments are written. */
export function argumentNames({ snapshot, lead }: Spot): readonly Completion[] {
  const call = /([\p{L}\p{M}\d_.]+)\(([^()]*)$/u.exec(lead);
  const definition = call?.[1] === undefined ? undefined : snapshot.pattern.blocks.get(call[1]);
  if (!definition || !/(?:^|,)\s*$/.test(call?.[2] ?? '')) return [];
  const there = new Set([...(call?.[2] ?? '').matchAll(/(\p{L}[\p{L}\p{M}\d_]*)\s*[:=]/gu)].map((match) => match[1]));
  return definition.parameters.filter(({ name }) => !there.has(name)).map(({ name }) => ({ text: `${name}:`, kind: 'parameter', detail: `of ${definition.name}`, snippet: `${name}: `, goesOn: true }));
}

function parameters({ snapshot, position }: Spot): readonly Completion[] {
  const { owner } = contextAt(snapshot.tree, position);
  const block = owner && blockAround(owner);
  return (block?.node.parameters ?? []).map(({ name }) => ({ text: name.text, kind: 'parameter', detail: 'parameter' }));
}

function fabrics({ pattern }: Snapshot): readonly Completion[] {
  return [...pattern.fabrics.values()].map((fabric) => ({ text: fabric.name, kind: 'fabric', detail: wordsOf(fabric), colour: fabric.colour }));
}

function wordsOf({ label, colour, value }: Fabric): string {
  return [label, value ?? valueOf(colour)].filter((part) => part !== '').join(', ');
}

function blocks({ pattern }: Snapshot): readonly Completion[] {
  return [...pattern.blocks.values()].map((definition) => ({ text: definition.name, kind: 'block', detail: blockDetail(definition), ...callOf(definition) }));
}

/** What must be given is asked for; what has a default is left out. */
function callOf({ name, parameters: each }: BlockDefinition): Pick<Completion, 'snippet'> {
  const needed = each.filter(({ hasDefault }) => !hasDefault);
  return needed.length === 0 ? {} : { snippet: `${name}(${needed.map((one, index) => `\${${index + 1}:${one.name}}`).join(', ')})` };
}

/** `(a, b) 7 1/2"`, from the heading. */
function blockDetail(definition: BlockDefinition): string {
  const { node, line } = definition.statement;
  const size = node.size ? line.text.slice(node.size.from, node.size.to) : '';
  const given = definition.parameters.length === 0 ? '' : labelOf(definition).label.slice(definition.name.length);
  const origin = { file: '', import: '', library: 'always there' }[definition.origin];
  return [given, size, origin].filter((part) => part !== '').join(' ');
}

function numbers({ pattern }: Snapshot): readonly Completion[] {
  return [...pattern.lets.values()].map(({ name, value }) => ({ text: name, kind: 'number', detail: textOf(value, pattern.rules.units) }));
}

function imports({ pattern }: Snapshot): readonly Completion[] {
  return pattern.imports.flatMap(({ as, path }): Completion[] => (as === undefined ? [] : [{ text: as, kind: 'import', detail: path, snippet: `${as}.`, goesOn: true }]));
}

function recoloured({ pattern }: Snapshot): readonly Completion[] {
  return [...pattern.fabrics.values()].map((fabric) => ({
    text: fabric.name, kind: 'fabric', detail: wordsOf(fabric), colour: fabric.colour, snippet: `${fabric.name} #\${1:${fabric.colour.slice(1)}} "\${2:${fabric.label.replace(/[\\$}"]/g, '')}}"`,
  }));
}
