import { describe, expect, test } from 'vitest';
import { reportData } from '../../server/src/report/json.ts';
import { reportText } from '../../server/src/report/text.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { lotOf } from '../journal/helpers.ts';
import { at, reportFor } from '../report/helpers.ts';

const journal = (lot: string, a: string, b: string, counts: readonly [number, number]) => `
  lot VER-24 Veratrum nigrum, ${lot}
  split VER-24, A ${a}, B ${b}
  soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h
  soak VER-24/B 2026-01-10 19:00, water, 24 h
  sow VER-24/A 2026-01-11 19:00, 15 C
  sow VER-24/B 2026-01-11 19:00, 15 C
  count VER-24/A 2026-01-25, ${counts[0]}
  count VER-24/B 2026-01-25, ${counts[1]}
  discard VER-24/A 2026-05-01
  discard VER-24/B 2026-05-01
`;

const verdictOf = (source: string) => {
  const { contests, estimated } = trialOf(lotOf(source), Infinity);
  return (estimated[0] ?? contests[0])!.verdict;
};

describe('a verdict on seed that was estimated', () => {
  test('is given where both ends of each estimate give it, with ranges for its numbers', () => {
    const { contests, ladders, estimated } = trialOf(lotOf(journal('about 100 seeds', 'half', 'half', [35, 8])), Infinity);
    expect([contests, ladders]).toEqual([[], []]);
    expect(estimated.map(({ verdict }) => verdict.sentence)).toEqual([
      'Worth repeating: by day 14, 35 of 40 to 61 treated seeds had germinated (57 to 88 %) and 8 of 40 to 61 untreated (13 to 20 %); '
      + 'the seeds were estimated, and the verdict is the same with the least and with the most of each side. '
      + 'With one dish a side, a difference between the two dishes themselves would look the same.',
    ]);
  });

  test('waits for the day of judging, and says then which counts it rests on', () => {
    const with60 = (on: string, more = '') => `${journal('about 100 seeds', 'half', 'half', [35, 8]).replaceAll(/ +discard.*/g, '')}
  judge VER-24 2026-01-11, on ${on}\n${more}`;
    expect(verdictOf(with60('day 60')).sentence).toBe('Cannot tell yet: this trial is judged by the counts of day 60 (2026-03-12), '
      + 'as you wrote on 2026-01-11; by day 14, 35 of 40 to 61 treated seeds had germinated (57 to 88 %) and 8 of 40 to 61 untreated '
      + '(13 to 20 %); the seeds were estimated. 5 to 26 of 40 to 61 treated and 32 to 53 of 40 to 61 untreated seeds may still germinate.');
    expect(verdictOf(with60('day 14', '  count VER-24/A 2026-02-01, 0\n  count VER-24/B 2026-02-01, 20')).sentence)
      .toMatch(/^Worth repeating.* Judged on day 14 \(2026-01-25\), as you wrote on 2026-01-11; later counts of what germinated do not change it\.$/);
  });

  test('names the weak seedlings that took the praise back', () => {
    const weak = journal('100 seeds', '38 to 44 seeds', '36 to 44 seeds', [38, 5]).replace('2026-01-25, 38', '2026-01-25, 38, 28 leggy');
    expect(verdictOf(weak)).toMatchObject({
      rule: 'more-but-weak',
      sentence: 'Cannot tell: by day 14, 38 of 38 to 44 treated seeds had germinated (86 to 100 %) and 5 of 36 to 44 untreated (11 to 14 %), '
        + 'but 28 of 38 treated seedlings are weak (leggy, abnormal or dead) and 0 of 5 untreated; the seeds were estimated, and the '
        + 'verdict is the same with the least and with the most of each side.',
    });
  });

  test('names the weak seedlings that make it harmful, and those that are the price of more', () => {
    const weak = (counts: readonly [number, number], leggy: number) => verdictOf(journal('200 seeds', '58 to 60 seeds', '58 to 60 seeds', counts)
      .replace(`2026-01-25, ${counts[0]}`, `2026-01-25, ${counts[0]}, ${leggy} leggy`));
    expect(weak([46, 44], 28)).toMatchObject({
      rule: 'fewer-sound', sentence: expect.stringContaining(' %); 28 of 46 treated seedlings are weak (leggy, abnormal or dead) and 0 of 44 untreated; the seeds'),
    });
    expect(weak([58, 16], 18)).toMatchObject({
      rule: 'more', sentence: expect.stringContaining(' %); it comes at a price: 18 of 58 treated seedlings are weak (leggy, abnormal or dead) and 0 of 16 untreated; the seeds'),
    });
  });

  test('names the later looks that do not bear it out, or that leave it open', () => {
    const after = (counts: readonly [number, number], later: number) => verdictOf(
      journal('100 seeds', '38 to 40 seeds', '38 to 40 seeds', counts).replace('discard VER-24/A 2026-05-01', 'discard VER-24/A 2026-01-26')
        .replace('discard VER-24/B', `count VER-24/B 2026-04-01, ${later}\n  discard VER-24/B`));
    expect(after([30, 10], 26)).toMatchObject({
      rule: 'overtaken', sentence: expect.stringContaining(' %), but that does not show by the last looks any more: 30 of 38 to 40 treated '
        + 'seeds had germinated and 36 of 38 to 40 untreated; the seeds were estimated'),
    });
    expect(after([1, 1], 30)).toMatchObject({
      rule: 'ended-early', sentence: expect.stringContaining(' %), but 30 more untreated seeds germinated after that, and the treated seed was not '
        + 'watched for as long; the seeds were estimated'),
    });
  });

  test('says how many may still germinate', () => {
    const open = journal('100 seeds', '38 to 44 seeds', '36 to 44 seeds', [10, 8]).replaceAll(/ +discard.*/g, '');
    expect(verdictOf(open)).toMatchObject({
      rule: 'still-open', sentence: expect.stringMatching(/^Cannot tell yet: .* 28 to 34 of 38 to 44 treated and 28 to 36 of 36 to 44 untreated seeds may still germinate\.$/),
    });
  });

  test('names the untreated seedlings that died where fewer of the treated germinated', () => {
    const died = journal('100 seeds', '38 to 40 seeds', '38 to 40 seeds', [8, 34])
      .replace('  discard VER-24/A', '  count VER-24/B 2026-02-25, 34 died\n  discard VER-24/A');
    expect(verdictOf(died)).toMatchObject({
      verdict: 'cannot tell', rule: 'fewer-but-sound',
      sentence: expect.stringContaining('0 of 8 treated seedlings are weak (leggy, abnormal or dead) and 34 of 34 untreated; the seeds were estimated'),
    });
  });

  test('says that too little germinated in too short a time', () => {
    expect(verdictOf(journal('100 seeds', '38 to 40 seeds', '38 to 40 seeds', [0, 0]))).toMatchObject({
      rule: 'too-soon', sentence: expect.stringContaining('0 of 38 to 40 untreated (0 %), which is too few to tell: living seed was left, and '
        + 'it was not watched for long enough; the seeds were estimated'),
    });
  });

  test('says so without a number of days where seed was looked at before its sowing only', () => {
    const before = journal('100 seeds', '38 to 40 seeds', '38 to 40 seeds', [0, 0]).replaceAll('2026-01-25', '2026-01-11')
      .replaceAll('2026-01-11 19:00, 15 C', '2026-01-25, 15 C');
    const { rule, sentence } = verdictOf(before);
    expect(rule).toBe('too-soon');
    expect(sentence).toContain('living seed was left, and it was not watched for long enough; ');
    expect(sentence).not.toMatch(/-\d+ days/);
  });

  test('ends where seed was taken out', () => {
    const taken = journal('100 seeds', '30 to 32 seeds', '30 to 32 seeds', [1, 1]).replace('discard VER-24/A', 'give VER-24/A 2026-02-01, 5 seeds\n  discard VER-24/A');
    expect(verdictOf(taken)).toMatchObject({ rule: 'ended-early', sentence: expect.stringContaining('but seed that had not germinated was taken out then') });
  });

  test('says what else differs', () => {
    const source = journal('about 100 seeds', 'half', 'half', [35, 8]).replace('sow VER-24/B 2026-01-11 19:00, 15 C', 'sow VER-24/B 2026-01-11 19:00, 5 C');
    expect(verdictOf(source).sentence).toMatch(/^Cannot tell: by day 14, .* untreated \(13 to 20 %\), but the sides also differ in .*; the seeds were estimated\.$/);
  });

  test('is none where it hangs on how many there were', () => {
    // With 18 of 18 treated it would be one thing, with 18 of 60 another.
    const { verdict, sentence } = verdictOf(journal('200 seeds', '18 to 60 seeds', '40 seeds', [18, 16]));
    expect(verdict).toBe('cannot tell');
    expect(sentence).toMatch(/^Cannot tell: by day 14, /);
    expect(sentence).toMatch(/with the least or the most of them the verdict would be “worth repeating” or “.*”\.$/);
  });

  test('is none where it hangs on the most of one side with the least of the other', () => {
    // 18 and 6 of 20, or of 60 each, would be worth repeating; 18 of 60 beside 6 of 20 is nothing.
    expect(verdictOf(journal('200 seeds', '20 to 60 seeds', '20 to 60 seeds', [18, 6])).verdict).toBe('cannot tell');
  });

  test('is of no fewer seeds than were counted', () => {
    expect(verdictOf(journal('200 seeds', '10 to 40 seeds', '24 seeds', [12, 2])).sentence).toContain('12 of 12 to 40 treated');
    const cut = journal('200 seeds', '10 to 40 seeds', '24 seeds', [12, 2]).replace('discard VER-24/A 2026-05-01', 'cut VER-24/A 2026-05-01, 9 dead');
    expect(verdictOf(cut).sentence).toContain('12 of 21 treated');
  });

  test('stands so far as long as some of it may still come, and says what is recorded for one side only', () => {
    const source = journal('200 seeds', '20 to 24 seeds', '24 seeds', [20, 3]).replace(', 15 C', '')
      .replace(/ +discard VER-24\/A.*/, '').replace('discard VER-24/B 2026-05-01', 'cut VER-24/B 2026-02-20, 21 dead');
    const [only] = trialOf(lotOf(source), Infinity).estimated;
    expect(only!.verdict.sentence).toMatch(/^Worth repeating so far: /);
    expect(only!.remarks).toEqual(['the temperature is recorded for one side only']);
  });

  test('is that of every number between the ends, where the ends agree', () => {
    for (const [a, b] of [[[24, 30], [24, 27]], [[20, 23], [30, 34]]] as const) {
      for (const counts of [[16, 3], [10, 9], [2, 14]] as const) {
        const text = ([least, most]: readonly [number, number]) => `${least} to ${most} seeds`;
        const { verdict, sentence } = verdictOf(journal('100 seeds', text(a), text(b), counts));
        if (!sentence.includes('the verdict is the same')) continue;
        for (let n = a[0]; n <= a[1]; n++) {
          for (let m = b[0]; m <= b[1]; m++) {
            expect(verdictOf(journal('100 seeds', `${n} seeds`, `${m} seeds`, counts)).verdict, `${counts.join()} of ${n}, ${m}`).toBe(verdict);
          }
        }
      }
    }
  });
});

