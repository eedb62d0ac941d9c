/**
 * The settings sheet: one block in a dozen settings side by side. Each picture is that of the text as it would be written, read anew;
 * a setting that would bring an error of its own is left out, and said.
 */
import { RULES } from '../../checks/list.ts';
import { runChecks } from '../../checks/run.ts';
import { transformKey } from '../../exact/transform.ts';
import { pointKey } from '../../exact/point.ts';
import type { QuiltLayout } from '../../geometry/layout.ts';
import type { Snapshot } from '../../snapshot.ts';
import { chosen } from '../picture.ts';
import { withEdits } from '../refactor/edit.ts';
import { sideBySide } from './compose.ts';
import { lookedAt } from './looked-at.ts';
import { settingEdits } from './setting-edit.ts';
import { stockFor, WAYS, type Way } from './setting-ways.ts';
import { EMPTY, type Tile, type View, type ViewChoice, type Writing } from './view.ts';

export interface Tried {
  readonly way: Way;
  readonly writing: Writing;
  /** The pattern as it would be. */
  readonly after: Snapshot;
  /** The first error that it would bring, if any. */
  readonly refused: string | undefined;
}

export function settingsView(snapshot: Snapshot, choice: ViewChoice): View {
  const block = lookedAt(snapshot, choice);
  if (!block) return EMPTY;
  if (!block.layout.instance.size) return { ...EMPTY, notes: [`${block.name} has no size of its own: it stands in other blocks and is not set by itself.`], block: block.name };
  const tried = settingsFor(snapshot, choice);
  if (tried.length === 0) return { ...EMPTY, notes: [snapshot.pattern.fabrics.size === 0 ? 'There is no fabric to set it with: declare one.' : 'The braces of the quilt are not closed.'], block: block.name };
  const offered = tried.flatMap(({ way, after, refused }) => {
    const quilt = refused === undefined ? chosen(after, choice) : undefined;
    return quilt && quilt.scene.width > 0 ? [{ way, quilt }] : [];
  });
  if (offered.length === 0) return { ...EMPTY, notes: refusals(tried), block: block.name };
  const { scene, boxes, labels } = sideBySide(`${block.name} in ${offered.length} settings`, offered.map(({ way, quilt }) => ({ scene: quilt.scene, name: way.name })), { scale: 'fit' });
  const now = chosen(snapshot, choice);
  const look = now && lookOf(now.layout);
  const tiles = offered.map(({ way, quilt }, index): Tile => {
    const isSet = look !== undefined && lookOf(quilt.layout) === look;
    return { id: way.id, name: way.name, detail: isSet ? 'as it is set now' : '', ...(boxes[index] ?? NOWHERE), isSet, action: isSet ? undefined : 'Write this setting into the text' };
  });
  return { ...EMPTY, scene, labels, tiles, notes: [`${block.name} in ${offered.length} settings. Choose one to write it into the text; borders, finishing and comments stay.`, ...refusals(tried)], block: block.name };
}

/** What choosing a tile writes; undefined when there is no such tile. */
export function settingWriting(snapshot: Snapshot, choice: ViewChoice, id: string): Writing | undefined {
  return settingsFor(snapshot, choice).find(({ way, refused }) => way.id === id && refused === undefined)?.writing;
}

/** Every setting, tried on the text. */
export function settingsFor(snapshot: Snapshot, choice: ViewChoice): readonly Tried[] {
  const block = lookedAt(snapshot, choice);
  const stock = block && stockFor(snapshot, chosen(snapshot, choice), block.layout);
  if (!stock) return [];
  const before = errorsIn(snapshot);
  return WAYS.flatMap((way): readonly Tried[] => {
    const edits = settingEdits(snapshot, way.lines(stock), way.on);
    if (!edits) return [];
    const after = withEdits(snapshot, edits);
    const refused = [...errorsIn(after)].find((error) => !before.has(error));
    return [{ way, writing: { title: `Set ${block.name}: ${way.name}`, edits }, after, refused }];
  });
}

const NOWHERE = { x: 0, y: 0, width: 0, height: 0 };

function refusals(tried: readonly Tried[]): readonly string[] {
  return tried.flatMap(({ way, refused }) => (refused === undefined ? [] : [`Not offered: ${way.name}. ${sentence(refused)}`]));
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`.replaceAll('`', '');
}

/** What the author expects of the quilt may well differ in another setting: that is said in the text, and no reason to refuse it. */
const GRAVE = RULES.filter(({ id, severity }) => severity === 'error' && id !== 'expect-failed');

function errorsIn({ tree, pattern, blocks, shown, quilts }: Snapshot): ReadonlySet<string> {
  const all = new Set([...(shown ? [shown] : []), ...quilts]);
  return new Set(runChecks({ tree, pattern, blocks: blocks.map(({ layout }) => layout), quilts: [...all] }, GRAVE).map(({ message }) => message));
}

/** Two quilts that look the same have the same text here. */
function lookOf({ width, height, placements, patches }: QuiltLayout): string {
  const size = pointKey({ x: width, y: height });
  const placed = placements.map(({ block, transform }) => `${block.key} ${transformKey(transform)}`).toSorted();
  const loose = patches.map(({ fabric, outline }) => `${fabric.name} ${outline.map(pointKey).join(' ')}`).toSorted();
  return [size, ...placed, ...loose].join('\n');
}
