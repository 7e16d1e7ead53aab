/** A client at the other end of a real connection: everything goes through the protocol's own messages. */
import { mkdtemp, mkdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { pathToFileURL } from 'node:url';
import {
  createConnection, createProtocolConnection, ProposedFeatures, StreamMessageReader, StreamMessageWriter,
  type Diagnostic, type InitializeResult, type ProtocolConnection, type PublishDiagnosticsParams,
} from 'vscode-languageserver/node';
import { filesOnDisk } from '../../server/src/disk/files.ts';
import type { Files } from '../../server/src/lsp/files.ts';
import { serve } from '../../server/src/lsp/server.ts';
import type { Later } from '../../server/src/lsp/turns.ts';

export interface SessionOptions {
  /** Files on the disk, by their path in the folder. */
  readonly files?: Readonly<Record<string, string>>;
  readonly settings?: unknown;
  /** False: the client names no workspace folder. */
  readonly folder?: boolean;
  readonly capabilities?: object;
  readonly initializationOptions?: object;
  readonly disk?: Files;
  /** Runs work at the next turn of the loop. */
  readonly later?: Later;
}

export class Session {
  readonly published: PublishDiagnosticsParams[] = [];
  readonly logged: string[] = [];
  initialized!: InitializeResult;

  constructor(readonly connection: ProtocolConnection, readonly folder: string) {}

  uri(name: string): string {
    return pathToFileURL(path.join(this.folder, name)).href;
  }

  open(name: string, text: string, version = 1): Promise<void> {
    const textDocument = { uri: this.uri(name), languageId: 'plumule', version, text };
    return this.connection.sendNotification('textDocument/didOpen', { textDocument });
  }

  /** Replaces the columns from `start` to `end` of a line. */
  change(name: string, version: number, at: readonly [number, number, number], text: string): Promise<void> {
    const [line, start, end] = at;
    const range = { start: { line, character: start }, end: { line, character: end } };
    return this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: this.uri(name), version }, contentChanges: [{ range, text }],
    });
  }

  close(name: string): Promise<void> {
    return this.connection.sendNotification('textDocument/didClose', { textDocument: { uri: this.uri(name) } });
  }

  ask<Result>(method: string, params: object): Promise<Result> {
    return this.connection.sendRequest<Result>(method, params);
  }

  /** What is shown of a file now; undefined where nothing was ever published. */
  shown(name: string): Diagnostic[] | undefined {
    return this.published.findLast(({ uri }) => uri === this.uri(name))?.diagnostics;
  }

  codes(name: string): unknown[] {
    return (this.shown(name) ?? []).map(({ code }) => code);
  }

  /** Waits until a file shows exactly these codes, in this order; fails with what it shows. */
  async shows(name: string, codes: readonly string[]): Promise<void> {
    await this.until(() => JSON.stringify(this.codes(name)) === JSON.stringify(codes),
      () => `${name} shows ${JSON.stringify(this.codes(name))}, not ${JSON.stringify(codes)}`);
  }

  /** Waits until something holds; fails with what is told otherwise. */
  async until(holds: () => boolean, otherwise: () => string): Promise<void> {
    const end = Date.now() + 20_000;
    while (!holds()) {
      if (Date.now() > end) throw new Error(otherwise());
      await new Promise(resolve => setTimeout(resolve, 5));
    }
  }
}

/** Runs `work` in a session on a folder of its own. */
export async function inSession(options: SessionOptions, work: (session: Session) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'plumule-lsp-'));
  try {
    for (const [name, text] of Object.entries(options.files ?? {})) {
      await mkdir(path.dirname(path.join(folder, name)), { recursive: true });
      await writeFile(path.join(folder, name), text);
    }
    await work(await start(folder, options));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function start(folder: string, options: SessionOptions): Promise<Session> {
  const {
    settings = {}, folder: named = true, capabilities, initializationOptions, disk = filesOnDisk,
    later = (work: () => void) => setImmediate(work),
  } = options;
  const [up, down] = [new PassThrough(), new PassThrough()];
  const server = createConnection(ProposedFeatures.all, new StreamMessageReader(up), new StreamMessageWriter(down));
  serve(server, { version: '0', disk, later });
  server.listen();
  const connection = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const session = new Session(connection, folder);
  connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
    session.published.push(params);
  });
  connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
    session.logged.push(message);
  });
  connection.onRequest('workspace/configuration', () => [settings]);
  connection.onRequest('client/registerCapability', () => null);
  connection.listen();
  const rootUri = pathToFileURL(folder).href;
  session.initialized = await connection.sendRequest('initialize', {
    processId: null, rootUri: named ? rootUri : null, initializationOptions,
    workspaceFolders: named ? [{ uri: rootUri, name: 'journal' }] : null,
    capabilities: capabilities ?? {
      workspace: {
        configuration: true, workspaceFolders: true, didChangeWatchedFiles: { dynamicRegistration: true },
        didChangeConfiguration: { dynamicRegistration: true },
      },
      textDocument: { publishDiagnostics: { relatedInformation: true } },
    },
  });
  await connection.sendNotification('initialized', {});
  return session;
}
