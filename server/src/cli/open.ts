import { ProblemBook } from '../checks/problem-book.ts';
import { readJournal } from '../disk/read.ts';
import { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import { present } from '../lsp/clock.ts';
import type { Day } from '../model/day.ts';
import { gather, type Group } from './gather.ts';
import { nameOf, unreadOf, type Unread } from './names.ts';
import { complainOf } from './output.ts';

/** One journal, read and checked. Its files go by their paths from the current folder, parts divided by `/`. */
export interface OpenJournal {
  readonly journal: Journal;
  readonly book: ProblemBook;
  readonly folder: string;
  /** The files that were asked for and could be read, sorted; others may be there as context. */
  readonly asked: readonly string[];
  readonly now: Moment;
}

export interface Opening {
  readonly journals: readonly OpenJournal[];
  /** What was asked for and could not be read. */
  readonly unread: readonly Unread[];
}

/**
 * Opens what the paths mean; no path: the current folder. Without `today` it is the present in each journal's zone.
 * With `until`, what is dated after that day does not count. Of what was not asked for and cannot be read it complains.
 */
export async function openJournals(
  paths: readonly string[], today: Moment | undefined, until?: Day,
): Promise<Opening> {
  const { groups, faults, remarks } = await gather(paths.length > 0 ? paths : ['.']);
  const unread = faults.map(unreadOf);
  complainOf(remarks.map(unreadOf));
  const journals: OpenJournal[] = [];
  for (const group of groups) journals.push(await open(group, today, until, unread));
  return { journals: journals.filter(({ asked }) => asked.length > 0), unread };
}

async function open(
  group: Group, today: Moment | undefined, until: Day | undefined, unread: Unread[],
): Promise<OpenJournal> {
  const { folder, asked, beside } = group;
  const journal = new Journal(until);
  const names: string[] = [];
  for (const file of [...asked, ...beside]) {
    try {
      const text = await readJournal(file);
      const name = nameOf(file);
      journal.set(name, text);
      if (asked.includes(file)) names.push(name);
    } catch (error) {
      // What lies beside the files asked for says nothing of them.
      if (asked.includes(file)) unread.push(unreadOf(error));
      else complainOf([unreadOf(error)]);
    }
  }
  const now = today ?? present(journal.zone);
  const book = new ProblemBook(journal);
  book.update(now);
  return { journal, book, folder: nameOf(folder), asked: names.sort(), now };
}
