import { expect, test } from 'vitest';
import { doseLadderPicture } from '../../server/src/features/drawing/trials.ts';
import { mixAnswer } from '../../server/src/features/mix/answer.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import type { ProblemCode } from '../../server/src/model/problems.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { strengthHeld } from '../../server/src/words/held.ts';
import { ladderNote } from '../../server/src/words/ladders.ts';
import { dosesText } from '../../server/src/words/soaks.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { agentText } from '../../server/src/words/trials.ts';
import { plantTrial } from '../../server/src/trials/plant-trial.ts';
import { answerOn, pageOn } from '../advice/helpers.ts';
import { problemsIn } from '../checks/marked.ts';
import { hover } from '../features/journals.ts';
import { textBoxes } from '../pictures/svg.ts';
import { journalOf } from '../trials/helpers.ts';

const ladder = `
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
`;

test('what is measured by volume is shown in %, in the bottle, the dish, a ladder and the summary of its doses', () => {
  const journal = journalOf(ladder);
  const lot = journal.lot('L')!;
  expect(strengthHeld(journal.solution('S1')!, journal)).toBe('100 %');
  expect(dosesText(lot.batches.get('L/A')!.soaks[0]!.doses)).toBe('smoke 10 %');
  expect(ladderNote(trialOf(lot, Infinity).ladders[0]!)).toContain('Best dose: 10 %.');
  expect(plantTrial('Iris alba', [lot], Infinity).agents.map(agentText)).toEqual(['smoke (5 to 10 %)']);
});

const smoked = `
  limit smoke, 8 %
  guide Iris, smoke 4 %, 24 h
  stock S1 2026-01-09, smoke 100 %, 500 mL
  dilute S2 2026-01-09, from S1 10 mL, to 100 mL
  lot L Iris alba, 80 seeds
  split L, A 24 seeds, B 24 seeds, C 16 seeds, D 16 seeds
  soak L/A 2026-01-10 19:00, S2, 24 h
  soak L/B 2026-01-10 19:00, water, 24 h
  soak L/C 2026-01-10 19:00, S1 1 uL, water 900 mL, 24 h
  soak L/D 2026-01-10 19:00, S1 1 mL, smoke 4 %, 20 mL, 24 h
  sow L/A 2026-01-11 19:00, 18 C
  sow L/B 2026-01-11 19:00, 18 C
  count L/A 2026-02-10, 22
  count L/B 2026-02-10, 1
  cut L/A 2026-05-11, 2 dead
  cut L/B 2026-05-11, 23 dead
  lot NEW-26 Iris alba, 40 seeds
`;

test('problems tell a strength by volume in %, too', () => {
  const messages = (code: ProblemCode) => problemsIn(code, smoked).map(({ message }) => message);
  expect(messages('beyond-guides')[0]).toMatch(/^smoke 10 % is stronger than every guide for Iris alba: smoke 4 %/);
  expect(messages('dose-above-limit')[0]).toMatch(/^smoke 10 % \(stock S2\) is above the limit of 8 %/);
  expect(messages('strength-slip')[0]).toMatch(/^smoke 0\.000111 % is far from what growers use/);
  expect(messages('strengths-disagree')[0]).toContain('5 % from S1 and 4 % as written');
});

test('the advice does, in its answer, in what it needs and in the records to write', () => {
  const unlimited = smoked.replace('limit smoke, 8 %', '');
  expect(answerOn(unlimited)).toMatch(/^Treat most of it: smoke 10 %, 24 h\. /);
  const { 'What it needs': needs, 'Records to write': records } = pageOn(unlimited);
  expect(needs!.join(' ')).toContain('For smoke 10 % add 9 mL of water to each mL of it.');
  expect(records).toContain('soak NEW-26/A 2026-11-29 19:00, smoke 10 %, 24 h');
  const without = pageOn(`${unlimited}\n  note S1 2026-11-01, thrown away`);
  expect(without['What it needs']!.join(' ')).toContain('“plumule mix smoke 10% 20mL --from”');
});

test('a hover does, over a strength, a bottle, what was diluted from it and the agent', () => {
  const over = (line: string, marks: string) => hover(`${smoked.split(line)[0]}${line}\n${marks} here\n${smoked.split(line)[1]}`, '2026-02-10')!;
  expect(over('  limit smoke, 8 %', '               ^^^').split('\n\n')).toEqual(expect.arrayContaining(['smoke 8 %']));
  expect(over('  stock S1 2026-01-09, smoke 100 %, 500 mL', '        ^^')).toMatch(/\*\*smoke 100 %\*\*\n/);
  expect(over('  dilute S2 2026-01-09, from S1 10 mL, to 100 mL', '         ^^')).toContain('Label it: smoke 10 %, ');
  expect(over('  limit smoke, 8 %', '        ^^^^^')).toContain('Outside 0.01 to 100 % the unit is probably wrong');
});

test('a solution to mix and the picture of a ladder do', () => {
  const journal = journalOf(smoked);
  const { text, id } = mixAnswer({ agent: 'smoke', strength: '2.5 %', volume: '20 mL', stock: 'S1' }, journal, dayOfIso('2026-02-10')!);
  expect(text).toContain('Take 0.5 mL of the 100 % smoke stock');
  expect(text).not.toContain('ppm');
  expect(text).toContain('10 % is 1 part in 10.');
  expect(id).toBe('S1-2.5');
  const frame = { theme: themes.light, width: 760, small: false, id: 'a' };
  const said = textBoxes(doseLadderPicture(trialOf(journalOf(ladder).lot('L')!, Infinity).ladders[0]!, 'L', frame)!).map(({ what }) => what);
  expect(said).toEqual(expect.arrayContaining(['5', '10', '%, on a logarithmic scale']));
});

test('a disinfectant from a bottle, and what is far too strong for ppm, are shown in %', () => {
  const { batches } = journalOf(`
    agent acid, 98.08 g/mol, sulphuric acid
    stock A1 2026-01-05, acid 98 %, 500 mL
    stock P1 2026-01-05, peroxide 3 %, 250 mL
    stock N1 2026-01-05, KNO3 20 g, 1 L
    lot L Iris alba, 80 seeds
    split L, A 20 seeds, B 20 seeds, C 20 seeds
    soak L/A 2026-01-10 19:00, A1, 10 min
    soak L/B 2026-01-10 19:00, P1 5 mL, 20 mL, 20 min
    soak L/C 2026-01-10 19:00, N1, 24 h
  `).lot('L')!;
  expect(['A', 'B', 'C'].map(part => dosesText(batches.get(`L/${part}`)!.soaks[0]!.doses)))
    .toEqual(['acid 98 %', 'peroxide 0.75 %', 'KNO3 20000 ppm']);
});
