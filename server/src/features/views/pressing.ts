/** Pressing arrows: the block under the cursor with an arrow on every seam, to the side it is pressed to; two where it is pressed open. */
import { counted } from '../../booklet/words.ts';
import { explodedBlock } from '../../drawing/exploded.ts';
import type { BlockLayout } from '../../geometry/layout.ts';
import { pressingOf, type Pressing } from '../../piecing/pressing.ts';
import { sewingOfBlock } from '../../piecing/sewing.ts';
import { unitsOf } from '../../piecing/units.ts';
import type { Snapshot } from '../../snapshot.ts';
import { chosen } from '../picture.ts';
import { lookedAt } from './looked-at.ts';
import { EMPTY, type View, type ViewChoice } from './view.ts';

export function pressingView(snapshot: Snapshot, choice: ViewChoice): View {
  const block = lookedAt(snapshot, choice);
  if (!block) return EMPTY;
  const { name, layout, scene } = block;
  const { assembled } = sewingOfBlock(layout);
  if (!assembled) return { ...EMPTY, scene, notes: [`No order of sewing was worked out for ${name}.`], block: name };
  const pressing = pressingFor(snapshot, choice, layout);
  const sides = pressing?.blocks.find((each) => each.layout === layout)?.sides ?? [];
  const drawn = explodedBlock(layout, { title: `${name}: which way to press`, part: assembled.plan.assembly, sides, isReady: () => false, apart: 0 });
  const open = sides.filter((side) => side.length > 0 && side.every((each) => each === 'open')).length;
  return { ...EMPTY, scene: drawn, notes: [seamNote(name, sides.length, open), ...(block.count > 0 && pressing ? [nestNote(pressing)] : [])], block: name };
}

function seamNote(name: string, seams: number, open: number): string {
  return `${name}: ${counted(seams, 'seam')}${open > 0 ? `, ${open} pressed open` : ''}. An arrow shows the side that a seam is pressed to.`;
}

function nestNote({ nested, conflicts }: Pressing): string {
  return `In the quilt ${counted(nested, 'crossing')} nest${nested === 1 ? 's' : ''}; ${conflicts === 0 ? 'none fails to' : `${conflicts} cannot`}.`;
}

/** Of the quilt where the block stands in it, else of the block by itself. */
function pressingFor(snapshot: Snapshot, choice: ViewChoice, layout: BlockLayout): Pressing | undefined {
  const quilt = chosen(snapshot, choice);
  if (quilt?.layout.blocks.some((each) => each.layout === layout)) return quilt.sewing.pressing;
  const { assembled } = sewingOfBlock(layout);
  if (!assembled) return undefined;
  const blocks = [{ layout, count: 1, assembled }];
  const { methods } = snapshot.pattern.rules;
  return pressingOf({ blocks, setting: undefined, units: unitsOf(blocks, methods), methods });
}
