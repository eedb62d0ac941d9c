/**
 * What was worked out for a patch by itself. The patches of a block stay the same objects as long as the block does, so an edit in
 * one block leaves what is known of all others.
 */
import { equals, ZERO } from '../exact/number.ts';
import { cuttingOf, type Cuttable, type Cutting, type CutRules } from './shape.ts';

/** `cuttingOf`, worked out once for the same patch and rules. */
export function rememberedCutting(patch: Cuttable, rules: CutRules): Cutting | undefined {
  const last = known.get(patch);
  if (last && isSame(last.rules, rules)) return last.cutting;
  const cutting = cuttingOf(patch, rules);
  known.set(patch, { rules, cutting });
  return cutting;
}

const known = new WeakMap<Cuttable, { readonly rules: CutRules; readonly cutting: Cutting | undefined }>();

function isSame(a: CutRules, b: CutRules): boolean {
  return equals(a.seam, b.seam) && equals(a.roundUp, b.roundUp) && equals(a.float ?? ZERO, b.float ?? ZERO) && a.printed === b.printed;
}

/** `work` of an object, done once for each. */
export function onceFor<T extends object, R>(work: (of: T) => R): (of: T) => R {
  const done = new WeakMap<T, { readonly result: R }>();
  return (of) => {
    const found = done.get(of) ?? { result: work(of) };
    done.set(of, found);
    return found.result;
  };
}
