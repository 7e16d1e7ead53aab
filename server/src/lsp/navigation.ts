/** Requests that lead from place to place: definition, references, highlights, symbols. */
import {
  DocumentHighlightKind, SymbolKind,
  type Connection, type DocumentSymbol, type Location, type ServerCapabilities, type SymbolInformation,
  type WorkspaceSymbol,
} from './protocol.ts';
import { definitionsAt } from '../features/definition.ts';
import { documentSymbols, type OutlineSymbol } from '../features/document-symbols.ts';
import { highlightsAt } from '../features/highlight.ts';
import { neighbourOf, recordsAt } from '../features/neighbours.ts';
import { referencesAt } from '../features/references.ts';
import type { SymbolKind as Kind } from '../features/symbols.ts';
import { workspaceSymbols } from '../features/workspace-symbols.ts';
import { locationOf, rangeOf } from './convert.ts';
import type { About } from './features.ts';
import { guarded } from './guard.ts';
import { ownRequests } from './own-requests.ts';
import type { Service, Snapshot } from './service.ts';

export const navigationCapabilities: ServerCapabilities = {
  definitionProvider: true, referencesProvider: true, documentHighlightProvider: true,
  documentSymbolProvider: true, workspaceSymbolProvider: true,
};

const kinds: Readonly<Record<Kind, SymbolKind>> = {
  heading: SymbolKind.Namespace, lot: SymbolKind.Class, batch: SymbolKind.Field, stock: SymbolKind.Constant,
  regime: SymbolKind.Event, agent: SymbolKind.Key, guide: SymbolKind.String,
};

/** The next or the previous record of the batch that a place is about; null where it is about none. */
export interface NeighbourShown {
  readonly path: string;
  /** Null behind the last record, and before the first. */
  readonly at: Location | null;
}

/** All records of the batch that a place is about, in the order of time; null where it is about none. */
export interface RecordsShown {
  readonly path: string;
  readonly records: readonly { readonly when: string | null; readonly text: string; readonly at: Location }[];
  /** Which of them was asked from. */
  readonly here: number;
}

export function serveNavigation(connection: Connection, about: About, service: Service): void {
  connection.onDefinition(about('definition', null, ({ journal, file }, { position }) =>
    definitionsAt(journal, file, position).map(({ to }) => locationOf(to, service))));

  connection.onReferences(about('references', null, ({ journal, file }, { position, context }) =>
    referencesAt(journal, file, position, context.includeDeclaration).map(place => locationOf(place, service))));

  connection.onDocumentHighlight(about('highlight', null, ({ journal, file }, { position }) =>
    highlightsAt(journal, file, position).map(({ place, role }) => ({
      range: rangeOf(place), kind: role === 'definition' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }))));

  connection.onDocumentSymbol(about('symbols', null, (snapshot): DocumentSymbol[] | SymbolInformation[] => {
    const symbols = documentSymbols(snapshot.journal, snapshot.file, snapshot.now);
    return service.client().textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true
      ? symbols.map(symbol => outlined(symbol, snapshot))
      : listed(symbols, service);
  }));

  const request = ownRequests(connection, service);
  request('records', null, ({ uri, position }): RecordsShown | null => {
    const room = uri === undefined ? undefined : service.find(uri);
    const found = room && position && recordsAt(room.room.journal, room.file, position);
    if (!found) return null;
    const records = found.records.map(({ place, when, text }) => (
      { when: when ?? null, text, at: locationOf(place, service) }));
    return { ...found, records };
  });

  request('neighbour', null, ({ uri, position, direction = 'next' }): NeighbourShown | null => {
    const found = uri === undefined ? undefined : service.find(uri);
    const neighbour = found && position && neighbourOf(found.room.journal, found.file, position, direction);
    if (!neighbour) return null;
    return { path: neighbour.path, at: neighbour.place ? locationOf(neighbour.place, service) : null };
  });

  connection.onWorkspaceSymbol(guarded(connection, 'workspace symbols', null, ({ query }): WorkspaceSymbol[] =>
    [...service.rooms()].flatMap(room =>
      workspaceSymbols(room.journal, query, service.now(room)).map(({ kind, name, detail, place }) => ({
        name, kind: kinds[kind], location: locationOf(place, service), ...(detail && { containerName: detail }),
      })))));
}

/** For clients that show no tree: each with the name of the one that holds it. */
function listed(
  symbols: readonly OutlineSymbol[], service: Service, into: SymbolInformation[] = [], containerName?: string,
): SymbolInformation[] {
  for (const { kind, name, place, children } of symbols) {
    const location = locationOf(place, service);
    into.push({ name, kind: kinds[kind], location, ...(containerName !== undefined && { containerName }) });
    listed(children, service, into, name);
  }
  return into;
}

function outlined({ kind, name, detail, place, lines, children }: OutlineSymbol, snapshot: Snapshot): DocumentSymbol {
  const end = snapshot.journal.files.get(snapshot.file)?.text.at(lines.end).text.length ?? 0;
  return {
    name, detail, kind: kinds[kind], selectionRange: rangeOf(place),
    range: { start: { line: lines.start, character: 0 }, end: { line: lines.end, character: end } },
    children: children.map(child => outlined(child, snapshot)),
  };
}
