/** The commands and options of the command line. */
import { Argument, Command, InvalidArgumentError, Option } from 'commander';
import { version } from '../../../package.json';
import type { Moment } from '../journal/moment.ts';
import { winterNamed, type Winter } from '../model/winter.ts';
import { momentOf } from '../lsp/clock.ts';
import { check, checkFormats, type CheckOptions } from './check.ts';
import { diff } from './diff.ts';
import { draw, themeNames, type DrawOptions } from './draw.ts';
import { due, dueFormats, type DueOptions } from './due.ts';
import { exportJournals, type ExportOptions } from './export.ts';
import { format, type FormatOptions } from './format.ts';
import { severities } from './listed.ts';
import { mergeFiles, type MergeFileOptions } from './merge.ts';
import { benches, mix, mixFormats, type MixOptions } from './mix.ts';
import { planFormats, planTrial, type PlanOptions } from './plan.ts';
import { report, reportFormats, reportRanks, type ReportOptions } from './report.ts';
import { setups, setUp, type SetupOptions } from './setup.ts';
import { when, whenFormats, type WhenOptions } from './when.ts';

const PATHS_NEEDED = 'files (*.germ) or folders, with their subfolders';
const PATHS = `${PATHS_NEEDED}; without any, the current folder`;

function today(text: string): Moment {
  const moment = momentOf(text);
  if (!moment) throw new InvalidArgumentError('Write a date such as 2026-01-12, or a date and a time such as 2026-01-12T08:00.');
  return moment;
}

function winter(text: string): Winter {
  const named = winterNamed(text);
  if (!named) throw new InvalidArgumentError('Write a winter such as 2025/26, or a year such as 2026.');
  return named;
}

function markerSize(text: string): number {
  if (!/^\d{1,2}$/.test(text) || Number(text) < 7) throw new InvalidArgumentError('Write a number from 7 to 99.');
  return Number(text);
}

function wholeDays(text: string): number {
  if (!/^\d{1,5}$/.test(text)) throw new InvalidArgumentError('Write a whole number of days.');
  return Number(text);
}

const todayOption = (): Option => new Option(
  '--today <date>', 'use this as today (2026-01-12) or now (2026-01-12T08:00) instead of the clock').argParser(today);

const formatOption = (formats: readonly string[]): Option =>
  new Option('--format <name>', 'how to print it').choices(formats).default('text');

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

plumule
  .command('check')
  .summary('list the mistakes in the journals')
  .description('Lists the mistakes in the journals, one a line, as file:line:column.\nLines and columns count from 1; a column is a UTF-16 unit, as in editors.')
  .argument('[paths...]', PATHS)
  .addOption(formatOption(checkFormats))
  .addOption(new Option('--severity <least>', 'leave out what is less serious than this').choices(severities).default('hint'))
  .option('--staged', 'the journals as they are staged in git, for a pre-commit hook; only those that the commit changes')
  .addOption(todayOption())
  .action(async (paths: string[], options: CheckOptions) => {
    process.exitCode = await check(paths, options);
  });

plumule
  .command('report')
  .summary('sum up each lot, and what its treatments did')
  .description('Sums up each lot: what was done to its batches, what germinated, where they stand, and treated against\nuntreated seed. With --by, the lots of a species or genus together, stratified by lot.')
  .argument('[paths...]', PATHS)
  .addOption(formatOption(reportFormats))
  .addOption(new Option('--lot <id>', 'only this lot; you can repeat it')
    .argParser((id: string, before: readonly string[] | undefined) => [...(before ?? []), id]))
  .addOption(new Option('--by <rank>', 'lot by lot, or treated against untreated seed across the lots of a plant').choices(reportRanks))
  .option('--details', 'show the tests behind the verdicts too')
  .option('-o, --output <file>', 'with --format html or md, the file to write; pictures of a Markdown report go beside it')
  .addOption(new Option('--places', 'what is where now, instead of the lots; with --format html, a sheet to print')
    .conflicts(['lot', 'by', 'output']))
  .addOption(new Option('--stocks', 'what is left of each bottle and each packet of powder, instead of the lots')
    .conflicts(['lot', 'by', 'details', 'places']))
  .addOption(new Option('--winter <name>', 'a winter in review (2025/26, from July to June; or 2026, a year by itself), instead of the lots')
    .argParser(winter).conflicts(['lot', 'by', 'details', 'places', 'stocks']))
  .addOption(todayOption())
  .addOption(new Option('--as-of <date>', 'the journal as it was on this day, without later records')
    .argParser(today).conflicts('today'))
  .action(async (paths: string[], options: ReportOptions) => {
    process.exitCode = await report(paths, options);
  });

