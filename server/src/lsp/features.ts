/** Registers every request, each behind the guard, and says in one place what the server can do. */
import {
  LSPErrorCodes, ResponseError, type ClientCapabilities, type Connection, type ServerCapabilities,
} from './protocol.ts';
import { actionCapabilities, serveActions } from './actions.ts';
import { annotationCapabilities, serveAnnotations } from './annotations.ts';
import { serveCalendar } from './calendar.ts';
import { colourCapabilities, serveColours } from './colours.ts';
import { editingCapabilities, serveEditing } from './editing.ts';
import { guarded } from './guard.ts';
import { serveImport } from './import.ts';
import { serveLots } from './lots.ts';
import { serveMix } from './mix.ts';
import { serveNewJournal } from './new-journal.ts';
import { navigationCapabilities, serveNavigation } from './navigation.ts';
import { readingCapabilities, serveReading } from './reading.ts';
import { servePanel } from './panel.ts';
import { serveReport } from './report.ts';
import type { Service, Snapshot } from './service.ts';
import { serveSoak } from './soak.ts';
import { serveWriting, writingCapabilities } from './writing.ts';

/**
 * Makes a handler for requests about one document: guarded, and answered with `otherwise` for a document not ours; for
 * most of them also for a text that makes no journal, where nothing may be written and nothing falls due.
 * Where the document is changed while its journal is still read, a place in it may be another one now: that is said.
 */
export type About = <Params extends { readonly textDocument: { readonly uri: string } }, Result>(
  name: string, otherwise: Result,
  work: (snapshot: Snapshot, params: Params) => Result | ResponseError | Promise<Result>,
) => ReturnType<typeof guarded<Params, Result>>;

export function featureCapabilities(client: ClientCapabilities): ServerCapabilities {
  return {
    ...readingCapabilities, ...navigationCapabilities,
    ...writingCapabilities, ...annotationCapabilities, ...colourCapabilities,
    ...editingCapabilities(client), ...actionCapabilities(client),
  };
}

export function serveFeatures(connection: Connection, service: Service): void {
  const aboutThose = (isOurs: (snapshot: Snapshot) => boolean): About => (name, otherwise, work) => guarded(
    connection, name, otherwise, async params => {
      const { uri } = params.textDocument;
      const version = service.versionOf(uri);
      const snapshot = await service.snapshot(uri);
      if (version !== undefined && service.versionOf(uri) !== version) {
        return new ResponseError(LSPErrorCodes.ContentModified, `${name}: the document was changed`);
      }
      return snapshot && isOurs(snapshot) ? work(snapshot, params) : otherwise;
    },
  );
  const aboutAny = aboutThose(() => true);
  const about = aboutThose(({ room }) => room.kind !== 'alone');
  serveReading(connection, aboutAny, service);
  serveNavigation(connection, aboutAny, service);
  serveColours(connection, aboutAny, service);
  serveWriting(connection, about, service);
  serveAnnotations(connection, about, service);
  serveEditing(connection, about, service);
  serveActions(connection, about, service);
  serveCalendar(connection, service);
  serveLots(connection, service);
  serveMix(connection, service);
  serveNewJournal(connection, service);
  serveSoak(connection, service);
  serveImport(connection, service);
  serveReport(connection, service);
  servePanel(connection, service);
}
