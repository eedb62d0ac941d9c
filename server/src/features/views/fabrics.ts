/** The fabric sheet: one block under every exchange of its fabrics, each with how well it reads; one of them becomes a colourway. */
import { counted } from '../../booklet/words.ts';
import type { Scene, SceneShape } from '../../drawing/scene.ts';
import type { Fabric } from '../../model/pattern.ts';
import { ofKind } from '../../model/statements.ts';
import type { Snapshot } from '../../snapshot.ts';
import { behind, freeName } from '../refactor/edit.ts';
import { sideBySide } from './compose.ts';
import { clothsIn, exchangesOf, MOST_FABRICS, type Exchange, type Exchanges } from './exchanges.ts';
import { lookedAt, type LookedAt } from './looked-at.ts';
import { EMPTY, type Tile, type View, type ViewChoice, type Writing } from './view.ts';

export function fabricsView(snapshot: Snapshot, choice: ViewChoice): View {
  const block = lookedAt(snapshot, choice);
  if (!block) return EMPTY;
  const exchanges = exchangesOf(block.layout);
  const { scene, boxes, labels } = sideBySide(`${block.name} in other fabrics`, exchanges.shown.map((exchange) => ({ scene: recoloured(block.scene, exchange.inPlace), name: figureOf(exchange) })), { scale: 'fit' });
  const tiles = exchanges.shown.map((exchange, index): Tile => {
    const isSet = exchange.inPlace.size === 0;
    return { id: exchange.id, name: wordsOf(exchange), detail: figureOf(exchange), ...(boxes[index] ?? NOWHERE), isSet, action: isSet ? undefined : 'Write a colourway with these fabrics' };
  });
  return { ...EMPTY, scene, labels, tiles, notes: notesOf(block, exchanges), block: block.name };
}

/** A colourway with the fabrics of one tile, and its name; undefined when there is no such tile. */
export function fabricWriting(snapshot: Snapshot, choice: ViewChoice, id: string): (Writing & { readonly colorway: string }) | undefined {
  const { pattern, tree } = snapshot;
  const block = lookedAt(snapshot, choice);
  const exchange = block && exchangesOf(block.layout).shown.find((each) => each.id === id);
  const after = ofKind(tree.statements, 'colorway').at(-1) ?? ofKind(tree.statements, 'size').at(-1) ?? ofKind(tree.statements, 'quilt').at(-1) ?? tree.statements.at(-1);
  if (!exchange || !after || exchange.inPlace.size === 0) return undefined;
  const colorway = freeName('exchange', (name) => pattern.colorways.some((each) => each.name === name));
  const width = Math.max(...[...exchange.inPlace.keys()].map((name) => name.length));
  const rows = [...exchange.inPlace].map(([name, { colour, label }]) => `  ${name.padEnd(width)} ${colour}${label === '' ? '' : ` "${quoted(label)}"`}`);
  const { place, lead } = behind(snapshot, after);
  return { title: `Add a colourway: ${wordsOf(exchange)}`, colorway, edits: [{ place, text: lead + ['', `colorway ${colorway} {`, ...rows, '}'].join(lead) }] };
}

const NOWHERE = { x: 0, y: 0, width: 0, height: 0 };

function recoloured(scene: Scene, inPlace: ReadonlyMap<string, Fabric>): Scene {
  return { ...scene, items: scene.items.map((item) => (item.kind === 'shape' ? { ...item, fill: colourIn(item, inPlace) } : item)) };
}

function colourIn({ fabric, fill }: SceneShape, inPlace: ReadonlyMap<string, Fabric>): string {
  return inPlace.get(fabric)?.colour ?? fill;
}

/** `sand in place of ink, ink in place of sand`. */
function wordsOf({ inPlace }: Exchange): string {
  return inPlace.size === 0 ? 'The fabrics as they are' : [...inPlace].map(([name, other]) => `${other.name} in place of ${name}`).join(', ');
}

/** `reads 54`, and what is lost of its seams. */
function figureOf({ readability: { difference, length, lost } }: Exchange): string {
  if (difference === undefined) return '';
  return `reads ${Math.round(difference)}${lost > 0 ? `, ${Math.max(1, Math.round((lost / length) * 100))}% lost` : ''}`;
}

function notesOf({ name, layout }: LookedAt, { shown, different, pairsOnly }: Exchanges): readonly string[] {
  const count = clothsIn(layout).length;
  if (count === 0) return [`${name} takes the fabrics it is given: there is nothing to exchange.`];
  const all = count < 2 ? `${name} has one fabric: there is nothing to exchange.` : `${name} with its ${count} fabrics exchanged: ${shown.length < different ? `the ${shown.length} that read best of ${different}` : counted(different, 'way')}, those alike but for a turn or a mirroring once.`;
  return [
    `${all}${pairsOnly ? ` Only two at a time, since it has more than ${MOST_FABRICS}.` : ''}${count < 2 ? '' : ' Choose one to write it as a colourway.'}`,
    '“Reads” is the mean difference of lightness (0 to 100) across the seams, each seam counted by its length; a seam is lost where the difference is below 5.',
  ];
}

function quoted(text: string): string {
  return text.replace(/["\\]/g, '\\$&').replace(/\s+/g, ' ');
}
