/** The command line. Its commands stand in program/, what they do in commands.ts. */
import { Argument, Command } from 'commander';
import { version } from '../../../package.json';
import { completionsOf } from './completions/completions.ts';
import { print } from './output.ts';
import { shells } from './program/choices.ts';
import { command } from './program/command.ts';
import { keepFiles } from './program/files.ts';
import { readJournals } from './program/journals.ts';
import { workOut } from './program/seeds.ts';

/** How journals and output are read, for those who know neither. */
export const TOGETHER = `All journals in a folder belong together: each file knows what the others define.
Results go to standard output, messages to standard error.`;

/** What the exit codes 0, 1 and 2 say. */
export const exitTexts = [
  'no problems',
  `check found errors or warnings (hints alone do not count); format --check found
a file that is not formatted; mix cannot make the solution; merge left a conflict`,
  'a wrong option, or a path that cannot be read or holds no journal; Plumule still does the rest',
] as const;

export const plumule = new Command('plumule')
  .description('Reads journals of sown seed (*.germ), checks them and sums them up.')
  .version(version, '--version', 'print the version')
  .helpOption('--help', 'print this help')
  .helpCommand(false)
  .showHelpAfterError('See plumule --help.')
  .exitOverride()
  .addHelpText('after', `
${TOGETHER}

Exit code
${exitTexts.map((text, code) => `  ${code}  ${text.replaceAll('\n', '\n     ')}`).join('\n')}`);

readJournals(plumule);
workOut(plumule);
keepFiles(plumule);

command(plumule, 'completions', {
  summary: 'print what completes commands in a shell',
  description: 'Prints what lets a shell complete commands, options and the ids of lots when you press Tab.\n' +
    'bash: plumule completions bash > ~/.local/share/bash-completion/completions/plumule\n' +
    'zsh:  plumule completions zsh > _plumule, in a folder of $fpath\n' +
    'fish: plumule completions fish > ~/.config/fish/completions/plumule.fish',
  example: 'plumule completions bash',
})
  .addArgument(new Argument('<shell>', 'the shell you use').choices(shells))
  .action((shell: (typeof shells)[number]) => {
    print(completionsOf(plumule, shell));
  });

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
