/** Real patterns from text to SVG and back: every colour has the area that the exact layout gives it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { svgOf } from '../../server/src/drawing/svg.ts';
import { hit } from '../../server/src/drawing/outline.ts';
import { toNumber } from '../../server/src/exact/number.ts';
import { determinant } from '../../server/src/exact/transform.ts';
import type { Patch, QuiltLayout } from '../../server/src/geometry/layout.ts';
import { patchesIn } from '../../server/src/geometry/walk.ts';
import { diskHost } from '../../server/src/disk/host.ts';
import { patternsIn } from '../../server/src/disk/sources.ts';
import { snapshotOf } from '../../server/src/snapshot.ts';
import { documentOf } from '../../server/src/text/document.ts';
import { areasByFill } from './read-svg.ts';

const FABRICS = 'fabric ink #22345c "Ink"\nfabric sand #eadfc8 "Sand"\nfabric rust #a4502e "Rust"\n';

const PATTERNS: Readonly<Record<string, string>> = {
  'on point with edges and mitres': `block Star 7 1/2" {
  grid 2 1 2 by 2 1 2
  sand/ink   sand-ink   ink\\sand
  sand|ink   sand       ink|sand
  sand\\ink   ink-sand   ink/sand
}
quilt {
  on_point 3 by 4
  place   { Star }
  between { rust }
  edges sand
  border 1" rust
  border cut 6 1/2" ink corners mitred
}`,
  'arcs, turned and mirrored': `block Fan 6" {
  box 7 by 7
  patch ink 0,0 5,0 arc 5 0,5
  patch sand 5,0 7,0 7,7 0,7 0,5 arc -5
}
block Four 6" {
  Fan     Fan@90
  Fan@270 Fan@180@mirror
}
quilt {
  straight 3 by 2
  place { Four Fan@flip }
}`,
  'flipped corners in nested blocks': `block Snow(a = sand) {
  a
  corner rust (1/3) top_left
}
block Pair 6" {
  Snow@90   sand
  sand      Snow(rust)
}
quilt {
  straight 2 by 2
  place { Pair }
  sashing 1" ink cornerstones rust outer
}`,
  'built from the centre': `block Cabin(light = sand, dark = ink) 6" {
  centre rust 2"
  round 1" light light dark dark
  round 1" light light dark dark
}
quilt {
  straight 4 by 4
  place mirrored 4 { Cabin Cabin@90
    Cabin@180 Cabin }
  border 2" rust corners squares ink
}`,
  'blocks that the edge cuts': `block Snow 6" {
  sand ink
  rust sand/ink
}
block Stone {
  ink rust
  rust sand
}
quilt {
  on_point 3 by 2
  place { Snow }
  edges Snow@90 corners Snow
  sashing 1" sand cornerstones Stone
}`,
};

const samples = join(import.meta.dirname, '../../samples');
const texts = {
  ...Object.fromEntries(Object.entries(PATTERNS).map(([name, text]) => [name, `${FABRICS}\n${text}\n`])),
  ...Object.fromEntries(patternsIn(samples).map((path) => [path.slice(samples.length + 1), readFileSync(path, 'utf8')])),
};

describe.each(Object.entries(texts))('%s', (name, text) => {
  const snapshot = snapshotOf(documentOf(join(samples, name), text), 1, diskHost([samples]));
  const quilts = [...snapshot.quilts, ...snapshot.pattern.colorways.flatMap((colorway) => snapshot.inColorway(colorway))];
  it('is a quilt, or blocks for one', () => {
    expect(snapshot.hasErrors).toBe(false);
    expect(quilts.length + [...snapshot.pattern.blocks.values()].filter(({ origin }) => origin === 'file').length).toBeGreaterThan(0);
  });
  it.each(quilts.map((quilt) => [quilt.name ?? 'the quilt', quilt] as const))('%s keeps its areas', (__, { layout, scene }) => {
    const expected = layoutAreas(layout);
    const drawn = areasByFill(svgOf(scene));
    expect(Object.keys(drawn).sort()).toEqual(Object.keys(expected).sort());
    for (const [fill, area] of Object.entries(expected)) expect((drawn[fill] ?? 0) / area).toBeCloseTo(1, 4);
  });
  it.each(quilts.map((quilt) => [quilt.name ?? 'the quilt', quilt] as const))('%s has a text for every point', (__, { scene }) => {
    for (let step = 1; step < 400; step++) {
      const [x, y] = [scene.width * ((step * 0.6180339887) % 1), scene.height * (step / 400)];
      expect(hit(scene, x, y).length, `${x} ${y}`).toBeGreaterThan(0);
    }
  });
});

it('half and quarter fans at the edge make whole ones', () => {
  const fan = 'block Fan 6" {\n  box 7 by 7\n  patch ink 0,0 5,0 arc 5 0,5\n  patch sand 5,0 7,0 7,7 0,7 0,5 arc -5\n}\n';
  const snapshot = snapshotOf(documentOf('fans.quilt', `${FABRICS}${fan}quilt {\n  on_point 2 by 2\n  place { Fan Fan@180 }\n  edges Fan\n}\n`), 1, diskHost([samples]));
  const [quilt] = snapshot.quilts;
  const drawn = quilt ? areasByFill(svgOf(quilt.scene)) : {};
  // 4 blocks, 1 between, 4 halves, of which two make one, and 4 quarters.
  const one = (Math.PI / 4) * ((5 * 6) / 7) ** 2;
  expect((drawn['#22345c'] ?? 0) / one).toBeCloseTo(8, 2);
});

function layoutAreas(layout: QuiltLayout): Record<string, number> {
  const areas: Record<string, number> = {};
  const count = (patch: Patch, scale: number): void => {
    areas[patch.fabric.colour] = (areas[patch.fabric.colour] ?? 0) + areaOf(patch) * scale;
  };
  for (const placement of layout.placements) {
    if (placement.clip) for (const { patch, outline } of patchesIn(placement)) count({ ...patch, outline }, 1);
    else for (const patch of placement.block.patches) count(patch, Math.abs(toNumber(determinant(placement.transform))));
  }
  for (const patch of layout.patches) count(patch, 1);
  return areas;
}

/** Of the corners' polygon, and the circular segments its arcs add or take. */
function areaOf({ outline, arcs }: Patch): number {
  const corners = outline.map(({ x, y }) => [toNumber(x), toNumber(y)] as const);
  return corners.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = corners[(index + 1) % corners.length] ?? [0, 0];
    const arc = arcs?.[index];
    const radius = arc ? toNumber(arc) : 0;
    const angle = radius === 0 ? 0 : 2 * Math.asin(Math.hypot(nextX - x, nextY - y) / 2 / Math.abs(radius));
    return sum + (x * nextY - nextX * y) / 2 + (Math.sign(radius) * radius * radius * (angle - Math.sin(angle))) / 2;
  }, 0);
}
