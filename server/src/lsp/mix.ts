/** The requests behind the editor's questions for a solution. */
import type { CancellationToken, Connection } from 'vscode-languageserver';
import { mixAnswer, type MixQuestion, type MixReply } from '../features/mix/answer.ts';
import { diaryOf, placeRecords } from '../features/record-place.ts';
import { Journal } from '../journal/journal.ts';
import type { Written } from './calendar-shapes.ts';
import { guarded } from './guard.ts';
import type { Service } from './service.ts';

interface Asked {
  readonly question: MixQuestion;
  /** The file that is being worked in; without one the first journal is asked, and without any an empty one. */
  readonly uri?: string | undefined;
}

export interface MixShown extends MixReply {
  /** The record as an edit; null where there is none, or no file to put it into. */
  readonly written: Written | null;
}

export function serveMix(connection: Connection, service: Service): void {
  const handler = guarded(connection, 'mix', null, async ({ question, uri }: Asked): Promise<MixShown> => {
    await service.ready();
    const found = uri === undefined ? undefined : service.find(uri);
    const room = found?.room ?? [...service.rooms()][0];
    if (!room) return { ...mixAnswer(question, new Journal(), 0), written: null };
    const { day } = service.now(room);
    const reply = mixAnswer(question, room.journal, day);
    const [first] = room.journal.files.keys();
    const file = diaryOf(room.journal, day, found?.file ?? first ?? '');
    if (reply.record === undefined || !file) return { ...reply, written: null };
    const target = service.uriOf(file.name);
    const place = placeRecords(file, day, [reply.record]);
    return { ...reply, written: { uri: target, version: service.versionOf(target), ...place } };
  });
  connection.onRequest('plumule/mix', (asked: Asked, token: CancellationToken) => handler(asked, token));
}
