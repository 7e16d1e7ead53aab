// How the time of each task grows with a journal that is long in one way alone (lists.mjs). Judged as a ratio: with
// four times as many of a thing, n log n takes 4.6 times as long, a task that goes through all for each takes 16.
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { lists } from './lists.mjs';

const HERE = fileURLToPath(import.meta.url);
const FILE = 'bench.germ';
/** In the years that lists.mjs writes of. */
const NOW = { day: 12_000, minutes: 600 };
/** Shorter times are those of the clock and of cold code. */
const SHORTEST = 40;
const STEEPEST = 8;
const LONGEST = 120_000;

/** Prints the task that grows fastest in each list, and how many lists have one that grows too fast. */
export async function growth(place, most) {
  const core = path.join(place, 'growth.cjs');
  await build({
    entryPoints: [path.join(path.dirname(HERE), 'core.ts')], outfile: core,
    bundle: true, format: 'cjs', platform: 'node', logLevel: 'error',
  });
  console.log(`\nfrom ${most / 4} to ${most} of one thing; milliseconds of CPU, how many times as many`);
  let steep = 0;
  for (const name of Object.keys(lists)) {
    const few = timesOf(core, name, most / 4);
    const many = few && timesOf(core, name, most);
    const times = Object.entries(many ?? {});
    const grown = times.map(([task, time]) => ({ task, time, ratio: time / Math.max(few[task], SHORTEST / 4) }));
    const worst = grown.filter(({ time }) => time > SHORTEST).sort((a, b) => b.ratio - a.ratio);
    const tooSteep = worst.filter(({ ratio }) => ratio > STEEPEST);
    if (!many || tooSteep.length > 0) steep++;
    const shown = tooSteep.length > 0 ? tooSteep : worst.slice(0, 1);
    const told = shown.map(({ task, time, ratio }) => `${task} ${time.toFixed(0)} ms ${ratio.toFixed(1)} x`).join(', ');
    console.log(`  ${name.padEnd(36)}${many ? `${tooSteep.length > 0 ? 'TOO STEEP: ' : ''}${told}` : 'DOES NOT END'}`);
  }
  return steep;
}

function timesOf(core, name, n) {
  const { stdout, status, stderr } = spawnSync(process.execPath, [HERE, core, name, String(n)], {
    timeout: LONGEST, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'],
  });
  if (status === null) return undefined;
  if (status !== 0) throw new Error(`${name}: ${stderr}`);
  return JSON.parse(stdout);
}

/** Milliseconds of CPU that each task takes on one journal, each once, in the order in which an editor asks. */
function measure(core, text) {
  const {
    completionsAt, documentSymbols, due, foldsOf, forEachToken, formatEdits, hintsIn, hoverAt, Journal, lensesOf,
    lensTitle, lotRows, merge, placesNow, ProblemBook, referencesAt, reportOf, reportText,
  } = core;
  const times = {};
  const timed = (task, work) => {
    const before = process.cpuUsage();
    const result = work();
    const { user, system } = process.cpuUsage(before);
    times[task] = (user + system) / 1000;
    return result;
  };
  const journal = new Journal();
  timed('read', () => journal.set(FILE, text));
  const book = new ProblemBook(journal);
  timed('check', () => book.update(NOW));
  timed('list', () => book.of(FILE));
  const lines = text.split('\n');
  const last = lines.length - 1;
  const kinds = { counts: true, soaks: true, stages: true, stocks: true };
  timed('tokens', () => forEachToken(journal, FILE, () => undefined));
  timed('outline', () => documentSymbols(journal, FILE, NOW));
  timed('folds', () => foldsOf(journal.files.get(FILE).text));
  timed('format', () => formatEdits(journal.files.get(FILE).text));
  timed('lenses', () => lensesOf(journal, FILE).map(lens => lensTitle(journal, lens, NOW)));
  timed('lots', () => lotRows(journal, NOW));
  timed('hints', () => hintsIn(journal, FILE, 0, last, kinds, NOW));
  for (const [at, line] of [['first', 0], ['last', last]]) {
    for (const [word, character] of [['keyword', 1], ['name', 4 + lines[line].slice(4).search(/\S/)], ['end', lines[line].length - 1]]) {
      timed(`hover ${word} of the ${at} line`, () => hoverAt(journal, FILE, { line, character }, NOW));
    }
    timed(`references from the ${at} line`, () => referencesAt(journal, FILE, { line, character: 6 }, true));
    timed(`completion on the ${at} line`, () => completionsAt(journal, FILE, { line, character: lines[line].length }, NOW));
  }
  timed('places', () => placesNow(journal, NOW));
  timed('due', () => due(journal, NOW));
  timed('report', () => reportText([reportOf(journal, book, { now: NOW, details: true })]));
  timed('report by plant', () => reportText([reportOf(journal, book, { now: NOW, by: 'species' })]));
  timed('a new line', () => {
    journal.edit(FILE, { start: { line: last, character: lines[last].length }, end: { line: last, character: lines[last].length } }, '\n');
    book.update(NOW);
  });
  for (const [task, typed] of [['subject', 'count '], ['fact', 'count L 2010-01-01, '], ['place', 'sow L 2010-01-01, at '], ['soak', 'soak L 2010-01-01 10:00, '], ['plant', 'lot NEW ']]) {
    timed(`completion of a ${task}`, () => {
      const end = { line: last + 1, character: journal.files.get(FILE).text.at(last + 1).text.length };
      journal.edit(FILE, { start: { line: last + 1, character: 0 }, end }, typed);
      return completionsAt(journal, FILE, { line: last + 1, character: typed.length }, NOW);
    });
  }
  timed('an edit of the first line', () => {
    journal.edit(FILE, { start: { line: 0, character: lines[0].length }, end: { line: 0, character: lines[0].length } }, ' ');
    book.update(NOW);
  });
  timed('an edit of the last line', () => {
    journal.edit(FILE, { start: { line: last, character: lines[last].length }, end: { line: last, character: lines[last].length } }, ' ');
    book.update(NOW);
  });
  timed('merge', () => merge(text, `${text}\n# ours`, `# theirs\n${text}`));
  return times;
}

if (process.argv[1] === HERE) {
  const [, , core, name, n] = process.argv;
  console.log(JSON.stringify(measure(createRequire(HERE)(core), lists[name](Number(n)))));
}
