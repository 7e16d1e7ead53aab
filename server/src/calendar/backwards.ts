/** Plans from a date: when to begin so that a regime has ended by a day, and when it ends if it begins on one. */
import { undefinedBecause, type Undefined } from '../measures/measured.ts';
import { isoOf, type Day } from '../model/day.ts';
import { dayAfter, minutesOf, printQuantity, type Duration } from '../model/quantity.ts';
import { recordLine, stageName } from './ask.ts';
import type { RegimeStage } from './regime-match.ts';

/** What surrounds the stages. */
export interface Around {
  /** How long the seed is soaked before it is sown; undefined: not at all. */
  readonly soak: Duration | undefined;
  /** Days from the end of the last stage to what is wanted: a first leaf, say. 0 where the end itself is wanted. */
  readonly daysAfter: number;
}

export interface Schedule {
  /** The day on which the soak begins; undefined without one. */
  readonly soak: Day | undefined;
  readonly sow: Day;
  readonly stages: readonly (RegimeStage & { readonly start: Day; readonly end: Day })[];
  /** The end of the last stage. */
  readonly end: Day;
  /** `end` and the days after it. */
  readonly ready: Day;
}

/** The schedule of seed that is sown on a day; undefined, with the reason, where a stage has no time span. */
export function scheduleFrom(
  sow: Day, stages: readonly RegimeStage[], { soak, daysAfter }: Around,
): Schedule | Undefined {
  const open = stages.findIndex(({ duration }) => !duration);
  if (open >= 0) return undefinedBecause(`stage ${open + 1} of the regime (${stages[open]!.stage}) has no length`);
  let start = sow;
  const laid = stages.map(stage => {
    const span = { ...stage, start, end: dayAfter(start, stage.duration!) };
    start = span.end;
    return span;
  });
  return { soak: soak && sow - soakDays(soak, sow), sow, stages: laid, end: start, ready: start + daysAfter };
}

/**
 * The latest schedule that is ready by the wanted day. The wanted day is counted back from the end of the last stage,
 * the safe side: much seed comes up in the course of it.
 *
 * Example: ready by 2027-05-01 after chill of 90 days and 21 days more: sow on 2027-01-10
 */
export function scheduleFor(wanted: Day, stages: readonly RegimeStage[], around: Around): Schedule | Undefined {
  const guess = scheduleFrom(wanted, stages, around);
  if ('undefined' in guess) return guess;
  const readyOf = (sow: Day) => (scheduleFrom(sow, stages, around) as Schedule).ready;
  let sow = 2 * wanted - guess.ready;
  // Months are of 28 to 31 days, so the first guess may be a few days off.
  while (readyOf(sow) > wanted) sow--;
  while (readyOf(sow + 1) <= wanted) sow++;
  return scheduleFrom(sow, stages, around);
}

/** Parts of a day count as a whole one. Months and years are no soaks, but a span is a span. */
function soakDays(soak: Duration, sow: Day): number {
  const minutes = minutesOf(soak);
  return minutes === undefined ? dayAfter(sow, soak) - sow : Math.ceil(minutes / 1440);
}

/**
 * What is to be done in a schedule as `due` records, since nothing of it has happened: `soak`, `sow` in the regime, the
 * stages that follow. `length`: that of the soak.
 */
export function scheduleRecords(
  id: string, { soak, sow, stages }: Schedule, regime: string, length: Duration | undefined,
): string[] {
  const due = (day: Day, text: string) =>
    recordLine({ keyword: 'due', subject: id, facts: text, timed: false }, { day, minutes: undefined });
  const first = stages[0] && stageName(stages[0]);
  const soaking = ['soak', ...(length ? [printQuantity(length)] : [])].join(' ');
  return [
    ...(soak === undefined ? [] : [due(soak, `${soaking}, to be sown on ${isoOf(sow)}`)]),
    due(sow, [`sow in regime ${regime}`, ...(first ? [first] : [])].join(', ')),
    ...stages.slice(1).map(stage => due(stage.start, stageName(stage))),
  ];
}
