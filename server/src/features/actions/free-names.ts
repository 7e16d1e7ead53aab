/** Names for new batches. */
import type { Journal } from '../../journal/journal.ts';
import type { Lot } from '../../journal/life.ts';

/** The first letters that neither a part of the batch nor any record has, `A` to `Z`, then `A1` and on. */
export function freeNames(journal: Journal, lot: Lot, path: string, count: number): string[] {
  const taken = new Set(lot.batches.keys());
  for (const { record } of journal.mentionsOf(lot.id)) if (record.subject) taken.add(record.subject.text);
  const isTaken = (name: string) =>
    [...taken].some(other => other === `${path}/${name}` || other.startsWith(`${path}/${name}/`));
  const names: string[] = [];
  for (let n = 0; names.length < count; n++) {
    const letter = String.fromCharCode(65 + (n % 26));
    const name = n < 26 ? letter : `${letter}${Math.floor(n / 26)}`;
    if (!isTaken(name)) names.push(name);
  }
  return names;
}
