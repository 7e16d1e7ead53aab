import { describe, expect, test } from 'vitest';
import { planActions } from '../../../server/src/features/actions/plan.ts';
import { parse } from '../../../server/src/syntax/parse.ts';
import { variantsOf } from '../../support/fixture.ts';
import { at, cursorOf, journalOf } from '../journals.ts';

/** The actions on the line marked `here`, the same in all variants but for the ends of lines and emoji. */
function plans(source: string, now = '2026-02-10') {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const { file, position } = cursorOf(fixture, 'here');
    return planActions(journalOf(fixture), file, position, at(now));
  });
  const plain = (actions: typeof first) => actions!.map(({ title, edits }) => [title, ...edits[0]!.text.split(/\r?\n/).slice(1)]);
  for (const other of others) expect(plain(other)).toEqual(plain(first));
  for (const { edits } of first!) for (const line of edits[0]!.text.split('\n')) expect(parse(line).problems).toEqual([]);
  return plain(first);
}

const REGIME = 'regime woodland, warm 20 C 12 weeks, chill 4 C 14 weeks, warm 18 C 12 weeks';

describe('the plan of a sowing in a regime', () => {
  test('is a reminder for each stage to come and for the end', () => {
    expect(plans(`
      ${REGIME}
      lot PAR-26 Paris quadrifolia, 20 seeds
      sow PAR-26 2026-01-01, 20 seeds, regime woodland
          ^^^^^^ here
        Into the warm cupboard.
    `)).toEqual([[
      'Write the plan of regime woodland for PAR-26',
      'due PAR-26 2026-03-26, chill 4 C 14 weeks, regime woodland',
      'due PAR-26 2026-07-02, warm 18 C 12 weeks, regime woodland',
      'due PAR-26 2026-09-24, regime woodland ends',
    ]]);
  });

  test('goes by what was written since, and writes nothing that stands there already', () => {
    expect(plans(`
      ${REGIME}
      lot PAR-26 Paris quadrifolia, 20 seeds
      sow PAR-26 2026-01-01, 20 seeds, regime woodland
          ^^^^^^ here
      chill PAR-26 2026-04-02, 4 C
      due PAR-26 2026-10-01, regime woodland ends
    `, '2026-04-12')).toEqual([[
      'Write the plan of regime woodland for PAR-26', 'due PAR-26 2026-07-09, warm 18 C 12 weeks, regime woodland',
    ]]);
  });

  test('is none where it was cut short or has no days, and begins today where it is late', () => {
    const sown = (regime: string, more = '', now = '2026-02-10') => plans(`
      ${regime}
      lot PAR-26 Paris quadrifolia, 20 seeds
      sow PAR-26 2026-01-01, 20 seeds, regime woodland
          ^^^^^^ here
      ${more}
    `, now);
    expect(sown(REGIME, 'discard PAR-26 2026-02-01, mould')).toEqual([]);
    expect(sown(REGIME, '', '2030-01-01')[0]![1]).toBe('due PAR-26 2030-01-01, chill 4 C 14 weeks, regime woodland');
    expect(sown('regime woodland, warm 20 C')).toEqual([]);
    expect(sown('regime other, warm 20 C 3 weeks')).toEqual([]);
  });
});

describe('a move', () => {
  const moved = (more: string, now?: string) => plans(`
    ${REGIME}
    lot PAR-26 Paris quadrifolia, 20 seeds
    sow PAR-26 2026-01-01, 20 seeds, regime woodland
    move PAR-26 2026-03-24, at fridge
         ^^^^^^ here
    ${more}
  `, now ?? '2026-04-12');

  test('may have begun the next stage: its record is offered, with the day of the move', () => {
    expect(moved('')).toEqual([
      ['Start chill 4 C 14 weeks of regime woodland with this move', 'chill PAR-26 2026-03-24, 4 C, 14 weeks'],
    ]);
  });

  test('offers nothing where the stage has its record, and before its day', () => {
    expect(moved('chill PAR-26 2026-03-26')).toEqual([]);
    expect(moved('chill PAR-26 2026-03-24')).toEqual([]);
    expect(moved('', '2026-03-23')).toEqual([]);
  });
});

