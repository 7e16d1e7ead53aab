import type { ArgumentRow, CommandRow, OptionRow, Takes } from '../program/tables.ts';
import { idCommand } from './ids.ts';

/** Completions for zsh, as a file `_plumule` on its path of functions, or sourced. */
export function zshCompletions(commands: readonly CommandRow[], global: readonly OptionRow[]): string {
  return `#compdef plumule
# Completions of plumule for zsh.
_plumule_lots() { compadd -- \${(f)"$(${idCommand('lots')})"} }
_plumule_batches() { compadd -- \${(f)"$(${idCommand('batches')})"} }
_plumule() {
  local curcontext=$curcontext state line
  local -a commands=(
${commands.map(({ name, summary }) => `    ${quoted(`${name}:${summary}`)}`).join('\n')}
  )
  _arguments -C ${global.flatMap(optionSpecs).join(' ')} '1: :->command' '*:: :->rest'
  case $state in
    command) _describe command commands ;;
    rest) case $line[1] in
${commands.map(({ name, options, arguments: args }) => (
  `      ${name}) _arguments ${[...options.flatMap(optionSpecs), ...args.map(argumentSpec)].join(' \\\n        ')} ;;`)).join('\n')}
    esac ;;
  esac
}
if [[ $funcstack[1] == _plumule ]]; then _plumule "$@"; else compdef _plumule plumule; fi
`;
}

function optionSpecs({ names, summary, takes, placeholder }: OptionRow): string[] {
  const told = `[${plain(summary)}]${takes === 'nothing' ? '' : `:${plain(placeholder)}:${actionOf(takes)}`}`;
  return names.map(name => quoted(`${name}${told}`));
}

function argumentSpec({ placeholder, takes }: ArgumentRow): string {
  return quoted(`${placeholder.includes('...') ? '*' : ''}:${plain(placeholder)}:${actionOf(takes)}`);
}

function actionOf(takes: Takes): string {
  switch (takes) {
    case 'files': return '_files';
    case 'lots': case 'batches': return `_plumule_${takes}`;
    case 'text': case 'nothing': return ' ';
    default: return `(${takes.join(' ')})`;
  }
}

/** Without what has a meaning of its own in a specification. */
function plain(text: string): string {
  return text.replace(/[[\]\\:]/g, sign => `\\${sign}`);
}

function quoted(text: string): string {
  return `'${text.replaceAll('\'', '\'\\\'\'')}'`;
}
