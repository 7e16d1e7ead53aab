import { describe, expect, test } from 'vitest';
import { roomOf } from '../../server/src/trials/surroundings.ts';
import { contest, twoBatches } from './helpers.ts';

describe('the places of two sides', () => {
  test('are told apart by their words, not by vessels and numbers', () => {
    expect(['heated mat tray 4', 'Cold Frame', 'tray 4', 'bag 3 slot 1', 'fridge box 2', 'shelf 5', 'frame box 12 by the door', 'upper shelf', 'Top  left shelf 3', 'fridge, lower drawer', 'lower greenhouse'].map(roomOf))
      .toEqual(['heated mat', 'cold frame', undefined, undefined, 'fridge', 'shelf', 'frame by the door', 'shelf', 'shelf', 'fridge, drawer', 'lower greenhouse']);
  });

  test('are named where one lay warmer, and nothing is put down to the soak', () => {
    const found = contest(twoBatches({ a: ', at heated mat', b: ', at cold frame' }));
    expect(found).toMatchObject({ alsoDiffers: ['place (heated mat against cold frame)'], verdict: { rule: 'more-differs' } });
    expect(found.verdict.sentence).toContain('but the sides also differ in place (heated mat against cold frame)');
    const moved = twoBatches({ a: ', at shelf 5 slot 1', b: ', at shelf 5 slot 2' })
      .replace('count L/A', 'move L/A 2026-01-20, at heated mat\n    count L/A');
    expect(contest(moved).alsoDiffers).toEqual(['place (shelf, then heated mat against shelf)']);
    const back = moved.replaceAll('shelf 5 slot 1', 'mat').replaceAll('shelf 5 slot 2', 'heated mat');
    expect(contest(back).alsoDiffers).toEqual(['place (mat, then heated mat against heated mat)']);
    const other = twoBatches({ a: ', at shelf', b: ', at shelf' }).replace('count L/B', 'move L/B 2026-01-20, at heated mat\n    count L/B');
    expect(contest(other).alsoDiffers).toEqual(['place (shelf against shelf, then heated mat)']);
    const both = other.replace('count L/A', 'move L/A 2026-01-20, at shed\n    count L/A');
    expect(contest(both).alsoDiffers).toEqual(['place (shelf, then shed against shelf, then heated mat)']);
  });

  test('are no matter where they differ by number, or after the counts', () => {
    for (const [a, b] of [[', at tray 4', ', at tray 5'], [', at bag 3 slot 1', ', at bag 4 slot 1'], [', at frame', ', at Frame 2'], [', at upper shelf', ', at lower shelf']] as const) {
      expect(contest(twoBatches({ a, b })), a).toMatchObject({ alsoDiffers: [], remarks: [] });
    }
    const later = twoBatches({ a: ', at frame', b: ', at frame' }).replace('discard L/A', 'move L/A 2026-02-10, at mat\n    discard L/A');
    expect(contest(later).alsoDiffers).toEqual([]);
    const pricked = twoBatches({ a: ', at frame', b: ', at frame' }).replace('count L/A', 'pot L/A 2026-02-01, 2 seedlings, at mat\n    count L/A');
    expect(contest(pricked).alsoDiffers).toEqual([]);
    const soaked = twoBatches({ soakA: 'GA3 500 ppm, 24 h, at kitchen', a: ', at frame', b: ', at frame' });
    expect(contest(soaked).alsoDiffers).toEqual([]);
  });

  test('are a remark where the same warmth was written for both', () => {
    expect(contest(twoBatches({ a: ', 15 C, at mat', b: ', 15 C, at frame' }))).toMatchObject({
      alsoDiffers: [], remarks: ['the sides were in different places: mat against frame'], verdict: { rule: 'more' },
    });
    expect(contest(twoBatches({ a: ', 15 C, at mat', b: ', at frame' })).alsoDiffers).toEqual(['place (mat against frame)']);
    const stages = twoBatches({ a: ', 15 C, at bench', b: ', 15 C, at bench' })
      .replace('count L/A', 'chill L/A 2026-01-20, 4 C, at fridge\n    count L/A').replace('count L/B', 'chill L/B 2026-01-20, 4 C, at shed\n    count L/B');
    expect(contest(stages)).toMatchObject({
      alsoDiffers: [], remarks: ['the sides were in different places: bench, then fridge against bench, then shed'],
    });
    expect(contest(stages.replaceAll('4 C, ', '')).alsoDiffers).toEqual(['place (bench, then fridge against bench, then shed)']);
  });
});

