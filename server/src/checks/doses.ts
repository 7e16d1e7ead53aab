import type { LotCheck } from './check.ts';
import { doseAboveLimit } from './dose-above-limit.ts';
import { doseAboveSolubility } from './above-solubility.ts';
import { eventsOf } from './events.ts';
import { strengthSlip } from './strength-slip.ts';

/** Each dose gets one of the three at most: a slip whose meaning is evident explains the others away. */
export const doses: LotCheck = function* (lot, context) {
  for (const { event } of eventsOf(lot, 'soak', 'apply')) {
    for (const dose of event.type === 'soak' ? event.soak.doses : event.doses) {
      const slip = strengthSlip(event.entry, dose);
      const problem = slip && slip.problem.fixes.length > 0
        ? slip
        : doseAboveSolubility(event.entry, dose) ?? slip ?? doseAboveLimit(event.entry, dose, lot.plant, context);
      if (problem) yield problem;
    }
  }
};
