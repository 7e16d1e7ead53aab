/** Entry of the command line `plumule`. */
import { CommanderError } from 'commander';
import { exits } from './exits.ts';
import { allowClosedPipe, complain } from './output.ts';
import { plumule } from './program.ts';

allowClosedPipe();
plumule.parseAsync().catch((error: unknown) => {
  // The exit code is set, not taken at once: output may still be on its way. Help and version end here too.
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? exits.clean : exits.unread;
  else {
    const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
    for (const line of trace.split('\n')) complain(line);
    process.exitCode = exits.unread;
  }
});