describe('a trial with a batch that was estimated', () => {
  // Three parts of 24 seeds in the same grit, and whatever else is sown beside them.
  const trial = (parts: string, soaks: Record<string, string>, counts: Record<string, number>) => lotOf([
    `lot VER-24 Veratrum nigrum, 300 seeds\nsplit VER-24, ${parts}`,
    ...Object.entries(soaks).map(([part, soak]) => `soak VER-24/${part} 2026-01-10 19:00, ${soak}, 24 h\nsow VER-24/${part} 2026-01-11 19:00, 15 C`),
    ...Object.entries(counts).map(([part, n]) => `count VER-24/${part} 2026-01-31, ${n}`),
  ].join('\n'));

  test('is told with all its batches, and not once more with the counted ones alone', () => {
    const { contests, estimated } = trialOf(trial('A 24 seeds, B 24 seeds, C about 24 seeds',
      { A: 'GA3 500 ppm', B: 'water', C: 'water' }, { A: 18, B: 3, C: 18 }), Infinity);
    expect(contests).toEqual([]);
    expect(estimated.map(({ verdict }) => verdict.sentence)).toEqual([
      expect.stringMatching(/^Cannot tell yet: by day 20, 18 of 24 treated seeds had germinated \(75 %\) and 21 of 45 to 51 untreated/)]);
  });

  test('leaves the other treatments of the lot less room', () => {
    const parts = 'A 24 seeds, B 24 seeds, C about 24 seeds';
    const soaks = { A: 'GA3 500 ppm', B: 'water', C: 'KNO3 0.2 %' };
    const roomOf = (source: string) => trialOf(trial(source, soaks, { A: 12, B: 3, C: 12 }), Infinity)
      .contests.map(({ verdict: { evidence } }) => evidence?.room.treatments);
    expect(roomOf(parts)).toEqual([2]);
    expect(roomOf(parts.replace('about ', ''))).toEqual([2, 2]);
  });

  test('names no numbers of a dish that are those of a guess', () => {
    const { estimated } = trialOf(trial('A 24 seeds, A1 24 seeds, A2 24 seeds, A3 about 24 seeds, B 24 seeds',
      { A: 'GA3 500 ppm', A1: 'GA3 500 ppm', A2: 'GA3 500 ppm', A3: 'GA3 500 ppm', B: 'water' }, { A: 18, A1: 18, A2: 17, A3: 3, B: 3 }), Infinity);
    expect(estimated.map(({ remarks }) => remarks)).toEqual([[]]);
  });

  test('gives no range of counts where its ends are compared by unlike looks', () => {
    // Of ten seeds all are up, so that they stay as they are; forty may still come.
    const text = journal('200 seeds', '10 to 40 seeds', '24 seeds', [10, 20]).replaceAll(/ +discard.*/g, '')
      .replace('count VER-24/B 2026-01-25', 'count VER-24/B 2026-03-13');
    expect(verdictOf(text).sentence).toBe('Cannot tell yet: the seeds were estimated, and the verdict is the same with the least and '
      + 'with the most of each side.');
    expect(verdictOf(text.replace('sow VER-24/B 2026-01-11 19:00, 15 C', 'sow VER-24/B 2026-01-11 19:00, 5 C')).sentence)
      .toBe('Cannot tell yet: the sides also differ in temperature; the seeds were estimated.');
  });
});

