/** Journals whose lines have to do with each other, and what an editor does to them: edits, files, settings, time. */
import fc from 'fast-check';
import type { Journal } from '../../server/src/journal/journal.ts';
import { anyLine } from './arbitrary-lines.ts';

/** Few ids, so that the lines have to do with each other. */
const clashing = fc.constantFrom(
  'day 2026-01-10', 'day 2026-01-11', 'day 2026-02-30', 'day 2027-03-01', 'day',
  'lot L1 Primula rosea, 24 seeds, collected 2026-01-11', 'lot L1 Iris alba', 'lot L2 Iris alba, 10 seeds', 'lot L22 Iris alba',
  'split L1, A 12 seeds, B 12 seeds', 'split L1 2026-01-11 12:00, A 8 seeds, C 4 seeds', 'split L1/A, 1 6 seeds, 2 4 seeds',
  'split L2, A 5 seeds, B 5', 'split L1, A 1O seeds',
  'soak L1 08:00, G1 5 mL', 'soak L1/A 2026-01-10 19:00, GA3 500 ppm, 30 h', 'soak L1/A 19:00, G2 10 mL, 24 h',
  'soak L1/B, water, until 2026-01-11 19:00', 'soak L2, GA3 500 %, 24 h', 'soak L2/A, kelp 5 ppm, KNO3 0.2 %', 'soak L2, G3',
  'lift L1/A 20:00', 'lift L1', 'lift L2 2026-01-12 09:00',
  'sow L1, 12 seeds, 18 C', 'sow L1/A 2026-01-11, regime R1', 'sow L2/A, 5 seeds, regime R2', 'sow L1/A/1, 6 seeds', 'sow L2',
  'chill L1/A, 4 C, 90 days', 'warm L2, 20 C', 'scarify L1/B', 'move L1/A, at bag 1', 'move L1/B 2026-01-10, at bag 1 slot 1',
  'sow L2/A 2026-01-10, at Bag 1  slot 1', 'sow L1/A 2026-01-11 12:00, at bag 1 slot 1', 'chill L1, 4 C, at bag 1 slot 1',
  'count L1/A, 3', 'count L1/A 2026-02-01, =2 germinated, 1 emerged', 'count L1, 30', 'count L2/A 2028-01-01, 1 died', 'count L2, 0',
  'sow L2 2025-12-01', 'count L2 2025-12-20, 9', 'soak L22 2026-01-10, GA3 500 ppm, 24 h',
  'sow L1/A 2025-12-01', 'count L1/A 2025-12-20, =11 germinated', 'soak L1/B 2026-01-11, GA3 250 ppm, 24 h', 'lot L22 Primula rosea',
  'count L3, 1', 'count L1/D, 1', 'count L2/A 18/1/2026, 1',
  'cut L1/B, 12 fresh', 'cut L1/A 2026-03-01, 3 dead', 'discard L2', 'pot L1/A, 9 seedlings', 'apply L1/B, G2, 2 drops',
  'note L1, dry', 'note G1 2026-01-02, clear', 'note R1, slow', 'photo L2, a.png', 'due L1 2026-04-01, look', 'due L3, look',
  'stock G1 2026-01-09, GA3 20 mg, 20 mL', 'stock G1, GA3 200 mg, 20 mL', 'stock G2 2026-01-09, kelp 1 g, 1 L', 'stock GA3, GA3 1 mg, 1 mL',
  'dilute G2 2026-01-09, from G1 10 mL, to 20 mL', 'dilute G3 2026-01-09, from G2 10 mL, to 20 mL', 'dilute G1 2026-01-09, from G3 1 mL, to 2 mL',
  'dilute G2, from G2 1 mL, to 2 mL', 'dilute G3, from G1 20 mL, to 10 mL',
  'regime R1, warm 20 C 60 days', 'regime R2, chill 4 C 9 weeks', 'agent kelp, 76 g/mol, solubility 1 g/L', 'agent kelp, weed', 'agent GA3, 300 g/mol, solubility 1 ppm',
  'limit soak, 12 h', 'limit soak, 48 h, for Primula', 'limit GA3, 400 ppm, for Primula', 'limit GA3, 100 ppm', 'limit kelp, 1 ppm', 'limit kleb, 1 ppm',
  'limit stock, 1 day', 'limit count, 1 day', 'zone Europe/Vienna', 'zone America/Santiago', 'zone Nowhere', 'guide Primula, kelp 5 ppm, GA3 100 ppm, 12 h',
  'guide Iris, GA3 10 ppm, source "a list"', 'guide Iris alba, G1, 5 h',
  'lot L\u0406 Iris', 'count L1/\u0410, 1', 'lot L4 Ir\u0456s alba, at b\u0430g 1', 'guide \u0406ris, GA3 10 ppm', 'note LI, dry',
  '', '# Winter', '  a remark', 'L1 is a line', ', ', 'ü',
);
/** A line that has to do with others of its like, or any other. */
export const line = fc.oneof({ arbitrary: clashing, weight: 9 }, { arbitrary: anyLine, weight: 1 });
/** A journal that hangs together, of which some lines are left out. */
const sound = fc.subarray([
  'zone Europe/Vienna', 'limit soak, 12 h', 'guide Primula, GA3 100 ppm, 6 h', 'agent kelp, weed',
  'stock G1 2026-01-05, GA3 20 mg, 20 mL', 'dilute G2 2026-01-05, from G1 10 mL, to 20 mL', 'dilute G3, from G2 2 mL, to 4 mL',
  'lot L1 Primula rosea, 24 seeds', 'split L1, A 12 seeds, B 12 seeds', 'lot L2 Iris alba, 10 seeds', 'split L2, A 5 seeds',
  'day 2026-01-10', 'soak L1/A 19:00, G2 10 mL, at jar slot 1', 'soak L1/B 19:00, water, 14 h, at jar slot 1', 'soak L2/A 19:00, G3',
  'day 2026-01-11', 'lift L1/A 10:00', 'lift L2/A', 'sow L1/A 11:00, regime R1, at bag 1 slot 1', 'sow L1/B 11:00, at bag 1 slot 2',
  'sow L2/A, at bag 1 slot 1', 'day 2026-02-01', 'count L1/A, 3, 1 rotted', 'count L1/B, =2 germinated', 'count L2/A, 1 emerged',
  'split L1/B, 1 5 seeds, 2 4 seeds', 'move L1/B/1, at bag 1 slot 1', 'day 2026-03-01', 'cut L1/A, 8 fresh', 'discard L2/A, soft',
], { minLength: 20 });
const end = fc.constantFrom('\n', '\r\n');
/** The text of a file. */
export const text = fc.tuple(fc.oneof(fc.array(line, { maxLength: 14 }), sound), end)
  .map(([lines, each]) => lines.join(each));

