/**
 * Where no straight seam parts a region: the seams with the fewest pivots that do. Such a seam goes from the outside along runs to
 * corners that are set in, turns there, and comes out elsewhere. All that have so few and meet nowhere inside come out together.
 */
import { vertexOf } from './map.ts';
import type { Run } from './order.ts';
import { endOf, startOf } from './region.ts';
import type { Undoing } from './region.ts';

interface Step {
  readonly run: Run;
  /** The vertex it comes from. */
  readonly from: number;
}

/** A way through the region: its runs in order, and the vertices between them. */
interface Way {
  readonly runs: readonly Run[];
  readonly pivots: readonly number[];
}

/** The runs of such seams; none when there are none. */
export function foldedSeams(state: Undoing, runs: readonly Run[]): readonly Run[] {
  const ways = shortestWays(state, runs);
  const taken = new Set<number>();
  return ways.flatMap((way) => {
    const inside = [...way.pivots, ...way.runs.flatMap((run) => run.inner)];
    if (inside.some((vertex) => taken.has(vertex))) return [];
    for (const vertex of inside) taken.add(vertex);
    return way.runs;
  });
}

/** All ways with the fewest pivots that are found level by level from the outside. */
function shortestWays({ map, edge }: Undoing, runs: readonly Run[]): readonly Way[] {
  const ends = (run: Run): [number, number] => [vertexOf(map, startOf(run)), vertexOf(map, endOf(run))];
  const at = new Map<number, Run[]>();
  for (const run of runs) for (const vertex of ends(run)) at.set(vertex, [...(at.get(vertex) ?? []), run]);
  const reached = new Map<number, Step>();
  const found = new Map<Run, Way>();
  let level = [...at.keys()].filter((vertex) => edge[vertex] === 1);
  while (level.length > 0 && found.size === 0) {
    const deeper: number[] = [];
    for (const from of level) {
      for (const run of at.get(from) ?? []) {
        const [a, b] = ends(run);
        const to = a === from ? b : a;
        if (edge[to] === 0 && !reached.has(to)) {
          reached.set(to, { run, from });
          deeper.push(to);
        } else if (!found.has(run)) {
          const way = closing(reached, { run, from, to });
          if (way) found.set(run, way);
        }
      }
    }
    level = deeper;
  }
  const fewest = [...found.values()].reduce((least, { pivots }) => (pivots.length < least ? pivots.length : least), found.size === 0 ? 0 : runs.length);
  return [...found.values()].filter(({ pivots }) => pivots.length === fewest);
}

/** The way out through a run whose two ends were reached by ways that share nothing but the outside. */
function closing(reached: ReadonlyMap<number, Step>, step: Step & { readonly to: number }): Way | undefined {
  const [one, two] = [wayTo(step.from, reached), wayTo(step.to, reached)];
  if (one.runs.includes(step.run) || two.runs.includes(step.run) || one.runs.some((run) => two.runs.includes(run))) return undefined;
  if (one.root === two.root) return undefined;
  return { runs: [...one.runs, step.run, ...two.runs.reverse()], pivots: [...one.vertices, ...two.vertices] };
}

/** The runs from the outside to a vertex, the vertices inside, and where they begin. */
function wayTo(vertex: number, reached: ReadonlyMap<number, Step>): { readonly runs: Run[]; readonly vertices: readonly number[]; readonly root: number } {
  const runs: Run[] = [];
  const vertices: number[] = [];
  let root = vertex;
  for (let step = reached.get(root); step; step = reached.get(root)) {
    runs.push(step.run);
    vertices.push(root);
    root = step.from;
  }
  return { runs: runs.reverse(), vertices, root };
}
