/** When two items say the same, and when one may be what became of the other. */
import { isDefining } from '../journal/mentions.ts';
import { isoOf } from '../model/day.ts';
import { factOf, factsOf, type JournalRecord } from '../model/record.ts';
import { isLasting } from '../syntax/limits.ts';
import { print } from '../syntax/print.ts';
import type { Item } from './items.ts';

/** Between the parts of a key; no text of a line has it. */
const BAR = '\n';

/** The same for items that are written in the same way and are of the same day. */
export function writtenName({ kind, head, tail, under, leans }: Item): string {
  const text = head?.text ?? '';
  if (kind === 'conflict') return [kind, text, ...tail.map(row => row.text)].join(BAR);
  if (kind === 'day') return [kind, under].join(BAR);
  return [kind, text, leans ? under : ''].join(BAR);
}

/** The same for records that say the same of the same day, however they are written. */
export function meantName(item: Item): string {
  const { head, reading } = item;
  const record = reading?.record;
  if (!head || !record || reading.problems.length > 0 || item.kind !== 'record') return writtenName(item);
  return ['means', ...headOf(item, record), factsText(head.text, record)].join(BAR);
}

function headOf(item: Item, { keyword, subject, plant, time }: JournalRecord): string[] {
  return [keyword, subject?.text ?? '', plant?.text ?? '', dayNameOf(item), String(time?.minutes ?? '')];
}

function factsText(text: string, record: JournalRecord): string {
  const printed = print(text, record, 'as listed');
  const comma = printed.indexOf(',');
  return comma < 0 ? '' : printed.slice(comma);
}

/** The day of a record: its own, else that of the `day` line above. */
export function dayNameOf({ reading, leans, under }: Item): string {
  const own = reading?.record?.date?.day;
  return own !== undefined ? isoOf(own) : leans ? under : '';
}

/**
 * The names that a record gives to things. Two records that give one name cannot both stand; of two limits for the same
 * the later one counts, so neither can they.
 */
export function givenNames({ reading, kind }: Item): string[] {
  const record = kind === 'record' ? reading?.record : undefined;
  if (!record?.subject) return [];
  const { keyword, subject } = record;
  if (isDefining(keyword)) return [`id ${subject.text}`];
  switch (keyword) {
    case 'split': return factsOf(record, 'part').map(({ name }) => `id ${subject.text}/${name.text}`);
    case 'zone': return ['zone'];
    case 'limit': {
      const of = isLasting(subject.text) ? subject.text.toLowerCase() : subject.text;
      return [`limit ${of} ${factOf(record, 'for')?.value.text ?? ''}`];
    }
    default: return [];
  }
}

/**
 * What a changed record keeps, from the surest sign that it is the same one to the weakest: a name that it gives; its
 * batch and moment; its batch and facts, on another day; its moment and facts, of another batch.
 */
export const keptSigns: readonly ((item: Item) => string | undefined)[] = [
  (item: Item): string | undefined => givenNames(item)[0],
  signOf(({ keyword, subject, time }, item) => [keyword, subject?.text, dayNameOf(item), time?.minutes]),
  signOf(({ keyword, subject }, item) => [keyword, subject?.text, dayNameOf(item)]),
  signOf((record, item) => [record.keyword, record.subject?.text, record.plant?.text, factsOrText(item, record)]),
  signOf((record, item) => [record.keyword, dayNameOf(item), record.time?.minutes, factsOrText(item, record)]),
];

/** Of a line that cannot be read in full nobody can say what its facts are. */
function factsOrText({ head }: Item, record: JournalRecord): string {
  const { text } = head!;
  const comma = text.indexOf(',');
  return record.broken ? (comma < 0 ? '' : text.slice(comma)) : factsText(text, record);
}

function signOf(
  parts: (record: JournalRecord, item: Item) => readonly (string | number | undefined)[],
): (item: Item) => string | undefined {
  return (item: Item): string | undefined => {
    const record = item.kind === 'record' ? item.reading?.record : undefined;
    return record && parts(record, item).join(BAR);
  };
}
