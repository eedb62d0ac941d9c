/** The drawings beside steps.md: each unit, each block and the rows of the quilt, drawn apart. */
import { explodedBlock, explodedSetting } from '../drawing/exploded.ts';
import type { Scene } from '../drawing/scene.ts';
import type { Rules } from '../model/pattern.ts';
import { patchesIn } from '../piecing/plan.ts';
import { centreOf } from '../piecing/setting.ts';
import { sewingOf, type QuiltSewing } from '../piecing/sewing.ts';
import type { Unit } from '../piecing/units.ts';
import type { BookletQuilt } from './source.ts';
import { sidesOf } from './steps-blocks.ts';
import { pressDrawing } from './steps-pressing.ts';
import { stepsPlan, type StepsPlan } from './steps-plan.ts';
import { ROWS_DRAWING } from './steps-setting.ts';

export interface Drawing {
  /** As steps.md names it. */
  readonly path: string;
  readonly scene: Scene;
}

/** In the order of the steps. */
export function stepsDrawings(quilt: BookletQuilt, rules: Rules): readonly Drawing[] {
  const sewing = sewingOf(quilt.layout, rules);
  const plan = stepsPlan(sewing);
  const blocks = plan.blocks.flatMap(({ number, sewn: [{ name }], whole, units }): readonly Drawing[] => [
    ...units.map((unit) => unitDrawing(unit, `Unit ${plan.apart.get(unit.number) ?? 0}`, sewing, plan)),
    ...(whole && !plan.apart.has(whole.number) ? [{ ...unitDrawing(whole, name, sewing, plan), path: `steps/block-${number}.svg` }] : []),
    ...(whole && units.length > 0 ? [{ path: pressDrawing(number), scene: explodedBlock(whole.layout, { title: `${name}: pressing`, part: whole.part, sides: sidesOf(whole, sewing), isReady: () => false, apart: 0 }) }] : []),
  ]);
  return [...blocks, ...rowsDrawing(quilt, sewing)];
}

function unitDrawing(unit: Unit, title: string, sewing: QuiltSewing, { apart }: StepsPlan): Drawing {
  const numbers = sewing.units.numbers;
  const isReady = (part: Unit['part']): boolean => part.kind !== 'patch' && numbers.get(part) !== unit.number && apart.has(numbers.get(part) ?? -1);
  return { path: `steps/unit-${apart.get(unit.number) ?? 0}.svg`, scene: explodedBlock(unit.layout, { title, part: unit.part, sides: sidesOf(unit, sewing), isReady }) };
}

function rowsDrawing({ layout }: BookletQuilt, { setting, pressing }: QuiltSewing): readonly Drawing[] {
  const centre = centreOf(setting);
  if (!centre || patchesIn(centre).length < 2) return [];
  return [{ path: ROWS_DRAWING, scene: explodedSetting(layout, setting, { title: 'Rows', part: centre, sides: pressing.setting?.sides ?? [], isReady: () => false }) }];
}
