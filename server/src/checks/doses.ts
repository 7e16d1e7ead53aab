import type { Dose, Entry } from '../journal/life.ts';
import { exact } from '../solutions/amounts.ts';
import { known } from '../solutions/outcome.ts';
import { strengthInPpm } from '../solutions/strength.ts';
import { doseAboveSolubility } from './above-solubility.ts';
import type { Context, Found, LotCheck } from './check.ts';
import { doseAboveLimit } from './dose-above-limit.ts';
import { strengthMissing } from './strength-missing.ts';
import { strengthOfStock } from './strength-of-stock.ts';
import { pouredSlip, strengthSlip } from './strength-slip.ts';

/** The strengths of soaks and drops. */
export const doses: LotCheck = function* ({ plant }, context, events) {
  for (const { entry, soak } of events.of('soak')) {
    for (const dose of soak.doses) yield* problemsOf({ entry, dose, all: soak.doses, plant, context });
  }
  for (const event of events.of('apply')) {
    for (const dose of event.doses) yield* problemsOf({ entry: event.entry, dose, all: event.doses, plant, context });
  }
};

interface Given {
  readonly entry: Entry;
  readonly dose: Dose;
  /** All doses of the same liquid. */
  readonly all: readonly Dose[];
  readonly plant: string | undefined;
  readonly context: Context;
}

/** Each dose gets one of these at most: a slip whose meaning is evident explains the others away. */
function problemsOf({ entry, dose, all, plant, context }: Given): Found[] {
  const unclear = dose.parts.flatMap(part => (
    strengthOfStock(entry, dose, part, context) ?? strengthMissing(entry, dose, part) ?? []));
  if (unclear.length > 0) return [...unclear, ...eitherAboveLimit({ entry, dose, all, plant, context })];
  const slip = strengthSlip(entry, dose) ?? pouredSlip(entry, dose, context);
  const problem = slip && slip.problem.fixes.length > 0
    ? slip
    : doseAboveSolubility(entry, dose) ?? slip ?? doseAboveLimit(entry, dose, all, plant, context);
  return problem ? [problem] : [];
}

/** Where a stock and what is written beside it disagree, either may have been in the dish: both are checked. */
function eitherAboveLimit({ entry, dose, all, plant, context }: Given): Found[] {
  const { parts, agent } = dose;
  const disputed = parts.filter(({ byStock }) => byStock !== undefined);
  const [first] = disputed;
  if (!first || !agent) return [];
  const inStocks = parts.reduce((sum, { byStock, ppm }) => {
    const part = byStock ?? ppm;
    return part.ok ? sum.add(part.value) : sum;
  }, exact(0));
  const written = disputed.flatMap(({ fact }) => {
    const ppm = fact.strength && strengthInPpm(fact.strength.value, agent);
    return ppm?.ok ? [{ ...dose, fact, ppm, written: fact.strength!.value }] : [];
  });
  const byStocks = { ...dose, fact: { ...first.fact, strength: undefined }, ppm: known(inStocks), written: undefined };
  return [byStocks, ...written].flatMap(each => doseAboveLimit(entry, each, all, plant, context) ?? []);
}
