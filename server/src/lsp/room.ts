import { ProblemBook } from '../checks/problem-book.ts';
import { Journal } from '../journal/journal.ts';
import type { LimitSettings } from '../journal/settings.ts';
import type { Owner, OwnerKind } from './addresses.ts';

/** One journal with its problems. */
export class Room {
  readonly folder: string;
  readonly kind: OwnerKind;
  readonly journal = new Journal();
  readonly book: ProblemBook;
  /** Resolves when all files are read that were there when it was looked for them last. */
  loaded: Promise<void> = Promise.resolve();

  constructor({ kind, folder }: Owner, settings: LimitSettings) {
    this.kind = kind;
    this.folder = folder;
    this.journal.settings = settings;
    this.book = new ProblemBook(this.journal);
  }
}
