/** `not-yet`: what the language has and the tool cannot work out so far. It is said, never guessed. */
import type { Fabric } from '../model/pattern.ts';
import type { Statement, StatementKind, Tree } from '../syntax/tree.ts';
import { placeIn } from '../text/place.ts';
import type { Problem } from '../text/problem.ts';
import { quiltExample } from './example.ts';
import { findingsOf, type Rule } from './rule.ts';

export const notYet: Rule = {
  id: 'not-yet',
  severity: 'hint',
  title: 'Not worked out yet',
  why: 'The language is larger than the tool so far. A construct that is understood but not worked out yet is named here, and nothing it would change is given as a number.',
  bad: quiltExample('block Buoy 4" {\n  templates\n  ink sand\n  sand ink\n}'),
  good: quiltExample('block Buoy 4" {\n  ink sand\n  sand ink\n}'),
  mends: ['Leave it in: a later version gives it its meaning.'],
  find: (context) => [
    ...statementsNotYet(context.tree),
    ...context.quilts.flatMap(({ plan }) => plan.unplanned.map(({ fabric }) => fabricNotYet(fabric))),
    ...findingsOf(context, 'not-yet').map(({ place, what }) => ({ rule: 'not-yet' as const, place, message: `not yet: ${what}` })),
  ],
};

/** The planner cuts from yardage so far. */
function fabricNotYet(fabric: Fabric): Problem {
  const message = `not yet: how much of \`${fabric.name}\` to buy; its pieces are listed, but only yardage is planned so far`;
  return { rule: 'not-yet', place: fabric.place, message };
}

/** Statements that are read and checked, but that no output follows so far. */
const NOT_YET: Partial<Record<StatementKind, string>> = {
  templates: 'printed shapes are not drawn, so `templates` changes nothing',
  foundation: 'foundation sheets are not drawn, so `foundation` changes nothing',
  paper: 'no booklet is printed, so `paper` changes nothing',
};

function statementsNotYet(tree: Tree): readonly Problem[] {
  const found: Problem[] = [];
  const visit = (statements: readonly Statement[]): void => {
    for (const { node, line, body } of statements) {
      const what = NOT_YET[node.kind];
      if (what !== undefined) found.push({ rule: 'not-yet', place: placeIn(line, node.word), message: `not yet: ${what}` });
      if (body) visit(body.statements);
    }
  };
  visit(tree.statements);
  return found;
}
