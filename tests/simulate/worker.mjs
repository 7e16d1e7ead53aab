// Simulates the lots that run.mjs asks for; a process of its own, so that its time is known.
import { createRequire } from 'node:module';

const { cells, coverages, growers, run, runCoverage, runGrowers } = createRequire(import.meta.url)(process.argv[2]);
const byName = new Map([...cells, ...coverages, ...growers].map(cell => [cell.name, cell]));

process.on('message', ({ name, seed, from, to }) => {
  const before = process.cpuUsage();
  const cell = byName.get(name);
  const work = 'judge' in cell ? run : 'seeds' in cell ? runGrowers : runCoverage;
  const tally = work(cell, seed, from, to);
  const { user, system } = process.cpuUsage(before);
  process.send({ name, tally, lots: to - from, ms: (user + system) / 1000 });
});
