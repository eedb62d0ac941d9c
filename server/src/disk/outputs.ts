/**
 * What a pattern becomes on the disk, and where. One rule for the editor's save, its button, the task and the command
 * line: `out/<file name>` beside the file, with a folder for each size when the pattern names more than one.
 */
import { dirname, join } from 'node:path';
import { bookOf } from '../booklet/book/build.ts';
import { cuttingCsv } from '../booklet/cutting-csv.ts';
import { cuttingMarkdown } from '../booklet/cutting-list.ts';
import { patternJson } from '../booklet/pattern-json.ts';
import { patternSvg } from '../booklet/pattern-svg.ts';
import { UNTITLED, type BookletSource } from '../booklet/source.ts';
import { stepsDrawings } from '../booklet/steps-drawings.ts';
import { stepsMarkdown } from '../booklet/steps.ts';
import { workbookOf } from '../booklet/workbook.ts';
import { sceneOfBlock } from '../drawing/build.ts';
import { cuttingDrawing } from '../drawing/cutting-layouts.ts';
import { svgOf } from '../drawing/svg.ts';
import type { BlockInQuilt } from '../geometry/layout.ts';
import type { QuiltView, Snapshot } from '../snapshot.ts';
import { fontFiles } from './fonts.ts';
import type { OutputKind } from './kinds.ts';
import { fileNames } from './names.ts';
import { printing } from './printing.ts';
import { patternName } from './sources.ts';
import type { OutputFile } from './replace.ts';

export interface OutputOptions {
  /** Names of sizes; all unless given. */
  readonly sizes?: readonly string[];
  /** The name of a colourway; the declared colours unless given. */
  readonly colorway?: string;
  /** Everything unless given. */
  readonly only?: readonly OutputKind[];
}

/** The folder that a pattern's outputs are written to unless another is named. */
export function outputFolder(path: string): string {
  return join(dirname(path), 'out', patternName(path));
}

/** The files of a pattern without errors, in a fixed order. A library of blocks becomes the pictures of its blocks. */
export function outputsOf(snapshot: Snapshot, options: OutputOptions = {}): OutputFile[] {
  const wants = (kind: OutputKind): boolean => options.only?.includes(kind) ?? true;
  const quilts = quiltsOf(snapshot, options);
  if (quilts.length === 0) return wants('blocks') ? blockFiles(snapshot.blocks.map(({ layout, definition }) => ({ layout, name: definition.name })), '') : [];
  const made = quilts.filter(({ name }) => options.sizes === undefined || (name !== null && options.sizes.includes(name)));
  const folders = fileNames(quilts.map(({ name }) => name ?? ''));
  const nested = quilts.length > 1;
  const whole = nested && wants('pattern') ? [patternFile(snapshot, made, '')] : [];
  return [...whole, ...made.flatMap((quilt) => quiltFiles(snapshot, quilts, quilt, { wants, folder: nested ? `${folders[quilts.indexOf(quilt)] ?? ''}/` : '' }))];
}

interface Where {
  readonly wants: (kind: OutputKind) => boolean;
  /** Empty, or a folder with a `/` behind it. */
  readonly folder: string;
}

/** With their best plans. */
function quiltsOf(snapshot: Snapshot, { colorway }: OutputOptions): readonly QuiltView[] {
  const colours = snapshot.pattern.colorways.find(({ name }) => name === colorway);
  return (colours ? snapshot.inColorway(colours) : snapshot.quilts).map((quilt) => quilt.settled);
}

function quiltFiles(snapshot: Snapshot, quilts: readonly QuiltView[], quilt: QuiltView, { wants, folder }: Where): OutputFile[] {
  const source = { pattern: snapshot.pattern, quilts };
  const title = snapshot.pattern.title ?? UNTITLED;
  return [
    ...(wants('quilt') ? [{ path: `${folder}quilt.svg`, content: svgOf(quilt.scene, { title: quilt.name === null ? title : `${title}, ${quilt.name}` }) }] : []),
    ...(wants('blocks') ? blockFiles(quilt.layout.blocks, folder) : []),
    ...(wants('cutting.md') ? [{ path: `${folder}cutting.md`, content: cuttingMarkdown(source, quilt, { drawings: cuttingPaths(quilt) }) }] : []),
    ...(wants('cutting.csv') ? [{ path: `${folder}cutting.csv`, content: cuttingCsv(source, quilt) }] : []),
    ...(wants('cutting.svg') ? cuttingFiles(snapshot, quilt, folder) : []),
    ...(wants('steps.md') ? [{ path: `${folder}steps.md`, content: stepsMarkdown(source, quilt) }] : []),
    ...(wants('steps.svg') ? stepsFiles(snapshot, quilt, folder) : []),
    ...printedFiles(source, quilt, { wants, folder }),
    ...(wants('pattern.svg') ? [{ path: `${folder}pattern.svg`, content: patternSvg(source, quilt) }] : []),
    ...(wants('pattern.xlsx') ? [{ path: `${folder}pattern.xlsx`, content: printing().workbookBytes(workbookOf(source, quilt)) }] : []),
    ...(wants('pattern') ? [patternFile(snapshot, [quilt], folder)] : []),
  ];
}

/** What goes to a printer; templates only when a shape needs one. */
function printedFiles(source: BookletSource, quilt: QuiltView, { wants, folder }: Where): OutputFile[] {
  const book = wants('booklet.pdf') || wants('booklet.html') ? bookOf(source, quilt) : undefined;
  const templates = wants('templates.pdf') ? printing().templatesPdf({ pattern: source.pattern, quilt, fonts: fontFiles() }) : undefined;
  return [
    ...(book && wants('booklet.pdf') ? [{ path: `${folder}booklet.pdf`, content: printing().bookletPdf(book, fontFiles()) }] : []),
    ...(book && wants('booklet.html') ? [{ path: `${folder}booklet.html`, content: printing().bookletHtml(book) }] : []),
    ...(templates ? [{ path: `${folder}templates.pdf`, content: templates }] : []),
  ];
}

function patternFile({ pattern }: Snapshot, quilts: readonly QuiltView[], folder: string): OutputFile {
  return { path: `${folder}pattern.json`, content: patternJson({ pattern, quilts }) };
}

/** Where each fabric's cutting layout is drawn, in the order of the plan. */
function cuttingPaths({ plan }: QuiltView): readonly string[] {
  return fileNames(plan.fabrics.map(({ fabric }) => fabric.name)).map((name) => `cutting/${name}.svg`);
}

/** How each fabric is cut; nothing for one of which no piece fits. */
function cuttingFiles({ pattern }: Snapshot, quilt: QuiltView, folder: string): OutputFile[] {
  const { fabrics, pieces } = quilt.plan;
  const paths = cuttingPaths(quilt);
  return fabrics.map((plan, i) => ({ path: `${folder}${paths[i] ?? ''}`, content: svgOf(cuttingDrawing(plan, pieces, pattern.rules.units)) }));
}

/** The drawings that steps.md names. */
function stepsFiles({ pattern }: Snapshot, quilt: QuiltView, folder: string): OutputFile[] {
  return stepsDrawings(quilt, pattern.rules).map(({ path, scene }) => ({ path: `${folder}${path}`, content: svgOf(scene) }));
}

function blockFiles(blocks: readonly Pick<BlockInQuilt, 'name' | 'layout'>[], folder: string): OutputFile[] {
  const names = fileNames(blocks.map(({ name }) => name));
  return blocks.map(({ layout }, index) => ({ path: `${folder}blocks/${names[index] ?? ''}.svg`, content: svgOf(sceneOfBlock(layout)) }));
}
