/** The records of what is advised: the division as it is made now, the soaks as reminders, or as begun now. */
import { adviceFor, type Advice } from '../../advice/advice.ts';
import { offerIn } from '../../advice/choice.ts';
import { isRefused } from '../../advice/offer.ts';
import type { Division } from '../../advice/division.ts';
import { untouchedIn } from '../../advice/seed.ts';
import { recordLine } from '../../calendar/ask.ts';
import type { Journal } from '../../journal/journal.ts';
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Lot } from '../../journal/life.ts';
import type { Moment } from '../../journal/moment.ts';
import { stepsBefore } from '../../words/advice.ts';
import { seedsText } from '../../words/seeds.ts';
import type { Action } from './action.ts';
import { editBelow } from './below.ts';
import { freeNames } from './free-names.ts';

export interface AdvisedRecords {
  /** The record that they go below. */
  readonly below: JournalLine;
  /** Undefined where the seed is divided already. */
  readonly split: string | undefined;
  /** Reminders of today, with the bottle in hand: nothing is said to have been done. */
  readonly reminders: readonly string[];
  /**
   * Soaks that begin now; none where no strength or no time of day is known. How many mL of the bottle in hand the
   * grower takes is not known either, so it is a remark below.
   */
  readonly soaks: readonly { readonly line: string; readonly remark: string | undefined }[];
}

/** Undefined where nothing is to be divided or treated. */
export function advisedRecords(advice: Advice, journal: Journal): AdvisedRecords | undefined {
  const { choice, division, supplies, lot, now } = advice;
  const [bottle] = supplies?.bottles ?? [];
  const offer = offerIn(choice);
  const sides = division && sidesOf(division, choice.kind === 'treat', lot, journal);
  if (!sides || !offer) return undefined;
  const { below, split, treated, untreated } = sides;
  const { text, soak, isLate } = offer;
  // A soak after the cold has its day later, and seed is scarified first.
  if (text === undefined || isRefused(offer) || stepsBefore(offer).length > 0 || isLate) {
    return split === undefined ? undefined : { below, split, reminders: [], soaks: [] };
  }
  const eachOf = <Line>(write: (path: string, liquid: string, from: string | undefined) => Line) => [
    ...treated.map(path => write(path, text, bottle && `from ${bottle.stock.solution.id}`)),
    ...untreated.map(path => write(path, 'water', undefined)),
  ];
  return {
    below, split,
    reminders: eachOf((subject, liquid, from) => {
      const facts = `soak in ${from === undefined ? liquid : `${liquid} ${from}`} for ${soak}`;
      return recordLine({ keyword: 'due', subject, facts, timed: false }, now);
    }),
    soaks: now.minutes === undefined ? [] : eachOf((subject, liquid, from) => (
      { line: recordLine({ keyword: 'soak', subject, facts: `${liquid}, ${soak}`, timed: true }, now), remark: from })),
  };
}

/** On a lot that nothing was done to: what is advised, with reminders of the soaks, or with soaks that begin now. */
export function adviceActions(lot: Lot, journal: Journal, now: Moment): Action[] {
  // Asked at every move of the cursor, and of most lots all the seed was begun with.
  const records = untouchedIn(lot, now) && advisedRecords(adviceFor(lot, journal, now), journal);
  if (!records) return [];
  const { below, split, reminders, soaks } = records;
  const dividing = split === undefined ? [] : [split];
  const action = (title: string, lines: readonly string[]): Action[] => (
    lines.length === 0 ? [] : [{ title, edits: [editBelow(below, [...dividing, ...lines])] }]);
  return [
    ...action(`Do as advised with ${lot.id}: ${split === undefined ? 'remind of the soaks' : 'divide it, and remind of the soaks'}`, reminders),
    ...action(`Do as advised with ${lot.id}: ${split === undefined ? 'begin the soaks now' : 'divide it, and begin the soaks now'}`,
      soaks.flatMap(({ line, remark }) => (remark === undefined ? [line] : [line, `  ${remark}`]))),
  ];
}

interface Sides {
  readonly below: JournalLine;
  readonly split: string | undefined;
  readonly treated: readonly string[];
  readonly untreated: readonly string[];
}

function sidesOf(
  { of, parts, sides, isEstimated }: Division, isMost: boolean, lot: Lot, journal: Journal,
): Sides | undefined {
  if (parts) {
    const [treated, untreated] = [parts.treated, parts.untreated].map(side => side.map(({ path }) => path));
    return { below: parts.untreated.at(-1)!.made.line, split: undefined, treated: treated!, untreated: untreated! };
  }
  const amounts = sides && !isEstimated ? [seedsText(sides.treated), seedsText(sides.untreated)]
    // What nobody counted can only be divided by eye.
    : !isMost ? ['half', 'half'] : sides ? [`about ${seedsText(sides.treated)}`, `about ${seedsText(sides.untreated)}`] : undefined;
  if (!of || !amounts) return undefined;
  const [a, b] = freeNames(journal, lot, of.path, 2) as [string, string];
  return {
    below: of.made.line, split: `split ${of.path}, ${a} ${amounts[0]!}, ${b} ${amounts[1]!}`,
    treated: [`${of.path}/${a}`], untreated: [`${of.path}/${b}`],
  };
}
