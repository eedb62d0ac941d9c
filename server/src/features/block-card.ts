/** A block as it is shown beside its name while one chooses: a small drawing, what it is given, how large it is. */
import { sceneOfBlock } from '../drawing/build.ts';
import { svgOf } from '../drawing/svg.ts';
import { layoutBlock } from '../geometry/block.ts';
import { defaultInstance, sampleInstance } from '../model/instantiate.ts';
import type { BlockDefinition } from '../model/pattern.ts';
import type { Snapshot } from '../snapshot.ts';
import { escapeMarkdown } from './hover-text.ts';
import { sideBySide } from './measures.ts';
import { labelOf } from './signature.ts';

/** Of the longer side, in pixels. */
const SIDE = 96;
/** A drawing of more characters is left out: it would be slower to show than to read. */
const LONGEST = 60_000;

/** Markdown; the drawing is in it as a data address. */
export function blockCard(snapshot: Snapshot, name: string): string | undefined {
  const definition = snapshot.pattern.blocks.get(name);
  if (!definition) return undefined;
  const drawing = drawingOf(snapshot, definition);
  const image = drawing?.address === undefined ? [] : [`![${escapeMarkdown(name)}](${drawing.address})`];
  return [...image, `**${escapeMarkdown(definition.parameters.length > 0 ? labelOf(definition).label : name)}**`, ...(drawing ? [escapeMarkdown(drawing.says)] : [])].join('\n\n');
}

function drawingOf({ pattern }: Snapshot, definition: BlockDefinition): { readonly address: string | undefined; readonly says: string } | undefined {
  const instance = defaultInstance(pattern, definition) ?? sampleInstance(pattern, definition);
  if (!instance) return undefined;
  const layout = layoutBlock(instance);
  const patches = `${layout.patches.length} ${layout.patches.length === 1 ? 'patch' : 'patches'}`;
  const says = instance.size ? `${sideBySide(layout, pattern)}, ${patches}` : patches;
  const scene = sceneOfBlock(layout);
  const { width, height } = scene;
  const scale = SIDE / Math.max(width, height);
  const sized = svgOf(scene, { title: definition.name }).replace(/width="[^"]*" height="[^"]*"/, `width="${Math.round(width * scale)}" height="${Math.round(height * scale)}"`);
  const address = `data:image/svg+xml;base64,${base64(sized)}`;
  return { address: Number.isFinite(scale) && address.length <= LONGEST ? address : undefined, says };
}

function base64(text: string): string {
  return btoa([...new TextEncoder().encode(text)].map((byte) => String.fromCharCode(byte)).join(''));
}
