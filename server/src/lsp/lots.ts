/** The requests behind the editor's list of lots. */
import type { Connection, Location } from './protocol.ts';
import { judgeLot, lotRows, type LotRow } from '../features/lots.ts';
import { placeOf } from '../features/place.ts';
import { locationOf } from './convert.ts';
import { ownRequests } from './own-requests.ts';
import type { Room } from './room.ts';
import { filledRooms, nameOf } from './room-names.ts';
import type { Service } from './service.ts';

export interface LotShown extends Omit<LotRow, 'lot'> {
  readonly id: string;
  /** As it is written. */
  readonly plant: string | undefined;
  /** Of its journal. */
  readonly folder: string;
  /** What its journal is called, where several are open. */
  readonly journal: string | undefined;
  readonly at: Location;
}

/** Names a lot of one of the journals. */
export type LotNamed = Pick<LotShown, 'folder' | 'id'>;

export function serveLots(connection: Connection, service: Service): void {
  const request = ownRequests(connection, service);

  // By journal, then by plant, then by id.
  request('lotRows', [], (): LotShown[] => filledRooms(service).flatMap(room => {
    const journal = nameOf(room, service);
    return lotRows(room.journal, service.now(room)).map(row => shown(row, room, journal, service));
  }));

  request('judgeLots', [], ({ lots = [] }): (readonly string[])[] => {
    const rooms = new Map([...service.rooms()].map(room => [room.folder, room]));
    return lots.map(({ folder, id }) => {
      const room = rooms.get(folder);
      return room ? judgeLot(room.journal, id, service.now(room).day) : [];
    });
  });
}

function shown({ lot, ...row }: LotRow, { folder }: Room, journal: string | undefined, service: Service): LotShown {
  const { id, plant, definition: { line, record } } = lot;
  const at = locationOf(placeOf(line, record.subject ?? record.keywordSpan), service);
  return { ...row, id, plant, folder, journal, at };
}
