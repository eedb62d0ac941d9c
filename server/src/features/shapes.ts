/** From text to picture: the shapes that what stands at a position makes. */
import { outlineOf } from '../drawing/outline.ts';
import type { Snapshot } from '../snapshot.ts';
import type { Statement } from '../syntax/tree.ts';
import type { Position } from '../text/document.ts';
import { holds, spanning, type Place } from '../text/place.ts';
import { sceneIn } from './views/make.ts';
import type { ViewChoice } from './views/view.ts';

/** An SVG path in inches: every placed instance, empty when the text makes nothing that is drawn. */
export function shapesAt(snapshot: Snapshot, position: Position, choice: ViewChoice): string {
  const scene = sceneIn(snapshot, choice);
  if (!scene) return '';
  const heading = blockHeadedAt(snapshot, position);
  return outlineOf(scene, heading ? (place) => isIn(snapshot, heading, place) : (place) => holds(snapshot.document, place, position));
}

/** The block whose heading, up to its brace, the position is in. */
function blockHeadedAt({ document, tree }: Snapshot, { line, character }: Position): Statement | undefined {
  const found = tree.statements.find((statement) => statement.node.kind === 'block' && statement.line === document.lines[line]);
  return found?.body && character <= found.body.open.from ? found : undefined;
}

/** Whether a place stands between the braces of a block. */
function isIn({ document }: Snapshot, { body, place }: Statement, other: Place): boolean {
  const start = document.numberOf(other.line);
  return body !== undefined && start >= 0 && holds(document, spanning(body.open, body.close ?? place), { line: start, character: other.from });
}
