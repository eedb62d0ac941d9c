/** Every view by its name, each worked out when it is asked for and kept for as long as its text stands. */
import type { Scene } from '../../drawing/scene.ts';
import type { Snapshot } from '../../snapshot.ts';
import type { Place } from '../../text/place.ts';
import { hit } from '../../drawing/outline.ts';
import { documentsOf } from '../documents.ts';
import { drawingOf } from '../picture.ts';
import { blockView } from './block.ts';
import { cuttingView } from './cutting.ts';
import { fabricsView, fabricWriting } from './fabrics.ts';
import { lookedAt } from './looked-at.ts';
import { mirrorsView } from './mirrors.ts';
import { pressingView } from './pressing.ts';
import { settingsView, settingWriting } from './settings.ts';
import { sewingView } from './sewing.ts';
import { sizesView } from './sizes.ts';
import { valuesView } from './values.ts';
import { EMPTY, VIEWS, type View, type ViewChoice, type ViewName, type Writing } from './view.ts';

const MAKERS: Readonly<Record<ViewName, (snapshot: Snapshot, choice: ViewChoice) => View>> = {
  whole: wholeView,
  block: blockView,
  values: valuesView,
  mirrors: mirrorsView,
  settings: settingsView,
  fabrics: fabricsView,
  sewing: sewingView,
  pressing: pressingView,
  cutting: cuttingView,
  sizes: sizesView,
};

/** Views of one block, which is another when the cursor goes elsewhere. */
const OF_A_BLOCK: readonly ViewName[] = ['block', 'mirrors', 'settings', 'fabrics', 'pressing'];

/** The name itself, or the whole quilt for one that is no view. */
export function viewNamed(name: string | undefined): ViewName {
  return VIEWS.find((each) => each.name === name)?.name ?? 'whole';
}

const kept = new WeakMap<Snapshot, Map<string, View>>();

export function viewOf(snapshot: Snapshot, choice: ViewChoice): View {
  const name = viewNamed(choice.view);
  const key = [name, choice.size ?? '', choice.colorway ?? '', blockIn(snapshot, choice) ?? '', name === 'sewing' ? choice.step : ''].join('\n');
  const views = kept.get(snapshot) ?? new Map<string, View>();
  kept.set(snapshot, views);
  const view = views.get(key) ?? MAKERS[name](snapshot, choice);
  views.set(key, view);
  return view;
}

/** The block that the chosen view is about; undefined for views of the whole quilt. */
export function blockIn(snapshot: Snapshot, choice: ViewChoice): string | undefined {
  return OF_A_BLOCK.includes(viewNamed(choice.view)) ? lookedAt(snapshot, choice)?.name : undefined;
}

/** What is drawn in the chosen view. */
export function sceneIn(snapshot: Snapshot, choice: ViewChoice): Scene | undefined {
  return viewOf(snapshot, choice).scene;
}

/** The texts that make what lies at a point, the innermost first; those of the tool's own library are left out. */
export function textsIn(snapshot: Snapshot, x: number, y: number, choice: ViewChoice): readonly Place[] {
  const scene = sceneIn(snapshot, choice);
  const known = documentsOf(snapshot);
  return scene ? hit(scene, x, y).filter((place) => known.get(place.line.source)?.numberOf(place.line) !== -1 && known.has(place.line.source)) : [];
}

/** What choosing a tile of the chosen view writes, and the colourway to show then, if it is a new one. */
export function writingIn(snapshot: Snapshot, choice: ViewChoice, tile: string): (Writing & { readonly colorway?: string }) | undefined {
  const view = viewNamed(choice.view);
  if (view === 'settings') return settingWriting(snapshot, choice, tile);
  return view === 'fabrics' ? fabricWriting(snapshot, choice, tile) : undefined;
}

function wholeView(snapshot: Snapshot, choice: ViewChoice): View {
  const { scene, labels } = drawingOf(snapshot, choice);
  return { ...EMPTY, scene, labels };
}
