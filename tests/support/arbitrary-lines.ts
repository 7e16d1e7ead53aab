/** Lines of journals for property tests: any record there can be, tidy and careless, and what people get wrong. */
import fc from 'fast-check';

/** A record as the formatter writes it, and the same as a hand in a hurry does. */
export interface RecordLine {
  readonly tidy: string;
  readonly loose: string;
}

/** What stands on a line. Blanks and commas are put between when it is written. */
type Part =
  | { readonly kind: 'fixed' | 'word' | 'number' | 'time'; readonly text: string }
  | { readonly kind: 'unit'; readonly text: string; readonly others: readonly string[] }
  | { readonly kind: 'comma' };

const comma: Part = { kind: 'comma' };
const fixed = (text: string): Part => ({ kind: 'fixed', text });
const word = (text: string): Part => ({ kind: 'word', text });
const number = (n: number | string): Part => ({ kind: 'number', text: String(n) });
const unit = (text: string, ...others: string[]): Part => ({ kind: 'unit', text, others });

const id = fc.constantFrom('VER-24', 'PRI_25', 'a', 'G1', 'Ö.1', '種-1', 'बीज');
const batchName = fc.constantFrom('A', 'b2', '1', 'Nord', '種', '1a');
const batch = fc.tuple(id, fc.array(batchName, { maxLength: 2 })).map(([lot, names]) => [lot, ...names].join('/'));
const plant = fc.constantFrom('Veratrum nigrum', "Primula  'Alba'", 'Crocus', '種子 🌱', 'Iris × hollandica', '"Iris, dwarf"');

const freeWord = fc.constantFrom(
  'own', 'garden', 'shelf', '3', '1,5', '"seed"', 'box', '🌱', '種子', "neighbour's", '3"', '(wet)', '4°C', '=', 'at', 'GA3', '-', 'a/b');
const blank = fc.constantFrom(' ', '  ', '\t');
/** Free text without a comma between words: no quotation mark at its start. */
const firstWord = fc.constantFrom('own', 'bag', '3', '種', "'x", '🌱');
const freeText = fc.tuple(firstWord, fc.array(fc.tuple(blank, freeWord), { maxLength: 3 })).map(([first, rest]) =>
  first + rest.map(([gap, next]) => gap + next).join(''));
const text = fc.oneof(freeText, freeText.map(inside => `"${inside.replaceAll('"', '')}, and more"`));
/** Behind the first comma of a `note`, anything goes. */
const note = fc.tuple(freeText, fc.constantFrom('', ', then 2,5 more', ' ,, ; "x', ', at , from'))
  .map(([start, end]) => start + end);

const whole = fc.integer({ min: 0, max: 200 });
const positive = fc.constantFrom('1', '2', '0.5', '1.50', '24', '007', '120');
const degrees = fc.constantFrom('4', '-18', '20/10', '20.5/-3', '0');
const two = (from: number, to: number) => fc.integer({ min: from, max: to }).map(n => String(n).padStart(2, '0'));
const day = fc.tuple(fc.integer({ min: 1990, max: 2030 }), two(1, 12), two(1, 28)).map(parts => parts.join('-'));
const date = day.map(fixed);
const time = fc.tuple(two(0, 23), two(0, 59)).map((parts): Part => ({ kind: 'time', text: parts.join(':') }));

const lasting = fc.tuple(positive, fc.constantFrom('day', 'week')).map(([n, name]) =>
  [number(n), unit(Number(n) === 1 ? name : `${name}s`, name, `${name}s`.toUpperCase(), name === 'day' ? 'd' : 'wk')]);
const calendar = fc.tuple(fc.integer({ min: 1, max: 30 }), fc.constantFrom('month', 'year')).map(([n, name]) =>
  [number(n), unit(n === 1 ? name : `${name}s`, name, `${name}s`)]);
