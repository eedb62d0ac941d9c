/** The declarations of a file, its imports at hand: names first, then numbers, measures, fabrics, and what is said about the quilt. */
import type { Statement, Tree } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import type { Context } from './context.ts';
import { defineBlock, duplicateParameters } from './definition.ts';
import { assortedOf, fabricOf, unknownFabric } from './fabrics.ts';
import { evaluateLets, type LetStatement } from './lets.ts';
import { emptyMemo } from './memo.ts';
import { mentionsIn } from './mentions.ts';
import { blockMeaning, declaredIn, distinctNames, fabricMeaning, importedNames, knownNames, letOf, libraryNames, numberMeaning } from './names.ts';
import { insideBy, nestingOf, nestingWith } from './nesting.ts';
import type { BlockDefinition, Fabric, Import, KnownNames, Meaning, Nesting, Pattern, Workings } from './pattern.ts';
import { patternBody, rulesOf } from './rules.ts';
import { colorwaysOf, expectationsOf, stepsOf } from './said.ts';
import { isSame, kept, keptMap } from './same.ts';
import { sizesOf } from './sizes.ts';
import { ofKind, onlyOne } from './statements.ts';
import { unusedIn } from './unused.ts';

/** The most blocks in a file. */
const MOST_BLOCKS = 2000;

export interface Material {
  readonly tree: Tree;
  readonly imports: readonly Import[];
  readonly library: readonly Pattern[];
  /** The same file in an older version. */
  readonly older: Pattern | undefined;
}

/** The pattern that a file declares. What is wrong goes to the context. */
export function declare(bare: Context, material: Material): Omit<Pattern, 'findings'> {
  const { tree, imports, older } = material;
  const { statements } = tree;
  const declared = declaredIn(bare, statements);
  const blocks = blocksOf(bare, declared, older);
  const outline = outlineOf(bare, { ...material, declared, blocks });
  const lets = keptMap(older?.lets, evaluateLets(knowing(bare, outline, imports), letsIn(declared)));
  const numbered = new Map<string, Meaning>([...outline, ...[...lets].map(([name, one]): Named => [name, numberMeaning(one)])]);
  const rules = kept(older?.rules, rulesOf(knowing(bare, numbered, imports), statements));
  const fabrics = fabricsOf(knowing({ ...bare, seam: rules.seam }, numbered, imports), declared, older);
  const names = new Map<string, Meaning>([...numbered, ...[...fabrics].map(([name, { fabric }]): Named => [name, fabricMeaning(fabric)])]);
  const known = kept(older?.workings.known, knownNames(names, unreadOf(imports)));
  const context: Context = { ...knowing({ ...bare, seam: rules.seam }, names, imports), known: () => known };
  for (const finding of unusedIn({ statements, fabrics, blocks })) bare.report(finding);
  const all = pick(names, (meaning) => (meaning.kind === 'block' ? meaning.definition : undefined));
  return {
    tree,
    rules,
    imports,
    fabrics: pick(names, (meaning) => (meaning.kind === 'fabric' ? meaning.fabric : undefined)),
    blocks: all,
    lets: pick(names, (meaning, name) => (meaning.kind === 'number' ? (lets.get(name) ?? letOf(name, meaning)) : undefined)),
    ...said(context, statements, all, older),
    workings: { ...workingsOf(material, { names, known, blocks }), libraryOf: bare.libraryOf },
  };
}

type Named = [string, Meaning];
type Declared = ReadonlyMap<string, Statement>;
type Blocks = ReadonlyMap<string, BlockDefinition>;

/** The context that knows these names. */
function knowing(context: Context, names: ReadonlyMap<string, Meaning>, imports: readonly Import[]): Context {
  return { ...context, meaning: (name) => names.get(name), known: (): KnownNames => knownNames(names, unreadOf(imports)) };
}

