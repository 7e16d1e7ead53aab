/** The requests behind the editor's views: what is due, what lies where, running soaks, records to write. */
import type { Connection } from './protocol.ts';
import { countingRound, roundInCold, roundLeftOff } from '../calendar/counting-round.ts';
import { recordBelowDay, recordWords } from '../calendar/ask.ts';
import { inDueOrder } from '../calendar/due.ts';
import { dueRows, namesInRow, type DueRow } from '../calendar/due-rows.ts';
import { icsOf } from '../calendar/ics.ts';
import { placesNow, whereNow, whereText, type Container, type PlaceNow } from '../calendar/places.ts';
import { staysOf } from '../calendar/stays.ts';
import { runningSoaks, type RunningSoak } from '../calendar/soaks.ts';
import { placeOf, type Place } from '../features/place.ts';
import type { Template } from '../features/completion/template.ts';
import { summaryOfAll, type Summary } from '../features/summary.ts';
import { isoOf } from '../model/day.ts';
import { printMoment, type Moment } from '../journal/moment.ts';
import type { Journal } from '../journal/journal.ts';
import type { Entry } from '../journal/life.ts';
import { instantOf } from './clock.ts';
import { locationOf } from './convert.ts';
import { dueNow } from './due-memo.ts';
import { agendaOf } from '../report/agenda.ts';
import { restText, holdsText } from '../report/stocks/words.ts';
import { stockList, type StockRow } from '../report/stocks/list.ts';
import type { DueShown, PlaceShown, RoundShown, SoakShown, StockShown, Written } from './calendar-shapes.ts';
import { ownRequests, type Asked } from './own-requests.ts';
import type { Service } from './service.ts';
import { writtenInto } from './written.ts';
import { snippetOf } from './snippets.ts';
import type { Room } from './room.ts';
import { filledRooms, nameOf } from './room-names.ts';

export function serveCalendar(connection: Connection, service: Service): void {
  const now = (room: Room) => service.now(room);
  const request = ownRequests(connection, service);
  const each = <Result>(work: (journal: Journal, moment: Moment, room: Room) => Result[]): Result[] =>
    [...service.rooms()].flatMap(room => work(room.journal, now(room), room));

  request('due', [], (): DueShown[] => each((journal, moment, room) =>
    dueRows(dueNow(journal, moment)).map(row => ({ room, row })))
    .sort((a, b) => inDueOrder(a.row.item, b.row.item))
    .map(({ room, row }) => dueShown(row, room, service)));

  request('places', [], (): PlaceShown[] => each((journal, moment, room) =>
    placesNow(journal, moment).map(container => containerShown(container, room, service))));

  request('stocks', [], (): StockShown[] => each((journal, moment, room) =>
    stockList(journal, { now: moment }).rows.flatMap(row => stockShown(row, room, service))));

  request('soaks', [], (): SoakShown[] => each((journal, moment, room) =>
    runningSoaks(journal, moment).map(running => soakShown(running, room, moment, service))));

  request('summary', { files: 0, lots: 0, keywords: [] }, (): Summary =>
    summaryOfAll([...service.rooms()].map(({ journal }) => journal)));

  /** Requests for records to put into a file. */
  const write = (
    name: string, lines: (asked: Asked, journal: Journal, moment: Moment) => string[], toFillIn = false,
  ) => {
    request(name, null, (asked): Written | null => {
      const own = asked.uri === undefined ? undefined : service.find(asked.uri);
      // A round names no file; where the one in hand makes no journal, it is about the first that does.
      const found = own ?? (asked.key === undefined && asked.batches === undefined ? firstOf(service) : undefined);
      if (!found) return null;
      const { room } = found;
      const { journal } = room;
      const moment = now(room);
      const records = lines(asked, journal, moment);
      const written = writtenInto(service, room, moment.day, records, found.file);
      if (!written) return null;
      return { ...written, ...(toFillIn ? { snippet: withStops(written.text, records) } : {}) };
    });
  };

  write('lift', ({ batches = [] }, _journal, moment) => batches.map(batch =>
    recordBelowDay({ keyword: 'lift', subject: batch, facts: undefined, timed: true }, moment)));

  write('write', ({ key }, journal, moment) => {
    const row = dueRows(dueNow(journal, moment)).find(each => each.key === key);
    return row?.items.flatMap(({ ask }) => (ask ? [recordBelowDay(ask, moment)] : [])) ?? [];
  });

  request('rounds', [], ({ leftOff = false }): RoundShown[] => each((journal, moment, room) => {
    const batches = (leftOff ? roundLeftOff : countingRound)(journal, moment).length;
    const [file] = journal.files.keys();
    return batches > 0 && file !== undefined ? [{ name: nameOf(room, service) ?? '', uri: service.uriOf(file), batches }] : [];
  }));

  write('round', (_asked, journal, moment) => countingRound(journal, moment).map(({ line }) => line), true);

  write('coldRound', (_asked, journal, moment) => roundInCold(journal, moment).map(({ line }) => line), true);

  write('leftOffRound', (_asked, journal, moment) => roundLeftOff(journal, moment).map(({ line }) => line), true);

  request('ics', '', ({ stamp = 0 }): string =>
    icsOf(each((journal, moment) => [agendaOf(journal, { now: moment })]), { stamp }));
}

