/** When a bottle was emptied: it lies nowhere then, and nobody has to replace it. */
import type { Journal } from '../journal/journal.ts';
import type { DatedEntry } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { ledger } from '../journal/draws.ts';
import type { Solution } from '../journal/solutions.ts';
import { factOf } from '../model/record.ts';
import { hasCome } from './standing.ts';

const emptied = /\b(?:thrown away|threw away|thrown out|threw out|emptied|empty|used up|finished|discarded|poured away|replaced)\b/i;
const notYet = /\b(?:not|nearly|almost|half|soon|before)\b|n['’]t\b/i;

/** When the last of it was taken, or nothing was found to be left, or a note says so; undefined while there is some. */
export function emptiedAt(solution: Solution, journal: Journal, now: Moment): Moment | undefined {
  const { id } = solution;
  const account = journal.accountOf(id).filter(({ entry: { moment } }) => moment && hasCome(moment, now));
  const { entries } = ledger(solution, account);
  // It may have been measured again, and something was left.
  const last = entries[entries.findLastIndex(({ left }) => !left?.most.equals(0)) + 1];
  return last?.key.entry.moment ?? goneNote(id, journal, now)?.moment;
}

/** The note that says that a bottle or a packet is gone: thrown away, emptied, used up. */
export function goneNote(id: string, journal: Journal, now: Moment): DatedEntry | undefined {
  return journal.mentionsOf(id).find((entry): entry is DatedEntry => {
    const { record, moment } = entry;
    if (record.keyword !== 'note' || record.subject?.text !== id) return false;
    const text = factOf(record, 'text')?.value.text;
    if (text === undefined || !emptied.test(text) || notYet.test(text)) return false;
    return moment !== undefined && hasCome(moment, now);
  });
}
