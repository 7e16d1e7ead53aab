/** When a bottle was emptied: it lies nowhere then, and nobody has to replace it. */
import type { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import { ledger, type Solution } from '../journal/solutions.ts';
import { factOf } from '../model/record.ts';
import { hasCome } from './standing.ts';

const emptied = /\b(?:thrown away|threw away|thrown out|threw out|emptied|empty|used up|finished|discarded|poured away|replaced)\b/i;
const notYet = /\b(?:not|nearly|almost|half|soon|before)\b|n['’]t\b/i;

/** The draw that took the last of it, or a note that says so; undefined while something is left. */
export function emptiedAt(solution: Solution, journal: Journal, now: Moment): Moment | undefined {
  const { id, madeMl } = solution;
  const draws = journal.drawsFrom(id).filter(({ entry: { moment } }) => moment && hasCome(moment, now));
  const last = madeMl && ledger(solution, draws).entries.find(({ leftMl }) => leftMl?.equals(0));
  const noted = journal.mentionsOf(id).find(({ record, moment }) => {
    if (record.keyword !== 'note' || record.subject?.text !== id) return false;
    const text = factOf(record, 'text')?.value.text;
    if (text === undefined || !emptied.test(text) || notYet.test(text)) return false;
    return moment !== undefined && hasCome(moment, now);
  });
  return last?.key.entry.moment ?? noted?.moment;
}
