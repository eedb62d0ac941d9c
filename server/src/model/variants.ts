/** The pattern as it is in a size with its own numbers and in a colourway; made once for each, kept over versions. */
import type { Context } from './context.ts';
import { recolouredRole } from './fabrics.ts';
import { evaluateLets, type LetStatement } from './lets.ts';
import { memoAfter } from './memo.ts';
import { distinctNames } from './names.ts';
import type { Colorway, Fabric, Let, Pattern, SizeDefinition } from './pattern.ts';
import { kept } from './same.ts';
import { ofKind } from './statements.ts';
import { withFabrics, withLets, withRoles } from './variant.ts';

/** The pattern for a size and a colourway: the pattern itself when neither changes a number or a colour. */
export function variantFor(context: Context, pattern: Pattern, size: SizeDefinition | undefined, colorway: Colorway | undefined): Pattern {
  const statements = distinctNames(context, ofKind(size?.statement.body?.statements ?? [], 'let'), 'numbers');
  const colours = colorway?.colours ?? new Map<string, never>();
  if (statements.length === 0 && colours.size === 0) return pattern;
  const lets = statements.length === 0 ? new Map<string, Let>() : letsIn(context, pattern, statements);
  const { memo } = pattern.workings;
  const key = `${statements.length > 0 ? (size?.name ?? '') : ''}/${colours.size > 0 ? (colorway?.name ?? '') : ''}`;
  const known = memo.variants.get(key);
  if (known) return known;
  const older = memo.variantsBefore.get(key);
  const fresh = withLets(withFabrics(pattern, recoloured(pattern, colours, older)), lets);
  const variant = { ...fresh, workings: { ...fresh.workings, memo: memoAfter(older, fresh) } };
  memo.variants.set(key, variant);
  return variant;
}

/** The file's numbers with those of the size in place of some: what is made from them follows. */
function letsIn(context: Context, pattern: Pattern, statements: readonly LetStatement[]): ReadonlyMap<string, Let> {
  const all = new Map<string, LetStatement>();
  for (const statement of ofKind(pattern.tree.statements, 'let')) {
    const name = statement.node.name?.text;
    if (name !== undefined && !all.has(name)) all.set(name, statement);
  }
  for (const statement of statements) if (statement.node.name) all.set(statement.node.name.text, statement);
  const own = new Set(statements.map(({ line }) => line));
  const report: Context['report'] = (finding) => {
    if (own.has(finding.place.line)) context.report(finding);
  };
  return evaluateLets({ ...context, report }, all);
}

function recoloured(pattern: Pattern, colours: Colorway['colours'], older: Pattern | undefined): ReadonlyMap<Fabric, Fabric> {
  const replaced = new Map<Fabric, Fabric>();
  for (const [name, { colour, label }] of colours) {
    const fabric = pattern.fabrics.get(name);
    const other = fabric && recolouredRole(fabric, colour, label);
    if (!fabric || !other) continue;
    replaced.set(fabric, kept(older?.fabrics.get(name), other));
  }
  return new Map([...withRoles(pattern, replaced)].map(([fabric, other]) => [fabric, kept(older?.fabrics.get(fabric.name), other)]));
}

