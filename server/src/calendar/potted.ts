/** Seedlings that were pricked out to a place of their own, beside the seed that stayed where it was. */
import { accounted, type DatedEntry } from '../journal/life.ts';
import { counted } from '../model/counted.ts';
import { factOf } from '../model/record.ts';
import { placeKey } from './place-text.ts';
import type { Standing } from './standing.ts';

type Life = Pick<Standing, 'batch' | 'past' | 'totals'>;

/** Whether all seed is accounted for and no seedling is left where it came up: all of it lies where it was potted. */
export function isAllPotted(life: Life): boolean {
  const { batch: { tested }, totals } = life;
  if (tested === undefined || accounted(totals) < tested) return false;
  const potted = seedlingsIn(potsElsewhere(life));
  return potted === undefined || totals.germinated - totals.died <= Math.max(potted, leftOf(life));
}

/** Whether no seedling is left: as many left for good, or died, as there were. */
export function areSeedlingsGone(life: Life): boolean {
  const { totals: { germinated, died } } = life;
  return germinated > 0 && germinated - died <= leftOf(life);
}

/** What was potted in a place: '9 seedlings'; 'seedlings' where some died or left since, or were not counted. */
export function pottedText(life: Life, place: string): string {
  const isThere = ({ record }: DatedEntry) => placeKey(factOf(record, 'at')?.value.text ?? '') === placeKey(place);
  const pots = potsElsewhere(life).filter(isThere);
  const number = isSame(life) ? seedlingsIn(pots) : undefined;
  return number === undefined ? 'seedlings' : counted(number, 'seedling');
}

/** What stayed behind: '12 seeds', '12 seeds and 2 seedlings', '2 seedlings'; 'not potted' where no number is known. */
export function unpottedText(life: Life): string {
  const { batch: { tested, worlds }, totals } = life;
  const potted = seedlingsIn(potsElsewhere(life));
  if (tested === undefined || worlds.length > 0 || potted === undefined || !isSame(life)) return 'not potted';
  const seeds = tested - accounted(totals);
  const seedlings = totals.germinated - totals.died - potted;
  if (seeds < 0 || seedlings < 0) return 'not potted';
  return [seeds > 0 && counted(seeds, 'seed'), seedlings > 0 && counted(seedlings, 'seedling')]
    .filter(Boolean).join(' and ');
}

/** The records with a place, since the last that moved all of the batch. */
function potsElsewhere({ past }: Life): DatedEntry[] {
  const placed = past.filter(({ entry: { record } }) => factOf(record, 'at'));
  return placed.slice(placed.findLastIndex(({ type }) => type === 'move') + 1)
    .flatMap(({ type, entry }) => (type === 'pot' ? [entry] : []));
}

/** Undefined where one of the records does not say how many. */
function seedlingsIn(pots: readonly DatedEntry[]): number | undefined {
  const numbers = pots.map(({ record }) => factOf(record, 'seedlings')?.n.value);
  return numbers.includes(undefined) ? undefined : numbers.reduce<number>((sum, n) => sum + n!, 0);
}

function leftOf({ past }: Life): number {
  return past.reduce((sum, event) => sum + (event.type === 'leave' ? event.seedlings : 0), 0);
}

/** Whether no seedling left or died since the first was potted: nobody wrote which of them. */
function isSame({ past, totals }: Life): boolean {
  const first = past.findIndex(({ type }) => type === 'pot');
  const before = past.slice(0, first).findLast(({ type }) => type === 'count');
  const died = before?.type === 'count' ? before.after.died : 0;
  return totals.died === died && !past.slice(first).some(({ type }) => type === 'leave');
}
