/** Short words for what is due, where there is little room; the longer ones are in tooltips and for screen readers. */
import type { DueShown } from '../../../server/src/lsp/calendar-shapes.ts';

/** What is told by an icon needs no more words. */
export function briefly({ id, kind, what, isRunning }: DueShown): string {
  if (id === '') return what;
  if (kind === 'soak') return `${id}: ${isRunning ? 'lift' : 'no end recorded'}`;
  return `${id}: ${kind === 'count' ? 'count' : what}`;
}

/** Letters that the status bar has for an id, and for what a reminder says: longer ones end in “…”. */
const ID_ROOM = 16;
const WORDS_ROOM = 24;

/**
 * For the status bar, in so few words that they are seen whole. The soak that ends next comes first, for its end cannot
 * wait: several that end together are one. Beside it stands how much is overdue or else due today; without a soak, the
 * next thing that is due within a week, or how many are overdue. Undefined where there is nothing to say.
 * Example: '5 lifts Tue 06:58 · 3 overdue'
 */
export function nextInWords(items: readonly DueShown[]): string | undefined {
  const [lifts, rest] = nextLifts(items);
  const [lift] = lifts;
  const told = toldBeside(lifts, rest);
  const [next] = told;
  if (lift) {
    const what = lifts.length > 1 ? counted(lifts.length, 'lift') : clipped(lift);
    const beside = next ? ` · ${told.length} ${next.group === 'overdue' ? 'overdue' : 'due today'}` : '';
    return `${what} ${inTheBar(lift)}${beside}`;
  }
  if (told.length > 1) return `${told.length} overdue`;
  return next && `${clipped(next)}, ${inTheBar(next)}`;
}

/** Lines over the status bar; of more the number is told. */
const MOST = 20;

/** The same with nothing left out, over the status bar: the soaks that end next by name, and all that is counted. */
export function nextInFull(items: readonly DueShown[]): string {
  const [lifts, rest] = nextLifts(items);
  const told = toldBeside(lifts, rest);
  const lines = told.slice(0, MOST).map(({ id, what, when }) => [id, `${what}, ${when}`].filter(Boolean).join(': '));
  return [
    ...(lifts[0] ? [`${lifts.map(({ id }) => id).join(', ')}: lift, ${lifts[0].when}`] : []), ...lines,
    ...(told.length > MOST ? [`and ${told.length - MOST} more`] : []),
  ].join('\n');
}

/**
 * What the status bar tells beside the soaks: all that is overdue, else what is due today; without a soak, all of
 * several that are overdue, else the next thing within a week.
 */
function toldBeside(lifts: readonly DueShown[], rest: readonly DueShown[]): readonly DueShown[] {
  const of = (group: DueShown['group']) => rest.filter(item => item.group === group);
  const overdue = of('overdue');
  if (lifts.length > 0) return overdue.length > 0 ? overdue : of('today');
  return overdue.length > 1 ? overdue : rest.slice(0, 1).filter(({ group }) => group !== 'later');
}

/** The running soaks that end first, at one time, and everything else that is due and not long ago. */
function nextLifts(items: readonly DueShown[]): [DueShown[], DueShown[]] {
  const due = items.filter(({ group }) => group !== 'long ago');
  const first = due.find(({ isRunning }) => isRunning);
  const isNext = ({ isRunning, when }: DueShown) => isRunning && when === first?.when;
  return [due.filter(isNext), due.filter(item => !isNext(item))];
}

function clipped(item: DueShown): string {
  const { id, kind, what } = item;
  const words = clip(kind === 'stock' ? 'replace it' : what, id === '' ? ID_ROOM + WORDS_ROOM : WORDS_ROOM);
  return briefly({ ...item, id: clip(id, ID_ROOM), what: words });
}

function clip(text: string, room: number): string {
  const letters = Array.from(text);
  return letters.length > room ? `${letters.slice(0, room - 1).join('').trimEnd()}…` : text;
}

/** A day of this week needs no date, and what is late no day. A round says itself how late it is. */
function inTheBar(item: DueShown): string {
  const { id, when, group, overdueDays } = item;
  const [date = '', time] = when.split(' ');
  if (overdueDays > 0) return id === '' ? 'overdue' : `${days(overdueDays)} overdue`;
  return group === 'this week' ? [weekday(date), time].filter(Boolean).join(' ') : shortly(item) || 'today';
}

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/**
 * No more of a date than its group leaves open: the time of today, the day of this week; '' for today at any time. That
 * something is overdue stands in a word: a colour alone is not seen by everybody.
 */
export function shortly({ when, group, overdueDays }: DueShown): string {
  const [date = '', time] = when.split(' ');
  if (overdueDays > 0) return `${when}, ${days(overdueDays)} ago`;
  if (group === 'overdue') return time === undefined ? 'overdue' : `overdue since ${time}`;
  if (group === 'today') return time ?? '';
  return group === 'this week' ? `${weekday(date)} ${when}` : when;
}

function weekday(date: string): string {
  return WEEKDAYS[new Date(date).getUTCDay()] ?? '';
}

export function days(n: number): string {
  return counted(n, 'day');
}

/** Example: '1 lot', '2 lots' */
export function counted(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}
