/** What the tests of advice share. */
import { adviceFor, type Advice } from '../../server/src/advice/advice.ts';
import { answerText } from '../../server/src/words/advice.ts';
import { adviceSheet } from '../../server/src/report/advice/sheet.ts';
import type { Moment } from '../../server/src/journal/moment.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { journalOf } from '../trials/helpers.ts';

/** In the evening of a day of late November. */
export const NOW: Moment = { day: dayOfIso('2026-11-29')!, minutes: 19 * 60 };

/** A trial in its winter: so many of 24 treated and of 24 untreated seeds, the rest cut open. */
export function trialIn(lot: string, treated: number, untreated: number, soak = 'GA3 500 ppm', year = 2025): string {
  return `
    split ${lot}, A 24 seeds, B 24 seeds
    soak ${lot}/A ${year}-01-10 19:00, ${soak}, 24 h
    soak ${lot}/B ${year}-01-10 19:00, water, 24 h
    sow ${lot}/A ${year}-01-11 19:00, 24 seeds, 15 C
    sow ${lot}/B ${year}-01-11 19:00, 24 seeds, 15 C
    count ${lot}/A ${year}-02-15, ${treated}
    count ${lot}/B ${year}-02-15, ${untreated}
    cut ${lot}/A ${year}-04-01, ${24 - treated} fresh
    cut ${lot}/B ${year}-04-01, ${24 - untreated} fresh
  `;
}

/** Texts put together have all their records at the margin. A line that begins with `>` is a remark. */
function flush(source: string): string {
  return source.split('\n').map(line => line.trim().replace(/^>/, '  ')).filter(line => line !== '').join('\n');
}

/** The advice for a lot of a journal */
export function adviceOn(source: string, id = 'NEW-26'): Advice {
  const journal = journalOf(flush(source));
  return adviceFor(journal.lot(id)!, journal, NOW);
}

export function answerOn(source: string, id = 'NEW-26'): string {
  return answerText(adviceOn(source, id));
}

/** What is said under the headings of the page. */
export function pageOn(source: string, id = 'NEW-26'): Record<string, string[]> {
  const journal = journalOf(flush(source));
  const advice = adviceFor(journal.lot(id)!, journal, NOW);
  const { lead, passages, notes } = adviceSheet(advice, journal);
  return {
    lead: [...lead], notes: [...notes],
    ...Object.fromEntries(passages.map(({ heading, items, texts }) => (
      [heading, [...items.flatMap(({ title, texts: said }) => [title, ...said]), ...texts]]))),
  };
}
