/** Sewing order: the steps one by one, each with the drawing of what is being made. */
import { blockChapters, type Chapter } from '../../booklet/steps-blocks.ts';
import { stepsDrawings } from '../../booklet/steps-drawings.ts';
import { finishChapters } from '../../booklet/steps-finish.ts';
import { stepsPlan } from '../../booklet/steps-plan.ts';
import { settingChapters } from '../../booklet/steps-setting.ts';
import { printerFor } from '../../booklet/words.ts';
import type { Scene } from '../../drawing/scene.ts';
import { sewingOf } from '../../piecing/sewing.ts';
import type { QuiltView, Snapshot } from '../../snapshot.ts';
import { chosen } from '../picture.ts';
import { EMPTY, type View, type ViewChoice } from './view.ts';

interface Made {
  readonly title: string;
  readonly text: string;
  readonly scene: Scene;
}

export function sewingView(snapshot: Snapshot, choice: ViewChoice): View {
  const quilt = chosen(snapshot, choice);
  const steps = quilt?.spec.setting ? stepsOf(snapshot, quilt) : [];
  const number = Math.min(Math.max(choice.step ?? 1, 1), steps.length);
  const step = steps[number - 1];
  if (!step) return { ...EMPTY, notes: ['There is nothing to sew yet: write a quilt.'] };
  return { ...EMPTY, scene: step.scene, step: { number, count: steps.length, title: step.title, text: step.text } };
}

const known = new WeakMap<QuiltView['layout'], readonly Made[]>();

function stepsOf(snapshot: Snapshot, quilt: QuiltView): readonly Made[] {
  const found = known.get(quilt.layout) ?? findSteps(snapshot, quilt);
  known.set(quilt.layout, found);
  return found;
}

/** What has no drawing of its own is shown on the whole quilt. */
function findSteps({ pattern: { rules } }: Snapshot, quilt: QuiltView): readonly Made[] {
  const sewing = sewingOf(quilt.layout, rules);
  const words = { quilt, sewing, plan: stepsPlan(sewing), rules, print: printerFor(rules.units) };
  const drawings = new Map(stepsDrawings(quilt, rules).map(({ path, scene }) => [path, scene]));
  const blocks = words.plan.blocks.flatMap((block) => blockChapters(block, words));
  return [...blocks, ...settingChapters(words), ...finishChapters(words)].flatMap((chapter) => stepsIn(chapter, drawings, quilt.scene));
}

/** A line that names a drawing shows it from there on. */
function stepsIn({ title, lines }: Chapter, drawings: ReadonlyMap<string, Scene>, whole: Scene): readonly Made[] {
  let scene = whole;
  return lines.map((line) => {
    const path = /`(steps\/[^`]*)`/.exec(line)?.[1];
    scene = (path === undefined ? undefined : drawings.get(path)) ?? scene;
    return { title: unmarked(title), text: unmarked(line.replace(/: `steps\/[^`]*`/, '')), scene };
  });
}

/** Without the marks of Markdown. */
function unmarked(text: string): string {
  return text.replace(/\*\*|(?<!\\)`/g, '').replace(/\\(.)/g, '$1');
}
