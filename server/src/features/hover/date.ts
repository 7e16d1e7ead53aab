/** A date: the weekday, how long ago, and the day numbers of the batches that it is about. */
import { dayNumber, type Entry } from '../../journal/life.ts';
import { isoOf, weekdayOf, type Day } from '../../model/day.ts';
import { factOf, type DaySpan } from '../../model/record.ts';
import { lifeOf } from '../events.ts';
import { escapeMarkdown, markdownList } from '../markdown.ts';
import { agoText, collectedText, daySpanText, daysText } from '../../words/days.ts';
import { originText } from '../../words/germination.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

interface DateOfRecord {
  readonly day: Day;
  readonly entry: Entry;
}

const heading: Section<DateOfRecord> = ({ day }, { now }) => {
  const days = Math.abs(day - now.day);
  const ago = agoText(day, now.day);
  // In words from two weeks on it is rounded.
  return `**${weekdayOf(day)} ${isoOf(day)}** · ${ago}${days < 14 ? '' : ` (${daysText(days)})`}`;
};

const ofBatch: Section<DateOfRecord> = ({ day, entry }, { journal }) => {
  const batch = lifeOf(journal, entry)?.batch;
  const number = batch && dayNumber(batch, { day, minutes: undefined });
  return number === undefined || !batch?.origin ? undefined : `Day ${number} of ${escapeMarkdown(batch.path)}; day 0 is ${originText(batch.origin)}.`;
};

/** Lines below a `day` that are looked at, and batches that are named for each number. */
const MOST_LINES = 200;
const MOST_NAMES = 8;

const ofRecordsBelow: Section<DateOfRecord> = ({ day, entry: { line, record } }, { journal }) => {
  const file = journal.files.get(line.store.name);
  if (record.keyword !== 'day' || !file) return undefined;
  const byNumber = new Map<number, Set<string>>();
  let seen = 0;
  for (const below of file.linesToNextDay(line.number + 1)) {
    if (seen++ === MOST_LINES) break;
    const entry = journal.entryAt(below);
    const batch = entry && !entry.record.date ? lifeOf(journal, entry)?.batch : undefined;
    const number = batch && dayNumber(batch, { day, minutes: undefined });
    if (batch && number !== undefined) byNumber.set(number, (byNumber.get(number) ?? new Set()).add(batch.path));
  }
  const items = [...byNumber].sort(([a], [b]) => a - b).map(([number, paths]) => `Day ${number}: ${namesText([...paths])}`);
  return items.length === 0 ? undefined : markdownList(items.map(escapeMarkdown));
};

function namesText(names: readonly string[]): string {
  const more = names.length - MOST_NAMES;
  return `${names.slice(0, MOST_NAMES).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

/** Add to these what else there is to say of a date. */
const dateSections: readonly Section<DateOfRecord>[] = [heading, ofBatch, ofRecordsBelow];

export function hoverDate(day: Day, entry: Entry, context: HoverContext): string | undefined {
  return sectionsOf(dateSections, { day, entry }, context);
}

/** When the seed was collected: how old it was when it was first soaked, chilled or sown, and how old it is. */
export function hoverCollected(when: DaySpan, { record }: Entry, { journal, now }: HoverContext): string {
  const age = (today: Day) => {
    const [most, least] = [today - when.first, today - when.last];
    return most === least ? daysText(most) : `${Math.max(0, least)} to ${daysText(most)}`;
  };
  const lot = journal.lot(record.subject?.text ?? '');
  const first = Math.min(...[...(lot?.batches.values() ?? [])].flatMap(({ origin }) => origin?.moment.day ?? []));
  const used = Number.isFinite(first) && first >= when.first ? `; ${age(first)} old on ${isoOf(first)}, the first day 0 of its batches` : '';
  const fact = factOf(record, 'collected');
  return `Collected ${fact ? collectedText(fact) : daySpanText(when)} · ${now.day < when.first ? 'still to come' : `${age(now.day)} old${used}`}`;
}
