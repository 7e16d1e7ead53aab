/** The command line. Its commands stand in program/, what they do in commands.ts. */
import { Command } from 'commander';
import { version } from '../../../package.json';
import { command } from './program/command.ts';
import { keepFiles } from './program/files.ts';
import { readJournals } from './program/journals.ts';
import { workOut } from './program/seeds.ts';

export const plumule = new Command('plumule')
  .description('Reads journals of sown seed (*.germ), checks them and sums them up.')
  .version(version, '--version', 'print the version')
  .helpOption('--help', 'print this help')
  .helpCommand(false)
  .showHelpAfterError('See plumule --help.')
  .exitOverride()
  .addHelpText('after', `
All journals in a folder belong together: each file knows what the others define.
Results go to standard output, messages to standard error.

Exit code
  0  no problems
  1  check found errors or warnings (hints alone do not count); format --check found
     a file that is not formatted; mix cannot make the solution; merge left a conflict
  2  a wrong option, or a path that cannot be read or holds no journal; Plumule still does the rest`);

readJournals(plumule);
workOut(plumule);
keepFiles(plumule);

command(plumule, 'serve', {
  summary: 'run the language server for an editor',
  description: 'Runs the language server, which speaks the Language Server Protocol over standard input and output.',
  example: 'plumule serve --stdio',
})
  .option('--stdio', 'how editors call it (required)')
  .action(async () => {
    // Loaded for this command alone: it begins to listen at once.
    await import('../main.node.ts');
  });
