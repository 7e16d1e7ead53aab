/** The language server: one start for Node and for a web worker. */
import {
  DidChangeConfigurationNotification, DidChangeWatchedFilesNotification, FileOperationPatternKind, TextDocuments,
  TextDocumentSyncKind, type ClientCapabilities, type Connection, type InitializeParams, type InitializeResult,
} from './protocol.ts';
import { URI } from 'vscode-uri';
import { keyOf } from './addresses.ts';
import { present } from './clock.ts';
import { Committed } from './committed.ts';
import { documentsOf } from './documents.ts';
import { featureCapabilities, serveFeatures } from './features.ts';
import { filesByAddress, filesOfClient, type Files } from './files.ts';
import { isThemeName, type ThemeName } from '../pictures/theme.ts';
import { Publisher } from './publisher.ts';
import { Refresher } from './refresh.ts';
import { readSettings, type Settings } from './settings.ts';
import type { Room } from './room.ts';
import type { Later } from './turns.ts';
import { Workspace } from './workspace.ts';

export interface ServerOptions {
  readonly version: string;
  /** Where journals with an address `file:` are read from; all of them, where the client answers no `plumule/list`. */
  readonly disk?: Files;
  /** Runs work at the next turn of the loop; the fastest way differs between Node and a browser. */
  readonly later: Later;
}

/** The client answers the server's own requests for files. Set by our client, never by others. */
interface OurOptions {
  readonly files?: boolean;
  readonly settings?: unknown;
  /** Commands of the client that a lens may lead to. */
  readonly commands?: unknown;
  /** Pictures in hovers are shown, their width by `|width=`, as VS Code has it. */
  readonly pictures?: boolean;
  /** The colours of the editor, for pictures that are drawn to go with them; none are drawn without. */
  readonly theme?: unknown;
}

const MINUTE = 60_000;

/** Milliseconds that a request about an open document waits for the other files of its journal. */
const PATIENCE = 1000;

/** A folder that is moved or deleted takes journals along that no watcher of files names. */
const FOLDERS = { filters: [{ pattern: { glob: '**', matches: FileOperationPatternKind.folder } }] };

