import { expect, test } from 'vitest';
import { strengthHeld } from '../../server/src/words/held.ts';
import { ladderNote } from '../../server/src/words/ladders.ts';
import { dosesText } from '../../server/src/words/soaks.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { agentText } from '../../server/src/words/trials.ts';
import { plantTrial } from '../../server/src/trials/plant-trial.ts';
import { journalOf } from '../trials/helpers.ts';

test('what is measured by volume is shown in %, in the bottle, the dish, a ladder and the summary of its doses', () => {
  const journal = journalOf(`
    lot L Iris alba, 90 seeds
    split L, A 24 seeds, B 24 seeds, C 24 seeds
    stock S1 2026-01-09, smoke 100 %, 50 mL
    soak L/A 2026-01-10 19:00, S1 2 mL, 20 mL, 24 h
    soak L/B 2026-01-10 19:00, smoke 5 %, 24 h
    soak L/C 2026-01-10 19:00, water, 24 h
    sow L/A 2026-01-11 19:00
    sow L/B 2026-01-11 19:00
    sow L/C 2026-01-11 19:00
    count L/A 2026-02-10, 22
    count L/B 2026-02-10, 9
    count L/C 2026-02-10, 1
    discard L/A 2026-02-11
    discard L/B 2026-02-11
    discard L/C 2026-02-11
  `);
  const lot = journal.lot('L')!;
  expect(strengthHeld(journal.solution('S1')!, journal)).toBe('100 %');
  expect(dosesText(lot.batches.get('L/A')!.soaks[0]!.doses)).toBe('smoke 10 %');
  expect(ladderNote(trialOf(lot).ladders[0]!)).toContain('Best dose: 10 %.');
  expect(plantTrial('Iris alba', [lot]).agents.map(agentText)).toEqual(['smoke (5 to 10 %)']);
});
