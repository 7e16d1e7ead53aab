// Journals of any size, the same ones for the same numbers: invented nurseries that keep one file a winter.
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const DAY = 86_400_000;
const GENERA = [
  'Aconitum', 'Arisaema', 'Astrantia', 'Anemone', 'Delphinium', 'Epimedium', 'Gentiana', 'Helleborus', 'Iris', 'Lilium',
  'Meconopsis', 'Paeonia', 'Penstemon', 'Primula', 'Pulsatilla', 'Sanguisorba', 'Thalictrum', 'Trillium', 'Trollius', 'Veratrum',
];
const SPECIES = ['alpina', 'borealis', 'campestris', 'elegans', 'lutea', 'montana', 'nivalis', 'palustris', 'rosea', 'sylvatica'];
const SOURCES = ['own bed', 'the hedge', '"seed exchange, autumn list"', 'a neighbour', 'the trial bed'];
const DORMANCIES = ['PD', 'MPD', 'PY', 'MD'];
const REMARKS = [
  'Radicles white and straight.', 'Nothing yet, firm inside.', 'The paper had dried out at one corner.',
  'Moved back from the glass, it was warm for the month.', 'Two of them already green — früher als gedacht.',
  'Label written again.', 'Mould on one, taken out.',
];

/** Numbers from 0 up to 1 that are the same in every run: mulberry32, public domain. */
function randomFrom(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const WEEKS = 20;

/** A winter in an id: its year without the century, as a grower writes it, for as long as that names one winter. */
const inId = year => (year < 2100 ? String(year).slice(2) : String(year));

/** The stock that is made up for the soaks of a week. */
const stockOf = (year, week) => `G${inId(year)}-${week}`;

const iso = day => new Date(day * DAY).toISOString().slice(0, 10);

/** One lot: the lines that define it, and its dated lines as [day, time, line, remark]. `slotIn` gives a free slot. */
function lotOf(id, winter, random, slotIn) {
  const pick = list => list[Math.floor(random() * list.length)];
  const below = n => Math.floor(random() * n);
  const year = 2010 + winter;
  const week = below(WEEKS);
  const start = Date.UTC(year, 9, 1) / DAY + 7 * week;
  const seeds = 12 + 6 * below(5);
  const names = ['A', 'B', 'C'].slice(0, 2 + below(2));
  const head = [
    `lot ${id} ${pick(GENERA)} ${pick(SPECIES)}, ${seeds * names.length + 12} seeds, collected ${year}-0${7 + below(3)}, from ${pick(SOURCES)}, ` +
      `stored dry, dormancy ${pick(DORMANCIES)}, at ${slotIn(`tin ${year}`)}`,
    `split ${id}, ${names.map(name => `${name} ${seeds} seeds`).join(', ')}`,
  ];
  const events = [];
  const chilled = random() < 0.3;
  const sown = start + 1 + (chilled ? 70 : 0);
  // A batch stands for 11 weeks, so its shelf is free again before the next one comes.
  const shelf = `shelf ${(week + (chilled ? 10 : 0)) % 13}`;
  const tooLong = below(50) === 0;
  for (const [index, name] of names.entries()) {
    const batch = `${id}/${name}`;
    const stock = `${stockOf(year, week)}${index === 0 ? '' : '-half'}`;
    const soak = name === names.at(-1) ? 'water' : random() < 0.5 ? `${stock} 10 mL` : `GA3 ${pick([100, 250, 500])} ppm`;
    const isLate = tooLong && index === 0;
    const lifted = isLate ? '23:30' : '18:45';
    events.push([start, '19:00', `soak ${batch} 19:00, ${soak}, ${isLate ? 30 : 24} h, at ${slotIn(`jar ${week}`)}`]);
    events.push([start + 1, lifted, `lift ${batch} ${lifted}`]);
    if (chilled) events.push([start + 1, '23:45', `chill ${batch} 23:45, 4 C, 10 weeks, at fridge box ${1 + below(4)}`]);
    events.push([sown, '23:50', `sow ${batch} 23:50, ${seeds} seeds, 18 C, in sieved compost, at ${slotIn(`${year} ${shelf}`)}`]);
    let [left, sprouted, up] = [seeds, 0, 0];
    for (let round = 1; round <= 10; round++) {
      // Untreated seed comes up by half, and later.
      const fresh = Math.min(left, below(soak === 'water' ? 2 : 5));
      left -= fresh;
      sprouted += fresh;
      const emerged = Math.min(sprouted - up, below(3));
      up += emerged;
      const rotted = left > 0 && below(12) === 0 ? 1 : 0;
      left -= rotted;
      const facts = [`${fresh}`, ...(emerged ? [`${emerged} emerged`] : []), ...(rotted ? [`${rotted} rotted`] : [])];
      events.push([sown + 7 * round, '', `count ${batch}, ${facts.join(', ')}`, below(6) === 0 ? pick(REMARKS) : undefined]);
    }
    if (up > 0) events.push([sown + 75, '', `pot ${batch}, ${up} seedlings, at bench ${1 + below(4)}`]);
    const dead = Math.min(left, below(3));
    events.push([sown + 77, '', `cut ${batch}, ${left - dead} fresh, ${dead} dead`]);
  }
  return { head, events };
}

function winterFile(winter, count, seed) {
  const random = randomFrom(seed);
  const year = 2010 + winter;
  const taken = new Map();
  const slotIn = place => {
    taken.set(place, (taken.get(place) ?? 0) + 1);
    return `${place} slot ${taken.get(place)}`;
  };
  const lots = Array.from({ length: count }, (_, n) => lotOf(`L${inId(year)}-${n + 1}`, winter, random, slotIn));
  const solutions = Array.from({ length: WEEKS }, (_, week) => {
    const [stock, made] = [stockOf(year, week), iso(Date.UTC(year, 9, 1) / DAY + 7 * week)];
    return [
      `stock ${stock} ${made}, GA3 4 g, purity 90 %, 7.2 L, keeps 1 year, at fridge door`,
      `dilute ${stock}-half ${made}, from ${stock} 2 L, to 4 L`,
    ];
  });
  const lines = [
    `# Winter ${year}/${String(year + 1).slice(2)}`, '# Invented from end to end.', '', '# Solutions', '',
    ...solutions.flat(),
    '', `# Seed of ${year}`, '', ...lots.flatMap(({ head }) => head), '', '# The diary',
  ];
  const events = lots.flatMap(lot => lot.events).sort(([a, x], [b, y]) => a - b || (x < y ? -1 : x > y ? 1 : 0));
  let today;
  for (const [day, , line, remark] of events) {
    if (day !== today) lines.push('', `day ${iso(day)}`);
    today = day;
    lines.push(line, ...(remark ? [`  ${remark}`] : []));
  }
  return lines;
}

/**
 * Files of about so many lines in all, as [{ name, text }]; the first of them has the limits too. A lot has about 40
 * lines, and of every fiftieth one batch lies too long in its soak.
 */
export function generate(lines, files = 10, seed = 1) {
  // A try with few lots tells how many lines a lot takes.
  const perLot = winterFile(0, 100, seed).length / 100;
  const count = Math.max(1, Math.round(lines / files / perLot));
  return Array.from({ length: files }, (_, winter) => {
    const limits = winter === 0 ? ['zone Europe/Vienna', 'limit soak, 24 h', 'limit GA3, 1000 ppm', 'limit GA3, 500 ppm, for Primula', ''] : [];
    const text = [...limits, ...winterFile(winter, count, seed + winter)].join('\n');
    return { name: `${2010 + winter}.germ`, text: `${text}\n` };
  });
}

/** The same in one file: one winter of a nursery with very many lots. */
export function journalText(lines, seed = 1) {
  return generate(lines, 1, seed)[0].text;
}

/** Something is wrong with it, whatever else the journal says. */
export const MISTAKE = 'sowed L10-1 2010-10-08';

/** With one mistake on the first screen: what somebody sees who opens the file. */
export function withMistake(text) {
  const lines = text.split('\n');
  lines.splice(7, 0, `${MISTAKE}, 12 seeds`);
  return lines.join('\n');
}

// node tests/bench/generate.mjs LINES FILES FOLDER
if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [lines, files, folder] = process.argv.slice(2);
  await mkdir(folder, { recursive: true });
  for (const { name, text } of generate(Number(lines), Number(files))) await writeFile(path.join(folder, name), text);
}
