/** What is asked of a lot: its verdicts, its verdicts after every look, or that on the species. */
import type { Difference } from '../../../server/src/measures/difference.ts';
import { isUndefined } from '../../../server/src/measures/measured.ts';
import { trialOf } from '../../../server/src/trials/lot-trial.ts';
import { NO_BAR, NO_EFFECT, NO_EFFECT_EVER, type Bars, type Cell } from '../cell.ts';
import { isoOf } from '../../../server/src/model/day.ts';
import { DAY_ZERO, diaryOf, textOf } from '../diary.ts';
import { journalOf, verdictsOfLots, verdictsOfPlants } from '../judged.ts';
import { lotOf, type TwoSides } from '../lots.ts';
import type { Random } from '../random.ts';

export function cellOf(name: string, lot: TwoSides, bars: Bars = NO_EFFECT): Cell {
  return { name, bars, judge: random => verdictsOfLots(journalOf(textOf(diaryOf(random, lotOf(random, lot))))) };
}

/** The verdict is asked for in the evening of every look; `judgedOn`: on the day of sowing its day was set. */
export function peekingCell(name: string, lot: TwoSides, judgedOn?: number): Cell {
  return {
    name,
    bars: judgedOn === undefined ? NO_EFFECT_EVER : NO_EFFECT,
    judge: random => {
      const grown = lotOf(random, lot);
      const judging = { day: DAY_ZERO, text: `judge ${grown.id} ${isoOf(DAY_ZERO)}, on day ${judgedOn}` };
      const diary = [...diaryOf(random, grown), ...judgedOn === undefined ? [] : [judging]];
      const looks = new Set(diary.filter(({ text }) => text.startsWith('count')).map(({ day }) => day));
      // A journal follows its text as it grows, as it does in the editor.
      const journal = journalOf('');
      return [...looks].flatMap(day => {
        journal.set('simulated.germ', textOf(diary, day));
        return verdictsOfLots(journal);
      });
    },
  };
}

/** Both sides are thrown away in the evening of the first look that shows a difference: that end was chosen. */
export function closingCell(name: string, lot: TwoSides): Cell {
  return {
    name,
    bars: NO_BAR,
    judge: random => {
      const diary = diaryOf(random, lotOf(random, lot));
      const looks = [...new Set(diary.filter(({ text }) => text.startsWith('count')).map(({ day }) => day))];
      const paths = diary.flatMap(({ text }) => (text.startsWith('sow ') ? text.split(' ')[1]! : []));
      const journal = journalOf('');
      const isDifferent = (day: number): boolean => {
        journal.set('simulated.germ', textOf(diary, day));
        return [...journal.lots()].some(each => trialOf(each, Infinity).contests.some(({ comparison }) => (
          !isUndefined(comparison) && excludesNone(comparison.germinated.difference))));
      };
      const end = looks.find(isDifferent) ?? looks.at(-1)!;
      const closed = paths.map(path => `discard ${path} ${isoOf(end)} 21:00\n`).join('');
      return verdictsOfLots(journalOf(`${textOf(diary, end)}${closed}`));
    },
  };
}

function excludesNone({ low, high }: Difference): boolean {
  return low > 0 || high < 0;
}

/** The verdicts on the species, of so many lots. */
export function speciesCell(
  name: string, lots: number, lot: (random: Random) => TwoSides, bars: Bars = NO_EFFECT,
): Cell {
  return {
    name,
    bars,
    judge: random => {
      const text = Array.from({ length: lots }, (_, i) => (
        textOf(diaryOf(random, lotOf(random, { ...lot(random), id: `SIM-${i}` }))))).join('');
      return verdictsOfPlants(journalOf(text));
    },
  };
}