/** Two batches of 20, soaked for a day and sown alike; what is written next comes before the counts. */
const moved = (sown: string, ...lines: readonly string[]) => (
  twoBatches({ a: sown, b: sown }).replace('count L/A', `${lines.join('\n    ')}\n    count L/A`));

describe('the days that two sides spent in a room', () => {
  test('count as the same up to three days, whichever side went first', () => {
    for (const [a, b] of [['2026-01-20', '2026-01-23'], ['2026-01-23', '2026-01-20']] as const) {
      const source = moved(', at garage', `move L/A ${a}, at greenhouse`, `move L/B ${b}, at greenhouse`);
      expect(contest(source), a).toMatchObject({ alsoDiffers: [], remarks: [] });
    }
    // The other side followed a day after the look: it was not kept otherwise.
    expect(contest(moved(', at garage', 'move L/A 2026-02-09, at greenhouse', 'move L/B 2026-02-10, at greenhouse')).alsoDiffers).toEqual([]);
    expect(contest(moved(', at garage', 'move L/A 2026-02-09, at greenhouse')).alsoDiffers).toEqual(['place (garage, then greenhouse against garage)']);
  });

  test('differ where one side followed later, or came back sooner', () => {
    const garage = moved(', at garage', 'move L/A 2026-01-20, at greenhouse', 'move L/B 2026-01-24, at greenhouse');
    expect(contest(garage)).toMatchObject({
      alsoDiffers: ['place (garage, then from day 9 greenhouse, against garage, then from day 13 greenhouse)'], verdict: { rule: 'more-differs' },
    });
    const fridge = moved(', at bench', 'move L/A 2026-01-12, at fridge', 'move L/B 2026-01-12, at fridge', 'move L/B 2026-01-16, at bench', 'move L/A 2026-01-30, at bench');
    expect(contest(fridge).alsoDiffers)
      .toEqual(['place (bench, then from day 1 fridge, then from day 19 bench, against bench, then from day 1 fridge, then from day 5 bench)']);
  });

  test('count as a whole where the sides never met, whatever came after the look', () => {
    const soon = twoBatches({ a: ', at mat', b: ', at frame' }).replaceAll('2026-02-10', '2026-01-14').replace('discard', 'move L/B 2026-01-14, at shed\n    discard');
    expect(contest(soon).alsoDiffers).toEqual(['place (mat against frame)']);
    // How warm it was there by the look is known.
    expect(contest(soon.replace('at mat', '15 C, at mat').replace('at frame', '15 C, at frame'))).toMatchObject({
      alsoDiffers: [], remarks: ['the sides were in different places: mat against frame'],
    });
  });

  test('are not those of a place that was left on the day', () => {
    const source = twoBatches({ a: ', at bench', b: ', at mat' }).replace('count L/A', 'move L/A 2026-01-11 20:00, at mat\n    count L/A');
    expect(contest(source)).toMatchObject({ alsoDiffers: [], remarks: [] });
  });
});

