/**
 * Four mirrors: the block between two mirrors that are hinged at its upper left corner and stand open by a quarter, a sixth and an
 * eighth of a full turn, and the block repeated plainly, turned and mirrored, where second designs show.
 */
import { clippedTo } from '../../drawing/clip.ts';
import type { Matrix } from '../../drawing/matrix.ts';
import type { Scene, SceneShape, SceneUse } from '../../drawing/scene.ts';
import type { Snapshot } from '../../snapshot.ts';
import { after, asBlock, sideBySide, type Cell } from './compose.ts';
import { lookedAt, type LookedAt } from './looked-at.ts';
import { EMPTY, type View, type ViewChoice } from './view.ts';

export function mirrorsView(snapshot: Snapshot, choice: ViewChoice): View {
  const block = lookedAt(snapshot, choice);
  if (!block) return EMPTY;
  const cells = [...WEDGES.map((wedge) => mirrored(block, wedge)), ...repeats(block)];
  const { scene, labels } = sideBySide(`${block.name} in mirrors`, cells, { scale: 'fit', columns: 3 });
  return { ...EMPTY, scene, labels, notes: [`${block.name} between two mirrors, hinged at its upper left corner, and repeated. A second design shows where blocks meet.`], block: block.name };
}

interface Wedge {
  readonly times: number;
  readonly name: string;
}

const WEDGES: readonly Wedge[] = [
  { times: 4, name: 'Mirrors at a quarter: 4-fold' },
  { times: 6, name: 'Mirrors at a sixth: 6-fold' },
  { times: 8, name: 'Mirrors at an eighth: 8-fold' },
];

/** What the mirrors hold, and its images around the hinge: every second one is mirrored. */
function mirrored({ scene, name: block }: LookedAt, { times, name }: Wedge): Cell {
  const angle = (2 * Math.PI) / times;
  const side = Math.min(scene.width, scene.height);
  const region = times === 4 ? [0, 0, scene.width, 0, scene.width, scene.height, 0, scene.height] : [0, 0, side, 0, side * Math.cos(angle), side * Math.sin(angle)];
  const [width, height] = times === 4 ? [scene.width, scene.height] : [side, side];
  const matrices = Array.from({ length: times }, (_, k) => after([1, 0, 0, 1, width, height], k % 2 === 0 ? turned(k * angle) : mirroredBy((k + 1) * angle)));
  return { name, scene: used(asBlock(times === 4 ? scene : clipped(scene, region), block), matrices, { width: 2 * width, height: 2 * height }) };
}

function turned(angle: number): Matrix {
  return [Math.cos(angle), Math.sin(angle), -Math.sin(angle), Math.cos(angle), 0, 0];
}

/** About a line through the hinge at half the angle. */
function mirroredBy(angle: number): Matrix {
  return [Math.cos(angle), Math.sin(angle), Math.sin(angle), -Math.cos(angle), 0, 0];
}

function clipped(scene: Scene, region: readonly number[]): Scene {
  return {
    ...scene,
    items: scene.items.flatMap((item): SceneShape[] => {
      if (item.kind !== 'shape') return [];
      const { kind, fill, fabric, source, within, over } = item;
      const points = clippedTo(item, STAND, region);
      return points.length < 6 ? [] : [{ kind, fill, fabric, source, points, ...(within && { within }), ...(over !== undefined && { over }) }];
    }),
  };
}

const TIMES = 4;

function repeats({ scene, name }: LookedAt): readonly Cell[] {
  const { width, height } = scene;
  const block = asBlock(scene, name);
  const isSquare = Math.abs(width - height) < 1e-9;
  const half: Matrix = [-1, 0, 0, -1, width, height];
  const quarters: readonly Matrix[] = isSquare ? [STAND, [0, 1, -1, 0, width, 0], [0, -1, 1, 0, 0, height], half] : [STAND, half, half, STAND];
  const mirrors: readonly Matrix[] = [STAND, [-1, 0, 0, 1, width, 0], [1, 0, 0, -1, 0, height], half];
  const repeated = (ways: readonly Matrix[]): Scene => {
    const places = Array.from({ length: TIMES * TIMES }, (_, i) => ({ row: Math.floor(i / TIMES), column: i % TIMES }));
    const matrices = places.map(({ row, column }) => after([1, 0, 0, 1, column * width, row * height], ways[(row % 2) * 2 + (column % 2)] ?? STAND));
    return used(block, matrices, { width: TIMES * width, height: TIMES * height });
  };
  return [
    { name: 'Repeated', scene: repeated([STAND, STAND, STAND, STAND]) },
    { name: isSquare ? 'Repeated, each quarter turned round' : 'Repeated, every second one upside down', scene: repeated(quarters) },
    { name: 'Repeated, mirrored both ways', scene: repeated(mirrors) },
  ];
}

const STAND: Matrix = [1, 0, 0, 1, 0, 0];

function used(block: Scene, matrices: readonly Matrix[], size: { readonly width: number; readonly height: number }): Scene {
  return { ...block, ...size, items: matrices.map((matrix): SceneUse => ({ kind: 'use', block: 0, matrix, source: -1 })) };
}
