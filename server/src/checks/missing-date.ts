import { subjectIdOf } from '../journal/mentions.ts';
import { keywords } from '../model/keywords.ts';
import { found, type IdCheck } from './check.ts';

/**
 * Records about a thing that carry no date and stand below no `day`. A date that is there but wrong is another problem,
 * be it their own or that of the `day` line.
 */
export const missingDate: IdCheck = function* (id, mentions, { journal }) {
  for (const { line, record, moment } of mentions) {
    // A record that needs a date of its own is judged by its line alone.
    if (moment || record.broken || keywords[record.keyword].dated !== 'yes') continue;
    if (subjectIdOf(record) !== id || journal.files.get(line.store.name)?.isBelowDay(line.number)) continue;
    yield found(line, 'missing-date', record.keywordSpan);
  }
};
