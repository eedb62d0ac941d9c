/** `scant explain`: the page of a rule, or the list of rules. */
import { explanationOf } from '../checks/explain.ts';
import { RULES, ruleOf } from '../checks/list.ts';
import { RULE_IDS } from '../text/problem.ts';
import { FINE, UsageError, type Command } from './io.ts';
import { didYouMean, HELP_OPTION, parseOptions } from './options.ts';

export const explain: Command = {
  name: 'explain',
  summary: 'tell why a rule matters, with an example and the usual mends',
  help: `scant explain [RULE]

Prints the page of a rule as Markdown: why it matters, an example, the usual
mends. Without a rule, the list of all rules.
`,
  run(argv, io) {
    const { positionals } = parseOptions(argv, HELP_OPTION);
    const [id, more] = positionals;
    if (more !== undefined) throw new UsageError('name one rule');
    if (id === undefined) {
      const width = Math.max(...RULES.map((rule) => rule.id.length));
      io.out(RULES.map((rule) => `${rule.id.padEnd(width)}  ${rule.severity.padEnd(7)}  ${rule.title}\n`).join(''));
      return FINE;
    }
    const rule = ruleOf(id);
    if (!rule && RULE_IDS.some((known) => known === id)) throw new UsageError(`the rule ${id} is not yet checked by this version`);
    if (!rule) throw new UsageError(`there is no rule ${JSON.stringify(id)}${didYouMean(id, RULES.map((each) => each.id))} (scant explain lists them)`);
    io.out(explanationOf(rule));
    return FINE;
  },
};
