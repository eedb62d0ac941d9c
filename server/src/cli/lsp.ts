/** `scant lsp`: the language server, for any editor. */
import { UsageError, type Command } from './io.ts';
import { HELP_OPTION, parseOptions } from './options.ts';

export const lsp: Command = {
  name: 'lsp',
  summary: 'run the language server, for any editor',
  help: `scant lsp --stdio

Runs the language server (Language Server Protocol 3.17) on standard input and
output.
`,
  async run(argv) {
    const { values, positionals } = parseOptions(argv, { ...HELP_OPTION, stdio: FLAG, 'node-ipc': FLAG, clientProcessId: { type: 'string' } });
    if (positionals.length > 0 || values.stdio === values['node-ipc']) throw new UsageError('say --stdio');
    const { startServer } = await import('../lsp/main.ts');
    startServer();
    // The server ends the process when its connection ends.
    return new Promise<number>(() => undefined);
  },
};

/** `--node-ipc` is how the extension speaks with it, through the channel that Node gives a forked process. */
const FLAG = { type: 'boolean', default: false } as const;
