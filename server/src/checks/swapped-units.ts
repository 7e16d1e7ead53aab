import type { Entry } from '../journal/life.ts';
import { subjectIdOf } from '../journal/mentions.ts';
import {
  minutesOf, printQuantity, printTemperature, type Duration, type Mass, type Temperature, type Volume,
} from '../model/quantity.ts';
import { factOf, factsOf, type Span } from '../model/record.ts';
import { exact, volumeInMl } from '../solutions/amounts.ts';
import { stockFromPowder, type PowderStock } from '../solutions/stock.ts';
import { warmthSlip, type Stage } from '../solutions/warmth.ts';
import { listed } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Found, type IdCheck, type JournalCheck, type SolutionCheck } from './check.ts';

/** Temperatures, times and volumes in a unit that was probably not meant, of records about a batch or a regime. */
export const swappedUnits: IdCheck = function* (id, mentions) {
  for (const entry of mentions) {
    if (subjectIdOf(entry.record) === id) yield* slipsOf(entry);
  }
};

/** The same in what books say. */
export const swappedInGuides: JournalCheck = function* ({ journal }) {
  for (const entry of journal.globalEntries('guide')) yield* slipsOf(entry);
};

function* slipsOf(entry: Entry): Generator<Found> {
  const { record, record: { keyword } } = entry;
  const temperature = factOf(record, 'temperature');
  const duration = factOf(record, 'duration');
  if (keyword === 'chill' || keyword === 'warm' || keyword === 'sow') {
    const stage = { stage: keyword, word: record.keywordSpan };
    if (temperature) yield* warmthOf(entry, temperature, temperature.value, stage);
    if (duration) yield* timeOf(entry, duration, duration.value, 'stage');
  }
  if (keyword === 'soak' && duration) yield* timeOf(entry, duration, duration.value, 'soak');
  if (keyword === 'soak') yield* volumesOf(entry);
  for (const { stage, start, temperature: at, duration: long } of factsOf(record, 'stage')) {
    if (at) yield* warmthOf(entry, at, at.value, { stage, word: { start, end: start + stage.length } });
    if (long) yield* timeOf(entry, long, long.value, 'stage');
  }
}

function* warmthOf(
  { line }: Pick<Entry, 'line'>, span: Span, value: Temperature, { stage, word }: { stage: Stage; word: Span },
): Generator<Found> {
  const slip = warmthSlip(value, stage);
  if (!slip) return;
  const meant = [...slip.readings, ...(slip.stage ? [`“${slip.stage}”`] : [])];
  yield found(line, 'unit-slip', span, {
    written: printTemperature(value), what: `is not a likely temperature for “${stage}” (${slip.usual}; common practice, no source)`,
    suggestion: meantText(meant),
  }, {
    fixes: [
      ...slip.readings.map(text => replacement(span, text)), ...(slip.stage ? [replacement(word, slip.stage)] : []),
    ],
  });
}

/** Minutes; what lies outside is nobody's soak and nobody's stage. Common practice, no source. */
const times = { soak: { least: 1, most: 5 * 1440 }, stage: { least: 7 * 1440, most: 3 * 365 * 1440 } } as const;
const inSoak: readonly Duration['unit'][] = ['h', 'min'];
const inStage: readonly Duration['unit'][] = ['days', 'weeks'];
const LONGEST_SOAK = 48 * 60;

function* timeOf({ line }: Entry, span: Span, value: Duration, of: 'soak' | 'stage'): Generator<Found> {
  const minutes = minutesOf(value);
  // A stage may be a day long, but not 20 hours.
  const isFine = of === 'soak' || value.unit === 'h' || value.unit === 'min';
  const isShort = minutes !== undefined && minutes < times[of].least && isFine;
  if (minutes !== undefined && !isShort && minutes <= times[of].most) return;
  if (minutes === undefined && of === 'stage') return;
  const others = (of === 'soak' ? inSoak : inStage).map(unit => ({ ...value, unit })).filter(other => {
    const long = minutesOf(other)!;
    return of === 'soak' ? long <= LONGEST_SOAK && long >= 10 : long <= 300 * 1440 && long >= 1440;
  });
  const [meant] = others;
  if (!meant) return;
  yield found(line, 'unit-slip', span, {
    written: printQuantity(value), what: of === 'soak' ? 'is not a likely length for a soak' : 'is not a likely length for a stage',
    suggestion: meantText([printQuantity(meant)]),
  }, { fixes: [replacement(span, printQuantity(meant))] });
}

/** mL that a soak takes at a small bench: common practice, no source. */
const SOAK_ML = { least: exact(0.2), most: exact(3000) };

function* volumesOf({ line, record }: Entry): Generator<Found> {
  const total = factOf(record, 'volume');
  const own = factsOf(record, 'substance').flatMap(({ volume }) => volume ?? []);
  for (const fact of [...(total ? [total] : []), ...own]) {
    const { value, start, end } = fact;
    const span = { start, end };
    const ml = volumeInMl(value);
    if (ml.gte(fact === total ? SOAK_ML.least : exact(0)) && ml.lte(SOAK_ML.most)) continue;
    const meant = { ...value, unit: 'mL' as const };
    if (value.unit === 'mL' || volumeInMl(meant).gt(SOAK_ML.most)) continue;
    yield found(line, 'unit-slip', span, {
      written: printQuantity(value), what: 'is not a likely volume for a soak', suggestion: meantText([printQuantity(meant)]),
    }, { fixes: [replacement(span, printQuantity(meant))] });
  }
}

/** A bottle in which powder and water make a strength that nobody uses, where another unit makes a usual one. */
export const swappedInBottle: SolutionCheck = function* ({ entry: { line, record }, agent, ppm, weighed: stock }) {
  const [volume, mass] = [factOf(record, 'volume'), factOf(record, 'substance')?.mass ?? factOf(record, 'draw')?.mass];
  const usual = agent?.usual;
  if (!stock || !ppm.ok || !usual || !volume || !mass) return;
  const { low, high } = usual;
  // A stock is stronger than a dose on purpose, but not a hundred times.
  if (ppm.value.gte(low) && ppm.value.lte(high.mul(100))) return;
  const isUsual = (change: Partial<PowderStock>) => {
    const made = stockFromPowder({ ...stock, ...change });
    return made.ok && made.value.ppm.gte(low) && made.value.ppm.lte(high);
  };
  const isHandy = (each: Volume) => volumeInMl(each).gte(1) && volumeInMl(each).lte(SOAK_ML.most);
  const volumes = (['mL', 'L', 'uL'] as const).map((unit): Volume => ({ ...volume.value, unit }))
    .filter(each => each.unit !== volume.value.unit && isHandy(each) && isUsual({ volume: each }));
  const masses = (['mg', 'g', 'ug'] as const).map((unit): Mass => ({ ...mass.value, unit }))
    .filter(each => each.unit !== mass.value.unit && isHandy(volume.value) && isUsual({ mass: each }));
  const texts = [...volumes, ...masses].map(printQuantity);
  if (texts.length === 0) return;
  yield found(line, 'unit-slip', volume, {
    written: `${printQuantity(mass.value)} in ${printQuantity(volume.value)}`, what: 'makes a strength that growers do not use',
    suggestion: meantText(texts),
  }, {
    fixes: [
      ...volumes.map(each => replacement(volume, printQuantity(each))),
      ...masses.map(each => replacement(mass, printQuantity(each))),
    ],
  });
};

function meantText(texts: readonly string[]): string {
  return texts.length === 0 ? 'Check the number and its unit.' : `Did you mean ${listed(texts, 'or')}?`;
}