/** The first `MOST_BLOCKS` blocks of a file. The rest is said to be too much and left alone. */
function blocksOf(context: Context, declared: Declared, older: Pattern | undefined): Blocks {
  const statements = ofKind([...declared.values()], 'block');
  const [excess] = statements.slice(MOST_BLOCKS);
  if (excess) context.report({ rule: 'too-large', place: placeIn(excess.line, excess.node.name ?? excess.node.word), found: `a file of ${statements.length} blocks`, limit: '2,000' });
  return new Map(
    statements.slice(0, MOST_BLOCKS).flatMap((statement): [string, BlockDefinition][] => {
      const { name } = statement.node;
      if (!name) return [];
      const before = older?.blocks.get(name.text);
      const definition = before?.statement === statement && before.origin === 'file' ? before : defineBlock(statement, name);
      if (definition.parameters.length < statement.node.parameters.length) for (const finding of duplicateParameters(statement)) context.report(finding);
      return [[name.text, definition]];
    }),
  );
}

/** Every name and its kind, before numbers and fabrics are worked out: own names, then imported ones, then the library's. */
function outlineOf(context: Context, { tree, imports, library, older, declared, blocks }: Material & { readonly declared: Declared; readonly blocks: Blocks }): ReadonlyMap<string, Meaning> {
  let mentioned: ReadonlySet<string> | undefined;
  const isUsed = (name: string): boolean => !declared.has(name) && (mentioned ??= new Set(mentionsIn(tree.statements).map((mention) => mention.name))).has(name);
  const names = new Map<string, Meaning>([...declared].map(([name, statement]) => [name, outlineMeaning(context, statement, blocks.get(name))]));
  for (const [name, meaning] of [...importedNames(context, imports, isUsed), ...libraryNames(library)]) {
    if (!names.has(name)) names.set(name, meaning.kind === 'block' ? keptBlock(meaning, older?.blocks.get(name)) : meaning);
  }
  return names;
}

function outlineMeaning(context: Context, { node, line }: Statement, block: BlockDefinition | undefined): Meaning {
  if (block) return blockMeaning(block);
  if ((node.kind !== 'fabric' && node.kind !== 'assorted') || !node.name) return { kind: 'broken' };
  const fabric = unknownFabric(context.units, node.name.text, placeIn(line, node.name));
  return fabricMeaning({ ...fabric, standsFor: undefined, ...(node.kind === 'assorted' ? { assorted: { prints: [], by: 'block' } } : {}) });
}

function keptBlock(meaning: Extract<Meaning, { kind: 'block' }>, older: BlockDefinition | undefined): Meaning {
  const { definition } = meaning;
  return older?.statement === definition.statement && older.origin === definition.origin ? blockMeaning(older) : meaning;
}

function letsIn(declared: Declared): ReadonlyMap<string, LetStatement> {
  return new Map([...declared].filter((entry): entry is [string, LetStatement] => entry[1].node.kind === 'let'));
}

type DeclaredFabrics = ReadonlyMap<string, { readonly fabric: Fabric; readonly statement: Statement }>;

/** The fabrics, then the roles that are made of them; in the order of the text. */
function fabricsOf(context: Context, declared: Declared, older: Pattern | undefined): DeclaredFabrics {
  const found = new Map<string, Fabric>();
  const statements = [...declared.values()];
  const meaning: Context['meaning'] = (name) => {
    const fabric = found.get(name);
    return fabric ? fabricMeaning(fabric) : context.meaning(name);
  };
  for (const statement of ofKind(statements, 'fabric')) {
    const { name } = statement.node;
    if (name) found.set(name.text, kept(older?.fabrics.get(name.text), fabricOf(context, statement, name)));
  }
  for (const statement of ofKind(statements, 'assorted')) {
    const { name } = statement.node;
    if (name) found.set(name.text, kept(older?.fabrics.get(name.text), assortedOf({ ...context, meaning }, statement, name)));
  }
  const inOrder = new Map<string, { readonly fabric: Fabric; readonly statement: Statement }>();
  for (const [name, statement] of declared) {
    const fabric = found.get(name);
    if (fabric) inOrder.set(name, { fabric, statement });
  }
  return inOrder;
}

type Said = Pick<Pattern, 'title' | 'by' | 'about' | 'level' | 'paper' | 'language' | 'quilt' | 'sizes' | 'colorways' | 'expectations' | 'steps'>;

