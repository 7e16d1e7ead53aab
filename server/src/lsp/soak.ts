/** The requests behind the editor's questions for batches that are soaked alike. */
import type { Connection } from './protocol.ts';
import { lotAt } from '../features/lot-at.ts';
import { soakChoices, type SoakChoices } from '../features/soak/choices.ts';
import { soakRecords, type SoakReply } from '../features/soak/records.ts';
import { ownBench } from '../solutions/tools.ts';
import type { Written } from './calendar-shapes.ts';
import { ownRequests } from './own-requests.ts';
import type { Service } from './service.ts';
import { roomInHand, writtenInto } from './written.ts';

export interface SoakWritten extends Pick<SoakReply, 'problems'> {
  /** The records as an edit; null where something is wrong. */
  readonly written: Written | null;
}

export function serveSoak(connection: Connection, service: Service): void {
  const request = ownRequests(connection, service);

  request('soakChoices', null, ({ uri, position }): SoakChoices | null => {
    const { room, file } = roomInHand(service, uri);
    if (!room) return null;
    const lot = position && file !== undefined ? lotAt(room.journal, file, position.line) : undefined;
    return soakChoices(room.journal, service.now(room), lot);
  });

  request('soakRecords', null, ({ soak, uri }): SoakWritten | null => {
    const { room, file } = roomInHand(service, uri);
    if (!room || !soak) return null;
    const now = service.now(room);
    const { tools, tolerance } = service.settings().mix;
    const { problems, records } = soakRecords(soak, room.journal, now, ownBench(tools, tolerance));
    return { problems, written: writtenInto(service, room, now.day, records, file) ?? null };
  });
}
