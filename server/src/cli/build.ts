/** `scant build`: the outputs of patterns, once or whenever a file changes. */
import { join, relative, resolve } from 'node:path';
import { build as buildPattern, type Built, type BuildOptions } from '../disk/build.ts';
import { chosenKinds, KIND_WORDS, type OutputKind } from '../disk/kinds.ts';
import { patternName } from '../disk/sources.ts';
import { FAILED, FINE, FOUND, harmless, UsageError, type Command, type Io } from './io.ts';
import { complain, inputsOf, load, type Input } from './inputs.ts';
import { HELP_OPTION, listed, parseOptions } from './options.ts';
import { reportOf, shown } from './problems.ts';
import { plural, problemLines, summaryOf } from './report/text.ts';
import { watch } from './watch.ts';

export const build: Command = {
  name: 'build',
  summary: 'write pictures, cutting lists, booklets and figures',
  help: `scant build FILE… [--out DIR] [--size NAME] [--colorway NAME] [--only KIND,…] [--force] [--watch]

Writes pictures, cutting lists, steps, a booklet (PDF and HTML), templates
where a shape needs one, and figures into out/<file name> beside each file; in
a folder for each size when the pattern names more than one, and there
pattern.json at the top holds them all.
A pattern with errors writes nothing and leaves what was there.
Prints the files that are new or changed, one a line.

  --out DIR         write here; several files or a folder get a folder each in it
  --size NAME       only this size (may be repeated)
  --colorway NAME   in the colours of this colorway
  --only KIND,…     only these: ${KIND_WORDS.join(', ')}
                    (or a file name or format: cutting.csv, svg, json, …)
  --force           overwrite outputs that have been edited by hand
  --watch           build again whenever a file or one it imports changes

Exit code: 0 fine, 1 errors, 2 wrong usage or a file that cannot be read or written.
`,
  async run(argv, io) {
    const { values, positionals } = parseOptions(argv, {
      ...HELP_OPTION,
      out: { type: 'string' },
      size: { type: 'string', multiple: true },
      colorway: { type: 'string' },
      only: { type: 'string', multiple: true },
      force: { type: 'boolean', default: false },
      watch: { type: 'boolean', default: false },
    });
    const only = kindsOf(listed(values.only));
    const sizes = listed(values.size);
    const options: BuildOptions = {
      ...(sizes && { sizes }),
      ...(values.colorway !== undefined && { colorway: values.colorway }),
      ...(only && { only }),
      edited: values.force ? 'overwrite' : 'keep',
    };
    const { inputs, failures } = inputsOf(positionals, io);
    for (const failure of failures) complain(failure, io);
    const jobs = jobsOf(inputs, values.out, io);
    if (values.watch) return watch(jobs.map((job) => () => buildOne(job, options, io).sources), io);
    const codes = jobs.map((job) => buildOne(job, options, io).code);
    return Math.max(FINE, failures.length > 0 ? FAILED : FINE, ...codes);
  },
};

interface Job {
  readonly input: Input;
  readonly out?: string;
}

/** One file named goes into the folder itself; several files, or those of a folder, into a folder each. */
function jobsOf(inputs: readonly Input[], out: string | undefined, io: Io): Job[] {
  if (out === undefined) return inputs.map((input) => ({ input }));
  if (out === '') throw new UsageError('--out needs a folder');
  const folder = resolve(io.folder, out);
  const [first] = inputs;
  if (inputs.length === 1 && first?.folder === undefined) return inputs.map((input) => ({ input, out: folder }));
  const jobs = inputs.map((input) => ({ input, out: join(folder, ownFolder(input)) }));
  const seen = new Map<string, Input>();
  for (const job of jobs) {
    const other = seen.get(job.out.toLowerCase());
    if (other) throw new UsageError(`${other.path} and ${job.input.path} would be written to the same folder`);
    seen.set(job.out.toLowerCase(), job.input);
  }
  return jobs;
}

function ownFolder({ path, folder }: Input): string {
  return folder === undefined ? patternName(path) : join(relative(folder, join(path, '..')), patternName(path));
}

interface Outcome {
  readonly code: number;
  /** The files it was made from, absolute. */
  readonly sources: readonly string[];
}

function buildOne({ input, out }: Job, options: BuildOptions, io: Io): Outcome {
  const loaded = load(input, io);
  if (loaded.kind === 'failed') {
    complain(loaded.why, io);
    return { code: FAILED, sources: [input.absolute] };
  }
  const built = buildPattern(loaded.snapshot, input.absolute, { ...options, ...(out !== undefined && { out }) });
  const report = reportOf(loaded.snapshot, input.path, io);
  const told = { ...report, problems: report.problems.filter(({ severity }) => severity !== 'hint') };
  io.err(problemLines(told, io));
  if (built.kind === 'refused' && built.why === 'errors') io.err(`${harmless(input.path)}: ${summaryOf([report])}; nothing written\n`);
  return { code: tell(built, input, io), sources: [input.absolute, ...loaded.host.asked] };
}

function tell(built: Built, input: Input, io: Io): number {
  if (built.kind === 'refused') {
    if (built.why === 'errors') return FOUND;
    for (const reason of built.reasons) complain(`${input.path}: ${reason}`, io);
    return FAILED;
  }
  const folder = shown(built.folder, io);
  io.out(built.written.map((path) => `${harmless(join(folder, path))}\n`).join(''));
  const parts = [`${plural(built.written.length, 'file')} written`, `${built.unchanged.length} unchanged`, ...(built.removed.length > 0 ? [`${built.removed.length} removed`] : [])];
  io.err(`${harmless(input.path)}: ${parts.join(', ')}\n`);
  return FINE;
}

function kindsOf(words: readonly string[] | undefined): readonly OutputKind[] | undefined {
  if (words === undefined) return undefined;
  if (words.length === 0) throw new UsageError(`--only needs a kind: ${KIND_WORDS.join(', ')}`);
  const chosen = chosenKinds(words);
  if (chosen.kind === 'chosen') return chosen.kinds;
  throw new UsageError(`--only ${JSON.stringify(chosen.word)} is not known: use ${KIND_WORDS.join(', ')}`);
}
