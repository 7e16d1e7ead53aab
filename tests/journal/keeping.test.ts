/** How long a bottle lasts, and what a dose from an old one is worth. Days worked out by hand. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { isoOf } from '../../server/src/model/day.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { printQuantity } from '../../server/src/model/quantity.ts';
import { builtInAgents } from '../../server/src/solutions/agents.ts';
import { keepingTime, type Form } from '../../server/src/solutions/keeping.ts';
import { treatmentText } from '../../server/src/words/treatment.ts';
import { doseText } from '../../server/src/words/soaks.ts';
import { treatmentOf, isSameTreatment } from '../../server/src/trials/treatment.ts';
import { batchOf } from './helpers.ts';

function journalOf(text: string): Journal {
  const journal = new Journal();
  journal.set('j.germ', text);
  return journal;
}

/** The last good day of the bottle that the last line makes. */
function until(text: string): string | undefined {
  const solution = [...journalOf(text).solutions()].at(-1);
  return solution?.keeps && isoOf(solution.keeps.until);
}

describe('a bottle is good', () => {
  test.each<[string, string | undefined, string]>([
    ['stock S 2026-01-10, GA3 20 mg, 20 mL', '2030-01-10', '4 years'],
    ['stock S 2026-01-10, GA3 20 mg, 20 mL\ndilute D 2026-02-01, from S 5 mL, to 10 mL', '2027-02-01', 'a dilution 1 year'],
    ['stock S 2026-01-10, kinetin 20 mg, 20 mL', '2027-01-10', '1 year'],
    ['stock S 2026-01-10, bleach 5 %, 1 L', '2026-03-07', '8 weeks: 56 days, once opened'],
    ['stock S 2026-01-10, bleach 5 %, 1 L\ndilute D 2026-01-20, from S 20 mL, to 100 mL', '2026-01-21', '1 day'],
    ['stock S 2026-01-10, bleach 5 %, 1 L\ndilute D 2026-03-07, from S 20 mL, to 100 mL', '2026-03-07', 'no longer than what it was made from'],
    ['stock S 2026-01-10, peroxide 3 %, 250 mL', '2026-07-10', '6 months once opened'],
    ['stock S 2026-01-10, smoke 100 %, 250 mL', '2027-01-10', '1 year once opened'],
    ['stock S 2026-01-10, smoke 100 %, 250 mL\ndilute D 2026-01-10, from S 10 mL, to 100 mL', '2026-01-24', '2 weeks'],
    ['limit stock, 2 years\nstock S 2026-01-10, GA3 20 mg, 20 mL', '2028-01-10', 'as long as the limit says'],
    ['limit stock, 2 years\nstock S 2026-01-10, GA3 20 mg, 20 mL\ndilute D 2026-02-01, from S 5 mL, to 10 mL', '2028-01-10',
      'a dilution as long as the limit says, but no longer than the stock'],
    ['limit stock, 2 years\nstock S 2026-01-10, bleach 5 %, 1 L', '2026-03-07', 'bleach no longer for it'],
    ['limit stock, 1 week\nstock S 2026-01-10, bleach 5 %, 1 L', '2026-01-17', 'shorter, if the limit is'],
    ['stock S 2026-01-10, bleach 5 %, 1 L, keeps 6 months', '2026-07-10', 'its record says “keeps 6 months”'],
    ['agent kelp\nstock S 2026-01-10, kelp 2 g, 1 L', '2030-01-10', 'the default, of what nothing is known'],
  ])('%s: until %s', (text, day) => {
    expect(until(text)).toBe(day);
  });
});

