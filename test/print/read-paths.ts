/** Every line drawn in a PDF, page by page, by pdf.js: a reader that shares no code with the writer. In points, y down from the upper edge. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type Corner = readonly [x: number, y: number];

export interface PathRead {
  /** Corners in order; of curves their ends. */
  readonly corners: readonly Corner[];
  readonly isClosed: boolean;
  readonly isCurved: boolean;
  readonly isDashed: boolean;
  readonly isFilled: boolean;
  readonly width: number;
}

export interface PagePaths {
  readonly width: number;
  readonly height: number;
  readonly paths: readonly PathRead[];
  readonly texts: readonly { readonly text: string; readonly x: number; readonly y: number; readonly size: number }[];
}

interface State {
  readonly matrix: readonly number[];
  readonly isDashed: boolean;
  readonly width: number;
}

export async function readPaths(bytes: Uint8Array): Promise<readonly PagePaths[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, disableFontFace: true });
  try {
    const document = await task.promise;
    const pages: PagePaths[] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const [, , width = 0, height = 0] = page.view;
      const { fnArray, argsArray } = await page.getOperatorList();
      const { items } = await page.getTextContent();
      const texts = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [{ text: item.str, x: (item.transform as number[])[4] ?? 0, y: height - ((item.transform as number[])[5] ?? 0), size: item.height }] : []));
      pages.push({ width, height, texts, paths: pathsIn(fnArray, argsArray, height) });
    }
    return pages;
  } finally {
    await task.destroy();
  }
}

function pathsIn(operators: readonly number[], all: readonly unknown[], height: number): readonly PathRead[] {
  const paths: PathRead[] = [];
  const saved: State[] = [];
  let state: State = { matrix: [1, 0, 0, 1, 0, 0], isDashed: false, width: 1 };
  operators.forEach((operator, i) => {
    const args = all[i] as readonly never[];
    if (operator === OPS.save) saved.push(state);
    else if (operator === OPS.restore) state = saved.pop() ?? state;
    else if (operator === OPS.transform) state = { ...state, matrix: times(state.matrix, args) };
    else if (operator === OPS.setDash) state = { ...state, isDashed: (args[0] as unknown as readonly number[]).length > 0 };
    else if (operator === OPS.setLineWidth) state = { ...state, width: args[0] ?? 1 };
    else if (operator === OPS.constructPath) {
      const [paint, [path]] = args as unknown as [number, [Float32Array | null]];
      if (path && paint !== OPS.endPath) paths.push(...runsOf(path, state, height).map((run) => ({ ...run, isFilled: paint !== OPS.stroke && paint !== OPS.closeStroke })));
    }
  });
  return paths;
}

function times([a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]: readonly number[], [g = 1, h = 0, i = 0, j = 1, k = 0, l = 0]: readonly number[]): readonly number[] {
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

/** pdf.js keeps a path as one list: a kind (0 move, 1 line, 2 curve, 3 quadratic, 4 close) and its coordinates, again and again. */
function runsOf(path: Float32Array, { matrix, isDashed, width }: State, height: number): readonly Omit<PathRead, 'isFilled'>[] {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = matrix;
  const counts = [2, 2, 6, 4, 0];
  const runs: { corners: Corner[]; isClosed: boolean; isCurved: boolean; readonly isDashed: boolean; readonly width: number }[] = [];
  for (let i = 0; i < path.length;) {
    const kind = path[i] ?? 4;
    const count = counts[kind] ?? 0;
    if (kind === 0) runs.push({ corners: [], isClosed: false, isCurved: false, isDashed, width });
    const run = runs.at(-1);
    if (run && kind === 4) run.isClosed = true;
    if (run && (kind === 2 || kind === 3)) run.isCurved = true;
    const [x, y] = [path[i + count - 1] ?? 0, path[i + count] ?? 0];
    if (run && count > 0) run.corners.push([a * x + c * y + e, height - (b * x + d * y + f)]);
    i += 1 + count;
  }
  return runs;
}
