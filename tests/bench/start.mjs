// How long the programs take until they work, beside Node itself doing nothing, by turns.
import { spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node';
import { quantiles } from './client.mjs';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
const ROUNDS = 11;

const JOURNAL = `lot GEN-25 Gentiana lutea, 60 seeds
split GEN-25, A 24 seeds, B 24 seeds
sow GEN-25/A 2026-01-11, 24 seeds
count GEN-25/A 2026-01-25, 3
`;

export async function starting(place) {
  writeFileSync(path.join(place, 'winter.germ'), JOURNAL);
  const plumule = path.join(DIST, 'plumule.cjs');
  const given = {
    'node doing nothing': () => ended(['-e', '0']),
    'server, to initialized': () => initialized([path.join(DIST, 'server.node.cjs'), '--stdio']),
    'plumule serve, to initialized': () => initialized([plumule, 'serve', '--stdio']),
    'plumule --version': () => ended([plumule, '--version']),
    'plumule check of four lines': () => ended([plumule, 'check', 'winter.germ'], place),
    'plumule report of four lines': () => ended([plumule, 'report', 'winter.germ'], place),
  };
  const times = Object.fromEntries(Object.keys(given).map(name => [name, []]));
  for (let round = 0; round < ROUNDS; round++) {
    for (const [name, work] of Object.entries(given)) times[name].push(await timed(work));
  }
  const medians = Object.entries(times).map(([name, all]) => [name, quantiles(all).p50]);
  const [[, node]] = medians;
  console.log(`start; milliseconds, medians of ${ROUNDS}`);
  for (const [name, time] of medians) {
    console.log(`  ${name.padEnd(46)}${time.toFixed(0).padStart(8)}  ${(time / node).toFixed(1).padStart(7)} x of node`);
  }
}

async function timed(work) {
  const start = performance.now();
  const stop = await work();
  const time = performance.now() - start;
  await stop?.();
  return time;
}

async function ended(args, cwd) {
  const child = spawn(process.execPath, args, { cwd, stdio: ['ignore', 'ignore', 'ignore'] });
  await new Promise(done => child.on('close', done));
}

async function initialized(args) {
  const child = spawn(process.execPath, args, { stdio: ['pipe', 'pipe', 'inherit'] });
  const [reader, writer] = [new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin)];
  const connection = createProtocolConnection(reader, writer);
  connection.listen();
  await connection.sendRequest('initialize', {
    processId: process.pid, rootUri: null, workspaceFolders: null, capabilities: {},
  });
  return async () => {
    const closed = new Promise(done => child.on('close', done));
    connection.dispose();
    child.kill();
    await closed;
  };
}
