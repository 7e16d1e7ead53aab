import { icsOf } from '../calendar/ics.ts';
import { writeOurs } from '../disk/write.ts';
import type { Moment } from '../journal/moment.ts';
import { agendaOf } from '../report/agenda.ts';
import { exits, type Exit } from './exits.ts';
import { unreadOf } from './names.ts';
import { openJournals, type OpenJournal } from './open.ts';
import { complain, complainOf, print } from './output.ts';
import { writeTables } from './tables.ts';

export interface ExportOptions {
  /** What is due, as a calendar. */
  readonly ics?: true;
  /** All records, as tables for other programs. */
  readonly tables?: true;
  /** The file or the folder to write; without it a calendar is printed. */
  readonly output?: string;
  /** The tables as Parquet too. */
  readonly parquet?: true;
  /** What the tables call the journal. */
  readonly name?: string;
  readonly today?: Moment;
  /** The day up to which records count, and the present at its end; of the tables. */
  readonly asOf?: Moment;
}

/** `plumule export`: what is due as an iCalendar file, or everything as tables. */
export async function exportJournals(paths: readonly string[], options: ExportOptions): Promise<Exit> {
  const { ics, tables, output, today, asOf } = options;
  if (!ics && !tables) {
    complain('say what to export: --ics is what is due as a calendar, --tables all records as tables');
    return exits.unread;
  }
  if (tables && output === undefined) {
    complain('say with -o which folder to write the tables to');
    return exits.unread;
  }
  const { journals, unread } = await openJournals(paths, asOf ?? today, asOf?.day);
  complainOf(unread);
  const exit = unread.length > 0 ? exits.unread : exits.clean;
  if (journals.length === 0) return exit;
  try {
    if (tables) await writeTables(output!, journals, options);
    else await writeCalendar(output, journals);
  } catch (error) {
    complainOf([unreadOf(error)]);
    return exits.unread;
  }
  return exit;
}

async function writeCalendar(output: string | undefined, journals: readonly OpenJournal[]): Promise<void> {
  const agendas = journals.map(({ journal, asked, now }) => agendaOf(journal, { now, files: asked }));
  const text = icsOf(agendas, { stamp: Date.now() });
  if (output === undefined) {
    print(text);
    return;
  }
  await writeOurs(output, text, 'calendar');
  const entries = agendas.reduce((sum, { items, past }) => sum + items.length + Number(past.length > 0), 0);
  complain(`wrote ${entries} ${entries === 1 ? 'entry' : 'entries'} to ${output}`);
}
