/**
 * The quilt in the plane: setting, sashing, setting triangles and borders. Sizes and counts are known before anything is laid, so a
 * quilt past the limits is refused at once. Blocks are laid out once and placed by exact transforms.
 */
import type { Finding } from '../model/finding.ts';
import type { QuiltSpec, Rules } from '../model/pattern.ts';
import { coveringBed } from './bed-count.ts';
import { blockNames } from './block-names.ts';
import type { PlannedBorders } from './borders.ts';
import { planBorders } from './borders.ts';
import { outerRoom } from './border-plan.ts';
import { MOST_PATCHES, readable } from './count.ts';
import { NO_PIECES, gather } from './fit.ts';
import type { Pieces } from './fit.ts';
import type { BlockLayout, BorderLayout, Placement, QuiltLayout } from './layout.ts';
import type { Room } from './move.ts';
import { measureSetting } from './measure.ts';
import type { Measured } from './setting.ts';

export function layoutQuilt(given: QuiltSpec, rules: Rules): QuiltLayout {
  const { spec, findings: uncounted } = coveringBed(given, rules);
  const setting = measureSetting({ spec, rules });
  const planned = planBorders(spec, setting, rules);
  const known = [...uncounted, ...setting.findings, ...planned.borders.flatMap((border) => border.findings), ...cornerFindings(spec)];
  const limit = limitFindings(setting, planned);
  const centre: Room = { x: planned.left, y: planned.top, width: setting.width, height: setting.height };
  const inside = limit.length > 0 ? NO_PIECES : setting.lay(centre.x, centre.y);
  const around = limit.length > 0 ? { pieces: NO_PIECES, borders: [] } : layBorders(planned, centre);
  const pieces = gather([inside, around.pieces]);
  return {
    spec,
    width: planned.width,
    height: planned.height,
    placements: pieces.placements,
    patches: pieces.patches,
    borders: around.borders,
    centre: { width: setting.width, height: setting.height },
    blocks: countBlocks(pieces.placements),
    findings: [...new Set([...limit, ...known, ...pieces.findings])],
  };
}

function limitFindings(setting: Measured, planned: PlannedBorders): Finding[] {
  const count = planned.borders.reduce((total, border) => total + border.patches, setting.patches);
  if (count <= MOST_PATCHES) return [];
  const worst = planned.borders.findIndex((border) => border.patches > MOST_PATCHES);
  const place = planned.borders[worst]?.place ?? setting.place;
  return [{ rule: 'too-large', place, found: `${readable(count)} patches`, limit: `${readable(MOST_PATCHES)} patches` }];
}

/** A border is sewn to straight edges from corner to corner. */
function cornerFindings({ borders, cornerFilling, setting }: QuiltSpec): Finding[] {
  const [first] = borders;
  if (!first || setting?.kind !== 'on_point' || cornerFilling?.filling !== 'none') return [];
  const problem = 'a border is sewn around corners, and `corners none` leaves them out';
  return [{ rule: 'wrong-argument', place: first.place, problem }];
}

function layBorders({ borders }: PlannedBorders, centre: Room): { readonly pieces: Pieces; readonly borders: readonly BorderLayout[] } {
  let inner = centre;
  const laid = borders.map((border) => {
    const result = border.lay(inner);
    inner = outerRoom(inner, border.widths);
    return result;
  });
  return { pieces: gather(laid.map((each) => each.pieces)), borders: laid.flatMap((each) => (each.layout ? [each.layout] : [])) };
}

/** Distinct blocks in the order they are placed, which is that of the text: the tile first, borders last. */
function countBlocks(placements: readonly Placement[]): QuiltLayout['blocks'] {
  const counts = new Map<string, { readonly layout: BlockLayout; count: number }>();
  for (const { block } of placements) {
    const known = counts.get(block.key);
    if (known) known.count += 1;
    else counts.set(block.key, { layout: block, count: 1 });
  }
  const blocks = [...counts.values()];
  const names = blockNames(blocks.map(({ layout }) => layout));
  return blocks.map((block, i) => ({ ...block, name: names[i] ?? block.layout.instance.name }));
}
