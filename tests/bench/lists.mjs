// Journals that are long in one way alone: so many of one thing, and little else. Each shows whether something that
// goes through all of them does so for each of them.
const DAY = 86_400_000;
const iso = day => new Date(Date.UTC(2000, 0, 1) + day * DAY).toISOString().slice(0, 10);
const times = (n, line) => Array.from({ length: n }, (_, i) => line(i)).join('\n');
/** Days of ten years, over and over. */
const dayOf = i => iso(i % 3650);

export const lists = {
  'splits of one lot': n => `lot L Iris, ${2 * n} seeds\n${times(n, i => `split L, B${i} 1 seed`)}`,
  'batches of one split': n => `lot L Iris, ${2 * n} seeds\nsplit L, ${Array.from({ length: n }, (_, i) => `B${i} 1 seed`).join(', ')}`,
  'sown batches of one lot': n => `lot L Iris, ${2 * n} seeds\n${times(Math.ceil(n / 3), i => `split L, B${i} 20 seeds\nsow L/B${i} ${dayOf(i)}, 20 seeds\ncount L/B${i} ${dayOf(i + 30)}, 3`)}`,
  'counts of one batch': n => `lot L Iris, ${n} seeds\nsow L 2000-01-01, ${n} seeds\n${times(n, i => `count L ${dayOf(i)}, ${i % 4 ? 0 : 1}`)}`,
  'soaks of one batch in jars': n => `lot L Iris, ${n} seeds\n${times(n, i => `soak L ${dayOf(i)} 10:00, GA3 500 ppm, 2 h, at jar ${i}`)}`,
  'soaks of one batch': n => `lot L Iris, ${n} seeds\n${times(n, i => `soak L ${dayOf(i)} 10:00, GA3 500 ppm, 2 h`)}`,
  'stages of one batch': n => `lot L Iris, ${n} seeds\nsow L 2000-01-01\n${times(n, i => `${i % 2 ? 'chill' : 'warm'} L ${dayOf(i)}, 4 C, 30 days`)}`,
  'moves of one batch': n => `lot L Iris, ${n} seeds\nsow L 2000-01-01\n${times(n, i => `move L ${dayOf(i)}, at tray ${i}`)}`,
  'draws of one stock': n => `stock S 2000-01-01, GA3 1000 ppm, ${n} L\nlot L Iris, 100 seeds\n${times(n, i => `soak L ${dayOf(i)} 10:00, S 1 mL, 2 h`)}`,
  'dilutions, one from the other': n => `stock S0 2000-01-01, GA3 1000 ppm, 1 L\n${times(Math.ceil(n / 20), i => `dilute S${i + 1} 2000-01-02, from S${i} 10 mL, to 20 mL`)}`,
  'stocks': n => times(n, i => `stock S${i} 2000-01-01, GA3 1000 ppm, 1 L`),
  'lots in one place': n => times(n, i => `lot L${i} Iris number${i}, 20 seeds, at tin 1`),
  'lots in slots of one bag': n => times(n, i => `lot L${i} Iris number${i}, 20 seeds, at bag 1 slot ${i}`),
  'lots of one plant': n => times(Math.ceil(n / 4), i => `lot L${i} Iris sibirica, 20 seeds\nsow L${i} ${dayOf(i)}, 20 seeds\ncount L${i} ${dayOf(i + 30)}, 3`),
  'trials of one plant': n => times(Math.ceil(n / 8), i => [
    `lot L${i} Iris sibirica, 60 seeds`, `split L${i}, A 20 seeds, B 20 seeds`,
    `soak L${i}/A ${iso(i)} 10:00, GA3 500 ppm, 24 h`, `soak L${i}/B ${iso(i)} 10:00, water, 24 h`,
    `sow L${i}/A ${iso(i + 1)}, 20 seeds`, `sow L${i}/B ${iso(i + 1)}, 20 seeds`,
    `count L${i}/A ${iso(i + 30)}, 9`, `count L${i}/B ${iso(i + 30)}, 3`,
  ].join('\n')),
  'lots, each replacing the one before': n => `lot L0 Iris\n${times(n, i => `lot L${i + 1} Iris, replaces L${i}`)}`,
  'one id, written again and again': n => times(n, () => 'lot L Iris, 20 seeds'),
  'ids that nobody defined': n => times(n, i => `count X${i} 2000-01-01, 3`),
  'ids that differ in one letter': n => `${times(Math.ceil(n / 2), i => `lot IRIS-${i}a Iris, 5 seeds`)}\n${times(Math.ceil(n / 2), i => `sow IRIS-${i}b 2000-01-01`)}`,
  'lines with a mistake': n => times(n, () => 'sowed L 2000-13-01, 5 sedes'),
  'guides': n => times(n, i => `guide Iris number${i}, GA3 500 ppm, 24 h`),
  'limits': n => times(n, i => `limit GA3, ${i + 1} ppm`),
  'regimes': n => times(n, i => `regime r${i}, chill 4 C 60 days, warm 18 C 30 days`),
  'agents': n => times(n, i => `agent a${i}, 100 g/mol`),
  'days': n => times(n, i => `day ${iso(i)}`),
  'days with a count each': n => `lot L Iris, ${n} seeds\nsow L 2000-01-01, ${n} seeds\n${times(Math.ceil(n / 2), i => `day ${iso(i + 1)}\ncount L, 1`)}`,
  'remarks on one record': n => `lot L Iris\n${times(n, () => '  Nothing yet, firm inside.')}`,
  'comments': n => times(n, () => '# the cold bench'),
  'empty lines': n => '\n'.repeat(n),
  'marks of conflicts': n => times(Math.ceil(n / 5), i => `<<<<<<< ours\nlot A${i} Iris\n=======\nlot B${i} Iris\n>>>>>>> theirs`),
  'facts in one line': n => `lot L Iris${', 5 seeds'.repeat(n)}`,
  'words in one line': n => `lot L ${'iris '.repeat(n)}`,
  'letters in one word': n => `lot ${'x'.repeat(20 * n)} Iris`,
  'letters with accents in one id': n => `lot ${'é'.repeat(4 * n)} Iris`,
  'digits in one id': n => `lot ${'1'.repeat(4 * n)}! Iris, 5 seeds`,
  'points behind one address': n => `lot L Iris\nnote L 2000-01-01, see https://example.org/${'.'.repeat(4 * n)}x`,
  'photos of one batch': n => `lot L Iris, 9 seeds\nsow L 2000-01-01\n${times(n, i => `photo L ${dayOf(i)}, tray ${i}.jpg`)}`,
  'notes on one batch': n => `lot L Iris, 9 seeds\nsow L 2000-01-01\n${times(n, i => `note L ${dayOf(i)}, firm`)}`,
  'characters in one remark': n => `lot L Iris\n  ${'Nothing yet. '.repeat(4 * n)}`,
  'mistakes in one line': n => `lot L Iris${', 5 sedes'.repeat(n)}`,
};
