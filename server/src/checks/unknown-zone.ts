import { isZone } from '../journal/zone.ts';
import { found, type JournalCheck } from './check.ts';

/** A `zone` that the list of time zones does not have. */
export const unknownZone: JournalCheck = function* ({ journal }) {
  for (const { line, record: { subject } } of journal.globalEntries('zone')) {
    if (subject && !isZone(subject.text)) yield found(line, 'unknown-zone', subject, { zone: subject.text });
  }
};
