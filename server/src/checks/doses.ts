import type { Dose, Entry } from '../journal/life.ts';
import { doseAboveSolubility } from './above-solubility.ts';
import type { Context, Found, LotCheck } from './check.ts';
import { doseAboveLimit } from './dose-above-limit.ts';
import { strengthMissing } from './strength-missing.ts';
import { strengthOfStock } from './strength-of-stock.ts';
import { strengthSlip } from './strength-slip.ts';

/** The strengths of soaks and drops. */
export const doses: LotCheck = function* ({ plant }, context, events) {
  for (const { entry, soak } of events.of('soak')) {
    for (const dose of soak.doses) yield* problemOf(entry, dose, plant, context);
  }
  for (const event of events.of('apply')) {
    for (const dose of event.doses) yield* problemOf(event.entry, dose, plant, context);
  }
};

/** Each dose gets one of these at most: a slip whose meaning is evident explains the others away. */
function problemOf(entry: Entry, dose: Dose, plant: string | undefined, context: Context): Found[] {
  const unclear = strengthOfStock(entry, dose) ?? strengthMissing(entry, dose);
  if (unclear) return [unclear];
  const slip = strengthSlip(entry, dose);
  const problem = slip && slip.problem.fixes.length > 0
    ? slip
    : doseAboveSolubility(entry, dose) ?? slip ?? doseAboveLimit(entry, dose, plant, context);
  return problem ? [problem] : [];
}
