// Simulates the lots that run.mjs asks for.
import { createRequire } from 'node:module';
import { parentPort, workerData } from 'node:worker_threads';

const { cells, run } = createRequire(import.meta.url)(workerData.core);
const byName = new Map(cells.map(cell => [cell.name, cell]));

parentPort.on('message', ({ name, seed, from, to }) => {
  const start = performance.now();
  parentPort.postMessage({ name, tally: run(byName.get(name), seed, from, to), ms: performance.now() - start });
});
