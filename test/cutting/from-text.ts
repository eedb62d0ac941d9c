/** From a pattern's text to its cutting plans. The text must be without fault in the plane. */
import { readFileSync } from 'node:fs';
import { parse } from '../../server/src/syntax/parse.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { buildPattern, type ModelHost } from '../../server/src/model/build.ts';
import { specifyQuilt } from '../../server/src/model/quilt.ts';
import type { Pattern } from '../../server/src/model/pattern.ts';
import { layoutQuilt } from '../../server/src/geometry/quilt.ts';
import { planCutting } from '../../server/src/cutting/build.ts';
import type { CuttingPlan } from '../../server/src/cutting/plan.ts';
import { faultsOf } from '../../server/src/cutting/verify.ts';
import type { BookletQuilt } from '../../server/src/booklet/source.ts';

export interface Made {
  readonly pattern: Pattern;
  readonly quilts: readonly BookletQuilt[];
  /** Of the first size. */
  readonly plan: CuttingPlan;
}

const host: ModelHost = { library: [], import: () => 'missing' };

/** Imports relative to a folder, and a block every sample may use. */
export function hostOf(folder: URL): ModelHost {
  return { library: [parse(documentOf('library', GOOSE))], import: (path) => parse(documentOf(path, readFileSync(new URL(path, folder), 'utf8'))) };
}

const GOOSE = `block goose(body, sky) 2 by 1 {
  box 2 by 1
  patch body 0,1 1,0 2,1
  patch sky 0,0 1,0 0,1
  patch sky 1,0 2,0 2,1
}
`;

/** The best plan; it and the one found at once have passed the verifier. */
export function made(text: string, from: ModelHost = host): Made {
  const pattern = buildPattern(parse(documentOf('pattern.quilt', text)), from);
  const sizes = pattern.sizes.length > 0 ? pattern.sizes : [undefined];
  const quilts = sizes.map((size): BookletQuilt => {
    const layout = layoutQuilt(specifyQuilt(pattern, size, undefined), pattern.rules);
    const findings = [...layout.findings, ...layout.spec.findings, ...layout.blocks.flatMap(({ layout: block }) => [...block.findings, ...block.instance.findings])];
    if (findings.length > 0) throw new Error(findings.map(({ rule, place }) => `${rule}: ${place.line.text}`).join('\n'));
    const plan = planCutting(layout, pattern, { effort: 'best' });
    const faults = [...faultsOf(plan, pattern.rules), ...faultsOf(planCutting(layout, pattern), pattern.rules)];
    if (faults.length > 0) throw new Error(faults.join('\n'));
    return { name: size?.name ?? null, layout, plan };
  });
  const [first] = quilts;
  if (!first) throw new Error('no quilt');
  return { pattern, quilts, plan: first.plan };
}

/** A quilt of one block, cut as printed lists have it: triangles first, then sewn. */
export function ofBlock(block: string, name: string, fabrics: readonly string[]): Made {
  return made(`pattern "One" {\n  method half_squares singles\n  method geese singles\n}\n${fabrics.map((fabric) => `fabric ${fabric} #808080 "${fabric}"`).join('\n')}\n${block}\nquilt {\n  straight 1 by 1\n  place { ${name} }\n}\n`);
}
