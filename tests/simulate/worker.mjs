// Simulates the lots that run.mjs asks for; a process of its own, so that its time is known.
import { createRequire } from 'node:module';

const { cells, run } = createRequire(import.meta.url)(process.argv[2]);
const byName = new Map(cells.map(cell => [cell.name, cell]));

process.on('message', ({ name, seed, from, to }) => {
  const before = process.cpuUsage();
  const tally = run(byName.get(name), seed, from, to);
  const { user, system } = process.cpuUsage(before);
  process.send({ name, tally, ms: (user + system) / 1000 });
});
