/** Which problems have a fix: an example of each that has, the reason for each that has none. */
import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../../server/src/checks/problem-book.ts';
import { menders } from '../../../server/src/features/actions/mends/all.ts';
import { quickFixes } from '../../../server/src/features/actions/quick-fixes.ts';
import { problemKinds, type ProblemCode } from '../../../server/src/model/problems.ts';
import { at } from '../journals.ts';
import { applied, journalIn } from './applied.ts';

interface Mended {
  /** The last line has the problem; `L` and its batches `L/A` and `L/B` of 10 seeds are there. */
  readonly lines: string;
  /** What the last line becomes, or what is written above or below it. */
  readonly to: string;
}

interface Open {
  readonly because: string;
}

const lot = 'lot L Iris sibirica, 30 seeds, collected 2025-09-01\nsplit L, A 10 seeds, B 10 seeds\n';
const stock = 'stock G1 2026-01-02, GA3 20 mg, 20 mL\n';

const table: Readonly<Record<ProblemCode, Mended | Open>> = {
  'merge-conflict': {
    lines: '<<<<<<< a\nday 2026-01-03\nnote L, dry\n||||||| base\nday 2026-01-02\nnote L, dry\n=======\nday 2026-01-02\nnote L, dry\nnote L, wet\n>>>>>>> b',
    to: 'note L 2026-01-02, wet',
  },
  'unknown-line': { lines: '* it rained', to: '  * it rained' },
  'unknown-keyword': { lines: 'sowed L 2026-01-10', to: 'sow L 2026-01-10' },
  'missing-subject': { because: 'nobody knows which' },
  'bad-id': { lines: 'count L/ 2026-01-10, 0', to: 'count L 2026-01-10, 0' },
  'stray-text': { lines: 'sow L 2026-01-10, 5 seeds 18 C', to: 'sow L 2026-01-10, 5 seeds, 18 C' },
  'unknown-fact': { lines: 'sow L 2026-01-10, 5 sedes', to: 'sow L 2026-01-10, 5 seeds' },
  'repeated-fact': { lines: 'sow L 2026-01-10, 5 seeds, 6 seeds', to: 'sow L 2026-01-10, 5 seeds' },
  'missing-fact': { because: 'what was seen or done nobody else knows; completion offers what is possible' },
  'missing-agent': { lines: 'soak L 2026-01-10, GA3, 500 ppm', to: 'soak L 2026-01-10, GA3 500 ppm' },
  'empty-fact': { lines: 'sow L 2026-01-10,', to: 'sow L 2026-01-10' },
  'not-counted': { lines: 'sow L 2026-01-02\ncount L 2026-01-10, ', to: 'count L 2026-01-10, 0' },
  'bad-number': { lines: 'lot M Iris, 1 000 seeds', to: 'lot M Iris, 1000 seeds' },
  'decimal-comma': { lines: 'sow L 2026-01-10, 18,5 C', to: 'sow L 2026-01-10, 18.5 C' },
  'bad-unit': { lines: 'soak L 2026-01-10, GA3 500 pmm', to: 'soak L 2026-01-10, GA3 500 ppm' },
  'missing-unit': { lines: 'sow L 2026-01-10, 5', to: 'sow L 2026-01-10, 5 seeds' },
  'bad-value': { lines: 'dilute G2 2026-01-10, from 5 mL G1, to 10 mL', to: 'dilute G2 2026-01-10, from G1 5 mL, to 10 mL' },
  'impossible-date': { lines: 'sow L 2026-02-30', to: 'sow L 2026-02-28' },
  'day-first-date': { lines: 'sow L 10.1.2026', to: 'sow L 2026-01-10' },
  'bad-date': { lines: 'sow L 2026-1-10', to: 'sow L 2026-01-10' },
  'bad-time': { lines: 'sow L 2026-01-10 7.30 pm', to: 'sow L 2026-01-10 19:30' },
  'missing-date': { lines: 'sow L', to: 'sow L 2026-03-01' },
  'unclosed-quote': { lines: 'lot M Iris, from "a friend', to: 'lot M Iris, from "a friend"' },
  'unknown-lot': { lines: 'lot IRI-25 Iris\nnote L 2026-01-01, x\ncount IIR-25 2026-01-10, 0', to: 'count IRI-25 2026-01-10, 0' },
  'unknown-batch': { lines: 'sow L/C 2026-01-10, 5 seeds', to: 'split L, C 5 seeds' },
  'unknown-stock': {
    lines: 'stock strong 2026-01-02, GA3 20 mg, 20 mL\ndilute X 2026-01-10, from storng 5 mL, to 10 mL',
    to: 'dilute X 2026-01-10, from strong 5 mL, to 10 mL',
  },
  'unknown-packet': {
    lines: 'powder freezer-1 2026-01-02, GA3 1 g\nstock X 2026-01-10, from frezer-1 20 mg, 20 mL',
    to: 'stock X 2026-01-10, from freezer-1 20 mg, 20 mL',
  },
  'unknown-regime': { lines: 'regime woodland, chill 4 C\nsow L 2026-01-10, regime woodlnad', to: 'sow L 2026-01-10, regime woodland' },
  'unknown-agent': { lines: 'soak L 2026-01-10, GA4+77 5 ppm', to: 'soak L 2026-01-10, GA4+7 5 ppm' },
  'unknown-id': { lines: 'regime woodland, chill 4 C\nnote woodlnad 2026-01-10, x', to: 'note woodland 2026-01-10, x' },
  'unknown-zone': { lines: 'zone Europe/Viena', to: 'zone Europe/Vienna' },
  'replaces-itself': { lines: 'lot M Iris sibirica, 20 seeds, replaces M, from a friend', to: 'lot M Iris sibirica, 20 seeds, from a friend' },
  'duplicate-definition': { lines: 'lot L Iris', to: 'lot L-2 Iris' },
  'split-exceeds-seeds': { lines: 'split L, C 12 seeds', to: 'split L, C 10 seeds' },
  'sown-exceeds-seeds': { lines: 'sow L/A 2026-01-10, 12 seeds', to: 'sow L/A 2026-01-10, 10 seeds' },
  'nothing-left': { lines: 'split L/A, 1 10 seeds\nsow L/A 2026-01-10', to: 'sow L/A/1 2026-01-10' },
  'count-exceeds-sown': {
    lines: 'sow L/A 2026-01-10\ncount L/A 2026-01-20, 6\ncount L/A 2026-01-27, 8', to: 'count L/A 2026-01-27, =8',
  },
  'more-than-germinated': { lines: 'sow L/A 2026-01-10\ncount L/A 2026-01-20, 2 died', to: 'count L/A 2026-01-20, 2 rotted' },
  'total-falls': { lines: 'sow L/A 2026-01-10\ncount L/A 2026-01-20, =3\ncount L/A 2026-01-27, =2', to: 'count L/A 2026-01-27, 2' },
  'cut-does-not-add-up': { lines: 'sow L/A 2026-01-10\ncut L/A 2026-02-20, 8 dead', to: 'cut L/A 2026-02-20, 10 dead' },
  'end-before-start': {
    lines: 'soak L 2026-01-10 19:00, water, until 2026-01-10 07:00', to: 'soak L 2026-01-10 19:00, water, until 2026-01-11 07:00',
  },
  'after-close': { lines: 'sow L 2025-10-01\ndiscard L 2026-01-20\ncount L 2027-01-04, 0', to: 'count L 2026-01-04, 0' },
  'count-in-future': { lines: 'sow L 2025-10-01\ncount L 2027-01-10, 0', to: 'count L 2026-01-10, 0' },
  'lift-without-soak': { lines: 'soak L/A 2026-01-10, water\nlift L/B 2026-01-11', to: 'lift L/A 2026-01-11' },
  'impossible-dilution': {
    lines: `${stock}dilute G2 2026-01-10, from G1 20 mL, to 10 mL`, to: 'dilute G2 2026-01-10, from G1 10 mL, to 20 mL',
  },
  'total-below-parts': {
    lines: `${stock}soak L 2026-01-10, G1 5 mL, water 10 mL, 12 mL, 24 h`, to: 'soak L 2026-01-10, G1 5 mL, water 10 mL, 15 mL, 24 h',
  },
  'dangerous-together': { because: 'whether the seed was rinsed between the two only the grower knows' },
  'disinfectant-too-long': { because: 'the seed has to be lifted, or the time is another one' },
  'unit-slip': { lines: 'chill L 2026-01-10, 39 C, 90 days', to: 'chill L 2026-01-10, 39 F, 90 days' },
  'volume-missing': { lines: `${stock}soak L 2026-01-10, G1, 20 mL, 24 h`, to: 'soak L 2026-01-10, G1 20 mL, 20 mL, 24 h' },
  'strengths-disagree': { because: 'which of the two is true only the bottle tells' },
  'stock-overdrawn': {
    lines: `${stock}dilute G2 2026-01-10, from G1 25 mL, to 50 mL`, to: 'dilute G2 2026-01-10, from G1 20 mL, to 50 mL',
  },
  'draw-before-made': {
    lines: `${stock}dilute G2 2025-01-10, from G1 5 mL, to 10 mL`, to: 'dilute G2 2026-01-10, from G1 5 mL, to 10 mL',
  },
  'powder-by-volume': {
    lines: 'powder P1 2026-01-02, GA3 1 g\nsoak L 2026-01-10, P1 5 mL, 20 mL', to: 'soak L 2026-01-10, P1 5 mg, 20 mL',
  },
  'taken-after-empty': { because: 'the date, the name or the note may be wrong; only the grower knows what is in the bottle' },
  'left-in-wrong-unit': { lines: `${stock}left G1 2026-01-10, 5 mg`, to: 'left G1 2026-01-10, 5 mL' },
  'more-left-than-possible': { because: 'any of the amounts may be the wrong one' },
  'soak-too-long': { lines: 'soak L 2026-02-20 19:00, water', to: 'lift L 2026-03-01' },
  'lift-missing': { lines: 'soak L 2026-01-10, water\nsow L 2026-01-11', to: 'lift L 2026-01-11' },
  'dose-above-limit': { because: 'the number or the stock may be wrong, or it is meant; no dose is changed for the grower' },
  'above-solubility': { because: 'number or unit may be wrong; the bottle tells' },
  'stock-expired': { because: 'a fresh one is made up, not written' },
  'strength-of-stock': {
    lines: `${stock}soak L 2026-01-10, G1 500 ppm, 24 h`, to: 'soak L 2026-01-10, GA3 500 ppm, 24 h',
  },
  'apply-exceeds-seedlings': { because: 'the number may be wrong, or a count is missing' },
  'strength-slip': { lines: 'soak L 2026-01-10, GA3 500 %', to: 'soak L 2026-01-10, GA3 500 ppm' },
  'nothing-held-back': { because: 'seed has to be kept back, before it is soaked' },
  'count-before-sowing': { lines: 'sow L 2025-10-10\ncount L 2025-01-10, 0', to: 'count L 2026-01-10, 0' },
  'sown-before-collected': { lines: 'sow L 2025-01-10', to: 'sow L 2026-01-10' },
  'slot-taken': { because: 'a look into the bag tells where each of them lies' },
  'look-alike': { lines: 'note L 2026-01-09, dry\nnote L/\u0410 2026-01-10, dry', to: 'note L/A 2026-01-10, dry' },
  'no-control': { because: 'untreated seed has to be sown' },
  'ready-untreated': { because: 'it is the grower’s to decide' },
  'split-too-small': { because: 'the seed is divided and treated' },
  'beyond-guides': { because: 'it is the grower’s to decide' },
  'strength-missing': { lines: 'soak L 2026-01-10, GA3', to: 'soak L 2026-01-10, GA3 unmeasured' },
  'stock-near-expiry': { because: 'a fresh one is made up, not written' },
  'year-slip': { lines: 'day 2026-01-02\nday 2025-01-10\nday 2026-01-20', to: 'day 2026-01-10' },
  'limit-twice': { lines: 'limit GA3, 500 ppm\nlimit GA3, 1000 ppm', to: 'limit GA3, 500 ppm' },
  'far-ahead': { lines: 'sow L/A 2062-01-10', to: 'sow L/A 2026-01-10' },
  'not-beforehand': {
    lines: 'sow L/A 2026-01-10\ncount L/A 2026-01-20, 1\njudge L/A 2026-01-21, on 2026-04-10',
    to: 'due L/A 2026-04-10, judge the trial',
  },
  'total-as-new': {
    lines: 'sow L/A 2026-01-10\ncount L/A 2026-01-20, 1\ncount L/A 2026-01-22, 2\ncount L/A 2026-01-24, 3\ncount L/A 2026-01-26, 3',
    to: 'count L/A 2026-01-26, =3',
  },
  'no-recent-count': { because: 'somebody has to look' },
};

/** For each fix of the problems with a code the lines that are there then. */
function fixesOf(code: ProblemCode, lines: string): string[][] {
  const journal = journalIn({ 'a.germ': `${lot}${lines}\nnote L 2026-01-01, the end\n` });
  const now = at('2026-03-01');
  const book = new ProblemBook(journal);
  book.update(now);
  const found = book.of('a.germ').filter(({ problem }) => problem.code === code);
  expect(found.length, `${code} is there`).toBeGreaterThan(0);
  return quickFixes(found, 0, Infinity, { journal, file: 'a.germ', now })
    .map(({ edits }) => applied(journal, edits)['a.germ']!.split('\n'));
}

describe('a problem', () => {
  const codes = Object.keys(problemKinds) as ProblemCode[];
  test.each(codes.filter(code => 'to' in table[code]))('with a fix: %s', code => {
    const { lines, to } = table[code] as Mended;
    const fixes = fixesOf(code, lines);
    expect(fixes.some(fixed => fixed.includes(to)), JSON.stringify(fixes)).toBe(true);
  });

  test.each(codes.filter(code => 'because' in table[code]))('without a fix says what to do: %s', code => {
    expect(problemKinds[code].advice).not.toBe('');
    expect(menders[code]).toBeUndefined();
  });
});
