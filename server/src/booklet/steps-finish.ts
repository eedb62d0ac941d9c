/** The steps behind the top: layers, quilting, binding. */
import { fraction, roundUpTo, type Exact } from '../exact/number.ts';
import { toInches } from '../exact/length.ts';
import { hasEdgePoints } from '../piecing/edge-points.ts';
import type { QuiltLayout } from '../geometry/layout.ts';
import type { QuiltingLine, Rules } from '../model/pattern.ts';
import { plain } from './markdown.ts';
import type { BookletQuilt } from './source.ts';
import type { Chapter } from './steps-blocks.ts';
import { TEXTS } from './steps-texts.ts';
import type { Printer } from './words.ts';

export interface FinishWords {
  readonly quilt: BookletQuilt;
  readonly rules: Rules;
  readonly print: Printer;
}

export function finishChapters(words: FinishWords): readonly Chapter[] {
  const bind = bindLines(words);
  return [
    { title: TEXTS.layer, level: 2, lines: layerLines(words) },
    { title: TEXTS.quilt, level: 2, lines: [...quiltLines(words), TEXTS.trimLayers] },
    ...(bind.length > 0 ? [{ title: TEXTS.bind, level: 2, lines: [...bind, TEXTS.done] }] : []),
  ];
}

function layerLines({ quilt: { plan: { backing, batting } }, rules, print }: FinishWords): readonly string[] {
  const sewn = backing && backing.panels > 1 && backing.seams !== 'none' ? [TEXTS.backingSew(backing.panels - 1, backing.seams)] : [];
  return [
    ...(backing ? [TEXTS.backing(backing.panels, print.length(backing.panelLength)), ...sewn, TEXTS.backingSize(print.widthByHeight(backing))] : []),
    ...(batting ? [TEXTS.battingSize(print.widthByHeight(batting))] : []),
    ...TEXTS.layerLines,
    TEXTS.baste(print.length(handsWidth(rules))),
  ];
}

/** 4" or 10 cm, as instructions for basting have it. */
function handsWidth({ units }: Rules): Exact {
  return units === 'inches' ? fraction(4) : toInches(fraction(10), 'cm');
}

function quiltLines({ quilt: { layout, plan }, rules, print }: FinishWords): readonly string[] {
  const lines = layout.spec.quiltingLines ?? [];
  if (lines.length === 0) return [TEXTS.quiltAny];
  return lines.map((line) => {
    const length = plan.quilting.find(({ place }) => place === line.place)?.length;
    return length ? `${quiltLine(line, print)} ${TEXTS.stitching(print.cloth(roundUpTo(length, rules.yardage)))}` : quiltLine(line, print);
  });
}

function quiltLine(line: QuiltingLine, print: Printer): string {
  switch (line.kind) {
    case 'words':
      return plain(line.text);
    case 'in_the_ditch':
      return TEXTS.ditch;
    case 'allover':
      return TEXTS.allover;
    case 'echo':
      return TEXTS.echo(print.length(line.distance));
  }
}

/** Without a border the points of the blocks lie on the seam of the binding. */
function edgeLines(layout: QuiltLayout, seam: string): readonly string[] {
  return hasEdgePoints(layout) ? [TEXTS.edgePoints(seam)] : [];
}

function bindLines({ quilt, rules, print }: FinishWords): readonly string[] {
  const { binding } = quilt.plan;
  if (!binding) return [];
  const { fabric, width, strips, square, double, length } = binding;
  const cloth = plain(fabric.name);
  const made = square ? TEXTS.bindBias(strips, print.length(square), print.length(width), cloth) : TEXTS.bindStrips(strips, print.length(width), cloth);
  return [made, TEXTS.bindLength(print.length(length)), double ? TEXTS.bindDouble : TEXTS.bindSingle, ...edgeLines(quilt.layout, print.length(rules.seam)), ...TEXTS.bindSew(print.length(rules.seam))];
}
