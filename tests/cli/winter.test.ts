import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const soak = 'GA3 500 ppm, 24 h';
const trial = (lot: string, treated: number, untreated: number) => `
split ${lot}, A 24 seeds, B 24 seeds
soak ${lot}/A 2025-11-01 19:00, ${soak}
soak ${lot}/B 2025-11-01 19:00, water, 24 h
sow ${lot}/A 2025-11-02 19:00, 24 seeds, 18 C
sow ${lot}/B 2025-11-02 19:00, 24 seeds, 18 C
count ${lot}/A 2025-11-16, ${treated}
count ${lot}/B 2025-11-16, ${untreated}
cut ${lot}/A 2026-02-01, ${24 - treated} fresh
cut ${lot}/B 2026-02-01, ${24 - untreated} fresh
`;

const JOURNAL = `lot PAY-25 Gentiana lutea, 60 seeds
lot HARM-25 Meconopsis grandis, 48 seeds
lot EASY-25 Primula veris, 48 seeds
lot FAIR-25 Primula elatior, 30 seeds
lot OPEN-25 Paris polyphylla, 20 seeds
lot OLD-23 Cornus mas, 30 seeds
lot NEW-25 Iris sibirica, 10 seeds
lot NEXT-26 Iris setosa, 30 seeds
${trial('PAY-25', 22, 3)}${trial('HARM-25', 2, 20)}${trial('EASY-25', 23, 23)}
sow FAIR-25 2026-06-30, 20 seeds, 18 C
count FAIR-25 2026-07-10, 19
sow OPEN-25 2025-07-01, at bag 1 slot 1
count OPEN-25 2026-05-01, 3, 2 rotted
sow OLD-23 2025-06-30, at frame
count OLD-23 2025-11-30, 0
lot LOST-23 Cornus mas, 30 seeds
sow LOST-23 2024-03-30
sow NEXT-26 2026-07-01, 20 seeds
`;

async function winter(...more: string[]) {
  const folder = await folderWith({ 'winter.germ': JOURNAL });
  return { folder, ...await plumule(folder, 'report', '--winter', ...more) };
}