/** Registers everything on a connection; the caller starts it with `connection.listen()`. */
export function serve(connection: Connection, { version, disk, later }: ServerOptions): void {
  let client: ClientCapabilities = {};
  let settings: Settings = readSettings(undefined);
  let commands: ReadonlySet<string> = new Set();
  let pictures = false;
  let theme: ThemeName | undefined;
  let files: Files;
  let workspace: Workspace;
  /** The client's settings have come, if it has any to ask for. */
  let configured: Promise<void> = Promise.resolve();
  let folders: readonly string[] = [];
  let clock: ReturnType<typeof setInterval> | undefined;

  const now = ({ journal }: Room) => settings.asOf ?? present(journal.zone);
  const refresher = new Refresher(connection, () => client);
  const committed = new Committed(connection, () => refresher.changed());
  const publisher = new Publisher(connection, () => workspace, now, uri => documents.get(uri)?.version, later);
  // The manager is made before the workspace is known: its documents ask for it only when one is opened.
  const documents = new TextDocuments(documentsOf(() => workspace));

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    client = params.capabilities;
    const ours = (params.initializationOptions ?? {}) as OurOptions;
    settings = readSettings(ours.settings);
    commands = new Set(Array.isArray(ours.commands) ? ours.commands.map(String) : []);
    pictures = ours.pictures === true;
    theme = isThemeName(ours.theme) ? ours.theme : undefined;
    const { publishDiagnostics } = client.textDocument ?? {};
    publisher.options = {
      relatedInformation: publishDiagnostics?.relatedInformation === true,
      versions: publishDiagnostics?.versionSupport === true,
    };
    // Views of the journal in our own client; no other knows the message.
    if (ours.files === true) publisher.published = () => void connection.sendNotification('plumule/changed');
    files = filesFor(ours.files === true);
    workspace = new Workspace(
      files, (room, file) => follow(room, file), message => connection.console.warn(message), later);
    applySettings();
    folders = foldersOf(params);
    return {
      serverInfo: { name: 'plumule', version },
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: false },
        workspace: {
          workspaceFolders: { supported: true, changeNotifications: true },
          fileOperations: { didRename: FOLDERS, didDelete: FOLDERS },
        },
        ...featureCapabilities(client),
      },
    };
  });

  connection.onInitialized(() => {
    // Not before: until then a server may ask the client for nothing, so not for files either.
    workspace.changeFolders({ added: folders, removed: [] });
    if (client.workspace?.didChangeWatchedFiles?.dynamicRegistration) {
      void connection.client.register(DidChangeWatchedFilesNotification.type, { watchers: [{ globPattern: '**/*.germ' }] });
    }
    if (client.workspace?.configuration) {
      if (client.workspace.didChangeConfiguration?.dynamicRegistration) {
        void connection.client.register(DidChangeConfigurationNotification.type, { section: 'plumule' });
      }
      configured = pullSettings();
    }
    if (client.workspace?.workspaceFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
        workspace.changeFolders({ added: added.map(({ uri }) => uri), removed: removed.map(({ uri }) => uri) });
      });
    }
    // Soaks run out and days change while nobody types.
    let days = daysNow();
    clock = setInterval(() => {
      for (const room of workspace.rooms) publisher.changed(room);
      if (days !== (days = daysNow())) refresher.changed();
    }, MINUTE);
  });

  connection.onDidChangeConfiguration(({ settings: sent }) => {
    if (client.workspace?.configuration) {
      void pullSettings();
      return;
    }
    settings = readSettings((sent as { plumule?: unknown } | null)?.plumule);
    applySettings();
  });

  connection.onNotification('plumule/theme', ({ theme: name }: { readonly theme?: unknown }) => {
    theme = isThemeName(name) ? name : undefined;
  });

  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) workspace.followDisk(uri);
  });

  connection.workspace.onDidRenameFiles(({ files: renamed }) => {
    for (const { oldUri, newUri } of renamed) for (const uri of [oldUri, newUri]) workspace.followFolder(uri);
  });
  connection.workspace.onDidDeleteFiles(({ files: gone }) => {
    for (const { uri } of gone) workspace.followFolder(uri);
  });

  documents.onDidClose(({ document }) => {
    publisher.forget(keyOf(document.uri));
    workspace.close(document.uri);
  });

  connection.onShutdown(() => {
    clearInterval(clock);
    refresher.stop();
  });

  serveFeatures(connection, {
    snapshot: async uri => {
      await configured;
      // An answer from the first half of a text could be wrong.
      await workspace.whole(uri);
      await inTime(workspace.findText(uri)?.room);
      const found = workspace.findText(uri);
      return found && { ...found, journal: found.room.journal, now: now(found.room) };
    },
    ready: async () => {
      await configured;
      await Promise.all([...workspace.rooms].map(room => room.loaded));
    },
    check: () => publisher.flush(),
    find: uri => workspace.find(uri),
    rooms: () => workspace.rooms,
    now,
    uriOf: file => workspace.uriOf(file),
    versionOf: uri => documents.get(uri)?.version,
    client: () => client,
    settings: () => settings,
    commands: () => commands,
    showsPictures: () => pictures && settings.hovers.photos,
    theme: () => (settings.hovers.pictures ? theme : undefined),
    sinceCommit: snapshot => committed.changesIn(snapshot),
    findPicture: (uri, folder) => files.picture(uri, folder),
  });
  documents.listen(connection);

  function filesFor(clientAnswers: boolean): Files {
    if (!disk) return filesOfClient(connection);
    return clientAnswers ? filesByAddress(disk, filesOfClient(connection)) : disk;
  }

  /** A client fetches anew what it shows of a document that it changes itself, not what that changes in others. */
  function follow(room: Room, file?: string): void {
    // A text by itself has no problems of a journal, and nothing shows what it says elsewhere.
    if (room.kind === 'alone') return;
    // What the settings allow must not be shown as wrong for a moment.
    void configured.then(() => publisher.changed(room, file));
    // What each line says by itself needs no other file; the rest follows.
    if (!room.isLoaded) void Promise.all([configured, room.loaded]).then(() => publisher.changed(room, file));
    if (file === undefined || !workspace.isOpen(file) || documents.all().length > 1) refresher.changed();
  }

  /** Waits for the rest of a journal, but not for a disk that does not answer. */
  async function inTime(room: Room | undefined): Promise<void> {
    if (!room || room.isLoaded) return;
    let late: ReturnType<typeof setTimeout> | undefined;
    await Promise.race([room.loaded, new Promise(resolve => (late = setTimeout(resolve, PATIENCE)))]);
    clearTimeout(late);
  }

  /** The present day of each journal. */
  function daysNow(): string {
    return Array.from(workspace.rooms, room => now(room).day).join();
  }

  async function pullSettings(): Promise<void> {
    try {
      settings = readSettings(await connection.workspace.getConfiguration('plumule'));
      applySettings();
    } catch (error) {
      connection.console.warn(`settings: ${error instanceof Error ? error.message : String(error)}`);
    }
  }

  function applySettings(): void {
    publisher.severity = settings.severity;
    workspace.settings = settings.limits;
  }
}

function foldersOf({ workspaceFolders, ...params }: InitializeParams): string[] {
  if (workspaceFolders) return workspaceFolders.map(({ uri }) => uri);
  // Clients from before workspace folders name one root, older ones by its path.
  /* eslint-disable @typescript-eslint/no-deprecated */
  const root = params.rootUri ?? (params.rootPath ? URI.file(params.rootPath).toString() : undefined);
  /* eslint-enable */
  return root === undefined ? [] : [root];
}
