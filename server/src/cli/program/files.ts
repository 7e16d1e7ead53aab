/** The commands that keep the files of journals: what comes into them, their form, and their versions in git. */
import { Argument, Option, type Command } from 'commander';
import { countings, dateOrders } from '../../import/answers.ts';
import type { DiffOptions } from '../diff.ts';
import type { FormatOptions } from '../format.ts';
import type { ImportOptions } from '../import.ts';
import type { MergeFileOptions } from '../merge.ts';
import type { SetupOptions } from '../setup.ts';
import { setups, textFormats } from './choices.ts';
import { command, doing } from './command.ts';
import { delimiter, formatOption, markerSize, PATHS_NEEDED, wholeFrom } from './options.ts';

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

  command(program, 'import', {
    summary: 'turn a spreadsheet into records',
    description: 'Turns the rows of a spreadsheet, saved as CSV, into records of a journal. Without -o it only shows what it\n' +
    'would write. What each column is, it guesses from the headings, shows, and keeps in SHEET.mapping.json, where\n' +
    'you can change it. You can import a sheet again: only what is new is added, and nothing is overwritten.',
    example: 'plumule import notes.csv -o winter.germ',
  })
    .argument('<sheet>', 'a table as text (CSV), with headings')
    .option('-o, --output <file>', 'the journal (*.germ) that takes the records; it may be new')
    .option('--preview', 'with -o, only show what would be written')
    .addOption(new Option('--dates <order>', 'how dates such as 3/4/2026 are meant').choices(dateOrders))
    .addOption(new Option('--year <year>', 'the year of dates without one').argParser(wholeFrom(1800, 2200)))
    .addOption(new Option('--counts <kind>', 'whether a count is what was new, or the total so far').choices(countings))
    .addOption(new Option('--week-day <n>', 'under headings such as “Week 2”: the day of that week on which you counted, 1 to 7')
      .argParser(wholeFrom(1, 7)))
    .addOption(new Option('--soaked-before <days>', 'you soaked all seed so many days before you sowed it; without this and without a day in the sheet, a soak stays a remark')
      .argParser(wholeFrom(0, 30)))
    .option('--same-as-above', 'an empty cell for lot, plant or date means the same as the one above')
    .addOption(new Option('--delimiter <sign>', 'what divides the columns, if Plumule finds the wrong one: "," or ";" or tab')
      .argParser(delimiter))
    .action(doing(({ importSheet }, sheet: string, options: ImportOptions) => importSheet(sheet, options)));

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
    .addOption(formatOption(textFormats))
    .action(doing(({ diff }, revision: string | undefined, options: DiffOptions) => diff(revision, options)));

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
