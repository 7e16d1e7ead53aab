/** The commands that read journals and say what is in them. */
import { Option, type Command } from 'commander';
import type { AdviseOptions } from '../advise.ts';
import type { CheckOptions } from '../check.ts';
import type { DrawOptions } from '../draw.ts';
import type { DueOptions } from '../due.ts';
import type { ExportOptions } from '../export.ts';
import type { LabelsOptions, RoundOptions } from '../paper.ts';
import type { PublishOptions } from '../publish.ts';
import type { ReportOptions } from '../report.ts';
import type { WhenOptions } from '../when.ts';
import {
  adviceFormats, blocksWhen, checkFormats, labelSheetNames, privates, reportFormats, reportRanks, severities,
  textFormats, themeNames,
} from './choices.ts';
import { command, doing } from './command.ts';
import {
  asOfOption, formatOption, oneMore, oneMoreId, PATHS, today, todayOption, wholeDays, wholeFrom, winter,
} from './options.ts';

export function readJournals(program: Command): void {
  command(program, 'check', {
    summary: 'list the mistakes in the journals',
    description: 'Lists the mistakes in the journals, one a line, as file:line:column.\nLines and columns count from 1; a column is a UTF-16 unit, as in editors.',
    example: 'plumule check --today 2026-02-17 winter.germ',
  })
    .argument('[paths...]', PATHS)
    .addOption(formatOption(checkFormats))
    .addOption(new Option('--severity <least>', 'leave out what is less serious than this').choices(severities).default('hint'))
    .option('--staged', 'the journals as they are staged in git, for a pre-commit hook; only those that the commit changes')
    .addOption(todayOption())
    .action(doing(({ check }, paths: string[], options: CheckOptions) => check(paths, options)));

  command(program, 'report', {
    summary: 'sum up each lot, and what its treatments did',
    description: 'Sums up each lot: what was done to its batches, what germinated, where they stand, and treated against\nuntreated seed. With --by, the lots of a species or genus together, stratified by lot.',
    example: 'plumule report --lot GEN-25 --details --today 2026-02-10',
  })
    .argument('[paths...]', PATHS)
    .addOption(formatOption(reportFormats))
    .addOption(new Option('--lot <id>', 'only this lot; you can repeat it')
      .argParser(oneMoreId))
    .addOption(new Option('--by <rank>', 'lot by lot, or treated against untreated seed across the lots of a plant').choices(reportRanks))
    .option('--details', 'show the tests behind the verdicts too')
    .addOption(new Option('--courses <when>', 'how much had germinated at each count, as a line of blocks: where your terminal shows them, always or never')
      .choices(blocksWhen).default('auto').conflicts(['places', 'stocks', 'winter']))
    .option('-o, --output <file>', 'with --format html or md, the file to write; pictures of a Markdown report go beside it')
    .addOption(new Option('--places', 'what is where now, instead of the lots; with --format html, a sheet to print')
      .conflicts(['lot', 'by', 'output']))
    .addOption(new Option('--stocks', 'what is left of each bottle and each packet of powder, instead of the lots')
      .conflicts(['lot', 'by', 'details', 'places']))
    .addOption(new Option('--winter <name>', 'a winter in review (2025/26, from July to June; or 2026, a year by itself), instead of the lots')
      .argParser(winter).conflicts(['lot', 'by', 'details', 'places', 'stocks']))
    .addOption(todayOption())
    .addOption(asOfOption())
    .action(doing(({ report }, paths: string[], options: ReportOptions) => report(paths, options)));

  command(program, 'advise', {
    summary: 'say what to do with a packet of seed',
    description: 'Says whether to treat the untouched seed of a lot, with what, how to divide it, what that needs,\nand which records to write; from your own records and guides alone.',
    example: 'plumule advise GEN-25 --today 2026-03-01',
  })
    .argument('<lot>', 'a lot, such as VER-24')
    .argument('[paths...]', PATHS)
    .addOption(formatOption(adviceFormats))
    .addOption(todayOption())
    .action(doing(({ advise }, lot: string, paths: string[], options: AdviseOptions) => advise(lot, paths, options)));

  command(program, 'draw', {
    summary: 'draw a lot, a plant, the season, places or stocks',
    description: 'Draws a picture: of a lot or a batch how much germinated over time, treated beside untreated; of a\nplant the differences in all its lots, winter by winter, or with --winters how much germinated over time\nin all of them; or of a whole journal with one of the options.',
    example: 'plumule draw GEN-25 --output GEN-25.svg',
  })
    .argument('[id]', 'a lot, a batch such as VER-24/A, or a plant "Gentiana lutea"; none for a whole journal')
    .argument('[paths...]', PATHS)
    .addOption(new Option('--doses', 'the doses of a lot side by side').conflicts(['winters', 'season', 'places', 'stocks']))
    .addOption(new Option('--winters', 'how much of a plant germinated over time, winter by winter')
      .conflicts(['season', 'places', 'stocks']))
    .addOption(new Option('--season', 'the stages of all open batches by place, and what is due next').conflicts(['places', 'stocks']))
    .addOption(new Option('--places', 'what is where now, slot by slot').conflicts('stocks'))
    .option('--stocks', 'what is left of each bottle and packet')
    .option('-o, --output <file>', 'the file to write, SVG, or PNG if its name ends in .png, replacing an older picture; without it, print SVG')
    .addOption(new Option('--theme <name>', 'its colours').choices(themeNames).default('light'))
    .addOption(todayOption())
    .action(doing(
      ({ draw }, id: string | undefined, paths: string[], options: DrawOptions) =>
        draw(id, paths, options),
    ));

  command(program, 'due', {
    summary: 'list what is due, overdue things first',
    description: 'Lists what is due: soaks and stages that end, the next counts, stocks past their date, reminders, and\nrecords dated ahead; with file:line, and the record to write for each.',
    example: 'plumule due --days 14',
  })
    .argument('[paths...]', PATHS)
    .addOption(new Option('--days <n>', 'only this many days ahead, with everything overdue').argParser(wholeDays))
    .addOption(formatOption(textFormats))
    .addOption(todayOption())
    .action(doing(({ due }, paths: string[], options: DueOptions) => due(paths, options)));

  command(program, 'labels', {
    summary: 'print labels for pots and bags',
    description: 'Writes a page of labels to print: id, plant, treatment, date and place, with the number of the slot large.\nWithout --lot, a label for each open batch that is sown, soaked or in a stage.',
    example: 'plumule labels --lot GEN-25 --sheet a4-3x8 --output labels.html --today 2026-02-10',
  })
    .argument('[paths...]', PATHS)
    .addOption(new Option('--lot <id>', 'only the open batches of this lot, or this batch; you can repeat it').argParser(oneMoreId))
    .addOption(new Option('--sheet <name>', 'the sheet of labels; “cut” is plain paper with lines to cut along')
      .choices(labelSheetNames).default('a4-cut'))
    .addOption(new Option('--skip <n>', 'labels of the first sheet that are used already').argParser(wholeFrom(0, 29)))
    .option('-o, --output <file>', 'the page (HTML) to write; without it, print it')
    .addOption(todayOption())
    .action(doing(({ printLabels }, paths: string[], options: LabelsOptions) => printLabels(paths, options)));

  command(program, 'round', {
    summary: 'print a counting sheet to fill in at the shelf',
    description: 'Writes the counting sheet of a round, with blanks to fill in by pencil: the batches that are still to be counted,\nplace by place. In VS Code, Count What Is Due asks for the counts in the same order.',
    example: 'plumule round --output round.html --today 2026-02-15',
  })
    .argument('[paths...]', PATHS)
    .option('--left-off', 'instead, the batches with no record for more than 400 days')
    .option('-o, --output <file>', 'the page (HTML) to write; without it, print it')
    .addOption(todayOption())
    .action(doing(({ printRound }, paths: string[], options: RoundOptions) => printRound(paths, options)));

  command(program, 'when', {
    summary: 'say when to start a regime to end on a day, or when it ends',
    description: 'Says when to soak and sow so that a regime ends, or first leaves appear, by a given day;\nor, without such a day, when the regime ends.',
    example: 'plumule when "chill 4 C 90 days, warm 18 C 60 days" --ends-by 2027-06-01',
  })
    .argument('<regime>', 'a regime of the journal, or its stages written out: "chill 4 C 90 days, warm 18 C 60 days"')
    .argument('[paths...]', PATHS)
    .addOption(new Option('--leaves-by <date>', 'first leaves by this day').argParser(today).conflicts(['endsBy', 'sown']))
    .addOption(new Option('--ends-by <date>', 'the last stage ends by this day').argParser(today).conflicts('sown'))
    .addOption(new Option('--sown <date>', 'you sow on this day; without any of these, you start today').argParser(today))
    .addOption(new Option('--leaf <days>', 'days from germination to a first leaf; otherwise from the records of --plant')
      .argParser(wholeDays))
    .option('--plant <name>', 'the plant or genus whose records say how long a first leaf takes')
    .option('--soak <time>', 'how long you soak it before you sow it: "24 h"')
    .addOption(formatOption(textFormats))
    .addOption(todayOption())
    .action(doing(({ when }, regime: string, paths: string[], options: WhenOptions) => when(regime, paths, options)));

  command(program, 'export', {
    summary: 'write what is due as a calendar, or all records as tables',
    description: 'With --ics, writes what is due as an iCalendar file with alarms. You can import it again: entries are\n' +
      'updated, not doubled. With --tables, writes all records and what is computed from them as tables for\nother programs: CSV and JSON Lines, with a schema each.',
    example: 'plumule export --ics --output due.ics',
  })
    .argument('[paths...]', PATHS)
    .option('--ics', 'what is due, as an iCalendar file (RFC 5545)')
    .addOption(new Option('--tables', 'all records, as a folder of tables').conflicts('ics'))
    .option('-o, --output <path>', 'the file to write, replacing an older calendar (without it, print the result);\nwith --tables, the folder')
    .addOption(new Option('--parquet', 'with --tables, write Parquet too; needs DuckDB').conflicts('ics'))
    .addOption(new Option('--name <name>', 'with --tables, what the column “journal” says; without it, the folder').conflicts('ics'))
    .addOption(todayOption())
    .addOption(asOfOption().conflicts('ics'))
    .action(doing(({ exportJournals }, paths: string[], options: ExportOptions) => exportJournals(paths, options)));

  command(program, 'publish', {
    summary: 'write pages to share, without what is private',
    description: 'Writes a folder of pages that link to each other: plants, lots, pictures, verdicts, and tables to download.\n' +
      'They work from a disk and from any web server. Without --with, they hold no places, remarks, sources,\npeople or photos.',
    example: 'plumule publish -o pages --title "Seed of the north bench"',
  })
    .argument('[paths...]', PATHS)
    .requiredOption('-o, --output <folder>', 'the folder, new or empty or written by publish before')
    .addOption(new Option('--with <what>', 'what to show all the same; you can repeat it').choices(privates)
      .argParser(oneMore))
    .option('--title <text>', 'the title of the first page', 'Seed journal')
    .addOption(todayOption())
    .action(doing(({ publish }, paths: string[], options: PublishOptions) => publish(paths, options)));
}
