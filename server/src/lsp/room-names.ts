/** What journals are called where several are open. */
import { URI, Utils } from 'vscode-uri';
import type { Room } from './room.ts';
import type { Service } from './service.ts';

/** The journals with a file in them. */
export function filledRooms(service: Service): Room[] {
  return [...service.rooms()].filter(({ journal }) => journal.files.size > 0);
}

/**
 * Each is called by its folder: by the last part of its path where that tells it apart. Undefined where it is the only
 * one.
 */
export function nameOf({ folder }: Room, service: Service): string | undefined {
  const rooms = filledRooms(service);
  if (rooms.length <= 1) return undefined;
  const short = (address: string) => Utils.basename(URI.parse(address));
  const isAlone = rooms.filter(each => short(each.folder) === short(folder)).length === 1;
  return isAlone ? short(folder) : URI.parse(folder).fsPath;
}
