/** The scripts themselves, each in the manner of its shell. Only words of our own go into them: nothing needs to be quoted. */

export const SHELLS = ['bash', 'zsh', 'fish'] as const;

/** The words that a command, or an option, is followed by. */
export type Next = 'files' | readonly string[];

export type Words = Readonly<Record<string, { readonly options: Readonly<Record<string, Next | 'flag'>>; readonly then: Next }>>;

export function completionOf(shell: (typeof SHELLS)[number], words: Words): string {
  return { bash, zsh, fish }[shell](words);
}

function bash(words: Words): string {
  const cases = Object.entries(words).map(([command, { options, then }]) => {
    const values = withValues(options).map(([option, next]) => `        ${option}) ${bashWords(next)}; return ;;\n`).join('');
    const flags = Object.keys(options).join(' ');
    return `    ${command})\n${values === '' ? '' : `      case $before in\n${values}      esac\n`}      case $word in -*) COMPREPLY=($(compgen -W "${flags} --help" -- "$word")); return ;; esac\n      ${bashWords(then)} ;;\n`;
  });
  return `# Completions of scant for bash.
_scant() {
  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]}
  COMPREPLY=()
  if [ "$COMP_CWORD" = 1 ]; then COMPREPLY=($(compgen -W "${Object.keys(words).join(' ')} --help --version" -- "$word")); return; fi
  case \${COMP_WORDS[1]} in
${cases.join('')}  esac
}
complete -o filenames -o bashdefault -F _scant scant
`;
}

function bashWords(next: Next): string {
  return next === 'files' ? 'COMPREPLY=($(compgen -f -- "$word"))' : `COMPREPLY=($(compgen -W "${next.join(' ')}" -- "$word"))`;
}

function zsh(words: Words): string {
  const cases = Object.entries(words).map(([command, { options, then }]) => {
    const specs = Object.entries(options).map(([option, next]) => (next === 'flag' ? `'${option}'` : `'${option}:value:${zshAction(next)}'`));
    return `    ${command}) _arguments ${[...specs, `'--help'`, `'*:word:${zshAction(then)}'`].join(' ')} ;;\n`;
  });
  return `#compdef scant
# Completions of scant for zsh.
_scant() {
  if (( CURRENT == 2 )); then compadd -- ${Object.keys(words).join(' ')} --help --version; return; fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
${cases.join('')}  esac
}
if [ "$funcstack[1]" = "_scant" ]; then _scant "$@"; else compdef _scant scant; fi
`;
}

function zshAction(next: Next): string {
  return next === 'files' ? '_files' : `(${next.join(' ')})`;
}

function fish(words: Words): string {
  const commands = Object.keys(words).join(' ');
  const lines = Object.entries(words).flatMap(([command, { options, then }]) => {
    const here = `complete -c scant -n '__fish_seen_subcommand_from ${command}'`;
    return [
      ...Object.entries(options).map(([option, next]) => `${here} -l ${option.slice(2)}${next === 'flag' ? '' : ` -r${fishWords(next)}`}`),
      ...(then === 'files' ? [] : [`${here}${fishWords(then)}`]),
    ];
  });
  const noFiles = Object.entries(words).filter(([, { then }]) => then !== 'files').map(([command]) => command).join(' ');
  return `# Completions of scant for fish.
complete -c scant -n '__fish_use_subcommand' -f -a '${commands}'
complete -c scant -n '__fish_use_subcommand' -l version
complete -c scant -l help
complete -c scant -n '__fish_seen_subcommand_from ${noFiles}' -f
${lines.join('\n')}
`;
}

function fishWords(next: Next): string {
  return next === 'files' ? ' -F' : next.length === 0 ? ' -f' : ` -f -a '${next.join(' ')}'`;
}

function withValues(options: Readonly<Record<string, Next | 'flag'>>): (readonly [string, Next])[] {
  return Object.entries(options).flatMap(([option, next]) => (next === 'flag' ? [] : [[option, next] as const]));
}
