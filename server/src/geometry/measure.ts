/** The setting of a quilt, measured before anything is laid: each kind by its own rules. */
import { ONE } from '../exact/number.ts';
import type { Finding } from '../model/finding.ts';
import { placeIn } from '../text/place.ts';
import type { Place } from '../text/place.ts';
import { NO_PIECES } from './fit.ts';
import { measureOnPoint } from './on-point.ts';
import { measureRows } from './rows.ts';
import type { Measured, QuiltContext } from './setting.ts';
import { measureGrid, measureStraight } from './straight.ts';
import { written } from './written.ts';

export function measureSetting(context: QuiltContext): Measured {
  const { setting, statement } = context.spec;
  switch (setting?.kind) {
    case 'straight':
    case 'on_point':
      if (setting.across < 1 || setting.down < 1) return nothing(setting.place, ['a setting has at least one block across and one down']);
      return setting.kind === 'straight' ? measureStraight(context, setting) : measureOnPoint(context, setting);
    case 'grid':
      return measureGrid(context, setting);
    case 'rows':
      return measureRows(context, setting);
    case undefined: {
      const problem = 'a quilt needs a setting: `straight A by B`, `on_point A by B`, `grid` or `rows`';
      const isThere = written(context.spec, 'straight', 'on_point', 'grid', 'rows', 'junk').length > 0;
      return nothing(placeIn(statement.line, statement.node.word), isThere ? [] : [problem]);
    }
  }
}

function nothing(place: Place, problems: readonly string[]): Measured {
  const findings = problems.map((problem): Finding => ({ rule: 'wrong-argument', place, problem }));
  return { width: ONE, height: ONE, place, patches: 0, findings, lay: () => NO_PIECES };
}
