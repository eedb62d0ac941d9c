/** A pattern with other fabrics in place of some, or other numbers: in a colourway, in a size with its own `let`s, as an import. */
import type { Fabric, Let, Meaning, Pattern } from './pattern.ts';
import { fabricMeaning, numberMeaning } from './names.ts';

/** The pattern, its imports and theirs, with every fabric that is a key replaced. Roles of replaced prints are replaced too. */
export function withFabrics(pattern: Pattern, replaced: ReadonlyMap<Fabric, Fabric>): Pattern {
  if (replaced.size === 0) return pattern;
  const files = new Map([...pattern.workings.files].map(([source, file]) => [source, dressed(file, replaced)]));
  const own = dressed(pattern, replaced);
  return { ...own, workings: { ...own.workings, files } };
}

/** The pattern with other values for some of its numbers. */
export function withLets(pattern: Pattern, lets: ReadonlyMap<string, Let>): Pattern {
  if (lets.size === 0) return pattern;
  const names = new Map<string, Meaning>(pattern.workings.names);
  for (const [name, one] of lets) names.set(name, numberMeaning(one));
  return { ...pattern, lets: new Map([...pattern.lets, ...lets]), workings: { ...pattern.workings, names } };
}

/** The roles whose prints are replaced, and the replacements given. */
export function withRoles(pattern: Pattern, replaced: ReadonlyMap<Fabric, Fabric>): ReadonlyMap<Fabric, Fabric> {
  const all = new Map(replaced);
  for (const fabric of [pattern, ...pattern.workings.files.values()].flatMap((file) => [...file.fabrics.values()])) {
    const { assorted } = fabric;
    if (!assorted?.prints.some((print) => replaced.has(print)) || replaced.has(fabric)) continue;
    all.set(fabric, { ...fabric, assorted: { ...assorted, prints: assorted.prints.map((print) => replaced.get(print) ?? print) } });
  }
  return all;
}

function dressed(pattern: Pattern, replaced: ReadonlyMap<Fabric, Fabric>): Pattern {
  const fabrics = new Map([...pattern.fabrics].map(([name, fabric]) => [name, replaced.get(fabric) ?? fabric]));
  const names = new Map([...pattern.workings.names].map(([name, meaning]) => [name, meaning.kind === 'fabric' ? fabricMeaning(replaced.get(meaning.fabric) ?? meaning.fabric) : meaning]));
  return { ...pattern, fabrics, workings: { ...pattern.workings, names } };
}
