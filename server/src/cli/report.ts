import { version } from '../../../package.json';
import type { Moment } from '../journal/moment.ts';
import type { Winter } from '../model/winter.ts';
import { reportPage } from '../report/html.ts';
import { REPORT_SHAPE, reportData } from '../report/json.ts';
import { reportMarkdown } from '../report/markdown.ts';
import { printableJson } from '../report/printable.ts';
import { reportOf, type Report } from '../report/report.ts';
import { reportText } from '../report/text.ts';
import { exits, type Exit } from './exits.ts';
import { markdownFiles } from './markdown-files.ts';
import type { Unread } from './names.ts';
import { openJournals, type OpenJournal } from './open.ts';
import { counted } from '../model/counted.ts';
import { complain, complainOf, outputPage, print } from './output.ts';
import { reportPlaces } from './places.ts';
import type { blocksWhen, reportFormats, reportRanks } from './program/choices.ts';
import { reportStocks, reportWinter } from './sheets.ts';
import { unknownLot } from './unknown.ts';
import { wroteFiles, type FileToWrite } from './written.ts';

export interface ReportOptions {
  readonly format: (typeof reportFormats)[number];
  /** When each batch is drawn as a line of blocks. */
  readonly courses: (typeof blocksWhen)[number];
  readonly lot?: readonly string[];
  readonly by?: (typeof reportRanks)[number];
  readonly today?: Moment;
  readonly asOf?: Moment;
  /** The tests behind the verdicts too. */
  readonly details?: true;
  /** What lies where, in place of the lots. */
  readonly places?: true;
  /** What is left of bottles and packets, in place of the lots. */
  readonly stocks?: true;
  /** A winter in review, in place of the lots. */
  readonly winter?: Winter;
  /** The file to write a page or Markdown with its pictures to; without it the result is printed. */
  readonly output?: string;
}

/** `plumule report`: prints what the journals say of each lot, or of each plant. */
export async function report(paths: readonly string[], options: ReportOptions): Promise<Exit> {
  const { format, lot, today, asOf, places, output } = options;
  if (output !== undefined && format !== 'html' && format !== 'md') {
    complain('--output is for --format html and md');
    return exits.unread;
  }
  if (places) return reportPlaces(paths, options);
  if (options.stocks) return reportStocks(paths, options);
  if (options.winter) return reportWinter(paths, options.winter, options);
  const { journals, unread } = await openJournals(paths, asOf ?? today, asOf?.day);
  const reports = journals.map(each => ({ ...each, report: reportOn(each, journals.length > 1, options) }));
  const unknown = (lot ?? []).filter(id => !journals.some(({ journal }) => journal.lot(id)));
  // Asked for a lot, nobody wants to hear of the journals that do not have it.
  const told = reports.map(each => each.report).filter(({ lots }) => lot === undefined || lots.length > 0);
  let isWritten = true;
  if (output === undefined) print(written(options, told, reports, unread));
  else isWritten = await wrote(output, format, told);
  complainOf(unread);
  for (const id of unknown) complain(unknownLot(id, journals));
  for (const { report: { lots } } of reports) {
    const errors = lots.reduce((sum, each) => sum + each.errors, 0);
    if (errors > 0) complain(`${counted(errors, 'error')} in the records of these lots; “plumule check” lists them`);
  }
  return unread.length + unknown.length > 0 || !isWritten ? exits.unread : exits.clean;
}

function reportOn(
  { journal, book, asked, folder, now }: OpenJournal, named: boolean, { lot, by, details }: ReportOptions,
): Report {
  return reportOf(journal, book, {
    now, files: asked, ...(named && { name: folder }), ...(lot && { ids: lot }), ...(by && by !== 'lot' && { by }),
    ...(details && { details }),
  });
}

function written(
  { format, courses }: ReportOptions, told: readonly Report[],
  reports: readonly (OpenJournal & { report: Report })[], unread: readonly Unread[],
): string {
  switch (format) {
    case 'text': return reportText(told, outputPage(courses));
    case 'md': return reportMarkdown(told);
    case 'html': return reportPage(told);
    case 'json': {
      const journals = reports.map(({ asked, report: one }) => ({ files: asked, ...reportData(one) }));
      return printableJson({ version: REPORT_SHAPE, plumule: version, journals, unread });
    }
  }
}

/** False where a file could not be written; the reason has been said. */
async function wrote(output: string, format: ReportOptions['format'], told: readonly Report[]): Promise<boolean> {
  const files: readonly FileToWrite[] = format === 'md'
    ? markdownFiles(output, told)
    : [{ path: output, content: reportPage(told), kind: 'html' }];
  const pictures = files.length > 1 ? ` and ${counted(files.length - 1, 'picture')} beside it` : '';
  return wroteFiles(files, `wrote ${output}${pictures}`);
}
