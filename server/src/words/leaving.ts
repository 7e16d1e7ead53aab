/** Seed and seedlings that went for good. */
import type { LeaveEvent } from '../journal/life.ts';
import type { Leaving } from '../model/events.ts';

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

/**
 * What left one part after the other, by how it left. `germinated`: seedlings that there were in all.
 *
 * Example: '5 of 20 planted out, 12 seeds sent'
 */
export function partlyWentText(events: readonly LeaveEvent[], germinated: number): string {
  const kinds = [...new Set(events.map(({ how }) => how))];
  return kinds.flatMap(how => {
    const alike = events.filter(event => event.how === how);
    const seedlings = alike.reduce((sum, event) => sum + event.seedlings, 0);
    const seeds = alike.reduce((sum, event) => sum + event.asked, 0);
    const ofAll = seedlings <= germinated ? `${seedlings} of ${germinated}` : String(seedlings);
    return [
      ...(seedlings > 0 ? [`${ofAll} ${went[how]}`] : []),
      ...(seeds > 0 ? [`${counted(seeds, 'seed')!} ${went[how]}`] : []),
    ];
  }).join(', ');
}

function counted(n: number, what: string): string | undefined {
  return n === 0 ? undefined : `${n} ${what}${n === 1 ? '' : 's'}`;
}
