/**
 * The quilt in one size and colourway. What a size says replaces everything `quilt` says with the same word; its count
 * replaces the count; its `let`s replace the file's. A colourway replaces colours and labels, in imported blocks too.
 */
import type { Statement, StatementKind } from '../syntax/tree.ts';
import { bordersOf } from './borders.ts';
import type { Context } from './context.ts';
import { edgesOf, refuseOffPoint } from './edges.ts';
import type { Finding } from './finding.ts';
import { backingOf, battingOf, bindingOf, quiltingOf, sleeveOf } from './finishing.ts';
import { quiltBuilder } from './instantiate.ts';
import type { Colorway, Pattern, QuiltSpec, SizeDefinition } from './pattern.ts';
import { SETTINGS, sashingOf, settingOf, tileOf } from './setting.ts';
import { onlyOne } from './statements.ts';
import type { Builder } from './uses.ts';
import { variantFor } from './variants.ts';

/** The quilt of a pattern that has one, in a size and a colourway if they are given. Throws RangeError for a library of blocks. */
export function specifyQuilt(pattern: Pattern, size?: SizeDefinition, colorway?: Colorway): QuiltSpec {
  const statement = pattern.quilt;
  if (!statement) throw new RangeError('A library of blocks has no quilt.');
  const findings: Finding[] = [];
  const report = (finding: Finding): void => void findings.push(finding);
  const variant = variantFor(contextOf(pattern, statement, report), pattern, size, colorway);
  const builder = quiltBuilder(variant, contextOf(variant, statement, report));
  const own = size?.statement.body?.statements ?? [];
  const statements = inForce(statement.body?.statements ?? [], own);
  return { statement, ...(size ? { size } : {}), ...partsOf(builder, statements, own, size), findings };
}

function partsOf(builder: Builder, statements: readonly Statement[], own: readonly Statement[], size: SizeDefinition | undefined): Omit<QuiltSpec, 'statement' | 'size' | 'findings'> {
  const setting = settingOf(builder, statements, size);
  const place = onlyOne(builder, statements, 'place');
  const tile = tileOf(builder, place);
  const between = tileOf(builder, onlyOne(builder, statements, 'between'));
  const sashing = sashingOf(builder, statements);
  const backing = backingOf(builder, statements);
  const batting = battingOf(builder, statements);
  const binding = bindingOf(builder, statements);
  const sleeve = sleeveOf(builder, statements);
  refuseOffPoint(builder, statements, setting);
  return {
    ...(setting ? { setting } : {}),
    ...(tile ? { tile } : {}),
    ...(between ? { between } : {}),
    ...edgesOf(builder, statements, own),
    ...(sashing ? { sashing } : {}),
    borders: bordersOf(builder, statements),
    ...(backing ? { backing } : {}),
    ...(batting ? { batting } : {}),
    ...(binding ? { binding } : {}),
    ...(sleeve ? { sleeve } : {}),
    ...quiltingOf(builder, statements),
  };
}

function contextOf({ rules, workings }: Pattern, { line }: Statement, report: Context['report']): Context {
  return { line, units: rules.units, seam: rules.seam, known: () => workings.known, libraryOf: workings.libraryOf, meaning: (name) => workings.names.get(name), report };
}

/** The statements of the quilt and of the size; what the size says with a word replaces all that the quilt says with it. */
function inForce(quilt: readonly Statement[], own: readonly Statement[]): readonly Statement[] {
  const replaced = new Set(own.map(({ node }) => groupOf(node.kind)));
  return [...quilt.filter(({ node }) => !replaced.has(groupOf(node.kind))), ...own];
}

/** The settings are one word: a quilt has one of them. */
function groupOf(kind: StatementKind): string {
  return (SETTINGS as readonly StatementKind[]).includes(kind) ? 'setting' : kind;
}
