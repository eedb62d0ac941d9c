/** `scant build`: the outputs of patterns, once or whenever a file changes. */
import { join, relative, resolve } from 'node:path';
import { build as buildPattern, compare, type Built, type BuildOptions, type NotBuilt } from '../disk/build.ts';
import { chosenKinds, KIND_WORDS, type OutputKind } from '../disk/kinds.ts';
import { patternName } from '../disk/sources.ts';
import type { Snapshot } from '../snapshot.ts';
import { FAILED, FINE, FOUND, harmless, UsageError, type Command, type Io } from './io.ts';
import { complain, inputsOf, load, type Input } from './inputs.ts';
import { HELP_OPTION, listed, parseOptions } from './options.ts';
import { reportOf, shown } from './problems.ts';
import { plural, problemLines, summaryOf } from './report/text.ts';
import { watch } from './watch.ts';

export const build: Command = {
  name: 'build',
  summary: 'write pictures, cutting lists, booklets and figures',
  help: `scant build FILE… [--out DIR] [--size NAME] [--colorway NAME] [--only KIND,…] [--force]
                  [--watch] [--check]

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
  --check           write nothing; name the files that a build would change

Exit code: 0 fine, 1 errors or a difference, 2 wrong usage or a file that
cannot be read or written.
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
      check: { type: 'boolean', default: false },
    });
    if (values.watch && values.check) throw new UsageError('--check looks once: leave out --watch');
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
    const making = { options, make: values.check ? comparing : building };
    if (values.watch) return watch(jobs.map((job) => () => buildOne(job, making, io).sources), io);
    const codes = jobs.map((job) => buildOne(job, making, io).code);
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

interface Making {
  readonly options: BuildOptions;
  readonly make: (snapshot: Snapshot, input: Input, options: BuildOptions, io: Io) => NotBuilt | number;
}

function buildOne({ input, out }: Job, { options, make }: Making, io: Io): Outcome {
  const loaded = load(input, io);
  if (loaded.kind === 'failed') {
    complain(loaded.why, io);
    return { code: FAILED, sources: [input.absolute] };
  }
  const report = reportOf(loaded.snapshot, input.path, io);
  const told = { ...report, problems: report.problems.filter(({ severity }) => severity !== 'hint') };
  io.err(problemLines(told, io));
  const made = make(loaded.snapshot, input, { ...options, ...(out !== undefined && { out }) }, io);
  if (typeof made !== 'number' && made.why === 'errors') io.err(`${harmless(input.path)}: ${summaryOf([report])}; nothing written\n`);
  return { code: typeof made === 'number' ? made : codeOf(made, input, io), sources: [input.absolute, ...loaded.host.asked] };
}

function codeOf({ why, reasons }: NotBuilt, input: Input, io: Io): number {
  if (why === 'errors') return FOUND;
  for (const reason of reasons) complain(`${input.path}: ${reason}`, io);
  return FAILED;
}

function building(snapshot: Snapshot, input: Input, options: BuildOptions, io: Io): NotBuilt | number {
  const built: Built = buildPattern(snapshot, input.absolute, options);
  if (built.kind === 'refused') return built;
  list(built.written, built.folder, io);
  const parts = [`${plural(built.written.length, 'file')} written`, `${built.unchanged.length} unchanged`, ...(built.removed.length > 0 ? [`${built.removed.length} removed`] : [])];
  io.err(`${harmless(input.path)}: ${parts.join(', ')}\n`);
  return FINE;
}

function comparing(snapshot: Snapshot, input: Input, options: BuildOptions, io: Io): NotBuilt | number {
  const found = compare(snapshot, input.absolute, options);
  if (found.kind === 'refused') return found;
  const changed = [...found.differing, ...found.leftOver];
  list(changed, found.folder, io);
  io.err(`${harmless(input.path)}: ${changed.length === 0 ? 'as built' : `a build would change ${plural(changed.length, 'file')}`}\n`);
  return changed.length === 0 ? FINE : FOUND;
}

function list(paths: readonly string[], folder: string, io: Io): void {
  const at = shown(folder, io);
  io.out(paths.map((path) => `${harmless(join(at, path))}\n`).join(''));
}

function kindsOf(words: readonly string[] | undefined): readonly OutputKind[] | undefined {
  if (words === undefined) return undefined;
  if (words.length === 0) throw new UsageError(`--only needs a kind: ${KIND_WORDS.join(', ')}`);
  const chosen = chosenKinds(words);
  if (chosen.kind === 'chosen') return chosen.kinds;
  throw new UsageError(`--only ${JSON.stringify(chosen.word)} is not known: use ${KIND_WORDS.join(', ')}`);
}
