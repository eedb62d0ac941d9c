/** Ways to spoil a plan. Each answers the spoilt plan, or undefined where the plan has nothing of the kind. */
import { midpoint } from '../../server/src/exact/point.ts';
import type { Assembly, Seam, SewingPlan, Stretch } from '../../server/src/piecing/plan.ts';

export type Tamper = (plan: SewingPlan, seed: number) => SewingPlan | undefined;

export const TAMPERS: Readonly<Record<string, Tamper>> = {
  'a seam that ends too soon': (plan, seed) => changeOne(plan, seed, isPlain, (seam) => stretched(seam, ({ from, to, ...rest }) => ({ ...rest, from, to: midpoint(from, to) }))),
  'a seam somewhere else': (plan, seed) => changeOne(plan, seed, isPlain, (seam) => stretched(seam, (stretch) => ({ ...stretch, from: stretch.to, to: stretch.from }))),
  'a seam that names other patches': (plan, seed) => changeOne(plan, seed, isPlain, (seam) => stretched(seam, (stretch) => ({ ...stretch, left: stretch.left.map((patch) => patch + 1) }))),
  'a straight seam said to be set in': (plan, seed) => changeOne(plan, seed, isPlain, (seam) => ({ ...seam, kind: 'set_in' })),
  'a straight seam said to be curved and partial': (plan, seed) => changeOne(plan, seed, isPlain, (seam) => ({ ...seam, kind: 'partial' })),
  'a corner set in said to be straight': (plan, seed) => changeOne(plan, seed, (seam) => seam.kind === 'set_in', (seam) => ({ ...seam, kind: 'straight' })),
  'corners set in and not named': (plan, seed) => changeOne(plan, seed, (seam) => seam.kind === 'set_in', (seam) => ({ ...seam, corners: [] })),
  'a partial seam said to be straight': (plan, seed) => changeOne(plan, seed, (seam) => seam.kind === 'partial', (seam) => ({ ...seam, kind: 'straight' })),
  'a partial seam that is never finished': (plan) => withoutFinish(plan),
  'a partial seam sewn to its end': (plan, seed) => changeOne(plan, seed, (seam) => seam.kind === 'partial', sewnThrough),
  'a patch taken twice': (plan) => changeLeaves(plan, (patch) => (patch === 0 ? 1 : patch)),
  'two patches changed over': (plan) => changedOver(plan),
  'parts joined in one go': (plan) => flattened(plan),
  'another number of corners set in': (plan) => ({ ...plan, setIn: plan.setIn + 1 }),
  'another number of partial seams': (plan) => ({ ...plan, partial: plan.partial + 1 }),
  'a seam left out of the list': (plan) => ({ ...plan, seams: plan.seams.slice(1) }),
};

function isPlain(seam: Seam): boolean {
  return seam.kind === 'straight';
}

function stretched(seam: Seam, change: (stretch: Stretch) => Stretch): Seam {
  return { ...seam, stretches: seam.stretches.map(change) };
}

/** As if it ran on to the end of the edge: the stop is forgotten. */
function sewnThrough(seam: Seam): Seam {
  const { stop, ...rest } = seam;
  return stop ? rest : seam;
}

function changeOne(plan: SewingPlan, seed: number, which: (seam: Seam) => boolean, change: (seam: Seam) => Seam): SewingPlan | undefined {
  const some = plan.seams.filter(which);
  const chosen = some[seed % Math.max(1, some.length)];
  return chosen && rebuilt(plan, (seam) => (seam === chosen ? change(seam) : seam));
}

function rebuilt(plan: SewingPlan, change: (seam: Seam) => Seam, leaf: (patch: number) => number = (patch) => patch): SewingPlan {
  const known = new Map(plan.seams.map((seam) => [seam, change(seam)]));
  const of = (seam: Seam): Seam => known.get(seam) ?? seam;
  const walk = (node: Assembly): Assembly => {
    switch (node.kind) {
      case 'patch':
        return { kind: 'patch', patch: leaf(node.patch) };
      case 'join':
        return { kind: 'join', parts: node.parts.map(walk), seams: node.seams.map(of) };
      case 'finish':
        return { kind: 'finish', part: walk(node.part), seam: of(node.seam) };
      case 'flip':
        return { ...node, part: walk(node.part), seam: of(node.seam) };
    }
  };
  return { ...plan, assembly: walk(plan.assembly), seams: plan.seams.map(of) };
}

function changeLeaves(plan: SewingPlan, leaf: (patch: number) => number): SewingPlan {
  return rebuilt(plan, (seam) => seam, leaf);
}

/** The first patch and one that is sewn into another part. */
function changedOver(plan: SewingPlan): SewingPlan | undefined {
  const joins: (readonly number[])[] = [];
  const walk = (node: Assembly): void => {
    if (node.kind === 'finish' || node.kind === 'flip') walk(node.part);
    if (node.kind !== 'join') return;
    joins.push(node.parts.flatMap((part) => (part.kind === 'patch' ? [part.patch] : [])));
    node.parts.forEach(walk);
  };
  walk(plan.assembly);
  const other = joins.find((join) => join.length > 0 && !join.includes(0))?.[0];
  return other === undefined ? undefined : changeLeaves(plan, (patch) => (patch === 0 ? other : patch === other ? 0 : patch));
}

function withoutFinish(plan: SewingPlan): SewingPlan | undefined {
  const { assembly } = plan;
  return assembly.kind === 'finish' ? { ...plan, assembly: assembly.part, seams: plan.seams.slice(0, -1) } : undefined;
}

/** The first part's own parts and seams are moved up, behind the others: sewn too late. */
function flattened(plan: SewingPlan): SewingPlan | undefined {
  const { assembly } = plan;
  if (assembly.kind !== 'join') return undefined;
  const [first, ...rest] = assembly.parts;
  if (first?.kind !== 'join' || rest.length === 0) return undefined;
  const [inner, ...others] = first.parts;
  if (!inner || others.length === 0) return undefined;
  const seams = [...assembly.seams, ...first.seams];
  const order = [...plan.seams.filter((seam) => !seams.includes(seam)), ...seams].map((seam, number) => ({ ...seam, number }));
  const again = new Map(seams.map((seam, i) => [seam, order[order.length - seams.length + i] ?? seam]));
  const joined: Assembly = { kind: 'join', parts: [inner, ...rest, ...others], seams: seams.map((seam) => again.get(seam) ?? seam) };
  return { ...plan, assembly: joined, seams: order };
}
