/** The requests behind the editor's reports: of all that is open, of what to do with a lot; and pages to print. */
import type { Connection } from './protocol.ts';
import { adviceFor } from '../advice/advice.ts';
import { lotAt } from '../features/lot-at.ts';
import { escapeMarkdown } from '../features/markdown.ts';
import { reportMarkdown } from '../report/markdown.ts';
import { adviceSheet } from '../report/advice/sheet.ts';
import { labelsOf } from '../report/paper/labels.ts';
import { labelsPage } from '../report/paper/labels-page.ts';
import { roundOf, roundPage } from '../report/paper/round.ts';
import { placesMap } from '../report/places/map.ts';
import { placesSheet } from '../report/places/sheet.ts';
import { reportOf } from '../report/report.ts';
import { sheetMarkdown } from '../report/sheet/markdown.ts';
import { ownRequests } from './own-requests.ts';
import type { Service } from './service.ts';
import type { Room } from './room.ts';
import { filledRooms, nameOf } from './room-names.ts';

export interface LotsShown {
  /** The lot that the line of a place is about; null where it is about none. */
  readonly at: string | null;
  /** Those to choose from, where it is about none. */
  readonly lots: readonly {
    /** A file of the journal that has it. */
    readonly uri: string;
    readonly lot: string;
    readonly plant: string | undefined;
  }[];
}

export function serveReport(connection: Connection, service: Service): void {
  const request = ownRequests(connection, service);
  const filled = () => filledRooms(service);
  const named = (room: Room) => {
    const name = nameOf(room, service);
    return name === undefined ? {} : { name };
  };

  /** Markdown. */
  request('report', '', (): string => {
    service.check();
    const reports = filled().map(room =>
      reportOf(room.journal, room.book, { now: service.now(room), ...named(room) }));
    return reports.some(({ lots }) => lots.length > 0) ? reportMarkdown(reports) : 'This journal has no lots yet.\n';
  });

  /** Markdown: what to do with the seed of a lot. */
  request('advice', '', ({ uri, lot: id }): string => {
    const room = uri === undefined ? undefined : service.find(uri)?.room;
    const lot = id === undefined ? undefined : room?.journal.lot(id);
    if (!room || !lot) return `The lot ${escapeMarkdown(id ?? '')} is no longer in this journal.\n`;
    return sheetMarkdown([adviceSheet(adviceFor(lot, room.journal, service.now(room)), room.journal)]);
  });

  request('lots', { at: null, lots: [] }, ({ uri, position }): LotsShown => {
    const found = uri === undefined ? undefined : service.find(uri);
    const at = found && position && lotAt(found.room.journal, found.file, position.line);
    if (at !== undefined) return { at, lots: [] };
    const lots = filled().flatMap(({ journal }) => Array.from(journal.lots(), ({ id, plant, definition }) =>
      ({ lot: id, plant, uri: service.uriOf(definition.line.store.name) })));
    return { at: null, lots };
  });

  /** A page of HTML. */
  request('sheet', '', (): string => {
    return placesSheet(filled().map(room => placesMap(room.journal, { now: service.now(room), ...named(room) })));
  });

  request('labels', '', ({ paper = 'a4-cut' }): string =>
    labelsPage(filled().flatMap(room => labelsOf(room.journal, { now: service.now(room) })), paper));

  request('roundSheet', '', (): string => {
    return roundPage(filled().map(room => roundOf(room.journal, service.now(room), { name: nameOf(room, service) })));
  });
}
