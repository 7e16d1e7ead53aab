import { isZone } from '../journal/moment.ts';
import { found, type JournalCheck } from './check.ts';

export const unknownZone: JournalCheck = function* ({ journal }) {
  for (const { line, record } of journal.globalEntries('zone')) {
    const { subject } = record;
    if (subject && !isZone(subject.text)) yield found(line, 'unknown-zone', subject, { zone: subject.text });
  }
};
