/** The requests behind the editor's questions for a solution. */
import type { Connection } from './protocol.ts';
import { mixAnswer, type MixReply } from '../features/mix/answer.ts';
import { diaryOf, placeRecords } from '../features/record-place.ts';
import { Journal } from '../journal/journal.ts';
import type { Written } from './calendar-shapes.ts';
import { ownBench } from '../solutions/tools.ts';
import { ownRequests } from './own-requests.ts';
import type { Service } from './service.ts';

export interface MixShown extends MixReply {
  /** The record as an edit; null where there is none, or no file to put it into. */
  readonly written: Written | null;
}

export function serveMix(connection: Connection, service: Service): void {
  ownRequests(connection, service)('mix', null, ({ question = {}, uri }): MixShown | null => {
    const { tools, tolerance } = service.settings().mix;
    const found = uri === undefined ? undefined : service.find(uri);
    const room = found?.room ?? [...service.rooms()][0];
    if (!room) return { ...mixAnswer(question, new Journal(), 0, ownBench(tools, tolerance)), written: null };
    const { day } = service.now(room);
    const reply = mixAnswer(question, room.journal, day, ownBench(tools, tolerance));
    const [first] = room.journal.files.keys();
    const file = diaryOf(room.journal, day, found?.file ?? first ?? '');
    if (reply.record === undefined || !file) return { ...reply, written: null };
    const target = service.uriOf(file.name);
    const place = placeRecords(file, day, [reply.record]);
    return { ...reply, written: { uri: target, version: service.versionOf(target), ...place } };
  });
}