describe('the plan of a regime', () => {
  test('is laid out as if it were begun today', () => {
    expect(plans(`
      ${REGIME}
             ^^^^^^^^ here
    `)).toEqual([[
      'Write the plan of regime woodland, starting today',
      'due woodland 2026-02-10, sow in regime woodland, warm 20 C 12 weeks',
      'due woodland 2026-05-05, chill 4 C 14 weeks',
      'due woodland 2026-08-11, warm 18 C 12 weeks',
      'due woodland 2026-11-03, regime woodland ends',
    ]]);
  });

  test('is none where a stage has no length', () => {
    expect(plans(`
      regime open, chill 4 C
             ^^^^ here
    `)).toEqual([]);
  });
});

describe('the plan back from a reminder', () => {
  const wanted = (text: string, now?: string, more = '') => plans(`
    ${REGIME}
    regime long, chill 4 C 3 years
    lot OLD-24 Paris quadrifolia, 20 seeds
    sow OLD-24 2024-01-01, 20 seeds
    count OLD-24 2024-02-01, 3
    count OLD-24 2024-02-22, 1 leaf
    lot PAR-26 Paris quadrifolia, 20 seeds
    ${more}
    due PAR-26 2027-05-01, ${text}
        ^^^^^^ here
  `, now);

  test('says for each regime that can still make it when to sow', () => {
    expect(wanted('ready for the fair')).toEqual([[
      'Plan back from 2027-05-01 in regime woodland: sow by 2026-08-08',
      'due PAR-26 2026-08-08, sow in regime woodland, warm 20 C 12 weeks',
      'due PAR-26 2026-10-31, chill 4 C 14 weeks',
      'due PAR-26 2027-02-06, warm 18 C 12 weeks',
    ]]);
    expect(wanted('ready for the fair', '2026-08-09')).toEqual([]);
  });

  test('adds the days to a first leaf of the own records where leaves are wanted', () => {
    expect(wanted('First leaves')[0]![0]).toBe(
      'Plan back from 2027-05-01 in regime woodland: sow by 2026-07-18 (21 days to a first leaf, from 1 batch)');
  });

  test('is named by what it is, the end of the regime, where nothing says how long leaves take', () => {
    expect(plans(`
      ${REGIME}
      lot IRI-26 Iris alba, 20 seeds
      due IRI-26 2027-05-01, a leaf at last
          ^^^^^^ here
    `)[0]![0]).toBe(
      'Plan back from 2027-05-01 in regime woodland: sow by 2026-08-08, so that it ends then (days to a first leaf unknown)');
  });

  test('comes with the soak of each guide for the plant too, as long as the seed was not soaked', () => {
    const guided = (more = '') => plans(`
      ${REGIME}
      guide Iris, GA3 100 ppm, 36 h, source "Bulletin 7"
      guide Iris alba, chill 4 C 9 weeks, GA3 500 ppm, 12 h, source "after the cold"
      lot IRI-26 Iris alba, 20 seeds
      ${more}
      due IRI-26 2027-05-01, ready for the fair
          ^^^^^^ here
    `).map(([title, first]) => [title, first]);
    expect(guided()).toEqual([
      ['Plan back from 2027-05-01 in regime woodland: sow by 2026-08-08', 'due IRI-26 2026-08-08, sow in regime woodland, warm 20 C 12 weeks'],
      [
        'Plan back from 2027-05-01 in regime woodland: soaked for 36 h (Bulletin 7) from 2026-08-06, sown by 2026-08-08',
        'due IRI-26 2026-08-06, soak 36 h, to be sown on 2026-08-08',
      ],
    ]);
    expect(guided('soak IRI-26 2026-02-01, water, 24 h')).toHaveLength(1);
  });

  test('is none for seed that is sown, and for a day that has come', () => {
    expect(wanted('leaves', '2026-02-10', 'sow PAR-26 2026-02-01, 20 seeds')).toEqual([]);
    expect(wanted('leaves', '2027-05-01')).toEqual([]);
  });
});
