/** Parts of the picture that can be chosen: a button over each, found by the keyboard and by screen readers; the mouse meets the stage. */
import type { Tile } from '../../../server/src/lsp/requests.ts';
import { BASE } from './picture.ts';
import type { Spot } from './view.ts';

export interface Tiles {
  readonly show: (tiles: readonly Tile[]) => void;
  /** The tile at a point of the picture, in inches. */
  readonly at: (spot: Spot) => Tile | undefined;
}

export interface TileWishes {
  readonly choose: (tile: Tile) => void;
  /** It has the keyboard's focus: it should be in sight. */
  readonly reach: (tile: Tile) => void;
}

export function tilesIn(layer: HTMLElement, wishes: TileWishes): Tiles {
  let shown: readonly Tile[] = [];
  return {
    show: (tiles) => {
      const focused = document.activeElement instanceof HTMLElement ? document.activeElement.dataset.tile : undefined;
      shown = tiles;
      layer.replaceChildren(...tiles.map((tile) => buttonFor(tile, wishes)));
      if (focused !== undefined) [...layer.querySelectorAll('button')].find((each) => each.dataset.tile === focused)?.focus({ preventScroll: true });
    },
    at: ({ x, y }) => shown.find((tile) => x >= tile.x && y >= tile.y && x <= tile.x + tile.width && y <= tile.y + tile.height),
  };
}

function buttonFor(tile: Tile, { choose, reach }: TileWishes): HTMLButtonElement {
  const element = document.createElement('button');
  element.type = 'button';
  element.className = 'tile';
  element.dataset.tile = tile.id;
  element.style.left = `${tile.x * BASE}px`;
  element.style.top = `${tile.y * BASE}px`;
  element.style.width = `${tile.width * BASE}px`;
  element.style.height = `${tile.height * BASE}px`;
  const says = [tile.name, tile.detail, tile.action ?? ''].filter((part) => part !== '').join('. ');
  element.setAttribute('aria-label', says);
  element.title = says;
  if (tile.isSet) element.setAttribute('aria-current', 'true');
  if (tile.action === null) element.setAttribute('aria-disabled', 'true');
  // With the mouse the stage is clicked, which tells a click from a drag.
  element.addEventListener('click', ({ detail }) => detail === 0 && choose(tile));
  element.addEventListener('focus', () => element.matches(':focus-visible') && reach(tile));
  return element;
}