plumule
  .command('draw')
  .summary('draw a lot, a batch, or the season')
  .description('Draws how much of a lot or a batch germinated over time, treated beside untreated, as an SVG picture;\nwith --season, the stages of all open batches by place, and what is due next.')
  .argument('[id]', 'a lot, or a batch such as VER-24/A; none with --season')
  .argument('[paths...]', PATHS)
  .option('--season', 'all open batches on an axis of dates, instead of one lot')
  .option('-o, --output <file>', 'the file to write, replacing an older picture; without it, print the picture')
  .addOption(new Option('--theme <name>', 'its colours').choices(themeNames).default('light'))
  .addOption(todayOption())
  .action(async (id: string | undefined, paths: string[], options: DrawOptions) => {
    process.exitCode = await draw(id, paths, options);
  });

plumule
  .command('due')
  .summary('list what is due, overdue things first')
  .description('Lists what is due: soaks and stages that end, the next counts, stocks past their date, reminders, and\nrecords dated ahead; with file:line, and the record to write for each.')
  .argument('[paths...]', PATHS)
  .addOption(new Option('--days <n>', 'only this many days ahead, with everything overdue').argParser(wholeDays))
  .addOption(formatOption(dueFormats))
  .addOption(todayOption())
  .action(async (paths: string[], options: DueOptions) => {
    process.exitCode = await due(paths, options);
  });

plumule
  .command('when')
  .summary('say when to start a regime to end on a day, or when it ends')
  .description('Says when to soak and sow so that a regime ends, or first leaves appear, by a given day;\nor, without such a day, when the regime ends.')
  .argument('<regime>', 'a regime of the journal, or its stages written out: "chill 4 C 90 days, warm 18 C 60 days"')
  .argument('[paths...]', PATHS)
  .addOption(new Option('--leaves-by <date>', 'first leaves by this day').argParser(today).conflicts(['endsBy', 'sown']))
  .addOption(new Option('--ends-by <date>', 'the last stage ends by this day').argParser(today).conflicts('sown'))
  .addOption(new Option('--sown <date>', 'you sow on this day; without any of these, you start today').argParser(today))
  .addOption(new Option('--leaf <days>', 'days from germination to a first leaf; otherwise from the records of --plant')
    .argParser(wholeDays))
  .option('--plant <name>', 'the plant or genus whose records say how long a first leaf takes')
  .option('--soak <time>', 'how long you soak it before you sow it: "24 h"')
  .addOption(formatOption(whenFormats))
  .addOption(todayOption())
  .action(async (regime: string, paths: string[], options: WhenOptions) => {
    process.exitCode = await when(regime, paths, options);
  });

plumule
  .command('export')
  .summary('write what is due as a calendar')
  .description('Writes what is due as an iCalendar file with alarms. You can import it again: entries are\nupdated, not doubled.')
  .argument('[paths...]', PATHS)
  .option('--ics', 'what is due, as an iCalendar file (RFC 5545)')
  .option('-o, --output <file>', 'the file to write, replacing an older calendar; without it, print the result')
  .addOption(todayOption())
  .action(async (paths: string[], options: ExportOptions) => {
    process.exitCode = await exportJournals(paths, options);
  });

plumule
  .command('plan')
  .summary('say what a trial can show before you start it')
  .description('Says how much treated seed must germinate for the verdict “worth repeating” 4 times in 5,\nand whether another division of the same seeds, or several dishes, would show more.')
  .argument('<treated>', 'how many seeds you treat')
  .argument('<untreated>', 'how many you leave untreated')
  .option('--share <percent>', 'how much of the untreated seed you expect to germinate; otherwise 10, 40 and 70 %')
  .option('--dishes <number>', 'dishes of each side', '1')
  .option('--treatments <number>', 'treatments that you try beside the same untreated seed', '1')
  .addOption(formatOption(planFormats))
  .action((treated: string, untreated: string, options: PlanOptions) => {
    process.exitCode = planTrial(treated, untreated, options);
  });