/** What a pattern says beside its names. */
function said(context: Context, statements: readonly Statement[], blocks: Blocks, older: Pattern | undefined): Said {
  const quilt = onlyOne(context, statements, 'quilt');
  const sizes = distinctNames(context, ofKind(statements, 'size'), 'sizes');
  const colorways = distinctNames(context, ofKind(statements, 'colorway'), 'colourways');
  return {
    ...titles(context, statements),
    ...(quilt ? { quilt } : {}),
    sizes: kept(older?.sizes, sizesOf(context, sizes, quilt)),
    colorways: kept(older?.colorways, colorwaysOf(context, colorways)),
    expectations: kept(older?.expectations, expectationsOf(context, statements)),
    steps: kept(older?.steps, stepsOf(context, statements, blocks)),
  };
}

function titles(context: Context, statements: readonly Statement[]): Pick<Pattern, 'title' | 'by' | 'about' | 'level' | 'paper' | 'language'> {
  const body = patternBody(statements);
  const given = {
    title: onlyOne(context, statements, 'pattern')?.node.title?.value,
    by: onlyOne(context, body, 'by')?.node.text?.value,
    about: onlyOne(context, body, 'about')?.node.text?.value,
    level: onlyOne(context, body, 'level')?.node.text?.value,
    paper: onlyOne(context, body, 'paper')?.node.paper?.word,
    language: onlyOne(context, body, 'language')?.node.language?.word,
  };
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
}

interface Resolved {
  readonly names: ReadonlyMap<string, Meaning>;
  readonly known: KnownNames;
  readonly blocks: Blocks;
}

function workingsOf({ imports, library, older }: Material, resolved: Resolved): Omit<Workings, 'libraryOf'> {
  const files = new Map<string, Pattern>();
  for (const pattern of [...imports.flatMap((one) => one.pattern ?? []), ...library]) {
    for (const file of [pattern, ...pattern.workings.files.values()]) if (!files.has(file.tree.document.source)) files.set(file.tree.document.source, file);
  }
  const { names, known } = resolved;
  return { names, known, nesting: nestingIn(resolved, files, older), files, library, renamed: new Map(), called: new Map(), memo: emptyMemo() };
}

/** An edit in a block seldom changes which blocks are in it: then the nesting is that of the version before. */
function nestingIn({ names, known, blocks }: Resolved, files: ReadonlyMap<string, Pattern>, older: Pattern | undefined): Nesting {
  const inside = insideBy(names);
  const replaced = new Map<Statement, Statement>();
  const isAsBefore = (name: string, definition: BlockDefinition): boolean => {
    const before = older?.blocks.get(name);
    if (!before || before === definition) return before !== undefined;
    replaced.set(before.statement, definition.statement);
    return isSame(insideNames(before, names), insideNames(definition, names));
  };
  const isOld = older && older.workings.known === known && [...files].every(([source, file]) => older.workings.files.get(source)?.workings === file.workings);
  if (isOld && [...blocks].every(([name, definition]) => isAsBefore(name, definition))) return nestingWith(older.workings.nesting, replaced);
  const levelThere = ({ statement }: BlockDefinition): number => files.get(statement.line.source)?.workings.nesting.levels.get(statement) ?? 1;
  return nestingOf([...blocks.values()], inside, levelThere);
}

function insideNames({ mentions }: BlockDefinition, names: ReadonlyMap<string, Meaning>): ReadonlySet<string> {
  return new Set([...(mentions ?? [])].filter((name) => names.get(name)?.kind === 'block').sort());
}

/** Names from imports that could not be read are not judged. */
function unreadOf(imports: readonly Import[]): readonly string[] {
  return imports.filter(({ pattern }) => !pattern).map(({ as }) => as ?? '');
}

function pick<V>(names: ReadonlyMap<string, Meaning>, value: (meaning: Meaning, name: string) => V | undefined): ReadonlyMap<string, V> {
  const picked = new Map<string, V>();
  for (const [name, meaning] of names) {
    const found = value(meaning, name);
    if (found !== undefined) picked.set(name, found);
  }
  return picked;
}
