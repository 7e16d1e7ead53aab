/** How much of a batch germinated, and on which days; or the reason why there is no number. */
import { testedAt } from '../journal/estimates.ts';
import {
  accounted, countsOf, dayNumber, type Batch, type BatchEvent, type CountEvent, type Entry, type Origin,
} from '../journal/life.ts';
import { undefinedBecause, type Undefined } from '../measures/measured.ts';
import { isoOf } from '../model/day.ts';
import type { SeedRange } from '../model/estimate.ts';
import { listed } from '../syntax/nearest.ts';
import { wentText } from './leaving.ts';

export interface Germinated {
  readonly x: number;
  /** A range where the seeds were not counted but estimated. */
  readonly n: number | SeedRange;
  /** What n is. */
  readonly of: string;
}

/** What has germinated of a batch so far. */
export function germinatedOf(batch: Batch): Germinated | Undefined {
  const last = countsOf(batch).at(-1);
  return last ? germinatedAt(batch, last) : undefinedBecause('not counted yet');
}

/** What had germinated after a count, of the seeds that the batch had then. */
export function germinatedAt(batch: Batch, count: CountEvent): Germinated | Undefined {
  const { after: { germinated, rotted, lost }, tested } = count;
  if (tested === undefined && testedAt(batch, count)) return estimatedAt(batch, count);
  if (tested === undefined) return undefinedBecause('the number of seeds is unknown');
  const thinned = thinnedText(batch, count);
  if (thinned !== undefined) return undefinedBecause(thinned);
  const sum = germinated + rotted + lost;
  if (sum > tested) return undefinedBecause(`more are counted (${sum}) than there are seeds (${tested})`);
  if (tested === lost) return undefinedBecause('there are no seeds to take a percentage of');
  return { x: germinated, n: tested - lost, of: `${tested} ${whatText(batch, count)}` };
}

function whatText(batch: Batch, count: CountEvent): string {
  const { lost } = count.after;
  const what = !batch.sowing ? 'seeds, not sown' : isLater(batch, batch.sowing, count) ? 'seeds before the sowing' : 'sown';
  return `${what}${lost > 0 ? ` less ${lost} lost` : ''}`;
}

/** Of seeds that were estimated: there were at least those that were counted since. */
function estimatedAt(batch: Batch, count: CountEvent): Germinated | Undefined {
  const { after, after: { germinated, lost } } = count;
  const { least, most } = testedAt(batch, count)!;
  const sum = accounted(after);
  const thinned = thinnedText(batch, count);
  if (thinned !== undefined) return undefinedBecause(thinned);
  if (sum > most) return undefinedBecause(`more are counted (${sum}) than there can be seeds (${least} to ${most})`);
  if (most === lost) return undefinedBecause('there are no seeds to take a percentage of');
  const from = Math.max(least, sum, lost + 1);
  return {
    x: germinated, n: { least: from - lost, most: most - lost },
    of: `${from} to ${most} ${whatText(batch, count)}, estimated`,
  };
}

/**
 * Why a share of what had stayed by a count would say nothing, where seed was picked out between two counts.
 *
 * Example: 'seed that had not germinated was given away after counting began'
 */
function thinnedText({ thinned, events }: Batch, count: CountEvent): string | undefined {
  if (!thinned) return undefined;
  const before = events.slice(0, events.indexOf(count));
  const began = before.findIndex(event => event.type === 'count' && event.after.germinated + event.after.rotted > 0);
  const how = began < 0 ? [] : before.slice(began).flatMap(pickedText);
  return how.length === 0 ? undefined
    : `seed that had not germinated was ${listed([...new Set(how)], 'and')} after counting began`;
}

function pickedText(event: BatchEvent): string[] {
  if (event.type === 'split') return event.asked > 0 ? ['split off'] : [];
  return event.type === 'leave' && event.asked > 0 ? [wentText({ how: event.how, whither: undefined })] : [];
}

function isLater({ events }: Batch, { line }: Entry, event: CountEvent): boolean {
  return events.findIndex(({ entry }) => entry.line === line) > events.indexOf(event);
}

export interface GerminationDays {
  /** Days from day 0 to the first count that saw new germination, and to the last one. */
  readonly first: number;
  readonly last: number;
}

export function germinationDays(batch: Batch): GerminationDays | Undefined {
  const counts = countsOf(batch);
  if (counts.length === 0) return undefinedBecause('not counted yet');
  const seen = counts.filter(({ before, after }) => after.germinated > before.germinated);
  const [first, last] = [seen[0], seen.at(-1)];
  if (!first || !last) return undefinedBecause('none seen yet');
  if (!batch.origin) return undefinedBecause('no day 0: not yet sown, soaked or in a stage');
  return { first: dayNumber(batch, first.entry.moment)!, last: dayNumber(batch, last.entry.moment)! };
}

/** Example: 'the sowing on 2026-01-11' */
export function originText({ moment, by }: Origin): string {
  return `the ${by} on ${isoOf(moment.day)}`;
}
