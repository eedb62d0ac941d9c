/** Options and file arguments, read the same way by every command. */
import { parseArgs, type ParseArgsConfig } from 'node:util';
import { nearestWord } from '../text/nearest.ts';
import { UsageError } from './io.ts';

type Options = NonNullable<ParseArgsConfig['options']>;
type Parsed<O extends Options> = ReturnType<typeof parseArgs<{ options: O; allowPositionals: true; strict: true }>>;

/** Throws `UsageError` for an unknown option, a missing value or a value too many. */
export function parseOptions<const O extends Options>(argv: readonly string[], options: O): Parsed<O> {
  try {
    return parseArgs({ args: [...argv], options, allowPositionals: true, strict: true });
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    const unknown = /^Unknown option '(--?[^']*)'/.exec(error.message)?.[1];
    if (unknown === undefined) throw new UsageError(error.message.replace(/\.$/, '').replace(/\n/g, ' '));
    throw new UsageError(`unknown option ${unknown}${didYouMean(unknown, Object.keys(options).map((name) => `--${name}`))}`);
  }
}

/** One of a few words. */
export function oneOf<const W extends string>(what: string, value: string, words: readonly W[]): W {
  const found = words.find((word) => word === value);
  if (found === undefined) throw new UsageError(`${what} ${JSON.stringify(value)} is not known${didYouMean(value, words)}: use ${words.join(', ')}`);
  return found;
}

/** `; did you mean "--size"?`, or nothing. */
export function didYouMean(word: string, words: readonly string[]): string {
  const nearest = nearestWord(word, words);
  return nearest === undefined ? '' : `; did you mean ${nearest}?`;
}

/** The values of an option that may be repeated and may hold a list with commas. */
export function listed(values: readonly string[] | undefined): readonly string[] | undefined {
  return values?.flatMap((value) => value.split(',')).map((value) => value.trim()).filter((value) => value !== '');
}

export const HELP_OPTION = { help: { type: 'boolean', short: 'h' } } as const;
