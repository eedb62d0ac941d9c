/** What hands do on the stage: drag, wheel, pinch, keys, click. Says only what was meant. */
import type { Spot } from './view.ts';

export interface Meanings {
  readonly move: (by: Spot) => void;
  /** About a spot of the stage; about its middle when there is none. */
  readonly zoom: (factor: number, spot?: Spot) => void;
  readonly fit: () => void;
  /** `follows`: with the key that follows links, Ctrl or Cmd. */
  readonly click: (spot: Spot, follows: boolean) => void;
  readonly step: (by: number) => unknown;
  /** A movement has ended: time to remember where things lie. */
  readonly rest: () => void;
}

/** A pointer that moves less than this, in pixels, clicks. */
const STILL = 4;
const STEP = 48;
export const ZOOM_STEP = 1.25;
const REST_AFTER = 200;

/** Listens on the stage. It has the class `moving` while something moves, and for a moment after. */
export function listenTo(stage: HTMLElement, meanings: Meanings): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const moving = (): void => {
    stage.classList.add('moving');
    clearTimeout(timer);
    timer = setTimeout(() => {
      stage.classList.remove('moving');
      meanings.rest();
    }, REST_AFTER);
  };
  const spotOf = (event: MouseEvent): Spot => {
    const { left, top } = stage.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  stage.addEventListener('wheel', (event) => {
    event.preventDefault();
    moving();
    const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 20 : 1;
    if (event.ctrlKey || event.metaKey) meanings.zoom(Math.exp(-event.deltaY * unit * 0.005), spotOf(event));
    else if (event.shiftKey && event.deltaX === 0) meanings.move({ x: -event.deltaY * unit, y: 0 });
    else meanings.move({ x: -event.deltaX * unit, y: -event.deltaY * unit });
  }, { passive: false });
  stage.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !pressed(event.key, meanings)) return;
    event.preventDefault();
    moving();
  });
  drag(stage, { spotOf, moving, meanings });
}

function pressed(key: string, { move, zoom, fit, step }: Meanings): boolean {
  const actions: Record<string, () => unknown> = {
    ArrowLeft: () => move({ x: STEP, y: 0 }),
    ArrowRight: () => move({ x: -STEP, y: 0 }),
    ArrowUp: () => move({ x: 0, y: STEP }),
    ArrowDown: () => move({ x: 0, y: -STEP }),
    '+': () => zoom(ZOOM_STEP),
    '=': () => zoom(ZOOM_STEP),
    '-': () => zoom(1 / ZOOM_STEP),
    '0': fit,
    PageUp: () => step(-1),
    PageDown: () => step(1),
  };
  actions[key]?.();
  return key in actions;
}

interface Dragging {
  readonly spotOf: (event: MouseEvent) => Spot;
  readonly moving: () => void;
  readonly meanings: Meanings;
}

/** One pointer drags, two pinch; one that stays where it was clicks. */
function drag(stage: HTMLElement, { spotOf, moving, meanings }: Dragging): void {
  const down = new Map<number, Spot>();
  let start: Spot | undefined;
  stage.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    stage.setPointerCapture(event.pointerId);
    down.set(event.pointerId, spotOf(event));
    start = down.size === 1 ? spotOf(event) : undefined;
  });
  stage.addEventListener('pointermove', (event) => {
    const last = down.get(event.pointerId);
    const spot = spotOf(event);
    if (!last || (start && distance(start, spot) < STILL)) return;
    start = undefined;
    moving();
    down.set(event.pointerId, spot);
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
    if (other) meanings.zoom(distance(spot, other) / Math.max(distance(last, other), 1), middle(spot, other));
    else meanings.move({ x: spot.x - last.x, y: spot.y - last.y });
  });
  const up = (event: PointerEvent): void => {
    down.delete(event.pointerId);
    if (start && event.type === 'pointerup') meanings.click(start, event.ctrlKey || event.metaKey);
    start = undefined;
  };
  stage.addEventListener('pointerup', up);
  stage.addEventListener('pointercancel', up);
}

function distance(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function middle(a: Spot, b: Spot): Spot {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}
