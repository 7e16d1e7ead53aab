import { inJournalOrder, type JournalLine } from '../journal/journal-file.ts';
import type { Journal } from '../journal/journal.ts';
import { isGivenOut } from '../journal/given-out.ts';
import type { Batch, DatedEntry, Entry, Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { meaningOfKeyword } from '../model/events.ts';
import { factOf } from '../model/record.ts';
import type { Due } from './due-sources.ts';
import { hasCome, type Standing } from './standing.ts';

/**
 * The grower's own reminders about a batch. One is done when a record about the batch, or about a batch split off from
 * it, is dated on its day or later; a `count`, a `photo` and another reminder do not answer it, a `note` does. It is
 * moot when the batch has been closed, unless it stands below the record that closed it and so was written after it.
 */
export function* remindersOfBatch(_journal: Journal, _lot: Lot, { batch }: Standing, now: Moment): Iterable<Due> {
  const reminders = batch.events.filter(({ type }) => type === 'due');
  if (reminders.length === 0) return;
  const family = [batch];
  // A list is gone through in the order in which it grows.
  for (const each of family) family.push(...each.children);
  const closing = closingOf(family, now);
  for (const { entry } of reminders) {
    const isMoot = closing.length > 0 && inJournalOrder([entry.line, ...closing])[0] === entry.line;
    if (!isMoot && !family.some(({ events }) => events.some(event => isAnswer(event.entry, entry, now)))) {
      yield reminder(entry, batch.path);
    };
  }
}

/** Reminders about stocks, regimes and agents; a note about them answers. */
export function* remindersOfThings(journal: Journal, now: Moment): Iterable<Due> {
  for (const id of journal.definedIds()) {
    if (journal.lot(id)) continue;
    const about = journal.mentionsOf(id).filter(({ record }) => record.subject?.text === id);
    for (const entry of about) {
      if (entry.record.keyword === 'due' && isDated(entry) && !about.some(other => isAnswer(other, entry, now))) {
        yield reminder(entry, id);
      };
    }
  }
}

/** What closed a batch and all that was split off from it; empty while a part of it is open. */
function closingOf(family: readonly Batch[], now: Moment): JournalLine[] {
  const lineOf = ({ closed }: Batch) => (closed && hasCome(closed.entry.moment, now) ? closed.entry.line : undefined);
  if (family.some(batch => !isGivenOut(batch) && !lineOf(batch))) return [];
  return family.map(lineOf).filter(line => line !== undefined);
}

function isAnswer({ record, moment }: Entry, reminded: DatedEntry, now: Moment): boolean {
  if (moment === undefined || meaningOfKeyword(record.keyword)?.answersReminder === false) return false;
  return moment.day >= reminded.moment.day && hasCome(moment, now);
}

function isDated(entry: Entry): entry is DatedEntry {
  return entry.moment !== undefined;
}

function reminder(entry: DatedEntry, id: string): Due {
  const text = factOf(entry.record, 'text')?.value.text ?? '';
  return {
    kind: 'reminder', id, entry, since: entry.moment, at: entry.moment, what: text,
    ask: { keyword: 'note', subject: id, facts: `done: ${text}`, timed: false },
  };
}
