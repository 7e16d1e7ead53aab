/** Reports in place of the lots: what is left of bottles and packets, and a winter in review. */
import { version } from '../../../package.json';
import type { Moment } from '../journal/moment.ts';
import { printableJson } from '../report/printable.ts';
import { sheetPage } from '../report/sheet/html.ts';
import { sheetMarkdown } from '../report/sheet/markdown.ts';
import type { Sheet } from '../report/sheet/sheet.ts';
import { sheetText } from '../report/sheet/text.ts';
import { STOCKS_SHAPE, stocksData } from '../report/stocks/data.ts';
import { stockList } from '../report/stocks/list.ts';
import { stockSheet } from '../report/stocks/words.ts';
import type { Winter } from '../model/winter.ts';
import { reportOf } from '../report/report.ts';
import { WINTER_SHAPE, winterData } from '../report/winter/data.ts';
import { winterReview } from '../report/winter/review.ts';
import { winterSheet } from '../report/winter/words.ts';
import { exits, type Exit } from './exits.ts';
import { openJournals, type OpenJournal } from './open.ts';
import { complainOf, outputPage, print } from './output.ts';
import { wroteFiles } from './written.ts';

export interface SheetOptions {
  readonly format: 'text' | 'json' | 'md' | 'html';
  readonly today?: Moment;
  readonly asOf?: Moment;
  readonly output?: string;
}

interface Told {
  readonly sheet: Sheet;
  readonly data: object;
}

/** `plumule report --stocks`: prints what is left. */
export function reportStocks(paths: readonly string[], options: SheetOptions): Promise<Exit> {
  return reportSheets(paths, options, STOCKS_SHAPE, ({ journal, asked, now }, name) => {
    const list = stockList(journal, { now, files: asked, ...name });
    return { sheet: stockSheet(list), data: stocksData(list) };
  });
}

/** `plumule report --winter`: prints what a winter came to. */
export function reportWinter(paths: readonly string[], winter: Winter, options: SheetOptions): Promise<Exit> {
  return reportSheets(paths, options, WINTER_SHAPE, ({ journal, book, asked, now }, name) => {
    const review = winterReview(reportOf(journal, book, { now, files: asked, ...name }), winter);
    return { sheet: winterSheet(review), data: winterData(review) };
  });
}

async function reportSheets(
  paths: readonly string[], { format, today, asOf, output }: SheetOptions, shape: number,
  tell: (journal: OpenJournal, name: { readonly name?: string }) => Told,
): Promise<Exit> {
  const { journals, unread } = await openJournals(paths, asOf ?? today, asOf?.day);
  const nameOf = ({ folder }: OpenJournal) => (journals.length > 1 ? { name: folder } : {});
  const told = journals.map(each => ({ files: each.asked, ...tell(each, nameOf(each)) }));
  const sheets = told.map(({ sheet }) => sheet);
  complainOf(unread);
  const json = () => told.map(({ files, data }) => ({ files, ...data }));
  const text = {
    text: () => sheetText(sheets, outputPage()), md: () => sheetMarkdown(sheets), html: () => sheetPage(sheets),
    json: () => printableJson({ version: shape, plumule: version, journals: json(), unread }),
  }[format]();
  if (output === undefined) print(text);
  else if (!await wroteFiles([{ path: output, content: text, kind: format === 'html' ? 'html' : 'md' }], `wrote ${output}`)) {
    return exits.unread;
  }
  return unread.length > 0 ? exits.unread : exits.clean;
}
