/** The requests behind the editor's questions for a solution. */
import type { Connection } from './protocol.ts';
import { mixAnswer, type MixReply } from '../features/mix/answer.ts';
import { Journal } from '../journal/journal.ts';
import type { Written } from './calendar-shapes.ts';
import { ownBench } from '../solutions/tools.ts';
import { ownRequests } from './own-requests.ts';
import type { Service } from './service.ts';
import { roomInHand, writtenInto } from './written.ts';

export interface MixShown extends MixReply {
  /** The record as an edit; null where there is none, or no file to put it into. */
  readonly written: Written | null;
}

export function serveMix(connection: Connection, service: Service): void {
  ownRequests(connection, service)('mix', null, ({ question = {}, uri }): MixShown | null => {
    const { tools, tolerance } = service.settings().mix;
    const { room, file } = roomInHand(service, uri);
    if (!room) return { ...mixAnswer(question, new Journal(), 0, ownBench(tools, tolerance)), written: null };
    const { day } = service.now(room);
    const reply = mixAnswer(question, room.journal, day, ownBench(tools, tolerance));
    const records = reply.record === undefined ? [] : [reply.record];
    return { ...reply, written: writtenInto(service, room, day, records, file) ?? null };
  });
}
