/** What a command line command has of the world: where it runs, where it writes, and how it ends. */

export interface Io {
  /** Absolute. */
  readonly folder: string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** A person reads `out` on a terminal. */
  readonly terminal: boolean;
  readonly colour: boolean;
  /** Comes when the person has had enough; asked for by a command that would run for ever. */
  readonly stop: () => AbortSignal;
}

/** Fine. */
export const FINE = 0;
/** The pattern has errors, or `--check` found a difference. */
export const FOUND = 1;
/** Wrong usage, or a file that cannot be read or written. */
export const FAILED = 2;

/** Wrong usage; the message says what, without a full stop. */
export class UsageError extends Error {}

export interface Command {
  readonly name: string;
  readonly summary: string;
  /** The whole of `--help`. */
  readonly help: string;
  /** Returns the exit code; throws `UsageError`. */
  readonly run: (argv: readonly string[], io: Io) => number | Promise<number>;
}

/** A text for a terminal or a log line: nothing in it can move the cursor, ring or turn the reading direction. */
export function harmless(text: string): string {
  return text.replace(UNPRINTABLE, '\uFFFD');
}

/** As `harmless`, with columns unmoved: a tab is one blank. */
export function printableLine(text: string): string {
  return harmless(text.replaceAll('\t', ' '));
}

export type Paint = 'red' | 'yellow' | 'blue' | 'dim' | 'bold';

export function painted(text: string, paint: Paint, io: Pick<Io, 'colour'>): string {
  return io.colour ? `\u001b[${CODES[paint]}m${text}\u001b[0m` : text;
}

const CODES: Readonly<Record<Paint, number>> = { red: 31, yellow: 33, blue: 34, dim: 2, bold: 1 };

const UNPRINTABLE = /[\p{Cc}\u2028\u2029\u202A-\u202E\u2066-\u2069]/gu;
