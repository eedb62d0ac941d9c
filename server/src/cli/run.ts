/** The command line without the process around it: arguments in, texts out, an exit code. */
import { FAILED, FINE, harmless, UsageError, type Command, type Io } from './io.ts';
import { didYouMean } from './options.ts';
import { VERSION } from './version.ts';

/** Runs one command; `argv` begins with its name. Resolves with the exit code. */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  const [name, ...rest] = argv;
  if (name === '--version' || name === '-V') return say(`scant ${VERSION}\n`, io);
  if (name === '--help' || name === '-h' || name === 'help') return help(rest[0], io);
  const command = await commandOf(name);
  if (!command) return misused(name === undefined ? 'name a command' : unknown(name), undefined, io);
  if (asksForHelp(rest)) return say(command.help, io);
  try {
    return await command.run(rest, io);
  } catch (error) {
    if (error instanceof UsageError) return misused(error.message, command, io);
    throw error;
  }
}

/** Each is read when it is called for: the grammar takes a while to wake up. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  check: async () => (await import('./check.ts')).check,
  build: async () => (await import('./build.ts')).build,
  format: async () => (await import('./format.ts')).format,
  explain: async () => (await import('./explain.ts')).explain,
  new: async () => (await import('./new.ts')).fresh,
  lsp: async () => (await import('./lsp.ts')).lsp,
  completion: async () => (await import('./completion.ts')).completion,
};

function commandOf(name: string | undefined): Promise<Command> | undefined {
  return name !== undefined && Object.hasOwn(COMMANDS, name) ? COMMANDS[name]?.() : undefined;
}

async function help(name: string | undefined, io: Io): Promise<number> {
  const command = await commandOf(name);
  if (name !== undefined && !command) return misused(unknown(name), undefined, io);
  return say(command?.help ?? (await overview()), io);
}

async function overview(): Promise<string> {
  const commands = await Promise.all(Object.values(COMMANDS).map((load) => load()));
  const lines = commands.map(({ name, summary }) => `  scant ${name.padEnd(10)} ${summary}`);
  return `scant: quilt patterns as text\n\n${lines.join('\n')}\n\nscant COMMAND --help tells more. scant --version prints the version.\n`;
}

function asksForHelp(argv: readonly string[]): boolean {
  const end = argv.indexOf('--');
  return (end < 0 ? argv : argv.slice(0, end)).some((word) => word === '--help' || word === '-h');
}

function unknown(name: string): string {
  return `there is no command ${JSON.stringify(name)}${didYouMean(name, Object.keys(COMMANDS))}`;
}

function say(text: string, io: Io): number {
  io.out(text);
  return FINE;
}

function misused(message: string, command: Command | undefined, io: Io): number {
  const name = command ? `scant ${command.name}` : 'scant';
  io.err(`${name}: ${harmless(message)}\nTry \`${name} --help\`.\n`);
  return FAILED;
}
