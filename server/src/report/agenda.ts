/** What is due in a journal, as a report and a calendar have it. */
import { everythingDue, isLongAgo, type DueItem } from '../calendar/due.ts';
import type { Journal } from '../journal/journal.ts';
import { rootOf, tellsOf } from '../journal/mentions.ts';
import type { Moment } from '../journal/moment.ts';

export interface Agenda {
  /** Tells one journal from another where there are several. */
  readonly name: string | undefined;
  readonly now: Moment;
  readonly zone: string | undefined;
  /** The overdue first, then by time. */
  readonly items: readonly DueItem[];
  /** What is put apart, because nobody acted on it for more than PAST_DAYS. */
  readonly past: readonly DueItem[];
}

export interface AgendaOptions {
  readonly now: Moment;
  readonly name?: string;
  /** What is about lots and stocks that these files say something of; without it all. */
  readonly files?: readonly string[];
  /** Up to so many days from today, with all that is overdue; without it all. */
  readonly days?: number;
}

export function agendaOf(journal: Journal, { now, name, files, days = Infinity }: AgendaOptions): Agenda {
  const isAsked = ({ id, day }: DueItem) => day <= now.day + days && isSaidIn(journal, id, files);
  const all = everythingDue(journal, now).filter(isAsked);
  return { name, now, zone: journal.zone, items: all.filter(item => !isLongAgo(item)), past: all.filter(isLongAgo) };
}

/** Whether files say something of a lot, or of whatever else has this id; without files all counts. */
export function isSaidIn(journal: Journal, id: string, files: readonly string[] | undefined): boolean {
  if (!files || files.length === journal.files.size) return true;
  const root = rootOf(id);
  return journal.mentionsOf(root).some(({ line, record }) => tellsOf(record, root) && files.includes(line.store.name));
}
