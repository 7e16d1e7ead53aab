/** A change of one record in the grower's words. */
import type { Item } from '../merge/items.ts';
import { dayNameOf } from '../merge/identity.ts';
import type { Fact, FactOfType, JournalRecord } from '../model/record.ts';
import { months } from '../syntax/dates.ts';
import { listed } from '../syntax/nearest.ts';

/** Example: dateWords('2026-02-08') is '8 February 2026'; another text is given back */
function dateWords(iso: string): string {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso);
  return parts ? `${Number(parts[3])} ${months[Number(parts[2]) - 1]!} ${parts[1]!}` : iso;
}

/** A record that is new. Example: '3 more germinated, none rotted on 8 February 2026' */
export function addedWords(item: Item): string {
  const { record, text } = read(item);
  if (!record) return `a new line that cannot be read: ${text.trim()}`;
  const counts = record.facts.filter((fact): fact is FactOfType<'count'> => fact.type === 'count');
  const isCount = record.keyword === 'count' && counts.length > 0 && !record.broken;
  if (isCount) return counts.map(countWords).join(', ') + onDay(item);
  return `new: ${recordWords(item)}`;
}

/** Example: 'taken out: soak on 10 January 2026, GA3 500 ppm, 24 h' */
export function removedWords(item: Item): string {
  const { record, text } = read(item);
  return record ? `removed: ${recordWords(item)}` : `removed: the line ${text.trim()}`;
}

/** What is another in a record; none where it only is written in another way. */
export function changedWords(before: Item, after: Item): string[] {
  const [old, now] = [read(before), read(after)];
  if (!now.record || old.record?.keyword !== now.record.keyword) {
    return [`“${old.text.trim()}” is now “${now.text.trim()}”`];
  }
  const name = now.record.keyword + (now.record.keyword === 'lot' ? '' : onDay(after));
  return [
    ...instead(name, 'of', old.record.subject?.text, now.record.subject?.text),
    ...instead(now.record.keyword, 'on', dateWords(dayNameOf(before)), dateWords(dayNameOf(after))),
    ...instead(name, 'at', timeText(old.record, old.text), timeText(now.record, now.text)),
    ...instead(name, 'of', old.record.plant?.text, now.record.plant?.text),
    ...factsWords(name, factTexts(old), factTexts(now)),
  ];
}

/** What was added to the remarks of a record, and taken out of them. */
export function remarkWords(before: Item, after: Item): string[] {
  const texts = ({ tail }: Item) => tail.map(({ text }) => text.trim()).filter(text => text !== '');
  const [old, now] = [texts(before), texts(after)];
  const about = `remark on “${read(after).record?.keyword ?? 'the line'}”${onDay(after)}`;
  return [
    ...now.filter(text => !old.includes(text)).map(text => `${about}: ${text}`),
    ...old.filter(text => !now.includes(text)).map(text => `${about} removed: ${text}`),
  ];
}

interface Written {
  readonly record: JournalRecord | undefined;
  readonly text: string;
}

function read({ reading, head }: Item): Written {
  return { record: reading?.record, text: head?.text ?? '' };
}

function onDay(item: Item): string {
  const day = dayNameOf(item);
  return day === '' ? '' : ` on ${dateWords(day)}`;
}

function recordWords(item: Item): string {
  const { record, text } = read(item);
  const plant = record!.plant ? ` ${record!.plant.text}` : '';
  const [first] = record!.facts;
  return record!.keyword + plant + onDay(item) + (first ? `, ${text.slice(first.start).trim()}` : '');
}

function countWords({ what, n, total }: FactOfType<'count'>): string {
  if (total) return `${n.value} ${what} in all`;
  return n.value === 0 ? `none ${what}` : `${n.value} more ${what}`;
}

function instead(name: string, word: string, old: string | undefined, now: string | undefined): string[] {
  if ((old ?? '') === (now ?? '')) return [];
  if (!now) return [`${name} no longer ${word} ${old!}`];
  return [`${name} now ${word} ${now}${old ? ` instead of ${old}` : ''}`];
}

function timeText({ time }: JournalRecord, text: string): string | undefined {
  return time && text.slice(time.start, time.end);
}

/** The facts by what they are about, as they are written but for blanks. */
function factTexts({ record, text }: Written): Map<string, string> {
  const texts = new Map<string, string>();
  for (const fact of record!.facts) {
    let key = keyOf(fact);
    // A regime may have two warm stages.
    while (texts.has(key)) key += ' again';
    texts.set(key, text.slice(fact.start, fact.end).replaceAll(/\s+/g, ' '));
  }
  return texts;
}

function keyOf(fact: Fact): string {
  switch (fact.type) {
    case 'count': case 'cut': return `${fact.type} ${fact.what}`;
    case 'part': return `part ${fact.name.text}`;
    case 'substance': return `substance ${fact.name.text}`;
    case 'replaces': return `replaces ${fact.value.text}`;
    default: return fact.type;
  }
}

function factsWords(name: string, old: ReadonlyMap<string, string>, now: ReadonlyMap<string, string>): string[] {
  const changed = [...now].filter(([key, text]) => old.has(key) && old.get(key) !== text);
  const added = [...now].filter(([key]) => !old.has(key)).map(([, text]) => text);
  const gone = [...old].filter(([key]) => !now.has(key)).map(([, text]) => text);
  // One fact in place of one of another kind is a change, such as an end in place of a length.
  if (added.length === 1 && gone.length === 1) {
    return [...changed.map(told), `${name} now ${added[0]!} instead of ${gone[0]!}`];
  }
  return [
    ...changed.map(told),
    ...(added.length > 0 ? [`${name} now also ${listed(added, 'and')}`] : []),
    ...(gone.length > 0 ? [`${name} no longer ${listed(gone, 'and')}`] : []),
  ];
  function told([key, text]: [string, string]): string {
    return `${name} now ${text} instead of ${old.get(key)!}`;
  }
}
