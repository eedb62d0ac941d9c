/** Lines of figures over what they are about: finished size, patches and cloth over the quilt and its sizes, size and use over blocks. */
import type { QuiltView, Snapshot } from '../snapshot.ts';
import { placeIn, type Place } from '../text/place.ts';
import { blocksOf } from './blocks.ts';
import { allBought, perSize, sideBySide, widthByHeight } from './measures.ts';

export interface Lens {
  readonly place: Place;
  readonly text: string;
  /** A lens that opens the picture has no figures. */
  readonly opens?: 'preview';
}

/** In the order of the text, for each statement. */
export function lensesIn(snapshot: Snapshot): readonly Lens[] {
  const { pattern, tree } = snapshot;
  const quilt = pattern.quilt && placeIn(pattern.quilt.line, pattern.quilt.node.word);
  const shown = snapshot.shown;
  const whole = quilt ? [...(shown ? [{ place: quilt, text: figuresOf(snapshot, shown) }] : []), { place: quilt, text: 'Open preview', opens: 'preview' as const }] : [];
  const sizes = snapshot.quilts.flatMap((each): readonly Lens[] => (each.size ? [{ place: each.size.place, text: figuresOf(snapshot, each) }] : []));
  const first = tree.statements.find(({ node }) => node.kind === 'block');
  const library = quilt || !first ? [] : [{ place: placeIn(first.line, first.node.word), text: 'Open preview', opens: 'preview' as const }];
  return [...library, ...blockLenses(snapshot), ...whole, ...sizes];
}

/** `40" by 52", 816 patches, 3 1/8 yd`. */
export function figuresOf(snapshot: Snapshot, { layout, plan }: QuiltView): string {
  const patches = layout.patches.length + layout.blocks.reduce((total, block) => total + block.count * block.layout.patches.length, 0);
  return [widthByHeight(layout, snapshot.pattern), `${patches} ${patches === 1 ? 'patch' : 'patches'}`, allBought(plan, snapshot.pattern)].join(', ');
}

function blockLenses(snapshot: Snapshot): readonly Lens[] {
  return blocksOf(snapshot).map(({ definition, layout }) => {
    const times = perSize(snapshot, (quilt) => `${quilt.layout.blocks.filter((each) => each.layout.instance.definition.statement === definition.statement).reduce((total, each) => total + each.count, 0)}`);
    const parts = [
      layout.instance.size ? sideBySide(layout, snapshot.pattern) : 'no size of its own',
      `${layout.patches.length} ${layout.patches.length === 1 ? 'patch' : 'patches'}`,
      times === undefined || times === '0' ? '' : `in the quilt: ${times}`,
    ];
    return { place: definition.place, text: parts.filter((part) => part !== '').join(', ') };
  });
}
