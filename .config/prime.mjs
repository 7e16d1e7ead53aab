// Runs each program once whose compiled code is kept, with some work, so that the next start finds it.
import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';

/** `root` is the folder of the project. Fails where a program does not end as it should. */
export async function prime(root) {
  const { status } = spawnSync(process.execPath, [path.join(root, 'dist/plumule.cjs'), 'report', path.join(root, 'samples')]);
  if (status !== 0) throw new Error(`plumule report ended with ${status}`);
  const command = [path.join(root, 'dist/server.node.cjs'), '--stdio'];
  const server = spawn(process.execPath, command, { stdio: ['pipe', 'pipe', 'inherit'] });
  const ended = new Promise(done => server.on('close', done));
  const [reader, writer] = [new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin)];
  const connection = createProtocolConnection(reader, writer);
  const problems = new Promise(done => connection.onNotification('textDocument/publishDiagnostics', done));
  connection.listen();
  await connection.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
  await connection.sendNotification('initialized', {});
  const file = path.join(root, 'samples/problems.germ');
  const uri = pathToFileURL(file).href;
  const text = readFileSync(file, 'utf8');
  await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'plumule', version: 1, text } });
  await problems;
  for (const what of ['semanticTokens/full', 'documentSymbol', 'foldingRange']) {
    await connection.sendRequest(`textDocument/${what}`, { textDocument: { uri } });
  }
  await connection.sendRequest('shutdown');
  await connection.sendNotification('exit');
  if (await ended !== 0) throw new Error('the server did not end as it should');
}
