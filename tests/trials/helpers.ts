/** What the tests of trials share: journals as fixtures, and groups and contests in few words. */
import { Journal } from '../../server/src/journal/journal.ts';
import type { Lot } from '../../server/src/journal/life.ts';
import { trialOf, type Contest, type LotTrial } from '../../server/src/trials/lot-trial.ts';
import type { Group } from '../../server/src/trials/groups.ts';
import { readFixture } from '../support/fixture.ts';

export function journalOf(source: string): Journal {
  const journal = new Journal();
  for (const { name, text } of readFixture(source).files) journal.set(name, text);
  return journal;
}

/** The only lot of a journal, or the one named. */
export function lotOf(source: string, id?: string): Lot {
  const lots = [...journalOf(source).lots()];
  return (id === undefined ? lots[0] : lots.find(lot => lot.id === id))!;
}

/** The trial of the only lot of a journal. */
export function trial(source: string): LotTrial {
  return trialOf(lotOf(source), Infinity);
}

/** Example: 'GA3 500, KNO3 2000: A C' */
export function groupText({ treatment, batches }: Group): string {
  const soaks = treatment.map(({ doses }) => doses.map(({ agent, ppm }) => `${agent.word} ${ppm ?? 'unmeasured'}`).join(', '));
  const names = batches.map(({ batch }) => batch.path.replace(/^[^/]*\//, ''));
  return `${soaks.join(' then ') || 'untreated'}: ${names.join(' ')}`;
}

export function groupTexts({ groups }: LotTrial): string[] {
  return groups.map(groupText);
}

/** The only contest of a lot. */
export function contest(source: string): Contest {
  const { contests } = trial(source);
  if (contests.length !== 1) throw new Error(`${contests.length} contests`);
  return contests[0]!;
}

/** Two batches of 20, soaked for a day and sown alike; counted once with so many up, then thrown away. */
export function twoBatches({ a = '', b = '', soakA = 'GA3 500 ppm, 24 h', soakB = 'water, 24 h', up = [15, 5] as [number, number] } = {}): string {
  return `
    lot L Iris alba, 60 seeds
    split L, A 20 seeds, B 20 seeds
    ${soakA && `soak L/A 2026-01-10 19:00, ${soakA}`}
    ${soakB && `soak L/B 2026-01-10 19:00, ${soakB}`}
    sow L/A 2026-01-11 19:00${a}
    sow L/B 2026-01-11 19:00${b}
    count L/A 2026-02-10, ${up[0]}
    count L/B 2026-02-10, ${up[1]}
    discard L/A 2026-02-11
    discard L/B 2026-02-11
  `;
}

/** A share of which the counts give both numbers. */
export function share(x: number, n: number) {
  return { x: { least: x, most: x }, n: { least: n, most: n } };
}
