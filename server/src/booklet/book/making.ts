/** How it is sewn: units and blocks, the quilt top, finishing. The sentences are those of steps.md; drawings stand beside them. */
import { toNumber } from '../../exact/number.ts';
import type { Scene, SceneLabel } from '../../drawing/scene.ts';
import { sceneOfBlock, sceneOfQuilt } from '../../drawing/build.ts';
import { rowsOf } from '../../piecing/setting.ts';
import { sewingOf, type QuiltSewing } from '../../piecing/sewing.ts';
import { blockChapters, type Chapter } from '../steps-blocks.ts';
import { stepsDrawings } from '../steps-drawings.ts';
import { finishChapters } from '../steps-finish.ts';
import { stepsPlan, type BlockSteps } from '../steps-plan.ts';
import { saidOf, type Said } from '../steps-said.ts';
import { ROWS_DRAWING, settingChapters } from '../steps-setting.ts';
import { pressDrawing, pressLines, pressTable, type PressWords } from '../steps-pressing.ts';
import { rawSize } from '../steps-units.ts';
import type { Block, BookChapter, Figure, List } from './book.ts';
import type { BookContext } from './context.ts';

/** The chapters of the making; the author's own words instead where they replace the steps. */
export function makingChapters(context: BookContext): readonly BookChapter[] {
  const { source, quilt, words: { making }, print } = context;
  const { rules } = source.pattern;
  const sewing = sewingOf(quilt.layout, rules);
  const plan = stepsPlan(sewing);
  const said = saidOf(source, quilt, plan.blocks, print);
  const steps: Steps = { context, scenes: new Map(stepsDrawings(quilt, rules).map(({ path, scene }) => [path, scene])) };
  const words: PressWords = { quilt, sewing, plan, rules, print };
  if (said.instead) return [{ id: 'steps', title: making.steps, begins: 'page', blocks: [settingDiagram(sewing, context), ...prose(said.instead)] }];
  const language = inEnglish(context);
  const blocks = plan.blocks.flatMap((block) => blockBlocks(block, blockChapters(block, words), said, steps));
  return [
    { id: 'blocks', title: making.units, begins: 'page', ...language, blocks: [{ kind: 'list', ordered: false, items: [...making.intro, making.arrows] }, ...blocks] },
    ...pressingChapter(words, steps).map((chapter) => ({ ...chapter, ...language })),
    { id: 'setting', title: making.setting, begins: 'page', ...language, blocks: settingBlocks(words, steps) },
    { id: 'finishing', title: making.finishing, begins: 'here', ...language, blocks: finishChapters(words).flatMap((chapter) => chapterBlocks(chapter, steps)) },
  ];
}

/** The sentences of the steps are English so far, in a booklet of any language. */
function inEnglish({ words }: BookContext): Pick<BookChapter, 'language'> {
  return words.tag === 'en' ? {} : { language: 'en' };
}

interface Steps {
  readonly context: BookContext;
  /** By the paths that the steps name them by. */
  readonly scenes: ReadonlyMap<string, Scene>;
}

/** Every kind of seam in a table, and the blocks with all their arrows; none for a quilt without seams. */
function pressingChapter(words: PressWords, { context, scenes }: Steps): readonly BookChapter[] {
  const { words: { making } } = context;
  const { rows } = pressTable(words);
  if (rows.length === 0) return [];
  const figures = words.plan.blocks.flatMap(({ number, sewn }): readonly Figure[] => {
    const scene = scenes.get(pressDrawing(number));
    return scene ? [{ kind: 'figure', scene, alt: making.stepAlt(scene.title), caption: sewn.map(({ name }) => name).join(', '), size: 'small' }] : [];
  });
  const table: Block = { kind: 'table', title: making.pressing, head: making.pressingHead, rows: rows.map((cells) => cells.map((markdown) => ({ text: { markdown } }))) };
  const lines = pressLines(words).map((markdown): Block => ({ kind: 'paragraph', text: { markdown } }));
  return [{ id: 'pressing', title: making.pressing, begins: 'page', blocks: [...lines, ...(figures.length > 0 ? [{ kind: 'figures', figures } as const] : []), table] }];
}

/** The quilt as it is set beside its parts drawn apart, then the steps. */
function settingBlocks(words: PressWords, steps: Steps): readonly Block[] {
  const { context: { words: { making } }, scenes } = steps;
  const apart = scenes.get(ROWS_DRAWING);
  const figures = [settingDiagram(words.sewing, steps.context), ...(apart ? [{ kind: 'figure', scene: apart, alt: making.rowsAlt, caption: making.arrows, size: 'middle' } as const] : [])];
  const [middle, ...borders] = settingChapters(words);
  const list = middle ? [listOf(middle.lines, scenes)] : [];
  return [{ kind: 'figures', figures }, ...list, ...borders.flatMap((chapter) => chapterBlocks(chapter, steps))];
}