/** A stop at the end of each record. */
function withStops(text: string, records: readonly string[]): string {
  let rest = text;
  const parts = records.flatMap((record): Template => {
    const end = rest.indexOf(record) + record.length;
    const before = rest.slice(0, end);
    rest = rest.slice(end);
    return [before, { blank: '' }];
  });
  return snippetOf([...parts, rest]);
}

/** A file of the first journal, for who has none in hand. */
function firstOf(service: Service): { room: Room; file: string } | undefined {
  const [room] = filledRooms(service);
  const [file] = room?.journal.files.keys() ?? [];
  return room && file !== undefined ? { room, file } : undefined;
}

function subjectOf({ line, record }: Entry): Place {
  return placeOf(line, record.subject ?? record.keywordSpan);
}

function stockShown(row: StockRow, room: Room, service: Service): StockShown[] {
  const { solution: { id, keeps, entry }, state } = row;
  if (state === 'gone') return [];
  const note = keeps ? `${state === 'expired' ? 'was good' : 'good'} until ${isoOf(keeps.until)}` : '';
  const at = locationOf(subjectOf(entry), service);
  return [{ id, journal: nameOf(room, service), holds: holdsText(row), left: restText(row), state, note, at }];
}

function containerShown({ name, places }: Container, room: Room, service: Service): PlaceShown {
  const shownStays = (stays: PlaceNow['stays']) =>
    stays.map(({ id, plant, what, entry }) => ({ id, plant, what, at: locationOf(subjectOf(entry), service) }));
  const journal = nameOf(room, service);
  return { name, journal, places: places.map(({ place, slot, stays }) => ({ place, slot, stays: shownStays(stays) })) };
}

function soakShown(
  running: RunningSoak, { folder, journal: { zone } }: Room, moment: Moment, service: Service,
): SoakShown {
  const { batch, lot, soak, end, limitAt } = running;
  return {
    key: `${folder} ${batch.path} ${printMoment(soak.start)}`, folder, batch: batch.path, plant: lot.plant,
    place: whereText(whereNow(staysOf(lot), batch.path, moment)),
    end: instantOf(end, zone), endText: printMoment(end),
    limit: instantOf(limitAt, zone), limitText: printMoment(limitAt),
    at: locationOf(subjectOf(soak.entry), service),
  };
}

function dueShown(row: DueRow, room: Room, service: Service): DueShown {
  const { key, item, place, round } = row;
  const { group, kind, what, id, plant, overdueDays, ask, isEndMissing } = item;
  const writes = round === undefined || !ask ? ask && recordWords(ask) : `a “${ask.keyword}” for each of ${namesInRow(row).join(', ')}`;
  return {
    key, folder: room.folder, journal: nameOf(room, service), group, kind, what: round ?? what, id: round === undefined ? id : '',
    plant: round === undefined ? plant : undefined, overdueDays, place, writes,
    isRunning: round === undefined && kind === 'soak' && isEndMissing !== true,
    when: printMoment({ day: item.day, minutes: item.minutes }),
    at: locationOf(subjectOf(item.entry), service),
  };
}