plumule
  .command('mix')
  .summary('say how to mix a solution')
  .description('Says how to mix a solution from powder, from a packet halved by eye, or from a stock.\n' +
    'Strengths, volumes and masses are written as in a journal: "500 ppm" "20 mL", 0.5g/L, 1.44mM.')
  .argument('<agent>', 'GA3, KNO3, peroxide or another')
  .argument('<amounts...>', 'its strength, then the volume wanted: "500 ppm" "20 mL"')
  .usage('<agent> <strength> <volume> [options]')
  .option('--from <strength>', 'from a stock of this strength')
  .option('--packet <mass>', 'from a packet that holds this much powder')
  .option('--halved <times>', 'how often you halve the packet by eye; without it, Plumule chooses')
  .option('--purity <percent>', 'of the powder, from its label; add “acid” or “salt” if the label says which')
  .addOption(new Option('--bench <kind>', 'what you measure with').choices(benches).default('kitchen'))
  .option('--tool <tools...>', 'your own tools instead: a scale by its step "0.01 g", a measure "5 mL by 0.1 mL"')
  .option('--tolerance <percent>', 'how far off reading a tool may be; without it, 5 % of a mass, 2.5 % of a volume')
  .addOption(formatOption(mixFormats))
  .action((agent: string, amounts: string[], options: MixOptions) => {
    process.exitCode = mix(agent, amounts, options);
  });

plumule
  .command('format')
  .summary('write records the usual way')
  .description('Writes records the usual way: blanks, units, dates. Comments, remarks and lines with a mistake stay as they\nare. Prints one file formatted; for several, use --check or --write.')
  .argument('<paths...>', PATHS_NEEDED)
  .addOption(new Option('--check', 'print the names of files that are not formatted; exit code 1 if there are any'))
  .addOption(new Option('--write', 'rewrite these files, and print their names').conflicts('check'))
  .addOption(new Option('--force', 'with --write, also rewrite files that are write-protected or have other names (hard links)'))
  .addOption(new Option('--fact-order', 'also sort the facts of each record as the format reference does'))
  .action(async (paths: string[], options: FormatOptions) => {
    process.exitCode = await format(paths, options);
  });

plumule
  .command('merge')
  .summary('merge two versions of a journal file by its records')
  .description('Merges two versions of a journal file, record by record, and writes the result to OURS.\n' +
    'As a merge driver of git: plumule merge %O %A %B --marker-size %L --name %P')
  .argument('<base>', 'the version that both started from')
  .argument('<ours>', 'the version of this side; the result is written here')
  .argument('<theirs>', 'the version of the other side')
  .addOption(new Option('--marker-size <n>', 'the length of the marks around a conflict').argParser(markerSize))
  .option('--name <path>', 'what messages call the file')
  .option('--print', 'print the result, and leave OURS as it is')
  .action(async (base: string, ours: string, theirs: string, options: MergeFileOptions) => {
    process.exitCode = await mergeFiles(base, ours, theirs, options);
  });

plumule
  .command('diff')
  .summary('say what changed since a git commit')
  .description('Says what changed in the journals of this repository since a commit,\n' +
    'by lot and batch, in words.')
  .argument('[revision]', 'a commit, a branch or a tag; without it, the last commit')
  .action(async (revision: string | undefined) => {
    process.exitCode = await diff(revision);
  });

plumule
  .command('setup')
  .summary('make git merge, compare and check journals')
  .description('Sets this git repository up to merge and compare journals by their records, and to check\n' +
    'what is staged before a commit. Without --yes it only says what it would change.')
  .addArgument(new Argument('<what>', 'what to set up').choices(setups))
  .option('--yes', 'make the changes')
  .option('--undo', 'remove what was set up, and nothing else')
  .option('--ci', 'only print an example of a job that checks the journals on a server')
  .action(async (_what: string, options: SetupOptions) => {
    process.exitCode = await setUp(options);
  });

plumule
  .command('serve')
  .summary('run the language server for an editor')
  .description('Runs the language server, which speaks the Language Server Protocol over standard input and output.')
  .option('--stdio', 'how editors call it (required)')
  .action(async () => {
    // Loaded for this command alone: it begins to listen at once.
    await import('../main.node.ts');
  });