const clock = fc.tuple(positive.map(number), fc.constantFrom(
  unit('h', 'hr', 'hrs', 'hour', 'hours'), unit('min', 'mins', 'minute')));
const duration = fc.oneof(lasting, calendar, clock);
const volume = fc.tuple(positive.map(number), fc.constantFrom(
  unit('mL', 'ml', 'ML'), unit('L', 'l', 'litre', 'liters'), unit('uL', 'ul'), unit('µL', 'µl')));
const mass = fc.tuple(positive.map(number), fc.constantFrom(
  unit('mg'), unit('g', 'gram', 'grams'), unit('ug', 'mcg'), unit('µg'), unit('kg')));
const strength = fc.tuple(fc.oneof(positive, fc.constant('0')).map(number), fc.constantFrom(
  unit('ppm', 'PPM'), unit('mg/L', 'mg/l'), unit('g/L', 'g/l'), unit('%'), unit('mM'), unit('μM'),
  unit('mg/mL', 'mg/ml'), unit('mmol/L', 'mmol/l'), unit('µg/mL', 'µg/ml')));
const temperature = fc.tuple(degrees.map(number), fc.constantFrom(
  unit('C', 'c'), unit('°C', '° C', '℃'), unit('F', 'f'), unit('°F', '℉')));
const countWord = (...words: string[]) => fc.constantFrom(...words).map(each => unit(each, ...cases(each)));
const counted = (...words: string[]) => fc.tuple(whole.map(number), countWord(...words));

function cases(lower: string): string[] {
  return [lower.toUpperCase(), lower.charAt(0).toUpperCase() + lower.slice(1)];
}

type Fact = fc.Arbitrary<readonly Part[]>;

const led = (lead: string, rest: fc.Arbitrary<readonly Part[]>): Fact => rest.map(parts => [word(lead), ...parts]);
const worded = (lead: string): Fact => led(lead, text.map(each => [fixed(each)]));
const at = worded('at');
const agent = fc.constantFrom('GA3', 'ga4+7', 'G2', 'kelp').map(fixed);
const percent = fc.constantFrom('90', '97.5', '100').map(n => [number(n), unit('%')]);
const substance: Fact = fc.oneof(
  agent.map(name => [name]),
  fc.tuple(agent, strength).map(([name, amount]) => [name, ...amount]),
  fc.tuple(agent, percent).map(([name, amount]) => [name, ...amount, word('w/v')]),
  fc.tuple(agent, volume).map(([name, amount]) => [name, ...amount]),
  agent.map(name => [name, word('unmeasured')]),
);
const powder: Fact = fc.tuple(agent, mass, fc.boolean(), whole).map(([name, amount, halved, n]) =>
  [name, ...amount, ...(halved ? [word('halved'), number(n), unit('times', 'Times')] : [])]);
const stage: Fact = fc.tuple(fc.constantFrom('chill', 'warm'), temperature, duration, fc.boolean())
  .map(([lead, warmth, length, turned]) => [word(lead), ...(turned ? [...length, ...warmth] : [...warmth, ...length])]);
const seeds = counted('seeds', 'seed');
const count: Fact = fc.tuple(
  fc.boolean(), whole, countWord('germinated', 'emerged', 'leaf', 'rotted', 'died', 'leggy', 'abnormal'),
).map(([total, n, what]) => [number(total ? `=${n}` : n), what]);

interface Shape {
  readonly subject: fc.Arbitrary<readonly Part[]>;
  readonly dated?: 'own' | 'no';
  /** Facts of which some are taken, each once. */
  readonly some?: readonly Fact[];
  readonly first?: Fact;
}

const named = (name: fc.Arbitrary<string>) => name.map(each => [fixed(each)]);
const ofBatch = { subject: named(batch) };

