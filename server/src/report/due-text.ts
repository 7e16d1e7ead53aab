import { dueGroups, type DueGroup, type DueItem } from '../calendar/due.ts';
import { dueRows, namesInRow, type DueRow } from '../calendar/due-rows.ts';
import { LONG_AGO, longAgoRows } from '../calendar/long-ago.ts';
import { daysText } from '../words/days.ts';
import { printMoment } from '../journal/moment.ts';
import type { Agenda } from './agenda.ts';
import { plainPage, type Page } from './page.ts';
import { printable } from './printable.ts';
import { paragraph } from './table.ts';

const titles: Readonly<Record<DueGroup, string>> = {
  overdue: 'Overdue', today: 'Today', 'this week': 'This week', later: 'Later', 'long ago': LONG_AGO,
};

/** What is due for a terminal: of each item when and what, where it lies, where it is written, the record to write. */
export function dueText(agendas: readonly Agenda[], page = plainPage): string {
  return agendas.map(agenda => `${[titleOf(agenda), ...groupsOf(agenda, page)].join('\n\n')}\n`).join('\n');
}

function titleOf({ name, now }: Agenda): string {
  return printable(`Due${name === undefined ? '' : ` in ${name}`} as of ${printMoment(now)}`);
}

function groupsOf({ items, past }: Agenda, page: Page): string[] {
  const rows = dueRows(items);
  const width = Math.max(...items.map(item => whenOf(item).length));
  return [
    ...(items.length === 0 ? ['Nothing is due.'] : []),
    ...dueGroups.flatMap(group => {
      const own = rows.filter(({ item }) => item.group === group);
      return own.length === 0 ? [] : [[page.bold(titles[group]), ...own.flatMap(row => linesOf(row, width, page))].join('\n')];
    }),
    ...(past.length > 0 ? [longAgoText(past, page)] : []),
  ];
}

function longAgoText(past: readonly DueItem[], page: Page): string {
  const indented = (text: string, by: number) => paragraph(printable(text), page.width - by).map(line => `${' '.repeat(by)}${line}`);
  return [
    page.bold(titles['long ago']),
    ...longAgoRows(past).flatMap(({ what, names }) => [...indented(what, 2), ...indented(names.join(', '), 4)]),
    ...indented('Write “discard” for what is over.', 2),
  ].join('\n');
}

function linesOf(row: DueRow, width: number, page: Page): string[] {
  const { item, round } = row;
  const margin = ' '.repeat(width + 4);
  if (round === undefined) return linesOfItem(item, width, margin, page);
  const ids = paragraph(printable(namesInRow(row).join(', ')), page.width - margin.length);
  return [`  ${whenOf(item).padEnd(width)}  ${printable(round)}`, ...ids.map(text => `${margin}${text}`)];
}

function linesOfItem(item: DueItem, width: number, margin: string, page: Page): string[] {
  const { id, what, entry: { line }, action } = item;
  const words = paragraph(printable(`${id}  ${what}`), page.width - margin.length);
  const facts = [lateText(item), item.plant, item.place && `at ${item.place}`].filter(fact => fact);
  const source = `${line.store.name}:${line.number + 1}`;
  return [
    `  ${whenOf(item).padEnd(width)}  ${words[0]!}`,
    ...[
      ...words.slice(1),
      ...paragraph(printable(facts.length > 0 ? `${source}  ${facts.join(', ')}` : source), page.width - margin.length),
      // Whole, however long: it is there to be copied.
      ...(action === undefined ? [] : [printable(`write: ${action}`.trimEnd())]),
    ].map(text => `${margin}${text}`),
  ];
}

/** Example: '3 days late'; of today '90 min late', '5 h late' */
function lateText({ overdueDays, overdueMinutes: minutes }: DueItem): string | undefined {
  if (overdueDays > 0) return `${daysText(overdueDays)} late`;
  if (minutes === undefined) return undefined;
  return minutes < 120 ? `${minutes} min late` : `${Math.floor(minutes / 60)} h late`;
}

function whenOf({ day, minutes }: DueItem): string {
  return printMoment({ day, minutes });
}
