/** `scant completion`: what a shell needs to complete commands, options and their values. */
import { RULES } from '../checks/list.ts';
import { KIND_WORDS } from '../disk/kinds.ts';
import { completionOf, SHELLS, type Words } from './completion-scripts.ts';
import { UsageError, FINE, type Command } from './io.ts';
import { HELP_OPTION, oneOf, parseOptions } from './options.ts';

export const completion: Command = {
  name: 'completion',
  summary: 'print completions for a shell',
  help: `scant completion bash|zsh|fish

Prints a script that completes commands, options, kinds of outputs and rules:

  bash  scant completion bash > ~/.local/share/bash-completion/completions/scant
  zsh   scant completion zsh > ~/.zfunc/_scant    (in a folder of fpath)
  fish  scant completion fish > ~/.config/fish/completions/scant.fish
`,
  run(argv, io) {
    const { positionals } = parseOptions(argv, HELP_OPTION);
    const [shell, more] = positionals;
    if (shell === undefined || more !== undefined) throw new UsageError(`name a shell: ${SHELLS.join(', ')}`);
    io.out(completionOf(oneOf('shell', shell, SHELLS), words()));
    return FINE;
  },
};

/** What may stand behind each command. */
function words(): Words {
  const files = 'files' as const;
  return {
    check: { options: { '--format': ['text', 'json', 'sarif', 'github'], '--warnings-as-errors': 'flag' }, then: files },
    build: { options: { '--out': files, '--size': [], '--colorway': [], '--only': KIND_WORDS, '--force': 'flag', '--watch': 'flag' }, then: files },
    format: { options: { '--check': 'flag' }, then: files },
    explain: { options: {}, then: RULES.map(({ id }) => id) },
    new: { options: {}, then: files },
    lsp: { options: { '--stdio': 'flag' }, then: [] },
    completion: { options: {}, then: SHELLS },
    help: { options: {}, then: ['check', 'build', 'format', 'explain', 'new', 'lsp', 'completion'] },
  };
}
