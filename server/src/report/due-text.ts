import { dueGroups, type DueGroup, type DueItem } from '../calendar/due.ts';
import { daysText } from '../features/words/days.ts';
import { printMoment } from '../journal/moment.ts';
import type { Agenda } from './agenda.ts';
import { printable } from './printable.ts';
import { paragraph } from './table.ts';

const WIDTH = 100;

type Paint = (text: string) => string;

const titles: Readonly<Record<DueGroup, string>> = {
  overdue: 'Overdue', today: 'Today', 'this week': 'This week', later: 'Later',
};

/** What is due for a terminal: of each item when and what, where it lies, where it is written, the record to write. */
export function dueText(agendas: readonly Agenda[], heading: Paint = text => text): string {
  return agendas.map(agenda => `${[titleOf(agenda), ...groupsOf(agenda, heading)].join('\n\n')}\n`).join('\n');
}

function titleOf({ name, now }: Agenda): string {
  return printable(`Due${name === undefined ? '' : ` in ${name}`} as on ${printMoment(now)}`);
}

function groupsOf({ items }: Agenda, heading: Paint): string[] {
  if (items.length === 0) return ['Nothing is due.'];
  const width = Math.max(...items.map(item => whenOf(item).length));
  return dueGroups.flatMap(group => {
    const own = items.filter(item => item.group === group);
    return own.length === 0 ? [] : [[heading(titles[group]), ...own.flatMap(item => linesOf(item, width))].join('\n')];
  });
}

function linesOf(item: DueItem, width: number): string[] {
  const { id, what, entry: { line }, action } = item;
  const margin = ' '.repeat(width + 4);
  const words = paragraph(printable(`${id}  ${what}`), WIDTH - margin.length);
  const late = item.overdueDays > 0 ? `${daysText(item.overdueDays)} late` : undefined;
  const facts = [late, item.plant, item.place && `at ${item.place}`].filter(fact => fact);
  const source = `${line.store.name}:${line.number + 1}`;
  return [
    `  ${whenOf(item).padEnd(width)}  ${words[0]!}`,
    ...[
      ...words.slice(1),
      ...paragraph(printable(facts.length > 0 ? `${source}  ${facts.join(', ')}` : source), WIDTH - margin.length),
      // Whole, however long: it is there to be copied.
      ...(action === undefined ? [] : [printable(`write: ${action}`.trimEnd())]),
    ].map(text => `${margin}${text}`),
  ];
}

function whenOf({ day, minutes }: DueItem): string {
  return printMoment({ day, minutes });
}
