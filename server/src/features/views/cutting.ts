/** Cutting layouts to scale: every piece of cloth with what is cut from it, and what is bought. */
import { counted } from '../../booklet/words.ts';
import { cuttingLayouts } from '../../drawing/cutting-layouts.ts';
import type { Scene, SceneShape } from '../../drawing/scene.ts';
import type { Snapshot } from '../../snapshot.ts';
import { clothText } from '../measures.ts';
import { chosen } from '../picture.ts';
import { sideBySide } from './compose.ts';
import { EMPTY, type View, type ViewChoice } from './view.ts';

export function cuttingView(snapshot: Snapshot, choice: ViewChoice): View {
  const quilt = chosen(snapshot, choice);
  if (!quilt?.spec.setting) return { ...EMPTY, notes: ['There is nothing to cut yet: write a quilt.'] };
  const { plan } = quilt;
  const { rules: { units } } = snapshot.pattern;
  const cells = plan.fabrics.flatMap((fabric) =>
    cuttingLayouts(fabric, plan.pieces, units).map(({ count, scene }) => ({ scene: onPaper(scene), name: `${fabric.fabric.name}: ${count > 1 ? `${count} pieces of cloth like this` : 'one piece of cloth'}` })),
  );
  if (cells.length === 0) return { ...EMPTY, notes: ['There is nothing to cut.'] };
  const { scene, labels } = sideBySide('Cutting layouts', cells, { scale: 'true', columns: Math.min(cells.length, 2) });
  const rows = plan.fabrics.map(({ fabric, buy, counted: bought, strips }) => [fabric.name, counted(strips.reduce((total, strip) => total + strip.count, 0), 'strip'), bought ? counted(bought.count, bought.kind) : clothText(buy, snapshot.pattern)]);
  return { ...EMPTY, scene, labels, notes: ['Cloth lies unfolded, its selvages left and right. What is left over is grey.'], table: { caption: 'Cloth', heads: ['Fabric', 'Cut', 'Buy'], rows } };
}

/** White behind it, so that its words can be read on any background. */
function onPaper(scene: Scene): Scene {
  const paper: SceneShape = { kind: 'shape', points: [0, 0, scene.width, 0, scene.width, scene.height, 0, scene.height], fill: '#ffffff', fabric: '', source: -1 };
  return { ...scene, items: [paper, ...scene.items] };
}
