// A language client over stdio that does nothing but measure. Times are in milliseconds.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';

/** Median and 95th percentile. */
export function quantiles(times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = q => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * q))];
  return { p50: at(0.5), p95: at(0.95) };
}

/**
 * Opens `text` in the server that `command` starts, then inserts and takes back one digit, `edits` times at lines
 * spread over the text, each time waiting for the problems of that version. Then asks for hovers.
 */
export async function measure({ command, folder, uri, languageId, text, edits, requests = 0 }) {
  const server = spawn(process.execPath, command, { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = createProtocolConnection(
    new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
  const waiting = [];
  connection.onNotification('textDocument/publishDiagnostics', params => {
    if (params.uri !== uri) return;
    for (const wait of waiting.splice(0)) {
      if ((params.version ?? 0) >= wait.version) wait.resolve(params.diagnostics.length);
      else waiting.push(wait);
    }
  });
  connection.onRequest('workspace/configuration', ({ items }) => items.map(() => ({})));
  connection.onRequest('client/registerCapability', () => null);
  connection.listen();
  const answer = version => new Promise(resolve => waiting.push({ version, resolve }));
  try {
    await connection.sendRequest('initialize', {
      processId: process.pid, rootUri: folder, workspaceFolders: folder ? [{ uri: folder, name: 'bench' }] : null,
      capabilities: {
        textDocument: { publishDiagnostics: { versionSupport: true } }, workspace: { workspaceFolders: true },
      },
    });
    await connection.sendNotification('initialized', {});
    const open = performance.now();
    const opened = answer(1);
    await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId, version: 1, text } });
    const problems = await opened;
    const openTime = performance.now() - open;
    const times = await edited(connection, answer, { uri, text, edits });
    const hovers = [];
    for (let i = 0; i < requests; i++) {
      const [line, character] = spot(text.split('\n'), i, requests);
      const start = performance.now();
      await connection.sendRequest('textDocument/hover', { textDocument: { uri }, position: { line, character } });
      hovers.push(performance.now() - start);
    }
    return {
      open: openTime, problems, edit: quantiles(times), hover: requests ? quantiles(hovers) : undefined,
      memory: peak(server.pid),
    };
  } finally {
    connection.dispose();
    server.kill();
  }
}

async function edited(connection, answer, { uri, text, edits }) {
  const lines = text.split('\n');
  const times = [];
  let version = 1;
  const warmUp = 10;
  for (let i = 0; i < edits + warmUp; i++) {
    const [line, character] = spot(lines, i >> 1, (edits + warmUp) >> 1);
    const back = i % 2 === 1;
    const range = { start: { line, character }, end: { line, character: back ? character + 1 : character } };
    version++;
    const answered = answer(version);
    const start = performance.now();
    void connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version }, contentChanges: [{ range, text: back ? '' : '7' }],
    });
    await answered;
    if (i >= warmUp) times.push(performance.now() - start);
  }
  return times;
}

/** Line and column behind the last digit of the nth of `of` lines spread over the text. */
function spot(lines, n, of) {
  for (let line = Math.floor((lines.length * (n + 0.5)) / of); line < lines.length; line++) {
    const at = lines[line].search(/\d\D*$/);
    if (at >= 0) return [line, at + 1];
  }
  return [0, 0];
}

/** Largest resident memory so far, in MB; undefined where the system does not tell. */
function peak(pid) {
  try {
    return Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))[1]) / 1024;
  } catch {
    return undefined;
  }
}
