import { version } from '../../../package.json';
import type { Moment } from '../journal/moment.ts';
import { agendaOf } from '../report/agenda.ts';
import { agendaData, DUE_SHAPE } from '../report/due-data.ts';
import { dueText } from '../report/due-text.ts';
import { printableJson } from '../report/printable.ts';
import { exits, type Exit } from './exits.ts';
import { openJournals } from './open.ts';
import { complainOf, outputPage, print } from './output.ts';
import type { textFormats } from './program/choices.ts';

export interface DueOptions {
  readonly format: (typeof textFormats)[number];
  readonly days?: number;
  readonly today?: Moment;
}

/** `plumule due`: prints what is due, the overdue first. */
export async function due(paths: readonly string[], { format, days, today }: DueOptions): Promise<Exit> {
  const { journals, unread } = await openJournals(paths, today);
  const agendas = journals.map(({ journal, asked, folder, now }) => agendaOf(journal, {
    now, files: asked, ...(journals.length > 1 && { name: folder }), ...(days !== undefined && { days }),
  }));
  if (format === 'text') print(dueText(agendas, outputPage()));
  else {
    const told = agendas.map((agenda, i) => ({ files: journals[i]!.asked, ...agendaData(agenda) }));
    print(printableJson({ version: DUE_SHAPE, plumule: version, journals: told, unread }));
  }
  complainOf(unread);
  return unread.length > 0 ? exits.unread : exits.clean;
}
