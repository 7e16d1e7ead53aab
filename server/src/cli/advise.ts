/** `plumule advise`: what to do with a packet of seed, from the records and the guides of its journal. */
import { version } from '../../../package.json';
import { adviceFor } from '../advice/advice.ts';
import type { Moment } from '../journal/moment.ts';
import { ADVICE_SHAPE, adviceData } from '../report/advice/data.ts';
import { adviceSheet } from '../report/advice/sheet.ts';
import { printableJson } from '../report/printable.ts';
import { sheetMarkdown } from '../report/sheet/markdown.ts';
import { sheetText } from '../report/sheet/text.ts';
import { exits, type Exit } from './exits.ts';
import type { adviceFormats } from './program/choices.ts';
import { openJournals } from './open.ts';
import { complain, complainOf, outputPage, print } from './output.ts';
import { unknownLot } from './unknown.ts';

export interface AdviseOptions {
  readonly format: (typeof adviceFormats)[number];
  readonly today?: Moment;
}

export async function advise(id: string, paths: readonly string[], { format, today }: AdviseOptions): Promise<Exit> {
  const { journals, unread } = await openJournals(paths, today);
  complainOf(unread);
  const found = journals.flatMap(({ journal, now, asked }) => {
    const lot = journal.lot(id);
    return lot ? [{ journal, asked, advice: adviceFor(lot, journal, now) }] : [];
  });
  if (found.length === 0) {
    complain(unknownLot(id, journals));
    return exits.unread;
  }
  const sheets = found.map(({ journal, advice }) => adviceSheet(advice, journal));
  const text = {
    text: () => sheetText(sheets, outputPage()), md: () => sheetMarkdown(sheets),
    json: () => printableJson({
      version: ADVICE_SHAPE, plumule: version,
      journals: found.map(({ journal, asked, advice }) => ({ files: asked, ...adviceData(advice, journal) })), unread,
    }),
  }[format]();
  print(text);
  return unread.length > 0 ? exits.unread : exits.clean;
}
