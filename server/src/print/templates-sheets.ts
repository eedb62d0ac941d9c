/** What helps to lay the sheets of a large shape on each other: where the next sheet begins, crossed circles, a small map. */
import { POINTS_PER_INCH, element, mark, widthOf, write, type Pdf } from './pdf.ts';
import { drawLine, drawOutline } from './picture.ts';
import { mapRoomOn, type Room } from './templates-page.ts';
import { OVERLAP, penAt, type Figure } from './templates-pen.ts';
import type { SheetPart } from './templates-place.ts';
import type { TemplateWords } from './templates-words.ts';

/** Dotted lines where neighbours begin or end, and crossed circles in the middle of what overlaps: the same places on both sheets. None towards a blank sheet. */
export function drawSheetMarks(pdf: Pdf, { row, column, rows, columns, numbers, width, height }: SheetPart, { x, y }: Room): void {
  const isPrinted = (r: number, c: number): boolean => r >= 0 && r < rows && c >= 0 && c < columns && numbers[r * columns + c] !== undefined;
  const dotted = { stroke: '#000000', width: 0.4, dash: [1, 2.5] };
  for (const side of [isPrinted(row, column - 1) ? 0 : undefined, isPrinted(row, column + 1) ? width - OVERLAP : undefined]) {
    if (side === undefined) continue;
    const line = x + (side === 0 ? OVERLAP : side);
    drawLine(pdf, [line, y, line, y + height], dotted);
    for (const part of [1 / 4, 3 / 4]) cross(pdf, x + side + OVERLAP / 2, y + height * part);
  }
  for (const side of [isPrinted(row - 1, column) ? 0 : undefined, isPrinted(row + 1, column) ? height - OVERLAP : undefined]) {
    if (side === undefined) continue;
    const line = y + (side === 0 ? OVERLAP : side);
    drawLine(pdf, [x, line, x + width, line], dotted);
    for (const part of [1 / 4, 3 / 4]) cross(pdf, x + width * part, y + side + OVERLAP / 2);
  }
}

function cross(pdf: Pdf, x: number, y: number): void {
  const ink = { stroke: '#000000', width: 0.5 };
  drawOutline(pdf, { points: [x - 5, y, x + 5, y], arcs: [5, 5] }, [1, 0, 0, 1, 0, 0], ink);
  drawLine(pdf, [x - 8, y, x + 8, y], ink);
  drawLine(pdf, [x, y - 8, x, y + 8], ink);
}

/** All sheets small, this one darker, the shape over them. */
export function drawSheetMap(pdf: Pdf, sheet: SheetPart, figure: Figure, words: TemplateWords): void {
  const { row, column, rows, columns, width, height, isTurned, numbers } = sheet;
  const room = mapRoomOn(pdf.page);
  const [stepX, stepY] = [width - OVERLAP, height - OVERLAP];
  const scale = Math.min(room.width / (columns * stepX + OVERLAP), (room.height - 12) / (rows * stepY + OVERLAP));
  mark(element(pdf, pdf.root, 'Figure', { alt: words.sheetMap }), () => {
    write(pdf, words.sheetMap, room.x, room.y + 8, { size: 8 });
    const [x, y] = [room.x, room.y + 14];
    for (let i = 0; i < rows * columns; i += 1) {
      const [r, c] = [Math.floor(i / columns), i % columns];
      const [left, top] = [x + c * stepX * scale, y + r * stepY * scale];
      const isThis = r === row && c === column;
      drawOutline(pdf, { points: box(left, top, width * scale, height * scale) }, PAGE, { stroke: '#606060', width: 0.4, ...(isThis ? { fill: '#d8dde2' } : {}) });
      const printed = numbers[i];
      const number = printed === undefined ? '' : `${printed + 1}`;
      write(pdf, number, left + (width * scale) / 2 - widthOf(pdf, number, { size: 8 }) / 2, top + (height * scale) / 2 + 3, { size: 8 });
    }
    const small = scale * POINTS_PER_INCH;
    const { left, top, bottom } = figure.extent;
    const { matrix } = penAt(pdf, figure.extent, { x: 0, y: 0, isTurned, window: figure.extent });
    const [a, b, c, d] = matrix.map((value) => value * scale);
    const moved = isTurned ? [x + bottom * small, y - left * small] as const : [x - left * small, y - top * small] as const;
    drawOutline(pdf, figure.outline, [a ?? 0, b ?? 0, c ?? 0, d ?? 0, ...moved], { stroke: '#000000', width: 0.6 });
  });
}

const PAGE = [1, 0, 0, 1, 0, 0] as const;

function box(x: number, y: number, width: number, height: number): readonly number[] {
  return [x, y, x + width, y, x + width, y + height, x, y + height];
}
