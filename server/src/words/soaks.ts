/** Soaks in plain words: in what, and for how long. */
import type { Dose, Soak, TakenStale } from '../journal/life.ts';
import { elapsed, lengthText, type Elapsed, type Moment } from '../journal/moment.ts';
import { minutesOf, printQuantity } from '../model/quantity.ts';
import { factOf } from '../model/record.ts';
import { agoInWords } from './days.ts';
import type { Exact } from '../solutions/amounts.ts';
import { strengthText, usualStrengthText } from '../solutions/strength.ts';
import { listed } from '../syntax/nearest.ts';
import { daysText } from './days.ts';

/**
 * One agent and its strength in the whole liquid.
 *
 * Example: 5 mL of the stock G2, which holds 500 ppm of GA3, in 20 mL is 'GA3 125 ppm (G2)'; without stocks
 * 'GA3 125 ppm'. From a bottle past its time it is 'GA3 at most 1000 ppm, made three years ago', from powder past its
 * time 'GA3 at most 1000 ppm, from powder bought three years ago'; where powder was halved by eye, 'GA3 about 125 ppm'
 */
export function doseText(dose: Dose, withStock = false): string {
  const { fact, agent, ppm, written, unmeasured, stale, byEye } = dose;
  const stocks = stocksOf(dose);
  const behind = withStock && stocks.length > 0 ? ` (${listed(stocks, 'and')})` : '';
  if (!agent) return `${fact.name.text} (unknown)`;
  if (unmeasured) return `${agent.word} unmeasured`;
  if (written) return `${agent.word} ${printQuantity(written)}`;
  if (ppm.ok && stale) return `${agent.word} at most ${strengthOf(dose, ppm.value)}, ${staleText(stale)}${behind}`;
  if (ppm.ok) return `${agent.word} ${byEye ? 'about ' : ''}${strengthOf(dose, ppm.value)}${behind}`;
  return stocks.length === 0 && !fact.strength ? agent.word : `${agent.word} of unknown strength${behind}`;
}

function staleText({ made, what, on }: TakenStale): string {
  const ago = agoInWords(made, on);
  return what === 'powder' ? `from powder bought ${ago}` : what === 'bottle' ? `made ${ago}` : `from a bottle made ${ago}`;
}

/** The stocks that a dose was taken from, each once. */
function stocksOf({ parts }: Dose): string[] {
  return [...new Set(parts.flatMap(({ stock }) => stock ?? []))];
}

/** What is poured from a bottle whose strength is written on the line is told in the unit that stands there. */
function strengthOf({ parts, agent, fact: { strength } }: Dose, ppm: Exact): string {
  const unit = parts.length === 1 ? strength?.value.unit : undefined;
  return unit === undefined ? usualStrengthText(ppm, agent!) : strengthText(ppm, unit, agent!);
}

/** Example: 'GA3 500 ppm + KNO3 0.2 %' */
export function dosesText(doses: readonly Dose[], withStocks = false): string {
  const isWater = ({ agent }: Dose) => agent?.role === 'water';
  // Water that fills up is in the strength of the others.
  const told = doses.every(isWater) ? doses : doses.filter(dose => !isWater(dose));
  return told.length === 0 ? 'an unreadable liquid' : told.map(dose => doseText(dose, withStocks)).join(' + ');
}

/** What stands between a liquid and how long it was used: a comma behind a clause. */
export function joinerOf(doses: readonly Dose[]): string {
  return doses.at(-1)?.stale ? ', ' : ' ';
}

/**
 * How long the seed was, or will be, in the soak; undefined while no end is known. Where times of day are missing,
 * the length that was written stands for itself if it can be true.
 *
 * Example: '24 h', '30 min', '23.8 h', 'up to 30 h'
 */
export function soakLengthText({ entry, endedBy, length }: Soak): string | undefined {
  const written = factOf(entry.record, 'duration')?.value;
  if (!length) return undefined;
  if (written && (endedBy === 'duration' || isPossible(minutesOf(written), length))) return printQuantity(written);
  // Few words: that the clock on the wall was taken is said where the soak itself is shown.
  const { least, most } = length;
  const atMost = lengthText({ least: most, most, wallClock: false });
  return least === 0 && most > 0 ? `up to ${atMost}` : lengthText({ least, most, wallClock: false });
}

function isPossible(minutes: number | undefined, { least, most }: Elapsed): boolean {
  return minutes !== undefined && least < most && least <= minutes && minutes <= most;
}

/**
 * A soak that nothing ended, and that began too long ago to be still going on.
 *
 * Example: 'no end recorded; begun 783 days ago'
 */
export function noEndText({ start }: Soak, now: Moment): string {
  return `no end recorded; it began ${daysText(now.day - start.day)} ago`;
}

/** Example: '5.5 h so far'; 'at least 5 h so far' where a time of day is missing */
export function soFarText({ start }: Soak, now: Moment, zone: string | undefined): string {
  return lengthText(elapsed(start, now, zone), true);
}
