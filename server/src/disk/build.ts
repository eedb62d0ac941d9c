/** A pattern's outputs made and written: the one way for the editor and the command line. */
import { dirname } from 'node:path';
import type { Snapshot } from '../snapshot.ts';
import { outputFolder, outputsOf, type OutputOptions } from './outputs.ts';
import { compareOutputs, writeOutputs, type Differences, type Written, type WriteOptions } from './write.ts';

export interface BuildOptions extends OutputOptions {
  /** The output folder; `outputFolder` of the file unless given. */
  readonly out?: string;
  readonly edited?: WriteOptions['edited'];
}

/** `errors`: the pattern has errors. `unknown`: it has no such size or colourway. `failed`: the disk. Nothing was written. */
export interface NotBuilt {
  readonly kind: 'refused';
  readonly folder: string;
  readonly why: 'errors' | 'unknown' | 'failed';
  readonly reasons: readonly string[];
}

export type Built = (Written & { readonly folder: string }) | NotBuilt;

/** Writes the outputs of the pattern file at an absolute path. What was there stays when it is refused. */
export function build(snapshot: Snapshot, path: string, options: BuildOptions = {}): Built {
  const folder = options.out ?? outputFolder(path);
  const refused = whyNot(snapshot, folder, options);
  if (refused) return refused;
  const result = writeOutputs(folder, outputsOf(snapshot, options), {
    stale: staleOf(options),
    edited: options.edited ?? 'keep',
    ...(options.out === undefined && { within: dirname(path) }),
  });
  return result.kind === 'written' ? { ...result, folder } : { kind: 'refused', folder, why: 'failed', reasons: result.reasons };
}

/** Says whether a build would change anything, and writes nothing. */
export function compare(snapshot: Snapshot, path: string, options: BuildOptions = {}): (Differences & { readonly folder: string }) | NotBuilt {
  const folder = options.out ?? outputFolder(path);
  return whyNot(snapshot, folder, options) ?? { ...compareOutputs(folder, outputsOf(snapshot, options), { stale: staleOf(options) }), folder };
}

function whyNot(snapshot: Snapshot, folder: string, options: BuildOptions): NotBuilt | undefined {
  const unknown = unknownNames(snapshot, options);
  if (unknown.length > 0) return { kind: 'refused', folder, why: 'unknown', reasons: unknown };
  if (snapshot.settled.hasErrors) return { kind: 'refused', folder, why: 'errors', reasons: ['the pattern has errors; nothing was written'] };
  return undefined;
}

/** Only a whole build knows what is no longer made. */
function staleOf({ sizes, only }: BuildOptions): 'keep' | 'remove' {
  return sizes === undefined && only === undefined ? 'remove' : 'keep';
}

function unknownNames({ pattern }: Snapshot, { sizes = [], colorway }: OutputOptions): string[] {
  const reasons = sizes.filter((size) => !pattern.sizes.some(({ name }) => name === size)).map((size) => `there is no size ${JSON.stringify(size)}${known(pattern.sizes)}`);
  if (colorway !== undefined && !pattern.colorways.some(({ name }) => name === colorway)) reasons.push(`there is no colorway ${JSON.stringify(colorway)}${known(pattern.colorways)}`);
  return reasons;
}

function known(named: readonly { readonly name: string }[]): string {
  return named.length === 0 ? '; the pattern names none' : `: the pattern has ${named.map(({ name }) => name).join(', ')}`;
}
