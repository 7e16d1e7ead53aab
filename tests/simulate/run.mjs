// How often verdicts are wrong: grows lots, writes their journals, and counts what is said of them.
//
//   npm run simulate                                          every cell of the table, a few minutes
//   npm run simulate -- --only peeking --only 'three doses'   the cells whose names hold these words
//   npm run simulate -- --lots 4000 --seed 7                  more lots, or others
//   npm run simulate -- --rules                               and which rules decided
//   npm run simulate -- --save                                and keep the numbers for the reference (results.json)
//
// A percentage is of the lots of its cell; ± is one Monte Carlo error of it. A cell fails where a share is above its
// bar, or below its floor, by more than two.
import { fork } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { availableParallelism, tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';

const HERE = path.dirname(fileURLToPath(import.meta.url));
const CHUNK = 250;
const HELP = `npm run simulate -- [--lots N] [--only WORDS]... [--seed N] [--workers N] [--rules] [--save] [--list]

  --lots N      lots a cell (1000)
  --only WORDS  cells whose names hold these words
  --seed N      other lots (1)
  --workers N   at a time (as many as the machine has cores, up to 4)
  --rules       print the rules that decided, too
  --save        keep the numbers in results.json, which the format reference is held to
  --list        print the names of the cells and simulate nothing`;
const { values } = parseArgs({ options: {
  help: { type: 'boolean' },
  list: { type: 'boolean' },
  lots: { type: 'string', default: '1000' },
  seed: { type: 'string', default: '1' },
  only: { type: 'string', multiple: true },
  workers: { type: 'string', default: String(Math.min(4, availableParallelism())) },
  rules: { type: 'boolean' },
  save: { type: 'boolean' },
} });
const [lots, seed] = [Number(values.lots), Number(values.seed)];

if (values.help) {
  console.log(HELP);
  process.exit();
}
const place = mkdtempSync(path.join(tmpdir(), 'plumule-simulate-'));

try {
  const file = path.join(place, 'core.cjs');
  await build({
    entryPoints: [path.join(HERE, 'core.ts')], outfile: file,
    bundle: true, format: 'cjs', platform: 'node', logLevel: 'error',
  });
  const core = createRequire(import.meta.url)(file);
  const asked = [...core.cells, ...core.coverages, ...core.growers]
    .filter(({ name }) => !values.only || values.only.some(part => name.includes(part)));
  if (asked.length === 0) throw new Error(`no cell has ${values.only.join(' or ')} in its name`);
  if (values.list) for (const { name } of asked) console.log(name);
  else await table(core, asked, file);
} finally {
  rmSync(place, { recursive: true, force: true });
}

async function table(core, asked, file) {
  const start = performance.now();
  console.log(`${lots} lots a cell, seed ${seed}\n\n${heading(core)}`);
  const failed = await simulate(core, asked, file);
  const seconds = (performance.now() - start) / 1000;
  console.log(`\n${asked.length} cells in ${seconds.toFixed(0)} s; ${failed === 0 ? 'none fails' : `${failed} fail`}`);
  process.exitCode = failed === 0 ? 0 : 1;
}

/** Shares the lots out among workers; prints each cell as soon as it and those before it are done. */
async function simulate(core, asked, file) {
  const starts = Array.from({ length: Math.ceil(lots / CHUNK) }, (_, i) => i * CHUNK);
  const spans = starts.map(from => ({ from, to: Math.min(lots, from + CHUNK) }));
  const tasks = asked.flatMap(({ name }) => spans.map(span => ({ name, seed, ...span })));
  const done = new Map(asked.map(({ name }) => [name, { tallies: [], lots: 0, ms: 0 }]));
  let [next, printed, failed] = [0, 0, 0];
  const print = () => {
    for (; printed < asked.length; printed++) {
      const cell = asked[printed];
      const { tallies, lots: judged, ms } = done.get(cell.name);
      if (judged < lots) return;
      const { text, isAtFault } = 'judge' in cell ? verdictRow(core, cell, tallies, ms)
        : 'seeds' in cell ? growerRows(core, cell, tallies) : intervalRows(core, cell, tallies);
      failed += Number(isAtFault);
      if (values.save) keep(core, cell, tallies);
      console.log(text);
    }
  };
  const work = () => new Promise((resolve, reject) => {
    const worker = fork(path.join(HERE, 'worker.mjs'), [file]);
    const ask = () => {
      const task = tasks[next++];
      if (task) worker.send(task);
      else worker.disconnect();
    };
    worker.on('error', reject);
    worker.on('exit', code => (code === 0 ? resolve() : reject(new Error('a worker broke off'))));
    worker.on('message', ({ name, tally, lots: judged, ms }) => {
      const cell = done.get(name);
      cell.tallies.push(tally);
      cell.lots += judged;
      cell.ms += ms;
      print();
      ask();
    });
    ask();
  });
  await Promise.all(Array.from({ length: Math.max(1, Number(values.workers)) }, work));
  return failed;
}

/** Cell by cell, so that a run that is broken off, or asks for some of the cells, leaves the others as they were. */
function keep(core, cell, tallies) {
  const file = path.join(HERE, 'results.json');
  const kept = JSON.parse(readFileSync(file, 'utf8'));
  const found = 'judge' in cell ? core.together(tallies).found : 'seeds' in cell ? { ...core.harvestRows(tallies), said: core.saidRows(tallies) } : Object.fromEntries(Object.keys(core.INTERVALS).map(interval => [interval, {
      held: tallies.reduce((sum, tally) => sum + (tally[interval]?.held ?? 0), 0),
      shown: tallies.reduce((sum, tally) => sum + (tally[interval]?.shown ?? 0), 0),
    }]).filter(([, { shown }]) => shown > 0));
  kept[cell.name] = { lots, seed, ...found };
  const rows = Object.entries(kept).map(([name, row]) => `  ${JSON.stringify(name)}: ${JSON.stringify(row)}`);
  writeFileSync(file, `{\n${rows.join(',\n')}\n}\n`);
}

function heading({ columns }) {
  return `${''.padEnd(62)}${columns.map(column => column.padStart(14)).join('')}${'ms a lot'.padStart(10)}`;
}

function verdictRow(core, cell, tallies, ms) {
  const { columns, faultsOf } = core;
  const tally = core.together(tallies);
  const faults = faultsOf(cell, tally);
  const { name, bars: { most, least } } = cell;
  const verdict = faults.length > 0 ? faults.join(', ') : most || least ? 'ok' : 'as it is';
  const shares = columns.map(column => shareText(core, tally.found[column], lots).padStart(14)).join('');
  const line = `${name.padEnd(62)}${shares}${(ms / lots).toFixed(2).padStart(10)}  ${verdict}`;
  const rules = Object.entries(tally.rules).sort(([, a], [, b]) => b - a);
  const ruleText = rules.map(([rule, n]) => `${rule} ${(100 * n / lots).toFixed(1)}`).join(', ');
  return { text: values.rules ? `${line}\n    ${ruleText}` : line, isAtFault: faults.length > 0 };
}

/** How often each interval held what was true. */
function intervalRows(core, { name }, tallies) {
  let isAtFault = false;
  const lines = Object.entries(core.INTERVALS).flatMap(([interval, least]) => {
    const sum = what => tallies.reduce((total, tally) => total + (tally[interval]?.[what] ?? 0), 0);
    const [held, shown] = [sum('held'), sum('shown')];
    if (shown === 0) return [];
    const isLow = held / shown < least - 2 * core.standardError(least, shown);
    isAtFault ||= isLow;
    const verdict = isLow ? `BELOW ${core.percent(least)}` : 'ok';
    return [`    ${interval.padEnd(40)}${shareText(core, held, shown).padStart(14)} of ${shown}  ${verdict}`];
  });
  return { text: [name, ...lines].join('\n'), isAtFault };
}

/** Sound seedlings of 100 seeds over five winters, of all growers and of the tenth that had fewest. */
function growerRows(core, { name }, tallies) {
  const rows = core.harvestRows(tallies);
  const faults = core.harvestFaults(rows);
  const lines = Object.entries(rows).map(([plant, byHabit]) => `    ${plant.padEnd(12)}${core.habits.map(habit => (
    `${habit} ${byHabit[habit].mean.toFixed(1)}, worst tenth ${byHabit[habit].worst.toFixed(1)}`.padEnd(46))).join('')}`);
  const said = Object.entries(core.saidRows(tallies)).map(([plant, { treat, leave }]) => (
    `    ${plant.padEnd(12)}told to treat at some time ${core.percent(treat)}, to leave it in the end ${core.percent(leave)}`));
  return { text: [`${name}  ${faults.join(', ') || 'ok'}`, ...lines, ...said].join('\n'), isAtFault: faults.length > 0 };
}

function shareText({ standardError }, n, of) {
  return `${(100 * n / of).toFixed(1)} ±${(100 * standardError(n / of, of)).toFixed(1)}`;
}
