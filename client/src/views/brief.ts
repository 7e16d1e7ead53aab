/** Short words for what is due, where there is little room; the longer ones are in tooltips and for screen readers. */
import type { DueShown } from '../../../server/src/lsp/calendar-shapes.ts';

/** What is told by an icon needs no more words. */
export function briefly({ id, kind, what, isRunning }: DueShown): string {
  if (id === '') return what;
  if (kind === 'soak') return `${id}: ${isRunning ? 'lift' : 'no end recorded'}`;
  return `${id}: ${kind === 'count' ? 'count' : what}`;
}

/**
 * For the status bar: the next thing that is due within a week, or how many are overdue, and always the soak that seed
 * lies in now, which must not be hidden behind other things. Undefined where there is nothing to say.
 * Example: '3 overdue · V-1/A: lift, 19:00'
 */
export function nextInWords(items: readonly DueShown[]): string | undefined {
  const [next] = items;
  const soak = items.find(({ isRunning }) => isRunning);
  const overdue = items.filter(({ group }) => group === 'overdue').length;
  const inBrief = (item: DueShown) => `${briefly(item)}, ${shortly(item) || 'today'}`;
  const first = overdue <= 1 && next?.group !== 'later' ? next : undefined;
  const words = overdue > 1 ? [`${overdue} overdue`] : first ? [inBrief(first)] : [];
  if (soak && soak !== first) words.push(inBrief(soak));
  return words.length > 0 ? words.join(' · ') : undefined;
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
  return group === 'this week' ? `${WEEKDAYS[new Date(date).getUTCDay()] ?? ''} ${when}` : when;
}

export function days(n: number): string {
  return counted(n, 'day');
}

/** Example: '1 lot', '2 lots' */
export function counted(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}