const shapes: Readonly<Record<string, Shape>> = {
  lot: {
    subject: fc.tuple(id, plant).map(([lot, name]) => [fixed(lot), fixed(name)]),
    some: [
      seeds, worded('from'), worded('stored'), at,
      led('collected', fc.oneof(day, day.map(each => each.slice(0, 7)), day.map(each => each.slice(0, 4))).map(each => [fixed(each)])),
      led('replaces', id.map(each => [fixed(each)])),
      led('dormancy', fc.constantFrom('PD', 'MPD', 'PY+PD').map(each => [unit(each, each.toLowerCase())])),
    ],
  },
  split: {
    ...ofBatch,
    first: fc.tuple(batchName.map(fixed), seeds).map(([name, n]) => [name, ...n]),
    some: [fc.tuple(fc.constant(fixed('Z9')), whole.map(number))],
  },
  soak: {
    ...ofBatch, first: substance,
    some: [duration, volume, at, led('until', fc.tuple(date, time)), fc.constant([fixed('KNO3'), number('0.2'), unit('%')])],
  },
  lift: ofBatch, scarify: { ...ofBatch, some: [note.map(each => [fixed(each)])] },
  sow: { ...ofBatch, some: [seeds, temperature, at, worded('in'), led('regime', named(id))] },
  chill: { ...ofBatch, some: [temperature, duration, at] }, warm: { ...ofBatch, some: [temperature, duration, at] },
  move: { ...ofBatch, first: at },
  apply: { ...ofBatch, first: substance, some: [counted('drops', 'drop'), volume, counted('seedlings', 'seedling')] },
  count: { ...ofBatch, first: fc.oneof(count, whole.map(n => [number(n)])), some: [fc.constant([number(0), unit('lost', 'LOST')])] },
  cut: { ...ofBatch, first: counted('fresh', 'hard'), some: [counted('dead'), counted('empty')] },
  pot: { ...ofBatch, some: [counted('seedlings'), at] },
  discard: { ...ofBatch, some: [note.map(each => [fixed(each)])] },
  note: { ...ofBatch, first: note.map(each => [fixed(each)]) },
  photo: { ...ofBatch, first: named(fc.constantFrom('photos/a b.jpg', '3.jpg', '2026-01-19.png', '"a, b.jpg"')) },
  due: { ...ofBatch, dated: 'own', first: note.map(each => [fixed(each)]) },
  stock: {
    subject: named(id), first: powder,
    some: [
      led('purity', fc.tuple(percent, fc.constantFrom([], [word('acid')])).map(([n, form]) => [...n, ...form])),
      volume, led('keeps', calendar), at,
    ],
  },
  dilute: {
    subject: named(id),
    first: fc.tuple(id.map(fixed), volume, volume).map(([stock, taken, made]) =>
      [word('from'), stock, ...taken, comma, word('to'), ...made]),
    some: [led('keeps', calendar), at],
  },
  left: { subject: named(id), first: fc.oneof(volume, mass) },
  regime: { subject: named(id), dated: 'no', first: stage, some: [stage, stage] },
  guide: { subject: named(plant), dated: 'no', first: substance, some: [duration, stage, worded('source')] },
  agent: {
    subject: named(fc.constantFrom('kelp', 'BA+X')), dated: 'no',
    some: [fc.constant([number('76.117'), unit('g/mol')]), led('solubility', strength)],
  },
  zone: { subject: named(fc.constantFrom('Europe/Vienna', 'Etc/GMT+5', 'UTC')), dated: 'no' },
};

/** The commas that stand before the facts; the facts that a record needs come first. */
function partsOf(keyword: string, shape: Shape): fc.Arbitrary<Part[]> {
  const moment = fc.tuple(
    shape.dated === 'no' ? fc.constant([]) : shape.dated === 'own' ? fc.tuple(date) : fc.oneof(fc.tuple(date), fc.constant([])),
    shape.dated === 'no' ? fc.constant([]) : fc.oneof(fc.tuple(time), fc.constant([])),
  ).map(([dates, times]) => [...dates, ...times]);
  const some: fc.Arbitrary<readonly (readonly Part[])[]> = fc.subarray([...(shape.some ?? [])])
    .chain(facts => fc.tuple(...facts));
  const first: fc.Arbitrary<readonly (readonly Part[])[]> = shape.first ? fc.tuple(shape.first) : fc.constant([]);
  return fc.tuple(shape.subject, moment, first, some).map(([subject, when, needed, facts]) =>
    [word(keyword), ...subject, ...when, ...[...needed, ...facts].flatMap(fact => [comma, ...fact])]);
}

