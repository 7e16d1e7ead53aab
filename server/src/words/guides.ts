/** What a guide says to do, in the order written: whether a soak comes before or after the cold matters. */
import { stageName } from '../calendar/ask.ts';
import { stageOf } from '../calendar/regime-match.ts';
import { printQuantity } from '../model/quantity.ts';
import type { Fact, JournalRecord, SubstanceFact } from '../model/record.ts';

/** Example: 'GA3 500 ppm, 24 h, chill 4 C 60 days'; 'no treatment' where it names a source alone */
export function guideStepsText({ facts }: Pick<JournalRecord, 'facts'>): string {
  const steps = facts.flatMap(fact => factText(fact) ?? []).join(', ');
  return steps === '' ? 'no treatment' : steps;
}

function factText(fact: Fact): string | undefined {
  switch (fact.type) {
    case 'substance': return substanceText(fact);
    case 'duration': return printQuantity(fact.value);
    case 'stage': return stageName(stageOf(fact));
    default: return undefined;
  }
}

function substanceText({ name, strength, unmeasured }: SubstanceFact): string {
  if (strength) return `${name.text} ${printQuantity(strength.value)}`;
  return unmeasured ? `${name.text} unmeasured` : `${name.text}, strength not given`;
}
