/** The picture of a file: the quilt in a size and a colourway, or, for a library, its blocks side by side. */
import type { Scene } from '../drawing/scene.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';
import type { RuleId } from '../text/problem.ts';
import { blocksOf } from './blocks.ts';
import { sheetOf, type Label } from './sheet.ts';

/** A named size and a colourway; null (or a name that is not there) for what the editor shows first. */
export interface Choice {
  readonly size?: string | null | undefined;
  readonly colorway?: string | null | undefined;
}

export interface Drawing {
  /** What is drawn; undefined when nothing can be. */
  readonly scene: Scene | undefined;
  readonly kind: 'quilt' | 'blocks';
  readonly labels: readonly Label[];
  readonly size: string | null;
  readonly colorway: string | null;
}

export interface Picture extends Drawing {
  readonly title: string;
  readonly errors: number;
  /** Errors took something out of the picture. */
  readonly partial: boolean;
}

/** Rules whose errors leave the picture whole. */
const HARMLESS: readonly RuleId[] = ['expect-failed', 'unknown-placeholder', 'cut-off-ruler', 'strip-too-wide'];

/** The picture, and how far the text can be trusted. */
export function pictureOf(snapshot: Snapshot, choice: Choice): Picture {
  const { errors } = snapshot;
  return {
    ...drawingOf(snapshot, choice),
    title: snapshot.pattern.title ?? '',
    errors: errors.length,
    partial: errors.some(({ rule }) => !HARMLESS.includes(rule)),
  };
}

/** The picture alone: no check is run for it. A quilt that does not say how its blocks are set is not drawn. */
export function drawingOf(snapshot: Snapshot, choice: Choice): Drawing {
  const quilt = chosen(snapshot, choice);
  const scene = quilt?.spec.setting && quilt.scene;
  if (quilt && scene && isThere(scene)) {
    return { scene, kind: 'quilt', labels: [], size: choice.size === quilt.name ? quilt.name : null, colorway: quilt.colorway?.name ?? null };
  }
  const sheet = sheetOf(blocksOf(snapshot));
  return { scene: sheet?.scene, kind: 'blocks', labels: sheet?.labels ?? [], size: null, colorway: null };
}

/** The quilt of a choice; undefined for a library. */
export function chosen(snapshot: Snapshot, { size, colorway }: Choice): QuiltView | undefined {
  const colours = snapshot.pattern.colorways.find(({ name }) => name === colorway);
  const quilts = colours ? snapshot.inColorway(colours) : snapshot.quilts;
  const named = quilts.find(({ name }) => name !== null && name === size);
  return named ?? (colours ? quilts[0] : snapshot.shown);
}

function isThere(scene: Scene): boolean {
  return scene.width > 0 && scene.height > 0 && scene.items.length > 0;
}
