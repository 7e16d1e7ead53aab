import { describe, expect, test } from 'vitest';
import { dayOfIso } from '../../server/src/model/day.ts';
import { everReady, readyBefore } from '../../server/src/trials/ready.ts';
import { journalOf } from './helpers.ts';

const lotsOf = (source: string) => [...journalOf(source).lots()];

/** The lot that is cited on a day, with the day and the sum of its last germination. */
function cited(source: string, iso: string): unknown[] | undefined {
  const found = readyBefore(lotsOf(source), dayOfIso(iso)!);
  return found && [found.lot.id, found.last.entry.line.number, `${found.readiness.x} of ${found.readiness.n}`];
}

const readily = (id: string, year: number) => `lot ${id} Primula beesiana, 30 seeds\nsow ${id} ${year}-10-19\ncount ${id} ${year}-11-02, 27`;

describe('untreated seed that came up readily', () => {
  test('is known from the day after the count that shows it', () => {
    expect([cited(readily('P', 2025), '2025-11-02'), cited(readily('P', 2025), '2025-11-03')]).toEqual([undefined, ['P', 2, '27 of 30']]);
  });

  test('is that of the latest lot, of the first of several on one day', () => {
    expect(cited(`${readily('P24', 2024)}\n${readily('P25', 2025)}`, '2026-10-10')).toEqual(['P25', 5, '27 of 30']);
    expect(cited(`${readily('P24', 2024)}\n${readily('P25', 2025)}`, '2025-06-01')).toEqual(['P24', 2, '27 of 30']);
    expect(cited(`${readily('P25', 2025)}\n${readily('P24', 2024)}`, '2026-10-10')).toEqual(['P25', 2, '27 of 30']);
    expect(cited(`${readily('P', 2025)}\n${readily('Q', 2025)}`, '2026-10-10')).toEqual(['P', 2, '27 of 30']);
  });

  test('is cited with the last count before that day that found some, of whichever batch', () => {
    const source = `
      lot P Primula beesiana, 44 seeds
      split P, A 4 seeds, B 40 seeds
      sow P/A 2025-10-19
      sow P/B 2025-10-19
      count P/A 2025-11-01, 3
      count P/A 2025-11-10, 1
      count P/A 2025-11-17, 0
      count P/B 2025-11-02, 36
      count P/B 2025-11-09, 0
    `;
    expect(['2025-11-02', '2025-11-03', '2025-11-10', '2025-11-11', '2026-10-10'].map(day => cited(source, day))).toEqual([
      undefined, ['P', 7, '39 of 44'], ['P', 7, '39 of 44'], ['P', 5, '40 of 44'], ['P', 5, '40 of 44'],
    ]);
  });

  test('is of seed that was neither lost, treated, chilled nor left over from what had come up', () => {
    const lost = readily('LOST', 2025).replace('30 seeds', '40 seeds').replace(', 27', ', 26, 13 lost');
    const treated = `
      lot TREATED Primula beesiana, 60 seeds
      split TREATED, A 30 seeds, B 30 seeds
      chill TREATED/A 2025-08-01, 4 C, 70 days
      soak TREATED/B 2025-10-18 19:00, GA3 500 ppm, 12 h
      sow TREATED/A 2025-10-19
      sow TREATED/B 2025-10-19
      count TREATED/A 2025-11-02, 27
      count TREATED/B 2025-11-02, 27`;
    const rest = `
      lot REST Primula beesiana, 40 seeds
      sow REST 2025-10-19
      count REST 2025-10-28, 5
      split REST 2025-10-29, A 30 seeds
      count REST/A 2025-11-02, 28`;
    expect(everReady(lotsOf(`${lost}\n${treated}\n${rest}\n${readily('P', 2025)}`)).map(({ id }) => id)).toEqual(['P']);
  });
});
