import type { CommandRow, OptionRow, Takes } from '../program/tables.ts';
import { idCommand } from './ids.ts';

/** Completions for bash 3.2 and later. Where it offers nothing, bash offers files. */
export function bashCompletions(commands: readonly CommandRow[], global: readonly OptionRow[]): string {
  const names = [...commands.map(({ name }) => name), ...wordsOf(global)];
  return `# Completions of plumule for bash.
_plumule() {
  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} command= i
  COMPREPLY=()
  for ((i = 1; i < COMP_CWORD; i++)); do
    if [[ \${COMP_WORDS[i]} != -* ]]; then command=\${COMP_WORDS[i]}; break; fi
  done
  case $command:$before in
${commands.flatMap(({ name, options }) => options.filter(({ takes }) => takes !== 'nothing').map(option => (
  `    ${option.names.map(each => `${name}:${each}`).join('|')}) ${offer(option.takes)}return ;;`))).join('\n')}
  esac
  case $command in
    '') ${offer(names)};;
${commands.map(({ name, options, arguments: [first] }) => (
  `    ${name}) if [[ $word == -* ]]; then ${offer(wordsOf(options))}else ${offer(first?.takes ?? 'nothing') || ':; '}fi ;;`)).join('\n')}
  esac
}
complete -o bashdefault -o default -F _plumule plumule
`;
}

function wordsOf(options: readonly OptionRow[]): string[] {
  return options.flatMap(({ names }) => names);
}

function offer(takes: Takes): string {
  if (takes === 'lots' || takes === 'batches') return `COMPREPLY=($(compgen -W "$(${idCommand(takes)})" -- "$word")); `;
  return typeof takes === 'string' ? '' : `COMPREPLY=($(compgen -W '${takes.join(' ')}' -- "$word")); `;
}
