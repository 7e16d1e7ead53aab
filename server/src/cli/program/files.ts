/** The commands that keep the files of journals: their form, and their versions in git. */
import { Argument, Option, type Command } from 'commander';
import type { FormatOptions } from '../format.ts';
import type { MergeFileOptions } from '../merge.ts';
import type { SetupOptions } from '../setup.ts';
import { setups } from './choices.ts';
import { command, doing } from './command.ts';
import { markerSize, PATHS_NEEDED } from './options.ts';

export function keepFiles(program: Command): void {
  command(program, 'format', {
    summary: 'write records the usual way',
    description: 'Writes records the usual way: blanks, units, dates. Comments, remarks and lines with a mistake stay as they\nare. Prints one file formatted; for several, use --check or --write.',
    example: 'plumule format --check .',
  })
    .argument('<paths...>', PATHS_NEEDED)
    .addOption(new Option('--check', 'print the names of files that are not formatted; exit code 1 if there are any'))
    .addOption(new Option('--write', 'rewrite these files, and print their names').conflicts('check'))
    .addOption(new Option('--force', 'with --write, also rewrite files that are write-protected or have other names (hard links)'))
    .addOption(new Option('--fact-order', 'also sort the facts of each record as the format reference does'))
    .action(doing(({ format }, paths: string[], options: FormatOptions) => format(paths, options)));

  command(program, 'merge', {
    summary: 'merge two versions of a journal file by its records',
    description: 'Merges two versions of a journal file, record by record, and writes the result to OURS.\n' +
    'As a merge driver of git: plumule merge %O %A %B --marker-size %L --name %P',
    example: 'plumule merge --print before.germ winter.germ phone.germ',
  })
    .argument('<base>', 'the version that both started from')
    .argument('<ours>', 'the version of this side; the result is written here')
    .argument('<theirs>', 'the version of the other side')
    .addOption(new Option('--marker-size <n>', 'the length of the marks around a conflict').argParser(markerSize))
    .option('--name <path>', 'what messages call the file')
    .option('--print', 'print the result, and leave OURS as it is')
    .action(doing(
      ({ mergeFiles }, base: string, ours: string, theirs: string, options: MergeFileOptions) =>
        mergeFiles(base, ours, theirs, options),
    ));

  command(program, 'diff', {
    summary: 'say what changed since a git commit',
    description: 'Says what changed in the journals of this repository since a commit,\n' +
    'by lot and batch, in words.',
    example: 'plumule diff HEAD~1',
  })
    .argument('[revision]', 'a commit, a branch or a tag; without it, the last commit')
    .action(doing(({ diff }, revision: string | undefined) => diff(revision)));

  command(program, 'setup', {
    summary: 'make git merge, compare and check journals',
    description: 'Sets this git repository up to merge and compare journals by their records, and to check\n' +
    'what is staged before a commit. Without --yes it only says what it would change.',
    example: 'plumule setup git',
  })
    .addArgument(new Argument('<what>', 'what to set up').choices(setups))
    .option('--yes', 'make the changes')
    .option('--undo', 'remove what was set up, and nothing else')
    .option('--ci', 'only print an example of a job that checks the journals on a server')
    .action(doing(({ setUp }, _what: string, options: SetupOptions) => setUp(options)));
}