/** With the marks that a merge leaves. */
const put = fc.oneof({ arbitrary: line, weight: 12 }, {
  arbitrary: fc.constantFrom('<<<<<<< ours', '||||||| base', '=======', '>>>>>>> theirs'), weight: 1,
});

const file = fc.constantFrom('a.germ', 'b.germ', 'c.germ');
const place = fc.nat(999);
/** Something that is done to a journal, to the clock or to what was published. */
export const step = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('insert' as const), file, place, text: put }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('replace' as const), file, place, text: put }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('delete' as const), file, place }) },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('type' as const), file, place, column: place, gone: fc.nat(3),
      text: fc.constantFrom('', '1', ' ', ',', '\n', '/A', '0', 'L', '#', '\r\n', ', 2 lost'),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('move' as const), file, place, to: place }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('set' as const), file, text }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('remove' as const), file }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('settings' as const), soakHours: fc.constantFrom(10, 24, undefined) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('time' as const), minutes: fc.nat(1439), days: fc.constantFrom(0, 0, 0, 1, 60) }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('check' as const) }) },
);
export type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

/** Does to the journal what a step says; nothing where it is about something else. */
export function doTo(journal: Journal, step: Step): void {
  switch (step.kind) {
    case 'set': return journal.set(step.file, step.text);
    case 'remove': return journal.remove(step.file);
    case 'settings':
      journal.settings = { soakHours: step.soakHours };
      return;
    case 'time': case 'check': return;
    default: return editLines(journal, step);
  }
}

function editLines(journal: Journal, step: Extract<Step, { place: number }>): void {
  const store = journal.files.get(step.file)?.text;
  if (!store) return journal.set(step.file, step.kind === 'insert' ? step.text : '');
  const number = step.place % store.lineCount;
  const start = { line: number, character: 0 };
  const end = { line: number + 1, character: 0 };
  switch (step.kind) {
    case 'insert': return journal.edit(step.file, { start, end: start }, `${step.text}\n`);
    case 'replace': return journal.edit(step.file, { start, end }, `${step.text}\n`);
    case 'delete': return journal.edit(step.file, { start, end }, '');
    case 'type': {
      const character = step.column % (store.at(number).text.length + 1);
      const gone = { line: number, character: character + step.gone };
      return journal.edit(step.file, { start: { line: number, character }, end: gone }, step.text);
    }
    case 'move': {
      const moved = store.text({ start, end });
      journal.edit(step.file, { start, end }, '');
      const to = { line: step.to % store.lineCount, character: 0 };
      return journal.edit(step.file, { start: to, end: to }, moved);
    }
  }
}
