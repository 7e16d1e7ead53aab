/** The files of journals as they were committed last, which our own client reads from the editor's git. */
import type { Connection } from './protocol.ts';
import { linesOf } from '../changes/changes.ts';
import type { Lines } from '../changes/differing.ts';
import { sinceCommit, type SinceCommit } from '../features/since-commit.ts';
import type { Journal } from '../journal/journal.ts';
import { keyOf } from './addresses.ts';
import type { Snapshot } from './service.ts';

/** What a client sends: all files that may have changed since, each time anew. */
export interface CommittedFiles {
  readonly files: readonly { readonly uri: string; readonly text: string }[];
}

interface Kept {
  readonly lines: Lines;
  readonly revision: number;
  readonly since: SinceCommit;
}

export class Committed {
  #lines: Lines = new Map();
  readonly #kept = new WeakMap<Journal, Kept>();

  /** `changed` is called when there are others than before. */
  constructor(connection: Connection, changed: () => void) {
    connection.onNotification('plumule/committed', ({ files }: CommittedFiles) => {
      this.#lines = linesOf(new Map(files.map(({ uri, text }) => [keyOf(uri), text])));
      changed();
    });
  }

  /** What changed in a journal; worked out once for a revision of it. */
  changesIn({ journal }: Snapshot): SinceCommit {
    const known = this.#kept.get(journal);
    const [lines, { revision }] = [this.#lines, journal];
    if (known?.lines === lines && known.revision === revision) return known.since;
    const own = new Map([...lines].filter(([file]) => journal.files.has(file)));
    const since = sinceCommit(journal, own);
    this.#kept.set(journal, { lines, revision, since });
    return since;
  }
}
