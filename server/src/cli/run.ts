import { CommanderError } from 'commander';
import { exits } from './exits.ts';
import { complain } from './output.ts';
import { plumule } from './program.ts';

/** Runs the command line with these arguments. The exit code is set, not taken: output may still be on its way. */
export async function run(args: readonly string[]): Promise<void> {
  try {
    await plumule.parseAsync(args, { from: 'user' });
  } catch (error) {
    // Help and version end here too.
    if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? exits.clean : exits.unread;
    else {
      const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
      for (const line of trace.split('\n')) complain(line);
      process.exitCode = exits.unread;
    }
  }
}
