/** The requests that our server answers beyond the protocol's own. */
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { MixQuestion } from '../../server/src/features/mix/answer.ts';
import type { Summary } from '../../server/src/features/summary.ts';
import type { DueShown, PlaceShown, SoakShown, Written } from '../../server/src/lsp/calendar-shapes.ts';
import type { MixShown } from '../../server/src/lsp/mix.ts';

export interface JournalServer {
  due(): Promise<DueShown[]>;
  places(): Promise<PlaceShown[]>;
  soaks(): Promise<SoakShown[]>;
  /** The record that an item of the due list asks for, ready to be put into a file. */
  write(key: string, uri: string): Promise<Written | null>;
  lift(batch: string, uri: string): Promise<Written | null>;
  /** A `count` record for each batch that is to be looked at; without a file in hand, in the first journal. */
  round(uri: string | undefined): Promise<Written | null>;
  summary(): Promise<Summary>;
  /** An iCalendar file (RFC 5545) of all that is due. */
  ics(): Promise<string>;
  /** What is known of a solution that is being asked for; null where the server could not answer. */
  mix(question: MixQuestion, uri: string | undefined): Promise<MixShown | null>;
  onChanged(listener: () => void): { dispose(): void };
}

export function journalServer(client: BaseLanguageClient): JournalServer {
  return {
    due: () => client.sendRequest('plumule/due', {}),
    places: () => client.sendRequest('plumule/places', {}),
    soaks: () => client.sendRequest('plumule/soaks', {}),
    write: (key, uri) => client.sendRequest('plumule/write', { key, uri }),
    lift: (batch, uri) => client.sendRequest('plumule/lift', { batch, uri }),
    round: uri => client.sendRequest('plumule/round', { uri }),
    summary: () => client.sendRequest('plumule/summary', {}),
    ics: () => client.sendRequest('plumule/ics', { stamp: Date.now() }),
    mix: (question, uri) => client.sendRequest('plumule/mix', { question, uri }),
    onChanged: listener => client.onNotification('plumule/changed', listener),
  };
}