describe('the place of one side', () => {
  const remark = 'the place is recorded for one side only';

  test('is remarked upon where that of the other is not written, or only a vessel', () => {
    for (const [a, b] of [[', at heated mat tray 4', ', at tray 5'], [', at tray 4', ', at heated mat'], [', at frame', ''], ['', ', 15 C, at frame']] as const) {
      const { alsoDiffers, remarks } = contest(twoBatches({ a, b }));
      expect([alsoDiffers, remarks.includes(remark)], a + b).toEqual([[], true]);
    }
    // Brought to a vessel, wherever that is.
    expect(contest(moved(', at bench', 'move L/A 2026-01-20, at tray 9'))).toMatchObject({ alsoDiffers: [], remarks: [remark] });
    expect(contest(moved('', 'move L/A 2026-01-20, at bench', 'move L/B 2026-01-20, at tray 9'))).toMatchObject({ alsoDiffers: [], remarks: [remark] });
    expect(contest(moved('', 'chill L/A 2026-01-20, at fridge', 'chill L/B 2026-01-20'))).toMatchObject({ alsoDiffers: [], remarks: [remark] });
  });

  test('is written late where it was so within three days', () => {
    const source = twoBatches({ b: ', at shelf' }).replace('count L/A', 'move L/A 2026-01-14, at shelf\n    count L/A');
    expect(contest(source)).toMatchObject({ alsoDiffers: [], remarks: [] });
    expect(contest(source.replace('2026-01-14', '2026-01-15')).remarks).toEqual([remark]);
  });

  test('differs where a move brought it there, wherever it had been', () => {
    expect(contest(moved('', 'move L/A 2026-01-12, at heated mat')).alsoDiffers).toEqual(['place (unknown, then heated mat against unknown)']);
  });
});

