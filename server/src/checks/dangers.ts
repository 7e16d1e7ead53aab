import { isZero } from '../journal/doses.ts';
import type { Batch, Dose, DatedEntry, Soak } from '../journal/life.ts';
import { elapsed, lengthText } from '../journal/moment.ts';
import { meaningOf } from '../model/events.ts';
import { minutesOf, printQuantity } from '../model/quantity.ts';
import { dangerOf, longestIn, reactiveOf } from '../solutions/dangers.ts';
import { found, relatedTo, type Context, type Found, type LotCheck } from './check.ts';
import { lengthSpan } from './spans.ts';

/** What must not meet in one vessel, or on seed that was not rinsed; and seed that lies in a disinfectant for hours. */
export const dangers: LotCheck = function* ({ batches }, context, events) {
  for (const { entry, soak } of events.of('soak')) yield* inOneVessel(entry, soak.doses);
  for (const { entry, doses } of events.of('apply')) yield* inOneVessel(entry, doses);
  const said = new Set<unknown>();
  for (const batch of batches.values()) {
    for (const each of afterEachOther(batch)) {
      if (!said.has(each.line)) yield each;
      said.add(each.line);
    }
  }
  for (const { soak } of events.soaks) yield* tooLongIn(soak, context);
};

function* inOneVessel({ line }: DatedEntry, doses: readonly Dose[]): Generator<Found> {
  const real = doses.filter(dose => !isZero(dose));
  for (const [n, dose] of real.entries()) {
    for (const before of real.slice(0, n)) {
      const danger = dangerOf(kindOf(before), kindOf(dose));
      if (danger === undefined) continue;
      const values = { what: `${nameOf(before)} and ${nameOf(dose)} are in one liquid`, danger };
      yield found(line, 'dangerous-together', dose.fact, values);
    }
  }
}

/** One soak straight after another, with no soak in water and nothing else between them. */
function* afterEachOther({ inherited, events }: Batch): Generator<Found> {
  const handled = [...inherited, ...events].filter(event => !meaningOf(event).isRemark);
  let before: Soak | undefined;
  for (const event of handled) {
    if (event.type === 'lift' || event.type === 'split' || event.type === 'move' || event.type === 'leave' || event.type === 'blank') continue;
    const next = event.type === 'soak' ? event.soak : undefined;
    if (before && next && isStraightAfter(before, next)) yield* onSeed(before, next);
    before = next;
  }
}

function isStraightAfter({ start, end }: Soak, next: Soak): boolean {
  return next.start.day - (end ?? start).day <= 1;
}

function* onSeed(before: Soak, { entry: { line }, doses }: Soak): Generator<Found> {
  for (const dose of doses.filter(each => !isZero(each))) {
    for (const earlier of before.doses.filter(each => !isZero(each))) {
      const danger = dangerOf(kindOf(earlier), kindOf(dose));
      if (danger === undefined) continue;
      const what = `Seed goes from ${nameOf(earlier)} into ${nameOf(dose)}, and no rinse is written`;
      yield found(line, 'dangerous-together', dose.fact, { what, danger },
        { related: [relatedTo(before.entry, 'The soak before')] });
      return;
    }
  }
}

function kindOf({ fact, agent }: Dose) {
  return reactiveOf(fact.name.text, agent);
}

function nameOf({ fact, agent }: Dose): string {
  return agent?.word ?? fact.name.text;
}

/** Only where it is certain, as with every soak. */
function* tooLongIn(soak: Soak, { journal, now }: Context): Generator<Found> {
  const { doses, end, start, entry } = soak;
  const length = end ? soak.length : elapsed(start, { day: now.day, minutes: now.minutes ?? 0 }, journal.zone);
  for (const dose of doses) {
    const limit = dose.agent && !isZero(dose) ? longestIn(dose.agent) : undefined;
    if (!limit || !length || length.least <= minutesOf(limit)!) continue;
    yield found(entry.line, 'disinfectant-too-long', end ? lengthSpan(soak) : dose.fact, {
      agent: dose.agent!.word, hours: lengthText({ ...length, wallClock: false }, !end), limit: printQuantity(limit),
    });
    return;
  }
}
