/** The blocks of a booklet as atoms. */
import type { Block } from '../booklet/book/book.ts';
import type { Column } from './column.ts';
import { figureAtom, figuresAtoms, stepAtoms } from './figure-atoms.ts';
import type { Atom } from './flow.ts';
import { proseOf, runsOf, type Prose } from './prose.ts';
import { STYLES, type Style } from './styles.ts';
import { tableAtoms } from './table-atoms.ts';
import { cautionAtom, headingAtoms, listAtoms, paragraphAtoms } from './text-atoms.ts';

export function blockAtoms(column: Column, block: Block): readonly Atom[] {
  switch (block.kind) {
    case 'heading':
      return headingAtoms(column, runsOf(block.text), block.level === 2 ? STYLES.part : STYLES.section, block);
    case 'paragraph':
      return paragraphAtoms(column, runsOf(block.text), LOOKS[block.look ?? 'body']);
    case 'list':
      return listAtoms(column, block.ordered, block.items.map(runsOf));
    case 'table':
      return tableAtoms(column, block);
    case 'figure':
      return [figureAtom(column, block)];
    case 'figures':
      return figuresAtoms(column, block.figures);
    case 'step':
      return stepAtoms(column, block.figure, block.list);
    case 'caution':
      return [cautionAtom(column, block)];
    case 'prose':
      return proseOf(block.markdown).flatMap((part) => proseAtoms(column, part));
  }
}

const LOOKS: Readonly<Record<'title' | 'lead' | 'note' | 'body', Style>> = { title: STYLES.title, lead: STYLES.lead, note: STYLES.note, body: STYLES.body };

function proseAtoms(column: Column, part: Prose): readonly Atom[] {
  if (part.kind === 'list') return listAtoms(column, part.ordered, part.items);
  return part.kind === 'heading' ? headingAtoms(column, part.runs, STYLES.section) : paragraphAtoms(column, part.runs, STYLES.body);
}