const limits = fc.oneof(
  fc.tuple(fc.constantFrom('soak', 'stock', 'count').map(word), duration)
    .map(([of, length]) => [word('limit'), of, comma, ...length]),
  fc.tuple(agent, strength, fc.boolean()).map(([of, dose, genus]) =>
    [word('limit'), of, comma, ...dose, ...(genus ? [comma, word('for'), fixed('Primula')] : [])]),
);

function write(parts: readonly Part[], choices: readonly number[]): RecordLine {
  let tidy = '';
  let loose = '';
  let turn = 0;
  const choose = <T>(options: readonly T[]): T => options[choices[turn++ % choices.length]! % options.length]!;
  for (const [index, part] of parts.entries()) {
    if (part.kind === 'comma') {
      tidy += ',';
      loose += choose(['', '', ' ', '\t']) + ',';
      continue;
    }
    const before = parts[index - 1];
    const careless = carelessly(part, choose);
    if (before) tidy += ' ';
    // Between digits a comma without a blank is one of decimals.
    if (before?.kind === 'comma') loose += choose(/\d ?,$/.test(loose) && /^[=\d-]/.test(careless) ? [' ', '  '] : ['', ' ', '\t ']);
    else if (before?.kind === 'number' && part.kind === 'unit') loose += choose(['', ' ', '  ']);
    else if (before) loose += choose([' ', '  ', '\t']);
    tidy += part.text;
    loose += careless;
  }
  return { tidy, loose: loose + choose(['', ' ', '\t ']) };
}

function carelessly(part: Exclude<Part, { kind: 'comma' }>, choose: <T>(options: readonly T[]) => T): string {
  switch (part.kind) {
    case 'word': return choose([part.text, ...cases(part.text)]);
    case 'unit': return choose([part.text, ...part.others]);
    case 'time': return choose([part.text, part.text.replace(/^0/, '')]);
    case 'number': return choose([part.text, part.text.replace('=', '= ')]);
    case 'fixed': return part.text;
  }
}

/** Any record that the format has, with facts of every shape; its ids may mean nothing. */
export const recordLine: fc.Arbitrary<RecordLine> = fc.tuple(
  fc.oneof(limits, date.map(when => [word('day'), when]), ...Object.entries(shapes).map(([keyword, shape]) => partsOf(keyword, shape))),
  fc.array(fc.nat(999), { minLength: 16, maxLength: 16 }),
).map(([parts, choices]) => write(parts, choices));

/** A record that something was done to: signs taken out, put in, doubled, cut off. */
export const brokenLine: fc.Arbitrary<string> = fc.tuple(
  recordLine,
  fc.constantFrom('', ',', ', ', '"', '=', '-', '/', '/A', '，', '1,5', ' 24', ' x', '%', '🌱', '\t', '\ud800', ' 19.1.2026', ' 25:00', 'T'),
  fc.nat(), fc.nat(6),
).map(([{ loose }, sign, where, gone]) => {
  const at = where % (loose.length + 1);
  return loose.slice(0, at) + sign + loose.slice(at + gone);
});

/** Any line that a journal may hold. */
export const anyLine: fc.Arbitrary<string> = fc.oneof(
  recordLine.map(({ tidy }) => tidy), recordLine.map(({ loose }) => loose), brokenLine,
  fc.constantFrom('', ' ', '# Winter', '#', '  A remark, 3 of them.', '\tcount X, 3 ', '* not a line', '3 germinated'),
);