describe('a report of seed that was estimated', () => {
  const source = journal('about 60 seeds', '25 to 30 seeds', 'about 24 seeds', [10, 3]);

  test('has no exact denominator anywhere in its data', () => {
    const data = reportData(reportFor(source, at('2026-02-03')));
    const text = JSON.stringify(data);
    const lots = (data as { lots: { seeds: unknown; estimated: unknown; batches: Record<string, unknown>[] }[] }).lots;
    expect(lots[0]).toMatchObject({ seeds: null, estimated: { seeds: { least: 54, most: 66 } } });
    expect(lots[0]!.batches.find(({ batch }) => batch === 'VER-24/A')).toMatchObject({
      seeds: null, sown: null, estimated: { sown: { least: 25, most: 30 } },
      germination: { undefined: 'the seeds were estimated, so only a range is known' },
      germinationRange: { x: 10, n: { least: 25, most: 30 }, share: { low: 10 / 30, high: 10 / 25 } },
      course: { undefined: 'its seeds were estimated, not counted' }, measures: { undefined: 'its seeds were estimated, not counted' },
    });
    expect(text).not.toMatch(/"(?:of|sown|kept|tested)":(?:2[1-9]|30|60|5\d)\b/);
  });

  const unlike = `
    lot VER-24 Veratrum nigrum, 60 seeds
    split VER-24, A 30 seeds, B about 30 seeds
    soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h
    soak VER-24/B 2026-01-10 19:00, water, 24 h
    sow VER-24/A 2026-01-11 19:00, 15 C
    sow VER-24/B 2026-01-11 19:00, 15 C
    count VER-24/A 2026-01-25, 20
    count VER-24/B 2026-01-28, 2
  `;

  test('names the day of each side where they were looked at on unlike days', () => {
    expect(verdictOf(unlike).sentence).toMatch(
      /^Worth repeating so far: 20 of 30 treated seeds had germinated by day 14 \(67 %\) and 2 of 27 to 33 untreated by day 17 \(6 to 7 %\); /);
  });

  test('does not call a batch left out that it compares', () => {
    const text = reportText([reportFor(unlike, at('2026-02-03'))]);
    expect(text).toContain('Treated against untreated, seeds estimated');
    expect(text).not.toContain('Left out of the comparison');
    expect(reportData(reportFor(unlike, at('2026-02-03')))).toMatchObject({ lots: [{ trial: { leftOut: [] } }] });
  });

  test('says of the estimated batch alone that its cut test counted it', () => {
    const cut = `${unlike}\ncut VER-24/A 2026-04-01, 10 dead\ncut VER-24/B 2026-04-01, 25 dead`;
    expect(reportText([reportFor(cut, at('2026-05-03'))]).match(/The seeds of .* were estimated.*/g)).toEqual([
      'The seeds of VER-24/B were estimated; its cut test shows that there were 27.']);
  });
});
