/** What stands behind the word that begins a fact: `at bag 3`, `regime woodland`, `until 2026-01-11 19:00`. */
import { after, printMoment } from '../../journal/moment.ts';
import { FIRST_YEAR, isoOf, LAST_DAY, type Day } from '../../model/day.ts';
import { printQuantity } from '../../model/quantity.ts';
import { dormancies, factsOf } from '../../model/record.ts';
import { regimesOf } from './defined.ts';
import { olderLots } from './older-lots.ts';
import { places } from './places.ts';
import { fits, plantIn, type Scene } from './scene.ts';
import { quoted, seenTexts } from './seen.ts';
import type { SpotOf } from './spot.ts';
import { stocks } from './substances.ts';
import type { Suggestion } from './suggestion.ts';

const dormancyNames: Readonly<Record<(typeof dormancies)[number], string>> = {
  'PD': 'physiological', 'MD': 'morphological: the embryo is small', 'MPD': 'morphological and physiological',
  'PY': 'physical: a hard coat', 'PY+PD': 'a hard coat, and physiological',
};

export const dormancyWords = dormancies.map(code => `${code} ${dormancyNames[code]}`).join('; ');

/** Days by which growers look what a trial came to. Common practice, no source. */
export const judgeDays = ['day 60', 'day 90', 'day 120'] as const;

/** Days to the next look at seed that stands outdoors, where none is written. Common practice, no source. */
const NEXT_LOOK = 90;

export function values({ type }: SpotOf<'value'>, scene: Scene): Suggestion[] {
  return offered(type, scene).filter(({ label, find }) => fits(scene, find ?? label));
}

function offered(type: SpotOf<'value'>['type'], scene: Scene): Suggestion[] {
  const { now: { day: today } } = scene;
  const texts = (kind: 'text' | 'plant', found: readonly string[]) => found.map((label): Suggestion => ({ kind, label }));
  switch (type) {
    case 'at': return places(scene).map(each => ({ ...each, label: quoted(each.label) }));
    case 'from': case 'stored': case 'in': case 'whither': return texts('text', seenTexts(scene, type).map(quoted));
    case 'source': return texts('text', seenTexts(scene, type).map(text => `"${text}"`));
    case 'for': return texts('plant', seenTexts(scene, 'genus'));
    case 'dormancy': return dormancies.map(label => ({ kind: 'word', label, detail: dormancyNames[label] }));
    case 'regime': return regimes(scene);
    case 'seeds': return [{ kind: 'fact', label: '40 seeds' }];
    case 'replaces': return olderLots(scene);
    case 'draw': return stocks(scene);
    case 'look': return [{ kind: 'date', label: isoOf(Math.min(today + NEXT_LOOK, LAST_DAY)) }];
    case 'until': return ends(scene);
    case 'on': return judgeDays.map(label => ({ kind: 'date', label, detail: 'from day 0' }));
    case 'collected': case 'bought': return monthsBack(today).map(label => ({ kind: 'date', label }));
    default: return [];
  }
}

/** The regimes that the journal defines, with their stages. */
export function regimes({ journal, line: own }: Scene): Suggestion[] {
  return regimesOf(journal).filter(({ line }) => line !== own).map(({ line: { text }, record }): Suggestion => ({
    kind: 'regime', label: record.subject!.text, detail: factsOf(record, 'stage').map(({ start, end }) => text.slice(start, end)).join(', '),
  }));
}

/** Ends of a soak: at the limit, and after half of it. */
function ends(scene: Scene): Suggestion[] {
  const start = scene.entry?.moment;
  if (!start) return [];
  const { value, unit } = scene.journal.limits.soak(plantIn(scene)).value;
  const end = (share: number, words: string): Suggestion => {
    const duration = { value: value * share, unit };
    return { kind: 'date', label: printMoment(after(start, duration, scene.journal.zone)), detail: `${printQuantity(duration)}${words}` };
  };
  return [end(1, ', the limit'), end(0.5, '')];
}

/** This month and the eleven before it, then this year and the last. */
function monthsBack(today: Day): string[] {
  const [year = 0, month = 0] = isoOf(today).split('-').map(Number);
  const first = year * 12 + month - 1;
  const months = Array.from({ length: 12 }, (_, back) => first - back).filter(at => at >= FIRST_YEAR * 12);
  const years = [year, year - 1].filter(each => each >= FIRST_YEAR).map(padded);
  return [isoOf(today), ...months.map(at => `${padded(Math.floor(at / 12))}-${String((at % 12) + 1).padStart(2, '0')}`), ...years];

  function padded(each: number): string {
    return String(each).padStart(4, '0');
  }
}
