/** A pattern's outputs made and written: the one way for the editor and the command line. */
import { dirname } from 'node:path';
import type { Snapshot } from '../snapshot.ts';
import { outputFolder, outputsOf, type OutputOptions } from './outputs.ts';
import { writeOutputs, type Written, type WriteOptions } from './write.ts';

export interface BuildOptions extends OutputOptions {
  /** The output folder; `outputFolder` of the file unless given. */
  readonly out?: string;
  readonly edited?: WriteOptions['edited'];
}

export type Built =
  | (Written & { readonly folder: string })
  /** `errors`: the pattern has errors. `unknown`: it has no such size or colourway. `failed`: the disk. Nothing was written. */
  | { readonly kind: 'refused'; readonly folder: string; readonly why: 'errors' | 'unknown' | 'failed'; readonly reasons: readonly string[] };

/** Writes the outputs of the pattern file at an absolute path. What was there stays when it is refused. */
export function build(snapshot: Snapshot, path: string, options: BuildOptions = {}): Built {
  const folder = options.out ?? outputFolder(path);
  const refused = (why: 'errors' | 'unknown' | 'failed', reasons: readonly string[]): Built => ({ kind: 'refused', folder, why, reasons });
  const unknown = unknownNames(snapshot, options);
  if (unknown.length > 0) return refused('unknown', unknown);
  if (snapshot.settled.hasErrors) return refused('errors', ['the pattern has errors; nothing was written']);
  const whole = options.sizes === undefined && options.only === undefined;
  const result = writeOutputs(folder, outputsOf(snapshot, options), {
    stale: whole ? 'remove' : 'keep',
    edited: options.edited ?? 'keep',
    ...(options.out === undefined && { within: dirname(path) }),
  });
  return result.kind === 'written' ? { ...result, folder } : refused('failed', result.reasons);
}

function unknownNames({ pattern }: Snapshot, { sizes = [], colorway }: OutputOptions): string[] {
  const reasons = sizes.filter((size) => !pattern.sizes.some(({ name }) => name === size)).map((size) => `there is no size ${JSON.stringify(size)}${known(pattern.sizes)}`);
  if (colorway !== undefined && !pattern.colorways.some(({ name }) => name === colorway)) reasons.push(`there is no colorway ${JSON.stringify(colorway)}${known(pattern.colorways)}`);
  return reasons;
}

function known(named: readonly { readonly name: string }[]): string {
  return named.length === 0 ? '; the pattern names none' : `: the pattern has ${named.map(({ name }) => name).join(', ')}`;
}
