/** The rules, in the order of the handbook: reading, names, blocks, the quilt, what is expected. */
import { borderDoesNotFit } from './border-does-not-fit.ts';
import { cutOffRuler } from './cut-off-ruler.ts';
import { doesNotFit } from './does-not-fit.ts';
import { duplicateName } from './duplicate-name.ts';
import { expectFailed } from './expect-failed.ts';
import { gridSum } from './grid-sum.ts';
import { importCycle, importMissing } from './imports.ts';
import { notYet } from './not-yet.ts';
import { patchTooSmall } from './patch-too-small.ts';
import { emptyPatch, gap, outside, overlap } from './plane.ts';
import { rowLength } from './row-length.ts';
import type { Rule, Severity } from './rule.ts';
import { sizesDiffer } from './sizes-differ.ts';
import { stripTooWide } from './strip-too-wide.ts';
import { syntax } from './syntax.ts';
import { tooLarge } from './too-large.ts';
import { unclearNumber } from './unclear-number.ts';
import { unknownName } from './unknown-name.ts';
import { unusedBlock, unusedFabric } from './unused.ts';
import { wrongArgument } from './wrong-argument.ts';
import type { RuleId } from '../text/problem.ts';

export const RULES: readonly Rule[] = [
  syntax, unclearNumber, tooLarge, notYet,
  unknownName, duplicateName, unusedFabric, unusedBlock, wrongArgument, importMissing, importCycle,
  rowLength, gridSum, gap, overlap, outside, emptyPatch, doesNotFit,
  sizesDiffer, borderDoesNotFit, stripTooWide, cutOffRuler, patchTooSmall, expectFailed,
];

const BY_ID = new Map(RULES.map((rule) => [rule.id, rule]));

/** The rule of an id, or undefined for an id that no rule has (yet). */
export function ruleOf(id: string): Rule | undefined {
  return BY_ID.get(id as RuleId);
}

export function severityOf(id: RuleId): Severity {
  return BY_ID.get(id)?.severity ?? 'error';
}
