/** Reads an SVG back with an XML parser and its own arithmetic: what is where, in which colour. */
import { DOMParser, type Element, type Node } from '@xmldom/xmldom';

type Matrix = readonly [number, number, number, number, number, number];

export interface Drawn {
  readonly fill: string;
  readonly points: readonly (readonly [number, number])[];
}

/** Parses strictly: anything that is not well formed throws. */
export function parseXml(text: string): Element {
  const complain = (level: string, message: string): never => {
    throw new Error(`${level}: ${message}`);
  };
  const root = new DOMParser({ onError: complain }).parseFromString(text, 'image/svg+xml').documentElement;
  if (!root) throw new Error('an empty document');
  return root;
}

/** Every polygon that is painted, in order, where it lies. Arcs are walked in short steps. */
export function drawnIn(svg: string): Drawn[] {
  const root = parseXml(svg);
  const byId = new Map<string, Element>();
  for (const element of elements(root)) if (element.getAttribute('id')) byId.set(element.getAttribute('id') ?? '', element);
  const drawn: Drawn[] = [];
  const paint = (node: Element, matrix: Matrix): void => {
    if (node.tagName === 'defs' || node.tagName === 'title') return;
    const own = multiply(matrix, ownMatrix(node));
    if (node.tagName === 'path') for (const points of polygons(node.getAttribute('d') ?? '')) drawn.push({ fill: node.getAttribute('fill') ?? '', points: points.map((point) => apply(own, point)) });
    if (node.tagName === 'use') {
      const target = byId.get((node.getAttribute('xlink:href') ?? '').replace(/^#/, ''));
      if (!target) throw new Error('a use of nothing');
      paint(target, own);
    }
    for (const child of children(node)) paint(child, own);
  };
  paint(root, [1, 0, 0, 1, 0, 0]);
  return drawn;
}

/** Painted area by colour, later polygons not taken off earlier ones. */
export function areasByFill(svg: string): Record<string, number> {
  const areas: Record<string, number> = {};
  for (const { fill, points } of drawnIn(svg)) areas[fill] = (areas[fill] ?? 0) + Math.abs(area(points));
  return areas;
}

/** Positive when clockwise on the screen. */
export function area(points: readonly (readonly [number, number])[]): number {
  return points.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length] ?? [0, 0];
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

/** The subpaths of path data made of M, L, H, V, A and Z. Any other letter throws. */
export function polygons(d: string): [number, number][][] {
  const found: [number, number][][] = [];
  let current: [number, number][] = [];
  for (const [, letter = '', rest = ''] of d.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const numbers = rest.trim().split(/[ ,]+/).filter(Boolean).map(Number);
    if (numbers.some(Number.isNaN)) throw new Error(`no number in ${letter}${rest}`);
    const [lastX, lastY] = current.at(-1) ?? [0, 0];
    const [a = 0, b = 0] = numbers;
    if (letter === 'M') current = [[a, b]];
    else if (letter === 'L') current.push([a, b]);
    else if (letter === 'H') current.push([a, lastY]);
    else if (letter === 'V') current.push([lastX, a]);
    else if (letter === 'A') current.push(...arc([lastX, lastY], numbers));
    else if (letter === 'Z') found.push(current);
    else throw new Error(`the letter ${letter} in a path`);
  }
  return found;
}

/** A circular arc that is not the large one, by the end-point rules of SVG 1.1, F.6.5. */
function arc([x0, y0]: [number, number], [rx = 0, , , large = 0, sweep = 0, x1 = 0, y1 = 0]: number[]): [number, number][] {
  const [dx, dy] = [(x0 - x1) / 2, (y0 - y1) / 2];
  const r = Math.max(rx, Math.hypot(dx, dy));
  const reach = Math.sqrt(Math.max(r * r - dx * dx - dy * dy, 0) / (dx * dx + dy * dy)) * (large === sweep ? -1 : 1);
  const [cx, cy] = [reach * dy + (x0 + x1) / 2, -reach * dx + (y0 + y1) / 2];
  const start = Math.atan2(y0 - cy, x0 - cx);
  let turn = Math.atan2(y1 - cy, x1 - cx) - start;
  if (sweep === 1 && turn < 0) turn += 2 * Math.PI;
  if (sweep === 0 && turn > 0) turn -= 2 * Math.PI;
  return Array.from({ length: 500 }, (_, step): [number, number] => {
    const angle = start + (turn * (step + 1)) / 500;
    return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)];
  });
}

function ownMatrix(node: Element): Matrix {
  const numbers = /^matrix\(([^)]*)\)$/.exec(node.getAttribute('transform') ?? '')?.[1]?.split(/[ ,]+/).map(Number);
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = numbers ?? [];
  const [x, y] = node.tagName === 'use' ? [Number(node.getAttribute('x') ?? 0), Number(node.getAttribute('y') ?? 0)] : [0, 0];
  return multiply([a, b, c, d, e, f], [1, 0, 0, 1, x, y]);
}

function multiply([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

function apply([a, b, c, d, e, f]: Matrix, [x, y]: readonly [number, number]): [number, number] {
  return [a * x + c * y + e, b * x + d * y + f];
}

function children(node: Element): Element[] {
  const found: Element[] = [];
  for (let child: Node | null = node.firstChild; child; child = child.nextSibling) if (child.nodeType === 1) found.push(child as Element);
  return found;
}

export function elements(root: Element): Element[] {
  return [root, ...children(root).flatMap(elements)];
}
