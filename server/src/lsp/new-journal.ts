/** The request behind the editor's command for a new journal. */
import type { Connection } from './protocol.ts';
import { newJournal, type NewJournal } from '../features/new-journal.ts';
import { present } from './clock.ts';
import { ownRequests } from './own-requests.ts';
import type { Service } from './service.ts';

export function serveNewJournal(connection: Connection, service: Service): void {
  /** With a file of the journal that is gone on with; its zone counts, not that of the machine. */
  ownRequests(connection, service)('newJournal', null, ({ uri, zone }): NewJournal | null => {
    const own = uri === undefined ? undefined : service.find(uri)?.room.journal.zone;
    return newJournal(present(own ?? zone).day, own ?? zone, uri === undefined);
  });
}
