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
  #loaded: Promise<void> = Promise.resolve();
  #looks = 0;

  constructor({ kind, folder }: Owner, settings: LimitSettings) {
    this.kind = kind;
    this.folder = folder;
    this.journal.settings = settings;
    this.book = new ProblemBook(this.journal);
  }

  /** Resolves when all files are read that were there when it was looked for them last. */
  get loaded(): Promise<void> {
    return this.#loaded;
  }

  /** False while files are looked for or read: others may say more than is known. */
  get isLoaded(): boolean {
    return this.#looks === 0;
  }

  /** Its folder is being read. `look` never rejects. */
  await(look: Promise<void>): void {
    this.#looks++;
    // A look that is under way may end later and be the one that reads a file.
    this.#loaded = Promise.all([this.#loaded, look]).then(() => {
      this.#looks--;
    });
  }
}
