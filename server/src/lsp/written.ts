/** Records of today as an edit of the file in which they belong. */
import { diaryOf, placeRecords } from '../features/record-place.ts';
import type { Day } from '../model/day.ts';
import type { Written } from './calendar-shapes.ts';
import type { Room } from './room.ts';
import type { Service } from './service.ts';

/** Undefined where there are no records, or no file to put them into. `file`: where they go if no diary is of today. */
export function writtenInto(
  service: Service, { journal }: Room, day: Day, records: readonly string[], file: string | undefined,
): Written | undefined {
  const [first] = journal.files.keys();
  const diary = diaryOf(journal, day, file ?? first ?? '');
  if (!diary || records.length === 0) return undefined;
  const uri = service.uriOf(diary.name);
  return { uri, version: service.versionOf(uri), ...placeRecords(diary, day, records) };
}

/** The journal that holds an address, with its file, else the first journal. */
export function roomInHand(
  service: Service, uri: string | undefined,
): { readonly room: Room | undefined; readonly file: string | undefined } {
  const found = uri === undefined ? undefined : service.find(uri);
  return { room: found?.room ?? [...service.rooms()][0], file: found?.file };
}
