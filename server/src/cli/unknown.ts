import { nearest } from '../syntax/nearest.ts';
import type { OpenJournal } from './open.ts';

/** What is said of an id that no lot has, with the nearest one that a lot has. */
export function unknownLot(id: string, journals: readonly OpenJournal[]): string {
  const near = nearest(id, journals.flatMap(({ journal }) => [...journal.lots()].map(lot => lot.id)));
  return `there is no lot “${id}”${near === undefined ? '' : `; did you mean “${near}”?`}`;
}