describe('a dose from a bottle past its time', () => {
  const lot = 'lot L Iris sibirica, 40 seeds\n';
  const stock = 'stock G1 2023-01-08, GA3 20 mg, purity 90 %, 18 mL, keeps 1 year\n';
  const textOf = (text: string) => batchOf(lot + text, 'L').soaks.at(-1)!.doses.map(dose => doseText(dose));

  test('is at most what it was, and says how old it is', () => {
    expect(textOf(`${stock}soak L 2026-01-10, G1, 24 h`)).toEqual(['GA3 at most 1000 ppm, made three years ago']);
    expect(textOf(`${stock}soak L 2026-01-10, G1 5 mL, 20 mL, 24 h`)).toEqual(['GA3 at most 250 ppm, made three years ago']);
    expect(textOf(`${stock}soak L 2024-01-08, G1, 24 h`)).toEqual(['GA3 1000 ppm']);
    expect(textOf(`${stock}soak L 2024-01-09, G1, 24 h`)).toEqual(['GA3 at most 1000 ppm, made twelve months ago']);
    expect(textOf('stock G1 2021-01-08, GA3 20 mg, 20 mL\nsoak L 2026-01-10, G1, 24 h')).toEqual(['GA3 at most 1000 ppm, made five years ago']);
  });

  test('does not become certain by diluting it, nor by writing how long the dilution keeps', () => {
    expect(textOf(`${stock}dilute G2 2026-01-09, from G1 5 mL, to 10 mL\nsoak L 2026-01-10, G2, 24 h`))
      .toEqual(['GA3 at most 500 ppm, from a bottle made three years ago']);
    expect(textOf(`${stock}dilute G2 2026-01-09, from G1 5 mL, to 10 mL, keeps 1 year\nsoak L 2026-01-10, G2, 24 h`))
      .toEqual(['GA3 at most 500 ppm, from a bottle made three years ago']);
  });

  test('is as old as the powder, where that was past its time', () => {
    const powder = (bought: string) => textOf(`stock G1 2026-01-09, GA3 20 mg, bought ${bought}, 20 mL\nsoak L 2026-01-10, G1, 24 h`);
    expect(powder('2022-02')).toEqual(['GA3 1000 ppm']);
    expect(powder('2020')).toEqual(['GA3 at most 1000 ppm, from powder bought five years ago']);
    const packet = 'powder P1 2020-01-02, GA3 1 g\nstock GO 2026-01-02, from P1 100 mg, 100 mL\n';
    const old = ', from powder bought six years ago';
    expect(textOf(`${packet}soak L 2026-01-05, GO, 24 h`)).toEqual([`GA3 at most 1000 ppm${old}`]);
    expect(textOf(`${packet}dilute GD 2026-01-03, from GO 5 mL, to 10 mL\nsoak L 2026-01-05, GD, 24 h`))
      .toEqual([`GA3 at most 500 ppm${old}`]);
    expect(textOf(`${packet}soak L 2026-01-05, P1 20 mg, 20 mL, 24 h`)).toEqual([`GA3 at most 1000 ppm${old}`]);
  });

  test('says so in treatments', () => {
    expect(treatmentText(batchOf(`${lot}${stock}soak L 2026-01-10, G1, 24 h`, 'L')))
      .toBe('GA3 at most 1000 ppm, made three years ago, 24 h');
  });

  test('is no dose to compare with a known one; the same bottle is the same treatment', () => {
    const treatment = (text: string) => {
      const batch = batchOf(lot + stock + text, 'L');
      return treatmentOf(batch, batch.soaks);
    };
    const old = treatment('soak L 2026-01-10, G1, 24 h');
    expect(old[0]!.doses[0]).toMatchObject({ ppm: undefined, atMost: 1000 });
    expect(isSameTreatment(old, treatment('soak L 2026-01-10, G1 10 mL, 24 h'))).toBe(true);
    expect(isSameTreatment(old, treatment('soak L 2026-01-10, G1 10 mL, 20 mL, 24 h'))).toBe(false);
    expect(isSameTreatment(old, treatment('soak L 2026-01-10, GA3 1000 ppm, 24 h'))).toBe(false);
  });

  test('follows the limit', () => {
    const journal = journalOf(`${lot}stock G1 2023-01-08, GA3 20 mg, 20 mL\nsoak L 2026-01-10, G1, 24 h\n`);
    const stale = () => journal.lot('L')!.root.soaks[0]!.doses[0]!.stale !== undefined;
    expect(stale()).toBe(false);
    journal.set('limits.germ', 'limit stock, 2 years\n');
    expect(stale()).toBe(true);
    journal.remove('limits.germ');
    expect(stale()).toBe(false);
  });
});

test('the table of the reference has the same times', () => {
  const page = readFileSync(new URL('../../syntaxes/README.md', import.meta.url), 'utf8');
  const forms: readonly Form[] = ['powder', 'stock', 'dilution', 'bought'];
  const rows = page.split('### How long a bottle lasts')[1]!.split('## Records')[0]!.split('\n').filter(line => line.startsWith('| `'));
  const told = rows.flatMap(row => {
    const [, names, ...times] = row.split('|').map(cell => cell.trim());
    return names!.replaceAll('`', '').split(', ').map(name => [name, ...times.slice(0, 4)]);
  });
  const words = [...builtInAgents.keys()].filter(word => word !== 'water');
  expect(told.map(([name]) => name).sort()).toEqual(words.sort());
  for (const [name, ...times] of told) {
    const agent = builtInAgents.get(name!)!;
    forms.forEach((form, n) => {
      if (times[n] !== '') expect(printQuantity(keepingTime(agent, form).value), `${name!} ${form}`).toBe(times[n]);
    });
  }
});
