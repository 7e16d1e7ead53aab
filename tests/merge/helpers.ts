/** A journal that both sides began with, and how it is merged. */
import { expect } from 'vitest';
import { merge, type Merged } from '../../server/src/merge/merge.ts';
import { readFixture } from '../support/fixture.ts';

export const BASE = `# Winter, on the bench
zone Europe/Vienna
lot GEN-25 Gentiana lutea, 60 seeds
split GEN-25, A 24 seeds, B 24 seeds

day 2026-01-25
count GEN-25/A, 3
  Radicles white and straight.
count GEN-25/B, 0

day 2026-02-01
count GEN-25/A, 6, 1 rotted
count GEN-25/B, 1
`;

interface Told extends Omit<Merged, 'conflicts'> {
  /** Each as its line, from 1, and the reason. */
  readonly conflicts: readonly string[];
}

export function merged(ours: string, theirs: string, base = BASE): Told {
  const result = merge(base, ours, theirs);
  return { ...result, conflicts: result.conflicts.map(({ reason, line }) => `${line + 1} ${reason}`) };
}

export const changed = (from: string, to: string) => BASE.replace(from, to);

/** Three versions and the merged one, as files of a fixture. */
export function holds(source: string): void {
  const texts = new Map(readFixture(source).files.map(({ name, text }) => [name, text]));
  const [base, ours, theirs] = [texts.get('base') ?? '', texts.get('ours')!, texts.get('theirs')!];
  for (const end of ['\n', '\r\n']) {
    const ended = (text: string) => text.replaceAll('\n', end);
    expect(merge(ended(base), ended(ours), ended(theirs)).text).toBe(ended(texts.get('merged')!));
  }
}
