/** From the text of a journal to its verdicts, the way the command line goes. */
import { Journal } from '../../server/src/journal/journal.ts';
import type { VerdictName } from '../../server/src/measures/verdict-rules.ts';
import { byPlant } from '../../server/src/trials/by-plant.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { plantTrial } from '../../server/src/trials/plant-trial.ts';

export interface Judged {
  readonly verdict: VerdictName;
  readonly rule: string;
}

/** What is said of each treatment of each lot. */
export function verdictsOfLots(journal: Journal): Judged[] {
  return [...journal.lots()].flatMap(lot => trialOf(lot, Infinity).contests.map(({ verdict }) => verdict));
}

/** What is said of each agent over all lots of a species. */
export function verdictsOfPlants(journal: Journal): Judged[] {
  return [...byPlant(journal.lots(), 'species')].flatMap(([plant, lots]) => (
    plantTrial(plant, lots, Infinity).agents.map(({ across }) => across)));
}

export function journalOf(text: string): Journal {
  const journal = new Journal();
  journal.set('simulated.germ', text);
  return journal;
}