describe('plumule report --winter', () => {
  it('tells what was tried, what paid, harmed and needs nothing, what waits and what is left, in each format', async () => {
    const { stdout, code, stderr } = await winter('2025/26', '--today', '2026-08-01');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const parts = new Map(stdout.split(/\n\n {2}(?=\S)/).map(part => [part.slice(0, part.indexOf('\n')), part]));
    expect([...parts.keys()]).toEqual([
      'The winter of 2025/26, as of 2026-08-01', 'What was tried', 'What paid', 'What harmed', 'What needs nothing',
      'What stays open', 'Seed left for another try',
    ]);
    const tried = parts.get('What was tried')!.match(/^ +\S+-\d\d /gm)!.map(id => id.trim());
    expect([...new Set(tried)]).toEqual(['PAY-25', 'HARM-25', 'EASY-25', 'FAIR-25', 'OPEN-25']);
    expect(parts.get('What paid')).toContain('PAY-25 Gentiana lutea: GA3 500 ppm 24 h (A) against water 24 h (B)');
    expect(parts.get('What harmed')).toContain('HARM-25 Meconopsis grandis');
    expect(parts.get('What needs nothing')).toContain('EASY-25 Primula veris');
    // 19 of 20 by day 10; the interval is Wilson's: 76.4 to 99.1 % (Wilson 1927, worked by hand).
    expect(parts.get('What needs nothing')!.replace(/\s+/g, ' '))
      .toContain('19 of 20 untreated seeds germinated (95 %, 95 % interval 76 to 99) in FAIR-25, half of the seed by day 10.');
    // OPEN-25: 20 less 3 and 2; OLD-23 was begun a day too early to belong here, and still waits.
    expect(parts.get('What stays open')).toMatch(/OPEN-25 +Paris polyphylla +15 +2025-07-01 +bag 1 slot 1/);
    expect(parts.get('What stays open')).toMatch(/OLD-23 +Cornus mas +30 +2025-06-30 +frame/);
    expect(parts.get('What stays open')).toContain('46 seeds may still germinate. 1 batch is from earlier winters.');
    expect(parts.get('What stays open')!.replace(/\s+/g, ' ')).toContain(
      'Left out: 1 batch of earlier winters with no record for more than 400 days.');
    expect(parts.get('Seed left for another try')).toMatch(/PAY-25 +Gentiana lutea +12 +0 +worth repeating/);
    expect(parts.get('Seed left for another try')).toMatch(/FAIR-25 +Primula elatior +10 +1 +nothing to compare/);
    expect(parts.get('Seed left for another try')).toContain('Not tried this winter: NEW-25 (10 seeds) and NEXT-26 (10 seeds).');

    const md = (await winter('2025/26', '--today', '2026-08-01', '--format', 'md')).stdout;
    const links = [...md.matchAll(/^- \[(.+)\]\(#(.+)\)$/gm)];
    expect(links.map(([, heading]) => heading)).toEqual([...md.matchAll(/^## (.+)$/gm)].map(([, heading]) => heading));
    const html = (await winter('2025/26', '--today', '2026-08-01', '--format', 'html')).stdout;
    for (const [, id] of html.matchAll(/<a href="#([^"]+)">/g)) expect(html).toContain(`<section id="${id}">`);
    expect(html).toContain('<h2>What paid</h2>');
  });

  it('tells seed that was estimated as ranges, with its soaks, and leaves out lots of later winters', async () => {
    const folder = await folderWith({ 'winter.germ': `
lot BAG-25 Gentiana lutea, 40 to 48 seeds
split BAG-25, A 15 seeds, B 10 to 14 seeds
soak BAG-25/A 2025-11-01 19:00, ${soak}
soak BAG-25/B 2025-11-01 19:00, water, 24 h
sow BAG-25/A 2025-11-02 19:00, 18 C, at tray 1
sow BAG-25/B 2025-11-02 19:00, 18 C, at tray 2
count BAG-25/A 2025-11-16, 6
count BAG-25/B 2025-11-16, 5
lot TIN-25 Iris sibirica, about 30 seeds
lot LATER-27 Iris sibirica, 20 seeds, collected 2027-09
lot NEXT-26 Iris sibirica, 20 seeds
sow NEXT-26 2026-11-01, 10 seeds
` });
    const told = async (...more: string[]) =>
      (await plumule(folder, 'report', '--winter', '2025/26', '--today', '2026-12-01', ...more)).stdout;
    const text = (await told()).replace(/\s+/g, ' ');
    expect(text).toContain('1 lot, 2 batches, 25 to 29 seeds.');
    expect(text).toContain('BAG-25 Gentiana lutea 2 25 to 29 GA3 500 ppm 24 h; water 24 h cannot tell');
    expect(text).toContain('BAG-25/A Gentiana lutea 9 2025-11-01 tray 1');
    expect(text).toContain('BAG-25/B Gentiana lutea 5 to 9 2025-11-01 tray 2');
    expect(text).toContain('14 to 18 seeds may still germinate.');
    // 40 to 48 less 15 and 10 to 14 that were split off.
    expect(text).toContain('BAG-25 Gentiana lutea 11 to 23 14 to 18 cannot tell');
    expect(text).toContain('Not tried this winter: TIN-25 (27 to 33 seeds) and NEXT-26 (10 seeds).');
    expect(text).not.toContain('no untreated seed of this lot');
    const { journals: [data] } = JSON.parse(await told('--format', 'json'));
    expect(data.waiting[1]).toMatchObject({ batch: 'BAG-25/B', seeds: null, estimated: { seeds: { least: 5, most: 9 } } });
    expect(data.left[0]).toMatchObject({
      notSown: null, waiting: null, estimated: { notSown: { least: 11, most: 23 }, waiting: { least: 14, most: 18 } },
    });
    expect(data.lots[0].contests).toHaveLength(1);
  });

  it('takes every verdict from the one engine', async () => {
    const { stdout } = await winter('2025/26', '--today', '2026-08-01', '--format', 'json');
    const { journals: [told] } = JSON.parse(stdout) as {
      journals: {
        winter: object; left: object[];
        lots: { id: string; contests: { verdict: string; sentence: string }[] }[];
      }[];
    };
    const journal = new Journal();
    journal.set('winter.germ', JOURNAL);
    expect(told!.winter).toEqual({ name: '2025/26', first: '2025-07-01', last: '2026-06-30' });
    expect(told!.lots).toHaveLength(5);
    for (const { id, contests } of told!.lots) {
      expect(contests.map(({ verdict, sentence }) => [verdict, sentence]))
        .toEqual(trialOf(journal.lot(id)!, Infinity).contests
          .map(({ verdict }) => [verdict.verdict, verdict.sentence]));
    }
    expect(told!.left[0])
      .toEqual({ id: 'PAY-25', plant: 'Gentiana lutea', notSown: 12, waiting: 0, verdicts: ['worth repeating'] });
  });

  it('takes a year by itself for those whose winter falls within one, and an empty winter says so', async () => {
    expect((await winter('2026', '--today', '2026-08-01')).stdout).toMatch(/FAIR-25 .*\n.*NEXT-26 /);
    expect((await winter('2019/20', '--today', '2026-08-01')).stdout)
      .toContain('From 2019-07-01 to 2020-06-30 nothing was soaked, sown or put into a stage.');
    expect((await winter('2025/26', '--as-of', '2025-12-01')).stdout).not.toContain('FAIR-25 Primula');
  });

  it('writes a file, and refuses what is no winter', async () => {
    const { folder, code } = await winter('2025/26', '--format', 'md', '-o', 'review.md', '--today', '2026-08-01');
    expect(code).toBe(0);
    expect(await readFile(join(folder, 'review.md'), 'utf8')).toMatch(/^# The winter of 2025\/26/);
    expect(await winter('2025/27')).toMatchObject({ code: 2, stdout: '' });
    expect(await winter('2025/26', '--stocks')).toMatchObject({ code: 2, stdout: '' });
  });
});