describe('a temperature written at sowing', () => {
  test('is that of the place of sowing, not of one that one side was moved to', () => {
    for (const lines of [
      ['move L/A 2026-01-18, at heated mat'], ['move L/B 2026-01-12, at cold frame'],
      ['move L/A 2026-01-12, at fridge', 'move L/A 2026-02-05, at bench'], ['pot L/A 2026-01-18, at heated mat'],
    ]) {
      expect(contest(moved(', 15 C, at bench', ...lines)), lines[0]).toMatchObject({
        alsoDiffers: [expect.stringMatching(/^place \(bench/)], verdict: { rule: 'more-differs' },
      });
    }
    expect(contest(moved(', 15 C, at tray 4', 'move L/A 2026-01-18, at heated mat')).alsoDiffers).toEqual(['place (unknown, then heated mat against unknown)']);
  });

  test('holds on in another corner of the room', () => {
    const source = twoBatches({ a: ', 15 C, at mat 1', b: ', 15 C, at frame 1' }).replace('count L/A', 'move L/A 2026-01-18, at mat 2\n    count L/A');
    expect(contest(source)).toMatchObject({ alsoDiffers: [], remarks: ['the sides were in different places: mat against frame'] });
  });
});

describe('a pot', () => {
  const sown = (...lines: readonly string[]) => contest(moved(', at bench', ...lines)).alsoDiffers;

  test('moves the batch where nothing is up yet, and seedlings where some are', () => {
    expect(sown('pot L/A 2026-01-18, at heated mat')).toEqual(['place (bench, then heated mat against bench)']);
    expect(sown('count L/A 2026-01-17, 0', 'pot L/A 2026-01-18, at heated mat')).toEqual(['place (bench, then heated mat against bench)']);
    expect(sown('count L/A 2026-01-17, 3', 'pot L/A 2026-01-18, at heated mat')).toEqual([]);
    expect(sown('pot L/A 2026-01-18, 3 seedlings, at heated mat')).toEqual([]);
    expect(sown('pot L/A 2026-01-18')).toEqual([]);
  });
});

describe('the soaks of two sides', () => {
  test('are remarked upon where one lasted much longer', () => {
    const { remarks } = contest(twoBatches({ soakB: 'water, 2 h' }));
    expect(remarks).toEqual(['the treated seed was in liquid for 24 h and the untreated seed for 2 h, so this shows the length of the soak and the treatment together']);
    const dishes = (hours: number) => twoBatches({ soakB: 'water, 2 h' }).replace('B 20 seeds', 'B 20 seeds, C 20 seeds')
      .replace('sow L/B', `soak L/C 2026-01-10 19:00, water, ${hours} h\n    sow L/C 2026-01-11 19:00\n    count L/C 2026-02-10, 5\n    sow L/B`);
    expect(contest(dishes(6)).remarks.join()).toContain('in liquid for 24 h and the untreated seed for 2 to 6 h, so');
    expect(contest(dishes(24)).remarks).toEqual([]);
    for (const soakB of ['water, 24 h', 'water, 22 h']) expect(contest(twoBatches({ soakB })).remarks, soakB).toEqual([]);
  });

  test('are remarked upon where replicates came from different bottles', () => {
    const bottles = (second: string) => `
      stock G1 2026-01-09, GA3 20 mg, 20 mL
      stock G2 2026-01-09, GA3 20 mg, 20 mL
      lot L Iris alba, 60 seeds
      split L, A 20 seeds, B 20 seeds, C 20 seeds
      soak L/A 2026-01-10 19:00, G1 10 mL, 24 h
      soak L/C 2026-01-10 19:00, ${second} 10 mL, 24 h
      soak L/B 2026-01-10 19:00, water, 24 h
      sow L/A 2026-01-11 19:00
      sow L/B 2026-01-11 19:00
      sow L/C 2026-01-11 19:00
      count L/A 2026-02-10, 3
      count L/B 2026-02-10, 3
      count L/C 2026-02-10, 3
    `;
    expect(contest(bottles('G2')).remarks).toEqual(['the treated batches were soaked from different bottles: G1, G2']);
    expect(contest(bottles('G1')).remarks).toEqual([]);
    expect(contest(bottles('G1').replace('L/C 2026-01-10 19:00, G1 10 mL', 'L/C 2026-01-10 19:00, GA3 1000 ppm')).remarks).toEqual([]);
  });

  test('are remarked upon where replicates had a pinch each, and not where they shared one', () => {
    const sown = `
      soak L/B 2026-01-10 19:00, water, 24 h
      sow L/B 2026-01-11 20:00
      count L/B 2026-02-10, 3
      ${['A', 'C'].map(part => `sow L/${part} 2026-01-11 20:00\ncount L/${part} 2026-02-10, 3`).join('\n')}
    `;
    const apart = `
      lot L Iris alba, 60 seeds
      split L, A 20 seeds, B 20 seeds, C 20 seeds
      soak L/A 2026-01-10 19:00, GA3 unmeasured, 24 h
      soak L/C 2026-01-10 19:00, GA3 unmeasured, 24 h
      ${sown}
    `;
    expect(contest(apart).remarks).toEqual(['the treated batches were given a pinch each, so their doses may differ']);
    expect(contest(apart.replaceAll('GA3 unmeasured', 'KNO3 0.2 %, GA3 unmeasured')).remarks).toEqual(contest(apart).remarks);
    expect(contest(`
      lot L Iris alba, 60 seeds
      split L, B 20 seeds, T 40 seeds
      soak L/T 2026-01-10 19:00, GA3 unmeasured, 24 h
      split L/T 2026-01-11 19:30, 1 20 seeds, 2 20 seeds
      ${sown.replaceAll('L/A', 'L/T/1').replaceAll('L/C', 'L/T/2')}
    `).remarks).toEqual([]);
  });
});

describe('what is written for one side only', () => {
  test('is remarked upon for the temperature of a stage', () => {
    const chilled = (a: string, b: string) => twoBatches()
      .replace('count L/A', `chill L/A 2026-01-21${a}\n    count L/A`).replace('count L/B', `chill L/B 2026-01-21${b}\n    count L/B`);
    expect(contest(chilled(', 4 C', '')).remarks).toEqual(['the temperature of a stage is recorded for one side only']);
    expect(contest(chilled(', 4 C', ', 4 C')).remarks).toEqual([]);
    expect(contest(chilled('', '')).remarks).toEqual([]);
    // A stage that began on the day of the last count came too late for it.
    expect(contest(chilled(', 4 C', '').replaceAll('2026-01-21', '2026-02-10')).remarks).toEqual([]);
    const otherwise = chilled('', '').replace('chill L/B', 'warm L/B');
    expect(contest(otherwise).alsoDiffers).toEqual(['warm and cold stages']);
  });

  test('and seed that was sown a season later is older seed', () => {
    const late = twoBatches().replace('sow L/B 2026-01-11', 'sow L/B 2025-09-11').replace('soak L/B 2026-01-10', 'soak L/B 2025-09-10');
    expect(contest(late).alsoDiffers).toContain('sowing date and age of the seed');
    const days90 = late.replace('2025-09-11', '2025-10-13').replace('2025-09-10', '2025-10-12');
    expect(contest(days90).alsoDiffers).toContain('sowing date');
  });
});
