/** Hands each request of the protocol to the feature of that name, and its answer back in the protocol's shapes. */
import type { ClientCapabilities, Connection, ServerCapabilities } from 'vscode-languageserver';
import type { Moment } from '../journal/moment.ts';
import type { Room } from './workspace.ts';

/** What the features need of the server. */
export interface Service {
  /** The journal that holds a document; undefined for one that is none of ours. */
  find(uri: string): { room: Room; file: string } | undefined;
  /** Resolves when the other files of the document's journal have been read. */
  loaded(uri: string): Promise<void>;
  rooms(): Iterable<Room>;
  now(room: Room): Moment;
  uriOf(file: string): string;
  versionOf(uri: string): number | undefined;
  client(): ClientCapabilities;
}

export function featureCapabilities(): ServerCapabilities {
  return {};
}

export function serveFeatures(_connection: Connection, _service: Service): void {
  // Filled as the features come.
}
