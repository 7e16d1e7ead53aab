/** Short words for what is due, where there is little room; the longer ones are in tooltips and for screen readers. */
import type { DueShown } from '../../../server/src/lsp/calendar-shapes.ts';

/** What is told by an icon needs no more words. */
export function briefly({ id, kind, what }: DueShown): string {
  if (id === '') return what;
  return `${id}: ${kind === 'soak' ? 'lift' : kind === 'count' ? 'count' : what}`;
}

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

/** No more of a date than its group leaves open: the time of today, the day of this week; '' for today at any time. */
export function shortly({ when, group, overdueDays }: DueShown): string {
  const [date = '', time] = when.split(' ');
  if (overdueDays > 0) return `${when}, ${days(overdueDays)} ago`;
  if (group === 'today' || group === 'overdue') return time ?? '';
  return group === 'this week' ? `${WEEKDAYS[new Date(date).getUTCDay()] ?? ''} ${when}` : when;
}

export function days(n: number): string {
  return n === 1 ? '1 day' : `${n} days`;
}
