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
 * Opens `text`, which has `all` problems, in the server that `command` starts, and waits for the first of them and for
 * all. In between, `early` times, and then `edits` times it inserts or takes back one digit at lines spread over the
 * text, each time waiting for the problems of that version. Then asks `requests` times for what the cursor is on, for
 * what can be written, and for names, and `whole` times for all of the text at once.
 */
export async function measure({
  command, folder, uri, languageId, text, all = 0, early = 0, edits, requests = 0, whole = 0,
}) {
  const server = spawn(process.execPath, command, { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = createProtocolConnection(
    new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
  const waiting = [];
  // How many problems of it the client was shown, and when.
  const shown = [];
  connection.onNotification('textDocument/publishDiagnostics', params => {
    if (params.uri !== uri) return;
    shown.push({ problems: params.diagnostics.length, at: performance.now() });
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
    const before = processorTime(server.pid);
    await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId, version: 1, text } });
    const first = await until(() => shown.find(({ problems }) => problems >= Math.min(1, all)));
    const firstCpu = processorTime(server.pid) - before;
    const key = keyboard(connection, answer, { uri, text });
    const hasty = [];
    for (let i = 0; i < early; i++) hasty.push(await key(i, early));
    const last = await until(() => shown.find(({ problems }) => problems >= all));
    const lastCpu = processorTime(server.pid) - before;
    for (let i = 0; i < 10; i++) await key(i, 10);
    const times = [];
    const beforeEdits = processorTime(server.pid);
    for (let i = 0; i < edits; i++) times.push(await key(i, edits));
    const edit = { ...quantiles(times), cpu: (processorTime(server.pid) - beforeEdits) / edits };
    const parts = await asked(connection, key, { uri, text, requests });
    const tokens = await askedWhole(connection, { uri, times: whole }, 'all tokens');
    const memory = peak(server.pid);
    const others = await askedWhole(connection, { uri, times: whole }, 'outline', 'folds');
    return {
      first: { time: first.at - open, cpu: firstCpu }, all: { time: last.at - open, cpu: lastCpu },
      early: quantiles(hasty), edit, asked: { ...parts, ...tokens, ...others }, memory, memoryAtEnd: peak(server.pid),
    };
  } finally {
    connection.dispose();
    server.kill();
  }
}

/** What is found once there is something to find; looked for at every turn of the loop. */
async function until(find) {
  for (;;) {
    const found = find();
    if (found) return found;
    await new Promise(resolve => setImmediate(resolve));
  }
}

/** Times of requests, each after an edit, since what is known of the whole journal is not to be there already. */
async function asked(connection, key, { uri, text, requests }) {
  const lines = text.split('\n');
  const textDocument = { uri };
  const last = { line: lines.length - 1, character: 0 };
  const found = {};
  for (const [name, method, paramsAt] of [
    ['hover', 'textDocument/hover', position => ({ textDocument, position })],
    ['definition', 'textDocument/definition', position => ({ textDocument, position })],
    ['completion on an empty line', 'textDocument/completion', () => ({ textDocument, position: last })],
    ['search', 'workspace/symbol', () => ({ query: 'iris' })],
  ]) {
    const times = [];
    for (let i = 0; i < requests; i++) {
      await key(i, requests);
      const [line, character] = spot(lines, i, requests);
      const start = performance.now();
      await connection.sendRequest(method, paramsAt({ line, character }));
      times.push(performance.now() - start);
    }
    if (requests > 0) found[name] = quantiles(times);
  }
  return found;
}

/** Requests whose answers are as long as the text. */
const wholeRequests = {
  'all tokens': 'textDocument/semanticTokens/full', outline: 'textDocument/documentSymbol', folds: 'textDocument/foldingRange',
};

/** How long some of them take. */
async function askedWhole(connection, { uri, times }, ...names) {
  const found = {};
  for (const name of names) {
    const took = [];
    for (let i = 0; i < times; i++) {
      const start = performance.now();
      await connection.sendRequest(wholeRequests[name], { textDocument: { uri } });
      took.push(performance.now() - start);
    }
    if (times > 0) found[name] = quantiles(took);
  }
  return found;
}

/**
 * Types a digit or, the next time, takes it back, at the nth of so many places spread over the text. Gives the time
 * until the problems of that version have come.
 */
function keyboard(connection, answer, { uri, text }) {
  const lines = text.split('\n');
  let version = 1;
  return async (n, of) => {
    const [line, character] = spot(lines, n >> 1, of >> 1);
    const back = n % 2 === 1;
    const range = { start: { line, character }, end: { line, character: back ? character + 1 : character } };
    version++;
    const answered = answer(version);
    const start = performance.now();
    void connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version }, contentChanges: [{ range, text: back ? '' : '7' }],
    });
    await answered;
    return performance.now() - start;
  };
}

/** Line and column behind the last digit of the nth of `of` lines spread over the text. */
function spot(lines, n, of) {
  for (let line = Math.floor((lines.length * (n + 0.5)) / of); line < lines.length; line++) {
    const at = lines[line].search(/\d\D*$/);
    if (at >= 0) return [line, at + 1];
  }
  return [0, 0];
}

/** Milliseconds of all its threads so far, as Linux counts them, by hundredths of a second; else NaN. */
function processorTime(pid) {
  try {
    // proc_pid_stat(5): utime and stime are the 14th and 15th field; the second, in brackets, may hold anything.
    const [user, system] = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1).split(' ').slice(11, 13);
    return (Number(user) + Number(system)) * 10;
  } catch {
    return NaN;
  }
}

/** Largest resident memory so far, in MB; undefined where the system does not tell. */
function peak(pid) {
  try {
    return Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))[1]) / 1024;
  } catch {
    return undefined;
  }
}
