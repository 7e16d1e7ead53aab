/** A lot in the fewest words: where it stands, how much of it came up, whether treating it paid. */
import { counted } from '../model/counted.ts';
import { isLeftOff } from '../calendar/left-off.ts';
import { isOpen, standingOf, type Standing } from '../calendar/standing.ts';
import { isGivenOut, isToldByParts } from '../journal/given-out.ts';
import { countsOf, isUsed, type Batch, type Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { isUndefined } from '../measures/measured.ts';
import { mayChange } from '../measures/verdict-text.ts';
import { verdictWords } from '../measures/verdict-words.ts';
import { isoOf, type Day } from '../model/day.ts';
import { sumOfRanges } from '../model/estimate.ts';
import { isStep } from '../model/events.ts';
import { faultyBatches } from '../trials/faults.ts';
import { groupsOf } from '../trials/groups.ts';
import { trialOf } from '../trials/lot-trial.ts';
import { isFull } from '../trials/pairs.ts';
import { treatmentOf, type Treatment } from '../trials/treatment.ts';
import { germinatedOf } from './germination.ts';
import { shareText } from './shares.ts';
import { stateOf, stateText } from './state.ts';
import { groupLabel, groupNames } from './trials.ts';

/** `left off`: something can still become of it, but nobody wrote of what can for longer than anybody acts on. */
export type LotState = 'not begun' | 'open' | 'left off' | 'closed';

/** Verdicts told one by one. */
const MOST_VERDICTS = 2;
/** Shares told one by one. */
const MOST_SHARES = 6;

/** Batches to which something was done, without those that were given out whole. */
export function usedBatches({ batches }: Lot): Batch[] {
  return [...batches.values()].filter(batch => isUsed(batch) && !isGivenOut(batch));
}

/**
 * Of one batch at least.
 *
 * Example: '2 of 3 open', 'all closed'; of a single one 'open' or 'closed'
 */
export function openText(batches: readonly Batch[], now: Moment): string {
  return openWords(batches.length, batches.filter(batch => isOpen(standingOf(batch, now))).length);
}

function openWords(all: number, open: number): string {
  if (all === 1) return open ? 'open' : 'closed';
  return open === 0 ? 'all closed' : `${open} of ${all} open`;
}

interface Stand {
  readonly state: LotState;
  readonly text: string;
}

const known = new WeakMap<Lot, Moment & Stand>();

/**
 * Where a lot stands, as a word and in words; kept for the minute, since an outline asks for all lots at every edit.
 *
 * Example: 'sown, day 30', '2 of 2 open: sown, day 30', 'all closed', 'no record since 2017-03-01'
 */
export function lotState(lot: Lot, now: Moment): Stand {
  let stand = known.get(lot);
  if (stand?.day !== now.day || stand.minutes !== now.minutes) known.set(lot, stand = { ...now, ...standOf(lot, now) });
  return stand;
}

function standOf(lot: Lot, now: Moment): Stand {
  const standings = usedBatches(lot).map(batch => standingOf(batch, now));
  if (standings.every(({ past, closed }) => !closed && !past.some(isStep))) return { state: 'not begun', text: 'not begun' };
  const open = standings.filter(isOpen);
  const words = openWords(standings.length, open.length);
  if (open.length === 0) return { state: 'closed', text: standings.length === 1 ? closedText(standings[0]!, now) : words };
  if (open.every(standing => isLeftOff(standing, now))) {
    return { state: 'left off', text: `no record since ${isoOf(Math.max(...open.map(lastDay)))}` };
  }
  const [told, ...others] = new Set(open.map(({ batch }) => stateText(stateOf(batch, now), now)));
  const text = others.length > 0 ? words : standings.length === 1 ? told! : `${words}: ${told!}`;
  return { state: 'open', text };
}

/** What has all germinated and been potted is closed, though no record closed it. */
function closedText({ batch, closed }: Standing, now: Moment): string {
  return closed ? stateText(stateOf(batch, now), now) : 'closed';
}

function lastDay({ past }: Standing): Day {
  return past.at(-1)!.entry.moment.day;
}

/** Batches that are told together, and what was done to all of their seed. */
interface Part {
  readonly treatment: Treatment;
  readonly batches: Batch[];
}

/**
 * How much has germinated of what was counted, replicates together, untreated seed first; with the names of batches
 * where the treatment alone does not tell them apart.
 *
 * Example: ['untreated: 2 of 24 = 8.3 %', 'GA3 500 ppm 24 h: 14 of 24 = 58.3 %']; where no seed was treated
 * ['6 of 60 = 10 %'] or ['A: 17 of 20 = 85 %', 'B: 3 of 20 = 15 %']
 */
export function shareTexts(lot: Lot, today: Day): string[] {
  const parts = partsOf(lot, today);
  const labels = parts.map(({ treatment }) => (treatment.length === 0 ? 'untreated' : groupLabel({ treatment, batches: [] })));
  const isTreated = parts.some(({ treatment }) => treatment.length > 0);
  const texts = parts.slice(0, MOST_SHARES).map(({ batches }, i) => {
    const isAlone = labels.filter(label => label === labels[i]).length === 1;
    const names = isAlone ? undefined : groupNames({ batches: batches.map(batch => ({ batch })) });
    const label = isTreated ? labels[i]! + (names === undefined ? '' : ` (${names})`) : names ?? '';
    return label === '' ? sumText(batches) : `${label}: ${sumText(batches)}`;
  });
  const more = parts.length - texts.length;
  return more > 0 ? [...texts, `${more} more`] : texts;
}

function partsOf(lot: Lot, today: Day): Part[] {
  const groups = new Map(groupsOf(lot, faultyBatches(lot, today)).groups.flatMap(group =>
    // What was treated late is told by itself, by all that was done to it.
    group.batches.filter(({ endedBy }) => endedBy === undefined).map(({ batch }) => [batch, group] as const)));
  const parts = new Map<unknown, Part>();
  for (const batch of lot.batches.values()) {
    if (countsOf(batch).length === 0 || isToldByParts(batch)) continue;
    const key = groups.get(batch) ?? batch;
    const part = parts.get(key);
    if (part) part.batches.push(batch);
    else parts.set(key, { treatment: treatmentOf(batch, batch.soaks), batches: [batch] });
  }
  const isTreated = ({ treatment }: Part) => Number(treatment.length > 0);
  return [...parts.values()].sort((a, b) => isTreated(a) - isTreated(b));
}

function sumText(batches: readonly Batch[]): string {
  const shares = batches.map(germinatedOf).flatMap(share => (isUndefined(share) ? [] : [share]));
  const [only] = shares;
  if (!only || shares.length < batches.length) {
    return `${batches.reduce((sum, { totals }) => sum + totals.germinated, 0)} germinated`;
  }
  const n = sumOfRanges(shares.map(({ n: of }) => (typeof of === 'number' ? { least: of, most: of } : of)));
  return shareText(shares.reduce((sum, { x }) => sum + x, 0), n);
}

/**
 * None where nothing was measured. Estimated seed has a verdict if all numbers that it may have give the same one.
 *
 * Example: 'worth repeating'; of several treatments 'A worth repeating', 'B cannot tell yet'; of estimated seed
 * 'cannot tell (seeds estimated)'
 */
export function verdictTexts(lot: Lot, today: Day): string[] {
  const { contests, estimated } = trialOf(lot, today);
  const judged = [
    ...contests.filter(({ verdict }) => verdict.evidence !== undefined).map(contest => ({ ...contest, note: '' })),
    ...estimated.filter(isFull).map(contest => ({ ...contest, note: ' (seeds estimated)' })),
  ];
  const texts = judged.slice(0, MOST_VERDICTS).map(({ treated, verdict, note }) => {
    const words = verdictWords(verdict.verdict, mayChange(verdict)) + note;
    return judged.length === 1 ? words : `${groupNames(treated)} ${words}`;
  });
  const more = judged.length - texts.length;
  return more > 0 ? [...texts, counted(more, 'more verdict')] : texts;
}
