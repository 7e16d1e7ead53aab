// Measures the speed of reading and checking journals beside peers, in one run on one machine.
//
//   npm run bench                    10,000 and 100,000 lines
//   npm run bench -- --lines 5000    another size
//   npm run bench -- --slope 10000 --slope 1000000   how what an edit costs grows with the journal, and nothing else;
//                                    without it the last lines say so of 10,000 lines, 100,000 and a million
//   npm run bench -- --growth 20000  how each task grows in journals that are long in one way alone, up to so many;
//                                    ends with 1 where one grows too fast. Half an hour on two cores
//
// A figure counts only against those that stand beside it: machines differ, and a busy one slows all of them.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';
import { getLanguageService } from 'vscode-json-languageservice';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { measure, quantiles } from './client.mjs';
import { generate, journalText, MISTAKE, withMistake } from './generate.mjs';
import { growth } from './growth.mjs';
import { starting } from './start.mjs';

const HERE = path.dirname(fileURLToPath(import.meta.url));
const SERVER = path.join(HERE, '../../dist/server.node.cjs');
const { values } = parseArgs({ options: { lines: { type: 'string', multiple: true }, edits: { type: 'string', default: '200' }, growth: { type: 'string' }, slope: { type: 'string', multiple: true } } });
const sizes = (values.lines ?? ['10000', '100000']).map(Number);
const place = mkdtempSync(path.join(tmpdir(), 'plumule-bench-'));
const ms = time => (time < 10 ? time.toFixed(2) : time.toFixed(0)).padStart(8);

try {
  if (values.growth !== undefined) process.exitCode = await growth(place, Number(values.growth)) > 0 ? 1 : 0;
  else if (values.slope) await slope(values.slope.map(Number), await coreOf());
  else {
    const core = await coreOf();
    await compare(core);
    await inFolder(1000, core);
    await slope([10_000, 100_000, 1_000_000], core);
  }
} finally {
  rmSync(place, { recursive: true, force: true });
}

/** What the bench measures of the core within its own process. */
async function coreOf() {
  await build({
    entryPoints: [path.join(HERE, 'core.ts')], outfile: path.join(place, 'core.cjs'),
    bundle: true, minify: true, format: 'cjs', platform: 'node', logLevel: 'error',
  });
  return createRequire(import.meta.url)(path.join(place, 'core.cjs'));
}

async function compare(core) {
  await starting(place);
  for (const lines of sizes) {
    const text = withMistake(journalText(lines));
    console.log(`\n${lines} lines, ${(text.length / 1e6).toFixed(1)} MB; milliseconds, medians of 5 runs`);
    await reading(text, core);
    await typing(text, lines, core);
  }
}

async function reading(text, core) {
  const json = getLanguageService({});
  const data = asJson(text);
  const split = await median(() => text.split(/\r\n|\n|\r/).length);
  const rows = [
    ['split into lines', split],
    ['parse every line', await median(() => text.split('\n').forEach(core.parse))],
    ['open as a journal, with all problems', await median(() => problemsOf(text, core))],
    ['the same data as JSON, parsed and validated', await median(async () => {
      const document = TextDocument.create('file:///bench.json', 'json', 1, data);
      await json.doValidation(document, json.parseJSONDocument(document));
    })],
  ];
  for (const [what, time] of rows) console.log(`  ${what.padEnd(46)}${ms(time)}${ratio(time, split)} of splitting`);
}

/** How many problems a server shows of a journal, at most a thousand. */
function problemsOf(text, { Journal, ProblemBook }) {
  const journal = new Journal();
  journal.set('bench.germ', text);
  const book = new ProblemBook(journal);
  book.update({ day: Math.floor(Date.now() / 86_400_000), minutes: undefined });
  return Math.min(1000, book.of('bench.germ').length);
}

/** Whether the problems of the file in front of somebody wait for the other files of its folder. */
async function inFolder(count, core) {
  const folder = path.join(place, 'winters');
  mkdirSync(folder);
  const files = generate(100 * count, count);
  for (const { name, text } of files) writeFileSync(path.join(folder, name), text);
  const text = withMistake(files[0].text);
  const { first } = await measure({
    folder: pathToFileURL(folder).href, uri: pathToFileURL(path.join(folder, files[0].name)).href, languageId: 'plumule',
    text, all: 1, edits: 0, command: [SERVER, '--stdio'],
  });
  rmSync(folder, { recursive: true });
  console.log(`\n${count} files of 100 lines; milliseconds\n  ${'open one to its first problems'.padEnd(46)}${ms(first.time)}`);
}

