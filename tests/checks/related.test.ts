/** Where a problem points beside its own line: what an editor shows below it, and what a reader jumps to. */
import { expect, test } from 'vitest';
import type { ProblemCode } from '../../server/src/model/problems.ts';
import { relatedIn } from './marked.ts';

const lot = 'lot L Iris alba, 60 seeds, collected 2025-09-14';
const stock = 'stock G1 2026-01-09, GA3 20 mg, 18 mL, keeps 2 weeks';
const packet = 'powder P1 2026-01-09, GA3 10 mg';
const rows: readonly (readonly [ProblemCode, string, readonly string[]])[] = [
  ['after-close', `${lot}\ndiscard L 2026-02-01\ncount L 2026-02-02, 1`, ['2 Closed here']],
  ['beyond-guides', `${lot}\nguide Iris, GA3 100 ppm, 12 h, source "a list"\nsoak L 2026-01-10 19:00, GA3 900 ppm, 12 h`, ['2 The guide']],
  ['beyond-guides', `${Array.from({ length: 5 }, (_, i) => `guide Iris, GA3 100 ppm, source "list ${i}"`).join('\n')}\n${lot}\nsoak L 2026-01-10 19:00, GA3 900 ppm`,
    ['1 The guide', '2 The guide', '3 The guide', '4 The guide']],
  ['count-before-sowing', `${lot}\nsow L 2026-02-01\ncount L 2026-01-20, 1`, ['2 The sowing']],
  ['count-before-sowing', `${lot}\ncount L 2026-01-20, 1`, []],
  ['count-exceeds-sown', `${lot}\nsow L 2026-01-11, 20 seeds\ncount L 2026-02-01, 21`, ['2 The 20 seeds']],
  ['dangerous-together', `${lot}\nsoak L 2026-01-10 19:00, peroxide 1 %, 1 h\nsoak L 2026-01-10 20:00, bleach 1 %, 1 h`, ['2 The soak before']],
  ['dose-above-limit', `${lot}\nlimit GA3, 500 ppm\nsoak L 2026-01-10 19:00, GA3 900 ppm, 24 h`, ['2 The limit']],
  ['dose-above-limit', `${lot}\nsoak L 2026-01-10 19:00, GA3 2900 ppm, 24 h`, []],
  ['draw-before-made', `${stock}\ndilute G2 2026-01-08, from G1 1 mL, to 20 mL`, ['1 Made up here']],
  ['draw-before-made', `${packet}\nstock G2 2026-01-08, from P1 5 mg, 20 mL`, ['1 The packet']],
  ['duplicate-definition', `${lot}\n${lot}`, ['1 The first one']],
  ['lift-missing', `${lot}\nsoak L 2026-01-10 19:00, GA3 500 ppm\nsow L 2026-01-12`, ['3 What came next']],
  ['more-left-than-possible', `${stock}\nleft G1 2026-01-10, 19 mL`, ['1 Made up here']],
  ['more-left-than-possible', `${packet}\nleft P1 2026-01-10, 11 mg`, ['1 The packet']],
  ['no-control', `${lot}\nsplit L, A 20 seeds, B 20 seeds\nsoak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h\n`
    + 'soak L/B 2026-01-10 19:00, GA3 250 ppm, 24 h\nsow L/A 2026-01-11 20:00\nsow L/B 2026-01-11 20:00', ['1 The lot']],
  ['replaces-itself', 'lot A Iris, replaces B\nlot B Iris, replaces C\nlot C Iris, replaces A', ['2 B is defined here', '3 C is defined here']],
  ['soak-too-long', `${lot}\nlimit soak, 20 h\nsoak L 2026-01-10 19:00, GA3 500 ppm\nlift L 2026-01-12 19:00`,
    ['4 The end of the soak', '2 The limit']],
  ['sown-before-collected', `${lot}\nsow L 2025-09-01`, ['1 The lot']],
  ['sown-exceeds-seeds', `${lot}\nsow L 2026-01-11, 40 seeds\nsow L 2026-01-12, 30 seeds`, ['1 Where its seeds come from', '2 Sown before']],
  ['split-exceeds-seeds', `${lot}\nsplit L, A 40 seeds, B 30 seeds`, ['1 The 60 seeds']],
  ['stock-expired', `${stock}\ndilute G2 2026-02-24, from G1 1 mL, to 20 mL`, ['1 Made up here']],
  ['stock-overdrawn', `${stock}\ndilute G2 2026-01-10, from G1 19 mL, to 20 mL`, ['1 Made up here']],
  ['stock-overdrawn', `${packet}\nstock G2 2026-01-10, from P1 11 mg, 20 mL`, ['1 The packet']],
  ['taken-after-empty', `${stock}\nnote G1 2026-01-10, used up\ndilute G2 2026-01-12, from G1 1 mL, to 20 mL`, ['2 The note']],
  ['total-as-new', `${lot}\nsow L 2026-01-11\ncount L 2026-02-01, 3\ncount L 2026-02-01, 3`, ['3 The first']],
  ['merge-conflict', `<<<<<<< ours\n${lot}\n=======\n${lot}, at tin\n>>>>>>> theirs`, ['3 The second version begins here', '5 It ends here']],
];

test.each(rows)('%s points to what it comes from (%#)', (code, source, places) => {
  expect(relatedIn(code, source)).toEqual(places);
});
