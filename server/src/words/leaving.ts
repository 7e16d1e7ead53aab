/** Seed and seedlings that went for good. */
import type { LeaveEvent } from '../journal/life.ts';
import { counted } from '../model/counted.ts';
import { sumOfRanges, type SeedRange } from '../model/estimate.ts';
import type { Leaving } from '../model/events.ts';
import { factOf } from '../model/record.ts';
import { howManyText, rangedSeedsText } from './seeds.ts';

const went: Readonly<Record<Leaving, string>> = {
  plant: 'planted out', give: 'given away', sell: 'sold', send: 'sent', lose: 'lost',
};

/** Example: 'planted out in the long border', 'sent to a friend', 'given away' */
export function wentText({ how, whither }: Pick<LeaveEvent, 'how' | 'whither'>): string {
  return [went[how], ...(whither === undefined ? [] : [whither])].join(' ');
}

/** Example: '9 seedlings planted out in the long border', 'all given away' */
export function leavingText(event: LeaveEvent): string {
  const { entry: { record }, seedlings, type } = event;
  const seeds = howManyText(factOf(record, 'seeds'));
  const numbers = [seeds, seedlings === 0 ? '' : counted(seedlings, 'seedling')].filter(text => text !== '');
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
    const seeds = sumOfRanges(alike.map(seedsGone));
    const ofAll = seedlings <= germinated ? `${seedlings} of ${germinated}` : String(seedlings);
    return [
      ...(seedlings > 0 ? [`${ofAll} ${went[how]}`] : []),
      ...(seeds.most > 0 ? [`${rangedSeedsText(seeds)} ${went[how]}`] : []),
    ];
  }).join(', ');
}

/** Example: '9 of 14 potted'; '' if none were */
export function pottedText(potted: number, germinated: number): string {
  if (potted === 0) return '';
  return potted <= germinated ? `${potted} of ${germinated} potted` : `${potted} potted`;
}

/** Seeds that left before they germinated, as written: an estimate is a range. */
export function seedsGone({ entry: { record } }: LeaveEvent): SeedRange {
  const { n, estimate } = factOf(record, 'seeds') ?? {};
  if (estimate && estimate.value.kind !== 'half') return estimate.value;
  return { least: n?.value ?? 0, most: n?.value ?? 0 };
}
