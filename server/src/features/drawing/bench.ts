/** A soak, and what stands on the shelf, as values of pictures. */
import { soakState } from '../../calendar/soaks.ts';
import { stocksNow, type Stock } from '../../calendar/left.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Batch, Lot, Soak } from '../../journal/life.ts';
import { elapsed, printMoment, type Moment } from '../../journal/moment.ts';
import { isoOf } from '../../model/day.ts';
import { minutesOf } from '../../model/quantity.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import { shelfPicture, type ShelfRow } from '../../pictures/shelf.ts';
import { soakPicture } from '../../pictures/soak.ts';
import { numberText, toNumber } from '../../solutions/display.ts';
import { shelfLife } from '../../solutions/expiry.ts';
import { leftText, showAmount } from '../../solutions/left-text.ts';
import { uncertaintyOf } from '../bench/uncertainty.ts';
import { agoText } from '../../words/days.ts';
import { contentHeld } from '../../words/held.ts';

const HOUR = 60;

/** Of a soak that the seed is in; undefined for one that is over or to come, and where no time of day is known. */
export function runningSoakPicture(
  soak: Soak, { batch, lot }: { readonly batch: Batch; readonly lot: Lot }, journal: Journal, now: Moment, frame: Frame,
): Picture | undefined {
  const { start, end } = soak;
  const isTimed = [start, now, ...end ? [end] : []].every(({ minutes }) => minutes !== undefined);
  if (soakState(soak, batch, now) !== 'in it' || !isTimed) return undefined;
  const limit = minutesOf(journal.limits.soak(lot.plant).value);
  if (limit === undefined) return undefined;
  const since = (moment: Moment) => elapsed(start, moment, journal.zone).most / HOUR;
  return soakPicture({
    title: `Soak of ${batch.path}`, now: since(now), end: end && since(end), limit: limit / HOUR,
    from: printMoment(start), to: end && printMoment(end),
  }, frame);
}

/** All that is not used up, and one by itself. */
export function stocksPicture(journal: Journal, now: Moment, frame: Frame): Picture | undefined {
  const rows = stocksNow(journal, now).filter(({ emptied }) => !emptied).map(stock => rowOf(stock, journal, now));
  return shelfPicture({ title: 'What is left', rows }, frame);
}

export function stockPicture(stock: Stock, journal: Journal, now: Moment, frame: Frame): Picture | undefined {
  const { emptied, solution: { id } } = stock;
  return emptied ? undefined : shelfPicture({ title: id, rows: [rowOf(stock, journal, now)] }, frame);
}

function rowOf({ solution, left }: Stock, journal: Journal, now: Moment): ShelfRow {
  const { id, form, made, keeps, entry: { moment } } = solution;
  const life = keeps && shelfLife(now.day, keeps.made, keeps.until);
  const share = left && made && !made.equals(0)
    ? { least: toNumber(left.least.div(made)), most: Math.min(1, toNumber(left.most.div(made))) } : undefined;
  return {
    name: id, holds: holdsText(stockNameOf(solution, journal), solution, journal), left: share,
    words: left ? `${leftText(form, left)}${made ? ` of ${showAmount(form, made).text}` : ''}` : 'amount unknown',
    age: [
      moment ? `made ${agoText(moment.day, now.day)}` : undefined, keeps ? `good until ${isoOf(keeps.until)}` : undefined,
    ].filter(part => part !== undefined).join(', '),
    state: life?.state ?? 'good',
  };
}

function stockNameOf(solution: Stock['solution'], journal: Journal): string {
  const { agent, form } = solution;
  return agent && form === 'powder' ? `${agent.word} powder` : contentHeld(solution, journal);
}

/** With the error of its strength, where that is known. */
function holdsText(name: string, solution: Stock['solution'], journal: Journal): string {
  const uncertainty = uncertaintyOf(solution, journal);
  if (!uncertainty || uncertainty.kind === 'none' || solution.form === 'powder') return name;
  const [low, high] = [uncertainty.low, uncertainty.high].map(limit => numberText(limit, 3).text);
  return `${name} (${low!} to ${high!})`;
}
