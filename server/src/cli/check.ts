/** `scant check`: every problem of every file. */
import { FAILED, FINE, FOUND, type Command, type Io } from './io.ts';
import { complain, inputsOf, load } from './inputs.ts';
import { HELP_OPTION, oneOf, parseOptions } from './options.ts';
import { countsOf, reportOf, type FileReport } from './problems.ts';
import { githubReport } from './report/github.ts';
import { jsonReport } from './report/json.ts';
import { sarifReport } from './report/sarif.ts';
import { textReport } from './report/text.ts';

export const check: Command = {
  name: 'check',
  summary: 'say what is wrong with patterns',
  help: `scant check FILE… [--format text|json|sarif|github] [--warnings-as-errors]

Says every problem of every file. Folders are searched for *.quilt files
(not in node_modules, .git and out).

  --format text         one problem a line: path:line:column: severity rule: message
  --format json         lines and characters from 0, in UTF-16 units
  --format sarif        SARIF 2.1.0
  --format github       annotations for a GitHub workflow
  --warnings-as-errors  exit with 1 when there are warnings, too

Exit code: 0 no errors, 1 errors, 2 wrong usage or a file that cannot be read.
`,
  run(argv, io) {
    const { values, positionals } = parseOptions(argv, {
      ...HELP_OPTION,
      format: { type: 'string', default: 'text' },
      'warnings-as-errors': { type: 'boolean', default: false },
    });
    const report = REPORTS[oneOf('format', values.format, FORMATS)];
    const { reports, failures } = judged(positionals, io);
    for (const failure of failures) complain(failure, io);
    io.out(report(reports, io));
    const counts = countsOf(reports);
    if (failures.length > 0) return FAILED;
    return counts.error > 0 || (values['warnings-as-errors'] && counts.warning > 0) ? FOUND : FINE;
  },
};

const FORMATS = ['text', 'json', 'sarif', 'github'] as const;

const REPORTS: Readonly<Record<(typeof FORMATS)[number], (reports: readonly FileReport[], io: Io) => string>> = {
  text: textReport,
  json: jsonReport,
  sarif: sarifReport,
  github: githubReport,
};

/** One file after the other: what has been judged is let go before the next is read. */
function judged(paths: readonly string[], io: Io): { readonly reports: readonly FileReport[]; readonly failures: readonly string[] } {
  const { inputs, failures } = inputsOf(paths, io);
  const results = inputs.map((input): FileReport | string => {
    const loaded = load(input, io);
    return loaded.kind === 'loaded' ? reportOf(loaded.snapshot, input.path, io) : loaded.why;
  });
  return {
    reports: results.filter((result) => typeof result !== 'string'),
    failures: [...failures, ...results.filter((result) => typeof result === 'string')],
  };
}
