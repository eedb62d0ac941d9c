/**
 * Names for what comes from other files. Within a pattern no two fabrics and no two blocks share a name: what an import brings
 * in goes by the name it has here, and what only its blocks use by its own name, or by `file.name` when that is taken.
 */
import type { Statement } from '../syntax/tree.ts';
import { makesItsPrints } from './fabrics.ts';
import { memoAfter } from './memo.ts';
import type { BlockDefinition, Fabric, Pattern } from './pattern.ts';
import { isSame } from './same.ts';
import { withFabrics, withRoles } from './variant.ts';

/** The pattern with its own names for everything, and a memory that may take over from an older version. */
export function adopt(plain: Pattern, older: Pattern | undefined): Pattern {
  const replaced = withRoles(plain, renamedFabrics(plain));
  const renamed = keptFabrics(older?.workings.renamed, replaced);
  const dressed = withFabrics(plain, renamed);
  const fresh = { ...dressed, workings: { ...dressed.workings, renamed, called: calledBlocks(plain, older?.workings.called), plain } };
  return { ...fresh, workings: { ...fresh.workings, memo: memoAfter(older, fresh) } };
}

function renamedFabrics(plain: Pattern): ReadonlyMap<Fabric, Fabric> {
  const own = plain.tree.document.source;
  const here = new Map([...plain.fabrics].map(([name, fabric]) => [fabric, name]));
  const taken = new Set(plain.fabrics.keys());
  const renamed = new Map<Fabric, Fabric>();
  for (const file of plain.workings.files.values()) {
    for (const fabric of file.fabrics.values()) {
      const { source } = fabric.place.line;
      if (source === own || source !== file.tree.document.source) continue;
      const name = here.get(fabric) ?? freeName(fabric.name, source, taken);
      taken.add(name);
      if (name !== fabric.name) renamed.set(fabric, named(fabric, name));
    }
  }
  return renamed;
}

function named(fabric: Fabric, name: string): Fabric {
  if (!fabric.assorted || !makesItsPrints(fabric)) return { ...fabric, name };
  const prints = fabric.assorted.prints.map((print) => ({ ...print, name: name + print.name.slice(fabric.name.length) }));
  return { ...fabric, name, assorted: { ...fabric.assorted, prints } };
}

function calledBlocks(plain: Pattern, older: Pattern['workings']['called'] | undefined): ReadonlyMap<Statement, BlockDefinition> {
  const here = new Map([...plain.blocks.values()].map((definition) => [definition.statement, definition]));
  const taken = new Set(plain.blocks.keys());
  const called = new Map<Statement, BlockDefinition>();
  for (const file of plain.workings.files.values()) {
    const isLibrary = plain.workings.library.includes(file);
    for (const definition of file.blocks.values()) {
      if (definition.origin !== 'file') continue;
      const { statement } = definition;
      const name = here.get(statement)?.name ?? freeName(definition.name, statement.line.source, taken);
      taken.add(name);
      const before = older?.get(statement);
      called.set(statement, here.get(statement) ?? (before?.name === name ? before : { ...definition, name, origin: isLibrary ? 'library' : 'import' }));
    }
  }
  return called;
}

/** The name itself, or with the file it comes from, or numbered. */
function freeName(name: string, source: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  const file = /([^/\\:]*?)(?:\.[^./\\:]*)?$/.exec(source)?.[1] ?? '';
  for (let number = 1; ; number += 1) {
    const candidate = `${file}.${name}${number === 1 ? '' : ` ${number}`}`;
    if (!taken.has(candidate)) return candidate;
  }
}

function keptFabrics(older: ReadonlyMap<Fabric, Fabric> | undefined, fresh: ReadonlyMap<Fabric, Fabric>): ReadonlyMap<Fabric, Fabric> {
  return new Map(
    [...fresh].map(([fabric, replacement]) => {
      const before = older?.get(fabric);
      return [fabric, before && isSame(before, replacement) ? before : replacement];
    }),
  );
}
