import type { CommandRow, OptionRow, Takes } from '../program/tables.ts';
import { idCommand } from './ids.ts';

export function fishCompletions(commands: readonly CommandRow[], global: readonly OptionRow[]): string {
  const lines = [
    '# Completions of plumule for fish.',
    // fish hands over what stands between the brackets of a shell; its own has other ones.
    `function __plumule_lots; sh -c ${quoted(idCommand('lots'))}; end`,
    `function __plumule_batches; sh -c ${quoted(idCommand('batches'))}; end`,
    'complete -c plumule -f',
    ...global.map(option => `complete -c plumule -n __fish_use_subcommand${optionText(option)}`),
  ];
  for (const { name, summary, options, arguments: [first] } of commands) {
    const within = `complete -c plumule -n '__fish_seen_subcommand_from ${name}'`;
    lines.push(`complete -c plumule -n __fish_use_subcommand -a ${name} -d ${quoted(summary)}`);
    lines.push(...options.map(option => `${within}${optionText(option)}`));
    if (first) lines.push(`${within}${offer(first.takes)}`);
  }
  return `${lines.join('\n')}\n`;
}

function optionText({ names, summary, takes }: OptionRow): string {
  const flags = names.map(name => (name.startsWith('--') ? ` -l ${name.slice(2)}` : ` -s ${name.slice(1)}`)).join('');
  const value = takes === 'nothing' ? '' : takes === 'files' ? ' -r -F' : ` -x${offer(takes)}`;
  return `${flags}${value} -d ${quoted(summary)}`;
}

function offer(takes: Takes): string {
  switch (takes) {
    case 'files': return ' -F';
    case 'lots': case 'batches': return ` -a '(__plumule_${takes})'`;
    case 'text': case 'nothing': return '';
    default: return ` -a ${quoted(takes.join(' '))}`;
  }
}

function quoted(text: string): string {
  return `'${text.replaceAll('\\', '\\\\').replaceAll('\'', '\\\'')}'`;
}
