/** Seed and seedlings that went for good. */
import type { LeaveEvent } from '../../journal/life.ts';
import type { Leaving } from '../../model/events.ts';

const went: Readonly<Record<Leaving, string>> = {
  plant: 'planted out', give: 'given away', sell: 'sold', send: 'sent', lose: 'lost',
};

/** Example: 'planted out in the long border', 'sent to a friend', 'given away' */
export function wentText({ how, whither }: Pick<LeaveEvent, 'how' | 'whither'>): string {
  return [went[how], ...(whither === undefined ? [] : [whither])].join(' ');
}

/** Example: '9 seedlings planted out in the long border', 'all given away' */
export function leavingText(event: LeaveEvent): string {
  const { asked, seedlings, type } = event;
  const numbers = [counted(asked, 'seed'), counted(seedlings, 'seedling')].filter(text => text !== undefined);
  return `${type === 'gone' ? 'all' : numbers.join(' and ')} ${wentText(event)}`.trim();
}

function counted(n: number, what: string): string | undefined {
  return n === 0 ? undefined : `${n} ${what}${n === 1 ? '' : 's'}`;
}
