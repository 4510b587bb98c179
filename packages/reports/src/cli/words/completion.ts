// Completion of words and options for a shell, from the program's own tree.
import type { Command } from 'commander';
import { EXIT, Refusal } from '../exit-codes.ts';
import type { Word } from '../word.ts';

const SHELLS = ['bash', 'zsh', 'fish'] as const;

/** Hands out a script for a shell. @param program - With all words in it. */
export const completion = (program: Command): Word => ({
  usage: 'completion <shell>',
  summary: 'completes words, options and choices in your shell',
  description:
    'Writes a script for bash, zsh or fish that completes words, options and their choices, and files. For bash: source <(noonloop completion bash), as a line of ~/.bashrc.',
  example: 'noonloop completion bash',
  run: async ({ files, terminal }) => {
    const shell = files[0]!;
    if (!SHELLS.includes(shell as (typeof SHELLS)[number]))
      throw new Refusal(EXIT.usage, [`found the shell "${shell.slice(0, 40)}", expected one of ${SHELLS.join(', ')}.`]);
    terminal.out(
      shell === 'fish'
        ? fish(program)
        : shell === 'zsh'
          ? `autoload -U bashcompinit && bashcompinit\n${bash(program)}`
          : bash(program),
    );
    return undefined;
  },
});

const visible = (program: Command): readonly Command[] =>
  program.commands.filter((command) => command.name() !== 'help');

const optionsOf = (command: Command): string[] =>
  command.options.flatMap(({ long, short }) => [long, short].filter((flag) => flag != null)).concat('--help');

function bash(program: Command): string {
  const words = visible(program).map((command) => command.name());
  const cases = visible(program).map((command) => `    ${command.name()}) options="${optionsOf(command).join(' ')}";;`);
  const choices = new Map<string, readonly string[]>();
  for (const command of visible(program))
    for (const { long, short, argChoices } of command.options)
      for (const flag of [long, short])
        if (flag != null && argChoices) choices.set(`${command.name()} ${flag}`, argChoices);
  const chosen = [...choices].map(
    ([key, list]) => `    "${key}") COMPREPLY=($(compgen -W "${list.join(' ')}" -- "$now")); return;;`,
  );
  return `_noonloop() {
  local now="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" word="\${COMP_WORDS[1]}" options=""
  if [ "$COMP_CWORD" = 1 ]; then COMPREPLY=($(compgen -W "${words.join(' ')} --help --version" -- "$now")); return; fi
  case "$word $before" in
${chosen.join('\n')}
  esac
  case "$word" in
${cases.join('\n')}
  esac
  case "$now" in
    -*) COMPREPLY=($(compgen -W "$options" -- "$now"));;
    *) COMPREPLY=($(compgen -f -- "$now"));;
  esac
}
complete -o filenames -F _noonloop noonloop
`;
}

function fish(program: Command): string {
  const quoted = (text: string) => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;
  return visible(program)
    .flatMap((command) => [
      `complete -c noonloop -n __fish_use_subcommand -a ${command.name()} -d ${quoted(command.summary())}`,
      ...command.options.map(({ long, short, description, required, argChoices }) =>
        [
          `complete -c noonloop -n '__fish_seen_subcommand_from ${command.name()}'`,
          `-l ${(long ?? '').slice(2)}`,
          short == null ? '' : `-s ${short.slice(1)}`,
          argChoices ? `-x -a ${quoted(argChoices.join(' '))}` : required ? '-r' : '',
          `-d ${quoted(description)}`,
        ]
          .filter((part) => part !== '')
          .join(' '),
      ),
    ])
    .join('\n')
    .concat('\n');
}
