/** The requests behind the editor's reports: of a lot, of all that is open, and the sheet of places to print. */
import type { Connection } from './protocol.ts';
import { adviceFor } from '../advice/advice.ts';
import { lotAt } from '../features/lot-at.ts';
import { escapeMarkdown } from '../features/markdown.ts';
import { lotPicture } from '../features/drawing/pictures.ts';
import type { Lot } from '../journal/life.ts';
import { addressOf } from '../pictures/address.ts';
import { themes, type ThemeName } from '../pictures/theme.ts';
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

/** Characters that fit beside the journal, where the report of a lot is shown. */
const BESIDE = 56;

/** Pixels: no wider than half a window. */
const DRAWN = 660;

const NOTHING_TRIED = 'There is nothing to compare yet. Count a treated batch and an untreated one first.\n\n';

export function serveReport(connection: Connection, service: Service): void {
  const request = ownRequests(connection, service);
  const filled = () => filledRooms(service);
  const named = (room: Room) => {
    const name = nameOf(room, service);
    return name === undefined ? {} : { name };
  };

  const reportOn = (room: Room, options: { readonly name?: string; readonly ids?: readonly string[] }) =>
    reportOf(room.journal, room.book, { now: service.now(room), ...options });

  /** Markdown. */
  request('report', '', ({ uri, lot }): string => {
    service.check();
    if (lot === undefined) {
      const reports = filled().map(room => reportOn(room, named(room)));
      return reports.some(({ lots }) => lots.length > 0) ? reportMarkdown(reports) : 'This journal has no lots yet.\n';
    }
    const room = uri === undefined ? undefined : service.find(uri)?.room;
    if (!room?.journal.lot(lot)) return `The lot ${escapeMarkdown(lot)} is no longer in this journal.\n`;
    const report = reportOn(room, { ids: [lot] });
    const pictureOf = drawnWith(service.theme());
    const isTried = report.lots.some(({ trial: { contests, estimated } }) => contests.length + estimated.length > 0);
    return `${isTried ? '' : NOTHING_TRIED}${reportMarkdown([report], { width: BESIDE, ...(pictureOf && { pictureOf }) })}`;
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
    return roundPage(filled().map(room => roundOf(room.journal, service.now(room), nameOf(room, service))));
  });
}

/** The picture of a lot as an address, in the colours of the editor. */
function drawnWith(theme: ThemeName | undefined): ((lot: Lot) => string | undefined) | undefined {
  return theme && (lot => {
    const picture = lotPicture(lot, { theme: themes[theme], width: DRAWN, small: false, id: 'lot' });
    return picture && addressOf(picture);
  });
}