/** What an edit costs in ever longer journals. The slope is the power of lines by which it grows, 0 where flat. */
async function slope(sizes, core) {
  console.log('\nedit to problems, milliseconds of the processor for each of 400 edits, compiling included');
  const costs = [];
  for (const lines of sizes) {
    const file = path.join(place, `${lines}.germ`);
    const text = journalText(lines);
    writeFileSync(file, text);
    const { edit: { cpu } } = await measure({
      uri: pathToFileURL(file).href, languageId: 'plumule', text, all: problemsOf(text, core), edits: 400,
      command: [SERVER, '--stdio'],
    });
    rmSync(file);
    costs.push(cpu);
    console.log(`  ${`${lines} lines`.padEnd(46)}${ms(cpu)}${ratio(cpu, costs[0])} of the first`);
  }
  const power = Math.log(costs.at(-1) / costs[0]) / Math.log(sizes.at(-1) / sizes[0]);
  console.log(`  ${'slope'.padEnd(46)}${power.toFixed(2).padStart(8)}`);
}

/** With a mistake where the journal has its one: a comma too few. */
function asJson(text) {
  const json = JSON.stringify(text.split('\n').map(line => line.split(/, ?/)), null, 1);
  const at = json.indexOf(MISTAKE);
  return at < 0 ? json : json.slice(0, at) + json.slice(at).replace('",', '"');
}

async function typing(text, lines, core) {
  const file = path.join(place, `${lines}.germ`);
  writeFileSync(file, text);
  const common = {
    uri: pathToFileURL(file).href, languageId: 'plumule', text, all: problemsOf(text, core), edits: Number(values.edits),
  };
  const echo = await measure({ ...common, all: 0, command: [path.join(HERE, 'echo-server.mjs')] });
  const json = await measure({
    ...common, command: [path.join(HERE, 'json-server.mjs'), '--stdio'], languageId: 'json', text: asJson(text), all: 1, edits: 10,
  });
  const ours = await measure({ ...common, command: [SERVER, '--stdio'], requests: 100, whole: 5 });
  const hasty = await measure({ ...common, command: [SERVER, '--stdio'], early: 40, edits: 0 });
  rmSync(file);
  const row = (what, mine, theirs, whose = 'echo') =>
    console.log(`  ${what.padEnd(46)}${ms(mine)}${ratio(mine, theirs)} of the ${whose} server's ${theirs.toFixed(2)}`);
  row('open to first problems', ours.first.time, json.first.time, 'JSON');
  row('open to all problems', ours.all.time, json.all.time, 'JSON');
  row('the same, processor time to the first', ours.first.cpu, json.first.cpu, 'JSON');
  row('processor time to all', ours.all.cpu, json.all.cpu, 'JSON');
  row('edit to problems, median', ours.edit.p50, json.edit.p50, 'JSON');
  row('open to first problems', ours.first.time, echo.all.time);
  row('edit to problems, median', ours.edit.p50, echo.edit.p50);
  row('edit to problems, 95th percentile', ours.edit.p95, echo.edit.p95);
  row('edit right after the first problems, median', hasty.early.p50, echo.edit.p50);
  row('the same, 95th percentile', hasty.early.p95, echo.edit.p95);
  for (const [what, { p50 }] of Object.entries(ours.asked)) console.log(`  ${`${what}, median`.padEnd(46)}${ms(p50)}`);
  if (!ours.memory) return;
  for (const [when, memory] of [['after 5 answers with all tokens', ours.memory], ['at the end', ours.memoryAtEnd]]) {
    console.log(`  ${`MB at most ${when}`.padEnd(46)}${ms(memory)}${ratio(memory, echo.memory)} of the echo server's`);
  }
}

function ratio(time, other) {
  return `  ${(time / other).toFixed(1).padStart(7)} x`;
}

async function median(work) {
  const times = [];
  for (let i = 0; i < 5; i++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return quantiles(times).p50;
}
