import type { Command } from 'commander';
import type { shells } from '../program/choices.ts';
import { commandRows, optionRow } from '../program/tables.ts';
import { bashCompletions } from './bash.ts';
import { fishCompletions } from './fish.ts';
import { zshCompletions } from './zsh.ts';

const writers = { bash: bashCompletions, zsh: zshCompletions, fish: fishCompletions };

/** What a shell reads to complete commands, options, what they take, and the lots of the journals at hand. */
export function completionsOf(program: Command, shell: (typeof shells)[number]): string {
  return writers[shell](commandRows(program), program.createHelp().visibleOptions(program).map(optionRow));
}