/** The heading, the block in its fabrics, what the author says before it, its units, itself, what the author says after it. */
function blockBlocks(block: BlockSteps, chapters: readonly Chapter[], said: Said, steps: Steps): readonly Block[] {
  const [first, ...rest] = chapters;
  if (!first) return [];
  return [
    { kind: 'heading', level: 2, text: { markdown: first.title } },
    blockFigures(block, steps.context),
    ...prose(said.before(block)),
    ...chapterBlocks({ ...first, title: '' }, steps),
    ...rest.flatMap((chapter) => chapterBlocks(chapter, steps)),
    ...prose(said.after(block)),
  ];
}

function blockFigures({ sewn }: BlockSteps, { source: { pattern: { rules } }, words: { making }, print }: BookContext): Block {
  const figures = sewn.map(({ name, layout }): Figure => ({
    kind: 'figure',
    scene: sceneOfBlock(layout),
    alt: making.blockAlt(name),
    caption: making.block(name, print.size(layout), print.size(rawSize(layout, rules.seam))),
    size: 'small',
  }));
  return { kind: 'figures', figures };
}

function prose(texts: readonly string[]): readonly Block[] {
  return texts.map((markdown) => ({ kind: 'prose', markdown }));
}

/** The drawing that the lines name stands beside them. */
function chapterBlocks({ title, level, lines }: Chapter, { context, scenes }: Steps): readonly Block[] {
  const heading: readonly Block[] = title === '' ? [] : [{ kind: 'heading', level: level === 2 ? 2 : 3, text: { markdown: title } }];
  const scene = scenes.get(lines.map((line) => pathIn(line, scenes)).find((path) => path !== undefined) ?? '');
  const list = listOf(lines, scenes);
  if (!scene) return [...heading, ...(list.items.length > 0 ? [list] : [])];
  const figure: Figure = { kind: 'figure', scene, alt: context.words.making.stepAlt(scene.title), size: 'small' };
  return [...heading, { kind: 'step', figure, list }];
}

/** A line that names a drawing says nothing where the drawing is. */
function listOf(lines: readonly string[], scenes: Steps['scenes']): List {
  return { kind: 'list', ordered: true, items: lines.filter((line) => pathIn(line, scenes) === undefined).map((markdown) => ({ markdown })) };
}

function pathIn(line: string, scenes: Steps['scenes']): string | undefined {
  return [...scenes.keys()].find((path) => line.includes(`\`${path}\``));
}

/** The quilt with a number at the beginning of every row. */
function settingDiagram(sewing: QuiltSewing, { quilt, words: { making } }: BookContext): Figure {
  const scene = sceneOfQuilt(quilt.layout);
  const rows = rowsOf(sewing.setting);
  const labels = rows.length > 1 ? rows.map((row, i) => rowLabel(row, i + 1, sewing, scene)) : [];
  return { kind: 'figure', scene: { ...scene, ...(labels.length > 0 && framed(scene, labels)) }, alt: making.settingAlt(Math.max(1, rows.length)), ...(labels.length > 0 && { caption: making.rows }), size: 'middle' };
}

/** In the middle of the row's part that lies furthest to the left, the lowest of those. */
function rowLabel(row: readonly number[], number: number, { setting }: QuiltSewing, scene: Scene): SceneLabel {
  const middles = row.map((part) => {
    const corners = (setting.parts[part]?.outline ?? []).map(({ x, y }) => [toNumber(x), toNumber(y)] as const);
    const mean = (axis: 0 | 1): number => corners.reduce((sum, corner) => sum + corner[axis], 0) / Math.max(1, corners.length);
    return { x: mean(0), y: mean(1) };
  });
  const [first] = middles.sort((a, b) => a.x - b.x || b.y - a.y);
  return { text: `${number}`, x: first?.x ?? 0, y: first?.y ?? 0, from: 'middle', size: Math.max(scene.width, scene.height) / 28, fill: '#000000' };
}

/** A white disc lies under each number, so that it reads on any fabric. */
function framed(scene: Scene, labels: readonly SceneLabel[]): Pick<Scene, 'items' | 'labels'> {
  const discs = labels.map(({ x, y, size }) => {
    const reach = size * 0.75;
    return { kind: 'shape', points: [x - reach, y, x, y - reach, x + reach, y, x, y + reach], arcs: [reach, reach, reach, reach], fill: '#ffffff', fabric: '', source: -1, over: NUMBERS } as const;
  });
  return { items: [...scene.items, ...discs], labels };
}

/** Above everything else. */
const NUMBERS = 1000;
