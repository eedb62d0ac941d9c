/**
 * What every name of a file stands for. Its own declarations come first, then what imports bring in (the declarations of the
 * imported file itself, not its imports), then the blocks that are always there; an earlier one hides a later one.
 */
import type { Name, Statement } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import type { Context } from './context.ts';
import type { BlockDefinition, Fabric, Import, KnownNames, Let, Meaning, Pattern } from './pattern.ts';

/** Statements that declare a name, the first of each name; further ones are reported. */
export function declaredIn(context: Context, statements: readonly Statement[]): ReadonlyMap<string, Statement> {
  const declared = new Map<string, Statement>();
  for (const statement of statements) {
    const name = declaredName(statement);
    if (!name) continue;
    const first = declared.get(name.text);
    const firstName = first && declaredName(first);
    if (!first || !firstName) {
      declared.set(name.text, statement);
      continue;
    }
    const what = first.node.kind === statement.node.kind ? PLURALS[first.node.kind] : undefined;
    context.report({ rule: 'duplicate-name', place: placeIn(statement.line, name), name: name.text, what: what ?? 'declarations', first: placeIn(first.line, firstName), whole: statement.place });
  }
  return declared;
}

/** The second and later statements of a kind with the name of the first are reported; all names of the kind are their own. */
export function distinctNames<S extends Statement & { readonly node: { readonly name?: Name } }>(context: Context, statements: readonly S[], what: string): readonly S[] {
  const first = new Map<string, S>();
  for (const statement of statements) {
    const { name } = statement.node;
    const before = name && first.get(name.text);
    if (!name) continue;
    if (!before?.node.name) first.set(name.text, statement);
    else context.report({ rule: 'duplicate-name', place: placeIn(statement.line, name), name: name.text, what, first: placeIn(before.line, before.node.name), whole: statement.place });
  }
  return [...first.values()];
}

/** What imports bring in, by the names it has here. Two imports that bring in the same name are reported if it is used. */
export function importedNames(context: Context, imports: readonly Import[], isUsed: (name: string) => boolean): ReadonlyMap<string, Meaning> {
  const names = new Map<string, { readonly meaning: Meaning; readonly from: Import }>();
  for (const one of imports) {
    for (const [name, meaning] of one.pattern ? ownNames(one.pattern, one.as) : []) {
      const before = names.get(name);
      if (!before) names.set(name, { meaning, from: one });
      else if (before.from !== one && isUsed(name)) context.report({ rule: 'duplicate-name', place: one.place, name, what: 'imported declarations', first: before.from.place });
    }
  }
  return new Map([...names].map(([name, { meaning }]) => [name, meaning]));
}

/** The blocks of a library file. */
export function libraryNames(library: readonly Pattern[]): ReadonlyMap<string, Meaning> {
  return new Map(library.flatMap((pattern) => [...ownBlocks(pattern)].map(([name, definition]): [string, Meaning] => [name, blockMeaning({ ...definition, origin: 'library' })])));
}

/** The names that suggestions are made from. */
export function knownNames(names: ReadonlyMap<string, Meaning>, unread: readonly string[]): KnownNames {
  const known: Record<'fabric' | 'block' | 'number', string[]> = { fabric: [], block: [], number: [] };
  for (const [name, { kind }] of names) if (kind !== 'broken') known[kind].push(name);
  return { fabrics: known.fabric, blocks: known.block, numbers: known.number, unread };
}

export function fabricMeaning(fabric: Fabric): Meaning {
  return { kind: 'fabric', fabric };
}

export function numberMeaning({ value, place }: Let): Meaning {
  return { kind: 'number', value, place };
}

/** The `let` behind the meaning of an imported name. */
export function letOf(name: string, { value, place }: Extract<Meaning, { readonly kind: 'number' }>): Let | undefined {
  return place && { name, value, place };
}

export function blockMeaning(definition: BlockDefinition): Meaning {
  return { kind: 'block', definition, turns: [] };
}

const PLURALS: Readonly<Record<string, string>> = { fabric: 'fabrics', assorted: 'fabrics', let: 'numbers', block: 'blocks' };

function declaredName({ node }: Statement): Name | undefined {
  return node.kind === 'fabric' || node.kind === 'assorted' || node.kind === 'let' || node.kind === 'block' ? node.name : undefined;
}

/** What a file declares itself, under the name of its import. */
function* ownNames(pattern: Pattern, as: string | undefined): Generator<[string, Meaning]> {
  const prefix = as === undefined ? '' : `${as}.`;
  const { source } = pattern.tree.document;
  for (const [name, fabric] of pattern.fabrics) if (fabric.place.line.source === source) yield [prefix + name, fabricMeaning(fabric)];
  for (const [name, one] of pattern.lets) if (one.place.line.source === source) yield [prefix + name, numberMeaning(one)];
  for (const [name, definition] of ownBlocks(pattern)) yield [prefix + name, blockMeaning({ ...definition, name: prefix + name, origin: 'import' })];
}

function* ownBlocks(pattern: Pattern): Generator<[string, BlockDefinition]> {
  for (const [name, definition] of pattern.blocks) if (definition.origin === 'file') yield [name, definition];
}
