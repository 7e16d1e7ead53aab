import { icsOf } from '../calendar/ics.ts';
import { writeOurs } from '../disk/write.ts';
import type { Moment } from '../journal/moment.ts';
import { agendaOf } from '../report/agenda.ts';
import { exits, type Exit } from './exits.ts';
import { unreadOf } from './names.ts';
import { openJournals } from './open.ts';
import { complain, complainOf, print } from './output.ts';

export interface ExportOptions {
  readonly ics?: true;
  /** The file to write; without it the result is printed. */
  readonly output?: string;
  readonly today?: Moment;
}

/** `plumule export`: what is due as an iCalendar file. */
export async function exportJournals(paths: readonly string[], { ics, output, today }: ExportOptions): Promise<Exit> {
  if (!ics) {
    complain('say what to export: --ics is what is due as a calendar');
    return exits.unread;
  }
  const { journals, unread } = await openJournals(paths, today);
  complainOf(unread);
  const exit = unread.length > 0 ? exits.unread : exits.clean;
  if (journals.length === 0) return exit;
  const agendas = journals.map(({ journal, asked, now }) => agendaOf(journal, { now, files: asked }));
  const text = icsOf(agendas, { stamp: Date.now() });
  if (output === undefined) {
    print(text);
    return exit;
  }
  try {
    await writeOurs(output, text, 'calendar');
  } catch (error) {
    const { path, message } = unreadOf(error);
    complain(`${path}: ${message}`);
    return exits.unread;
  }
  const entries = agendas.reduce((sum, { items }) => sum + items.length, 0);
  complain(`wrote ${entries} ${entries === 1 ? 'entry' : 'entries'} to ${output}`);
  return exit;
}
