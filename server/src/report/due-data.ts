/** What is due as plain data for other programs; the README describes the shape. */
import { isoMoment } from '../calendar/ask.ts';
import type { DueItem } from '../calendar/due.ts';
import type { Agenda } from './agenda.ts';

/** Version of the shape; it grows when something in it changes its meaning or goes, not when something comes. */
export const DUE_SHAPE = 1;

export function agendaData({ now, zone, items, past }: Agenda): object {
  return {
    now: isoMoment(now), zone: zone ?? null, longPast: past.length,
    due: items.map(itemData), longAgo: past.map(itemData),
  };
}

function itemData(item: DueItem): object {
  const { key, group, kind, id, plant, places, what, day, minutes, overdueDays, overdueMinutes, action, entry } = item;
  const { line, record } = entry;
  const { start, end } = record.subject ?? record.keywordSpan;
  return {
    key, group, kind, id,
    plant: plant ?? null,
    place: places.at(-1) ?? null,
    places,
    what,
    at: isoMoment({ day, minutes }),
    overdueDays,
    overdueMinutes: overdueMinutes ?? null,
    write: action ?? null,
    file: line.store.name, line: line.number + 1, column: start + 1, endColumn: end + 1,
  };
}
