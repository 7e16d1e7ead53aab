/** The requests that our server answers beyond the protocol's own. */
import { EventEmitter, type Event } from 'vscode';
import type { BaseLanguageClient, Position } from 'vscode-languageclient';
import type { PanelState } from './panel/messages.ts';
import type { MixQuestion } from '../../server/src/features/mix/answer.ts';
import type { Summary } from '../../server/src/features/summary.ts';
import type { NewJournal } from '../../server/src/features/new-journal.ts';
import type { SoakChoices } from '../../server/src/features/soak/choices.ts';
import type { SoakQuestion } from '../../server/src/features/soak/records.ts';
import type { Direction } from '../../server/src/features/neighbours.ts';
import type { DueShown, PlaceShown, RoundShown, SoakShown, StockShown, Written } from '../../server/src/lsp/calendar-shapes.ts';
import type { ImportShown, SheetAsked } from '../../server/src/lsp/import.ts';
import type { LotNamed, LotShown } from '../../server/src/lsp/lots.ts';
import type { MixShown } from '../../server/src/lsp/mix.ts';
import type { NeighbourShown, RecordsShown } from '../../server/src/lsp/navigation.ts';
import type { SoakWritten } from '../../server/src/lsp/soak.ts';
import type { LabelSheetName } from '../../server/src/report/paper/label-sheets.ts';
import type { PanelShown } from '../../server/src/lsp/panel.ts';
import type { LotsShown } from '../../server/src/lsp/report.ts';

interface PanelAsked extends PanelState {
  readonly position: Position | undefined;
  /** Of the panel, in pixels. */
  readonly width: number;
  readonly height: number;
}

export interface JournalServer {
  due(): Promise<DueShown[]>;
  places(): Promise<PlaceShown[]>;
  /** All lots, by journal, by plant and by id; without the verdicts on those that nobody has asked to judge. */
  lotRows(): Promise<LotShown[]>;
  /** The verdicts on each of some lots. A lot can take the server some milliseconds. */
  judgeLots(lots: readonly LotNamed[]): Promise<(readonly string[])[]>;
  stocks(): Promise<StockShown[]>;
  soaks(): Promise<SoakShown[]>;
  /** The record that an item of the due list asks for, ready to be put into a file. */
  write(key: string, uri: string): Promise<Written | null>;
  /** A record for each of some batches of one journal. */
  lift(batches: readonly string[], uri: string): Promise<Written | null>;
  /** A `count` record for each batch that is to be looked at; without a file in hand, in the first journal. */
  round(uri: string | undefined): Promise<Written | null>;
  /** The same for unsown seed in the cold that nobody counted yet, of which none is due. */
  coldRound(uri: string | undefined): Promise<Written | null>;
  /** The same for batches that nobody wrote of for more than a year, which neither of these rounds has. */
  leftOffRound(uri: string | undefined): Promise<Written | null>;
  /** The journals in which a count is due, or batches were left off. */
  rounds(leftOff: boolean): Promise<RoundShown[]>;
  summary(): Promise<Summary>;
  /** An iCalendar file (RFC 5545) of all that is due. */
  ics(): Promise<string>;
  /** What is known of a solution that is being asked for; null where the server could not answer. */
  mix(question: MixQuestion, uri: string | undefined): Promise<MixShown | null>;
  /** What can be chosen from when batches are to be soaked; null where no journal is there. */
  soakChoices(uri: string | undefined, position: Position | undefined): Promise<SoakChoices | null>;
  /** What is wrong with the answers, or the records of them; null where the server could not answer. */
  soakRecords(soak: SoakQuestion, uri: string | undefined): Promise<SoakWritten | null>;
  /** What a sheet would add to a journal; null where the server could not answer. */
  import(sheet: SheetAsked): Promise<ImportShown | null>;
  /** Markdown: of all journals that are open. */
  report(): Promise<string>;
  /** Markdown: what to do with the seed of a lot. */
  advice(of: { readonly uri: string; readonly lot: string }): Promise<string>;
  /** What the panel of pictures shows. */
  panel(asked: PanelAsked): Promise<PanelShown>;
  /** The lot that a place is about, or those to choose from. */
  lots(at?: { readonly uri: string; readonly position: Position }): Promise<LotsShown>;
  neighbour(uri: string, position: Position, direction: Direction): Promise<NeighbourShown | null>;
  records(uri: string, position: Position): Promise<RecordsShown | null>;
  /** A page of HTML to print: what lies where. */
  sheet(): Promise<string>;
  /** A page of HTML to print: labels for pots and bags. */
  labels(paper: LabelSheetName): Promise<string>;
  /** A page of HTML to print: the counting sheet. */
  roundSheet(): Promise<string>;
  /** What a new file begins with: of the journal that holds `uri`, or of a new one. `zone` is that of the machine. */
  newJournal(zone: string, uri: string | undefined): Promise<NewJournal | null>;
  readonly onChanged: Event<void>;
}

export function journalServer(client: BaseLanguageClient): JournalServer {
  // The client itself takes one listener alone.
  const changed = new EventEmitter<void>();
  client.onNotification('plumule/changed', () => changed.fire());
  return {
    due: () => client.sendRequest('plumule/due', {}),
    places: () => client.sendRequest('plumule/places', {}),
    lotRows: () => client.sendRequest('plumule/lotRows', {}),
    judgeLots: lots => client.sendRequest('plumule/judgeLots', { lots }),
    stocks: () => client.sendRequest('plumule/stocks', {}),
    soaks: () => client.sendRequest('plumule/soaks', {}),
    write: (key, uri) => client.sendRequest('plumule/write', { key, uri }),
    lift: (batches, uri) => client.sendRequest('plumule/lift', { batches, uri }),
    round: uri => client.sendRequest('plumule/round', { uri }),
    coldRound: uri => client.sendRequest('plumule/coldRound', { uri }),
    leftOffRound: uri => client.sendRequest('plumule/leftOffRound', { uri }),
    rounds: leftOff => client.sendRequest('plumule/rounds', { leftOff }),
    summary: () => client.sendRequest('plumule/summary', {}),
    ics: () => client.sendRequest('plumule/ics', { stamp: Date.now() }),
    mix: (question, uri) => client.sendRequest('plumule/mix', { question, uri }),
    soakChoices: (uri, position) => client.sendRequest('plumule/soakChoices', { uri, position }),
    soakRecords: (soak, uri) => client.sendRequest('plumule/soakRecords', { soak, uri }),
    import: sheet => client.sendRequest('plumule/import', { sheet }),
    report: () => client.sendRequest('plumule/report', {}),
    advice: ({ uri, lot }) => client.sendRequest('plumule/advice', { uri, lot }),
    panel: asked => client.sendRequest('plumule/panel', asked),
    lots: at => client.sendRequest('plumule/lots', at ?? {}),
    neighbour: (uri, position, direction) => client.sendRequest('plumule/neighbour', { uri, position, direction }),
    records: (uri, position) => client.sendRequest('plumule/records', { uri, position }),
    sheet: () => client.sendRequest('plumule/sheet', {}),
    labels: paper => client.sendRequest('plumule/labels', { paper }),
    roundSheet: () => client.sendRequest('plumule/roundSheet', {}),
    newJournal: (zone, uri) => client.sendRequest('plumule/newJournal', { zone, uri }),
    onChanged: changed.event,
  };
}
