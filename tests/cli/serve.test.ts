import { spawn } from 'node:child_process';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import {
  createProtocolConnection, InitializeRequest, ShutdownRequest, ExitNotification, InitializedNotification,
  PublishDiagnosticsNotification, StreamMessageReader, StreamMessageWriter,
  type InitializeParams, type PublishDiagnosticsParams,
} from 'vscode-languageserver/node';
import { folderWith } from '../disk/helpers.ts';

const BUILT = fileURLToPath(new URL('../../dist/plumule.cjs', import.meta.url));

describe('plumule serve --stdio', () => {
  it('is a language server that reads the journals of a folder from the disk, and ends when told to', async () => {
    const folder = await folderWith({ 'a.germ': 'sowed A-1\n' });
    const child = spawn(process.execPath, [BUILT, 'serve', '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] });
    onTestFinished(() => void child.kill());
    const ended = new Promise<number | null>(done => child.on('exit', done));
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
    const published = new Promise<PublishDiagnosticsParams>(done => {
      connection.onNotification(PublishDiagnosticsNotification.type, done);
    });
    connection.listen();
    const workspaceFolders = [{ uri: pathToFileURL(folder).href, name: 'journal' }];
    const { serverInfo } = await connection.sendRequest(InitializeRequest.type, {
      processId: process.pid, capabilities: {}, workspaceFolders,
    } as InitializeParams);
    expect(serverInfo?.name).toBe('plumule');
    await connection.sendNotification(InitializedNotification.type, {});
    const { uri, diagnostics } = await published;
    expect(uri).toBe(pathToFileURL(`${folder}/a.germ`).href);
    expect(diagnostics).toMatchObject([{ code: 'unknown-keyword', range: { start: { line: 0, character: 0 } } }]);
    await connection.sendRequest(ShutdownRequest.type);
    await connection.sendNotification(ExitNotification.type);
    expect(await ended).toBe(0);
  });
});
