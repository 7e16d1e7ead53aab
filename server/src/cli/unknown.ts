import { nearest } from '../syntax/nearest.ts';
import type { OpenJournal } from './open.ts';

/** What is said of a name that stands for nothing, with the nearest one that does. */
export function unknownName(what: string, name: string, known: readonly string[]): string {
  const near = nearest(name, known);
  return `there is no ${what} “${name}”${near === undefined ? '' : `; did you mean “${near}”?`}`;
}

export function unknownLot(id: string, journals: readonly OpenJournal[]): string {
  return unknownName('lot', id, journals.flatMap(({ journal }) => [...journal.lots()].map(lot => lot.id)));
}
