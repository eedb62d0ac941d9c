/** `scant format`: the canonical layout. */
import { reasonOf } from '../disk/failures.ts';
import { readPattern } from '../disk/sources.ts';
import { replaceFile } from '../disk/replace.ts';
import { formatTree } from '../syntax/format.ts';
import { parse } from '../syntax/parse.ts';
import { documentOf } from '../text/document.ts';
import { complain, inputsOf, type Input } from './inputs.ts';
import { FAILED, FINE, FOUND, harmless, type Command, type Io } from './io.ts';
import { HELP_OPTION, parseOptions } from './options.ts';

export const format: Command = {
  name: 'format',
  summary: 'give patterns their canonical layout',
  help: `scant format FILE… [--check]

Gives patterns their canonical layout, in place. Comments stay, the meaning
stays. Prints the files that were changed.

  --check   change nothing; print the files that would be (exit code 1)
`,
  run(argv, io) {
    const { values, positionals } = parseOptions(argv, { ...HELP_OPTION, check: { type: 'boolean', default: false } });
    const { inputs, failures } = inputsOf(positionals, io);
    for (const failure of failures) complain(failure, io);
    const codes = inputs.map((input) => formatOne(input, values.check ? 'check' : 'write', io));
    return Math.max(failures.length > 0 ? FAILED : FINE, ...codes);
  },
};

function formatOne(input: Input, mode: 'check' | 'write', io: Io): number {
  const reading = readPattern(input.absolute);
  if (reading.kind === 'failed') {
    complain(`cannot read ${input.path}: ${reading.why}`, io);
    return FAILED;
  }
  const better = formatTree(parse(documentOf(input.absolute, reading.text)));
  if (better === reading.text) return FINE;
  try {
    const mark = reading.mark ? '\uFEFF' : '';
    if (mode === 'write') replaceFile(input.absolute, mark + better, mark + reading.text);
  } catch (error) {
    complain(`cannot write ${input.path}: ${reasonOf(error)}`, io);
    return FAILED;
  }
  io.out(`${harmless(input.path)}\n`);
  return mode === 'check' ? FOUND : FINE;
}
