import type { Command } from 'commander';
import type * as commands from '../commands.ts';
import type { Exit } from '../exits.ts';

type Commands = typeof commands;

/** What the help, the man page and the completions say of a command. */
export interface About {
  /** For the list of all commands. */
  readonly summary: string;
  readonly description: string;
  /** One line of a shell, which tests run. */
  readonly example: string;
}

const examples = new WeakMap<Command, string>();

/** A command that is still to be told its arguments, its options and what it does. */
export function command(program: Command, name: string, { summary, description, example }: About): Command {
  const made = program.command(name).summary(summary).description(description);
  examples.set(made, example);
  return made.addHelpText('after', `\nExample:\n  ${example}`);
}

export function exampleOf(of: Command): string {
  return examples.get(of) ?? '';
}

/** Does the work of a command, and gives its exit code to the process. What the work needs is loaded only now. */
export function doing<Given extends unknown[]>(
  work: (commands: Commands, ...given: Given) => Exit | Promise<Exit>,
): (...given: Given) => Promise<void> {
  return async (...given) => {
    process.exitCode = await work(await import('../commands.ts'), ...given);
  };
}
