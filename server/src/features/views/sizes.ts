/** All sizes side by side, to one scale, and what each of them takes. */
import { printerFor } from '../../booklet/words.ts';
import { countPlaced } from '../../geometry/walk.ts';
import type { QuiltView, Snapshot } from '../../snapshot.ts';
import { allBought, boughtOf, clothText, widthByHeight } from '../measures.ts';
import { sideBySide } from './compose.ts';
import { EMPTY, type Table, type View, type ViewChoice } from './view.ts';

export function sizesView(snapshot: Snapshot, { colorway }: ViewChoice): View {
  const colours = snapshot.pattern.colorways.find(({ name }) => name === colorway);
  const quilts = (colours ? snapshot.inColorway(colours) : snapshot.quilts).filter(({ spec, scene }) => spec.setting && scene.width > 0);
  if (quilts.length === 0) return { ...EMPTY, notes: ['There is no quilt yet: write one.'] };
  const names = quilts.map(({ name }) => name ?? 'The quilt');
  const cells = quilts.map((quilt, index) => ({ scene: quilt.scene, name: `${names[index] ?? ''}, ${widthByHeight(quilt.layout, snapshot.pattern)}` }));
  const { scene, labels } = sideBySide('All sizes', cells, { scale: 'true', columns: Math.min(cells.length, 4) });
  return { ...EMPTY, scene, labels, notes: [quilts.length > 1 ? 'All sizes, drawn to one scale.' : 'The pattern names no other size.'], table: tableOf(snapshot, quilts, names) };
}

/** A column for each size; a row for each block that any has, and for each cloth. */
function tableOf(snapshot: Snapshot, quilts: readonly QuiltView[], names: readonly string[]): Table {
  const { pattern } = snapshot;
  const blocks = [...new Set(quilts.flatMap(({ layout }) => layout.blocks.map(({ name }) => name)))];
  const cloths = [...new Set(quilts.flatMap(({ plan }) => plan.fabrics.map(({ fabric }) => fabric.name)))];
  const { length } = printerFor(pattern.rules.units);
  const row = (head: string, say: (quilt: QuiltView) => string): readonly string[] => [head, ...quilts.map(say)];
  const rows = [
    row('Finished', ({ layout }) => widthByHeight(layout, pattern)),
    row('Patches', ({ layout }) => `${countPlaced(layout)}`),
    ...blocks.map((block) => row(`${block}: blocks`, ({ layout }) => `${layout.blocks.filter(({ name }) => name === block).reduce((total, { count }) => total + count, 0)}`)),
    ...cloths.map((cloth) => row(`${cloth}: to buy`, ({ plan }) => boughtIn(plan, cloth, snapshot))),
    row('Backing', ({ plan: { backing } }) => (backing ? clothText(backing.buy, pattern) : '–')),
    row('Binding', ({ plan: { binding } }) => (binding ? length(binding.length) : '–')),
    row('Cloth in all', ({ plan }) => allBought(plan, pattern)),
  ];
  return { caption: 'What each size takes', heads: ['', ...names], rows };
}

function boughtIn({ fabrics }: QuiltView['plan'], cloth: string, { pattern }: Snapshot): string {
  const found = fabrics.find(({ fabric }) => fabric.name === cloth);
  return found ? boughtOf(found, pattern) : '–';
}
