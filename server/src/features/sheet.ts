/** The blocks of a file side by side in one scene, with their names under them. For looking at: nothing here is measured. */
import type { Scene, SceneBlock, SceneShape, SceneUse } from '../drawing/scene.ts';
import type { BlockView } from '../snapshot.ts';
import type { Place } from '../text/place.ts';

/** A name, centred at x; y is the top of the text. In inches of the scene. */
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** How wide it may be, in inches; what is longer is cut short. */
  readonly room?: number;
  /** How high it may be, in inches. */
  readonly tall?: number;
}

export interface Sheet {
  readonly scene: Scene;
  readonly labels: readonly Label[];
}

/** The longer side of a block that has no size of its own, in inches, when no block has one. */
const USUAL = 6;
/** Between blocks, and under each for its name, as a part of the tallest block. */
const GAP = 0.15;
const CAPTION = 0.15;

/** A block and how large it is drawn. */
interface Placing {
  readonly view: BlockView;
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}

/** Undefined when there is no block to show. */
export function sheetOf(views: readonly BlockView[]): Sheet | undefined {
  const sets = scaled(views.filter(({ scene }) => scene.width > 0 && scene.height > 0));
  if (sets.length === 0) return undefined;
  const tallest = Math.max(...sets.map(({ height }) => height));
  const rows = broken(sets, tallest * GAP);
  const sheet = new Composer();
  let y = 0;
  for (const row of rows) {
    let x = 0;
    const height = Math.max(...row.map((set) => set.height));
    for (const set of row) {
      sheet.put(set, x, y + height - set.height);
      x += set.width + tallest * GAP;
    }
    sheet.width = Math.max(sheet.width, x - tallest * GAP);
    sheet.height = y + height + tallest * CAPTION;
    y = sheet.height + tallest * GAP;
  }
  return sheet.done();
}

/** Blocks at their own size; one that only stands inside others as large as the others are in the middle. */
function scaled(views: readonly BlockView[]): readonly Placing[] {
  const sides = views.filter(({ layout }) => layout.instance.size).map(({ scene }) => Math.max(scene.width, scene.height)).sort((a, b) => a - b);
  const usual = sides[Math.floor(sides.length / 2)] ?? USUAL;
  return views.map((view) => {
    const { width, height } = view.scene;
    const scale = view.layout.instance.size ? 1 : usual / Math.max(width, height);
    return { view, scale, width: width * scale, height: height * scale };
  });
}

/** Rows about as wide as all of them are high. */
function broken(sets: readonly Placing[], gap: number): readonly (readonly Placing[])[] {
  const area = sets.reduce((sum, { width, height }) => sum + (width + gap) * (height + gap), 0);
  const widest = Math.max(Math.sqrt(area) * 1.25, ...sets.map(({ width }) => width));
  const rows: Placing[][] = [];
  let used = Infinity;
  for (const set of sets) {
    used += set.width + gap;
    const row = rows.at(-1);
    if (row && used - gap <= widest) row.push(set);
    else {
      rows.push([set]);
      used = set.width + gap;
    }
  }
  return rows;
}

/** Puts scenes of blocks into one; indices of sources move along. */
class Composer {
  width = 0;
  height = 0;
  readonly #blocks: SceneBlock[] = [];
  readonly #items: SceneUse[] = [];
  readonly #sources: Place[] = [];
  readonly #labels: Label[] = [];

  put({ view, scale, width, height }: Placing, x: number, y: number): void {
    const offset = this.#sources.length + 1;
    const shapes = view.scene.items.filter((item): item is SceneShape => item.kind === 'shape').map((shape) => shifted(shape, offset));
    this.#items.push({ kind: 'use', block: this.#blocks.length, matrix: [scale, 0, 0, scale, x, y], source: this.#sources.length });
    this.#sources.push(view.definition.place, ...view.scene.sources);
    this.#blocks.push({ id: `s${this.#blocks.length}`, name: view.definition.name, width: view.scene.width, height: view.scene.height, shapes });
    this.#labels.push({ text: view.definition.name, x: x + width / 2, y: y + height });
  }

  done(): Sheet {
    const { width, height } = this;
    return { scene: { width, height, title: 'blocks', blocks: this.#blocks, items: this.#items, sources: this.#sources }, labels: this.#labels };
  }
}

function shifted(shape: SceneShape, offset: number): SceneShape {
  return { ...shape, source: shape.source + offset, ...(shape.within && { within: shape.within.map((source) => source + offset) }) };
}
