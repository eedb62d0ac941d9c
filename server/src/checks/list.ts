/** The rules, in the order of the handbook: reading, names, blocks, the quilt, what is expected. */
import type { RuleId } from '../text/problem.ts';
import { biasOutside } from './bias-outside.ts';
import { borderDoesNotFit } from './border-does-not-fit.ts';
import { bulkyPoint } from './bulky-point.ts';
import { cannotNest } from './cannot-nest.ts';
import { cutOffRuler } from './cut-off-ruler.ts';
import { directionalTurned } from './directional-turned.ts';
import { doesNotFit } from './does-not-fit.ts';
import { duplicateName } from './duplicate-name.ts';
import { emptyPatch } from './empty-patch.ts';
import { expectFailed } from './expect-failed.ts';
import { fabricShort } from './fabric-short.ts';
import { gap } from './gap.ts';
import { gridSum } from './grid-sum.ts';
import { importCycle } from './import-cycle.ts';
import { importMissing } from './import-missing.ts';
import { lowContrast } from './low-contrast.ts';
import { noFoundation } from './no-foundation.ts';
import { notYet } from './not-yet.ts';
import { outside } from './outside.ts';
import { overlap } from './overlap.ts';
import { partialSeam } from './partial-seam.ts';
import { patchTooSmall } from './patch-too-small.ts';
import { pointAtEdge } from './point-at-edge.ts';
import { rowLength } from './row-length.ts';
import type { Rule, Severity } from './rule.ts';
import { savesFabric } from './saves-fabric.ts';
import { setInSeam } from './set-in-seam.ts';
import { sizesDiffer } from './sizes-differ.ts';
import { stripTooWide } from './strip-too-wide.ts';
import { syntax } from './syntax.ts';
import { tooLarge } from './too-large.ts';
import { unclearNumber } from './unclear-number.ts';
import { unevenDrop } from './uneven-drop.ts';
import { unknownName } from './unknown-name.ts';
import { unknownPlaceholder } from './unknown-placeholder.ts';
import { unusedBlock } from './unused-block.ts';
import { unusedFabric } from './unused-fabric.ts';
import { wrongArgument } from './wrong-argument.ts';

export const RULES: readonly Rule[] = [
  syntax, unclearNumber, tooLarge, notYet,
  unknownName, duplicateName, unusedFabric, unusedBlock, wrongArgument, importMissing, importCycle,
  rowLength, gridSum, gap, overlap, outside, emptyPatch, doesNotFit,
  sizesDiffer, borderDoesNotFit, stripTooWide, fabricShort, savesFabric, cutOffRuler, patchTooSmall, setInSeam, partialSeam, noFoundation, bulkyPoint, cannotNest, pointAtEdge, biasOutside, directionalTurned, lowContrast, unevenDrop,
  expectFailed, unknownPlaceholder,
];

const BY_ID = new Map(RULES.map((rule) => [rule.id, rule]));

/** The rule of an id, or undefined for an id that no rule has (yet). */
export function ruleOf(id: string): Rule | undefined {
  return BY_ID.get(id as RuleId);
}

export function severityOf(id: RuleId): Severity {
  return BY_ID.get(id)?.severity ?? 'error';
}
