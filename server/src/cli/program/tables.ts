/** The commands and options as plain rows, from which completions and the man page are written. */
import type { Argument, Command, Option } from 'commander';
import { exampleOf } from './command.ts';

/** What stands behind an option, or as an argument; several words: one of them. */
export type Takes = 'nothing' | 'files' | 'lots' | 'batches' | 'text' | readonly string[];

export interface OptionRow {
  /** `-o`, `--output`; the long one last. */
  readonly names: readonly string[];
  /** As help shows it. Example: '<file>'; empty for one that takes nothing. */
  readonly placeholder: string;
  readonly takes: Takes;
  readonly summary: string;
}

export interface ArgumentRow {
  readonly placeholder: string;
  readonly takes: Takes;
  readonly summary: string;
}

export interface CommandRow {
  readonly name: string;
  readonly summary: string;
  readonly description: string;
  readonly usage: string;
  readonly example: string;
  readonly arguments: readonly ArgumentRow[];
  readonly options: readonly OptionRow[];
}

/** The words that stand for files in arguments and options, whatever else is said of them. */
const FILES: ReadonlySet<string> = new Set(['paths', 'path', 'file', 'folder', 'base', 'ours', 'theirs']);

export function commandRows({ commands }: Command): CommandRow[] {
  return commands.map(command => ({
    name: command.name(), summary: command.summary(), description: command.description(), usage: command.usage(),
    example: exampleOf(command),
    arguments: command.registeredArguments.map(argumentRow),
    options: [...command.createHelp().visibleOptions(command).map(optionRow)],
  }));
}

export function optionRow({ flags, description, argChoices, short, long }: Option): OptionRow {
  const [, placeholder = ''] = /([<[].*)$/.exec(flags) ?? [];
  return {
    names: [short, long].filter(name => name !== undefined), placeholder, summary: description,
    takes: placeholder === '' ? 'nothing' : takenBy(nameIn(placeholder), argChoices, 'lots'),
  };
}

function argumentRow(argument: Argument): ArgumentRow {
  const name = `${argument.name()}${argument.variadic ? '...' : ''}`;
  return {
    placeholder: argument.required ? `<${name}>` : `[${name}]`,
    takes: takenBy(argument.name(), argument.argChoices, 'batches'), summary: argument.description,
  };
}

function takenBy(name: string, choices: readonly string[] | undefined, ids: 'lots' | 'batches'): Takes {
  return choices ?? (FILES.has(name) ? 'files' : name === 'id' ? ids : 'text');
}

/** Example: nameIn('[paths...]') is 'paths' */
function nameIn(placeholder: string): string {
  return placeholder.replace(/[^\w-]/g, '');
}
