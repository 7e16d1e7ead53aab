import { describe, expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOfIso } from '../../server/src/model/day.ts';

const at = (iso: string, minutes?: number) => ({ day: dayOfIso(iso)!, minutes });
const now = at('2026-02-01', 600);

class Desk {
  readonly journal = new Journal();
  readonly book = new ProblemBook(this.journal);

  constructor(files: Readonly<Record<string, string>>) {
    for (const [name, text] of Object.entries(files)) this.journal.set(name, text);
    this.book.update(now);
  }

  /** Replaces a line; gives the files that are said to have changed. */
  write(file: string, line: number, text: string, moment = now): string[] {
    const end = { line, character: this.journal.files.get(file)!.text.at(line).text.length };
    this.journal.edit(file, { start: { line, character: 0 }, end }, text);
    return this.update(moment);
  }

  update(moment = now): string[] {
    return [...this.book.update(moment)].sort();
  }

  codes(file: string): string[] {
    return this.book.of(file).map(({ line, problem: { code } }) => `${line.number + 1} ${code}`);
  }

  messages(file: string): string[] {
    return this.book.of(file).map(({ problem }) => problem.message);
  }
}

describe('the problems of a journal', () => {
  test('stand from top to bottom, those of a line from left to right, whatever they are about', () => {
    const { book } = new Desk({
      'a.germ': 'lot V Veratrum, 6 seeds\nsoak V 2026-01-01, GA3 7 %, 30 h\ncount W 2026-01-02, x\nsplit V, A 9 seeds',
    });
    expect(book.of('a.germ').map(({ line, problem: { start, code } }) => `${line.number + 1}:${start} ${code}`)).toEqual([
      '2:23 strength-slip', '2:28 soak-too-long', '3:6 unknown-lot', '3:20 unknown-fact', '4:9 split-exceeds-seeds',
    ]);
  });

  test('of a file that is not there are none', () => {
    expect(new Desk({}).book.of('a.germ')).toEqual([]);
  });

  test('go when their line is mended, and when their file goes', () => {
    const desk = new Desk({ 'a.germ': 'lot V Veratrum, 6 seeds', 'b.germ': 'sow V 2026-01-01, 7 seeds' });
    expect(desk.codes('b.germ')).toEqual(['1 sown-exceeds-seeds']);
    expect(desk.write('a.germ', 0, 'lot V Veratrum, 7 seeds')).toEqual(['a.germ', 'b.germ']);
    expect(desk.codes('b.germ')).toEqual([]);
    desk.journal.remove('a.germ');
    expect(desk.update()).toEqual(['a.germ', 'b.germ']);
    expect(desk.codes('b.germ')).toEqual(['1 unknown-lot']);
    desk.journal.remove('b.germ');
    expect(desk.update()).toEqual(['b.germ']);
    expect(desk.codes('b.germ')).toEqual([]);
  });

  test('stand in the order of their places on a line, and of their codes at one place', () => {
    const desk = new Desk({ 'a.germ': 'lot V Veratrum\nlimit GA3, 100 ppm\nguide Veratrum, GA3 50 ppm\n'
      + 'soak V 2026-01-31 11:00, kemp 5 ppm, GA3 300 ppm, seeweed 5 ppm, 1 h' });
    expect(desk.codes('a.germ')).toEqual([
      '4 nothing-held-back', '4 unknown-agent', '4 beyond-guides', '4 dose-above-limit', '4 unknown-agent',
    ]);
  });

  test('of other files are not said to have changed when a line without a record does', () => {
    const desk = new Desk({ 'a.germ': 'lot V Veratrum, 6 seeds\n\n', 'b.germ': 'sow V 2026-01-01, 7 seeds' });
    expect(desk.write('a.germ', 1, '  A remark.')).toEqual(['a.germ']);
    expect(desk.update()).toEqual([]);
  });

  test('are said to have changed where they speak of lines that were pushed down', () => {
    const desk = new Desk({ 'a.germ': '# Seed\nlot V Veratrum, 6 seeds', 'b.germ': 'sow V 2026-01-01, 7 seeds' });
    expect(desk.write('a.germ', 0, '# Seed\n# of the year')).toEqual(['a.germ', 'b.germ']);
    expect(desk.book.of('b.germ')[0]?.related[0]?.line.number).toBe(2);
  });

  test('offer what is there now: an id that comes or goes is no edit of the line that is wrong', () => {
    const desk = new Desk({ 'a.germ': 'lot VER-24 Veratrum\nlot VER-25 Veratrum', 'b.germ': 'sow VRE-24 2026-01-01' });
    expect(desk.messages('b.germ')[0]).toContain('Did you mean “VER-24”?');
    expect(desk.write('a.germ', 0, '# gone')).toEqual(['a.germ', 'b.germ']);
    expect(desk.messages('b.germ')[0]).not.toContain('VER-24');
  });

  test('come as time goes by: a soak that goes on, a count that is late, a count of tomorrow', () => {
    const desk = new Desk({
      'a.germ': 'lot V Veratrum, 60 seeds\nsplit V, A 20 seeds, B 20 seeds\nsoak V/A 2026-01-31 11:00, water\nsow V/B 2026-01-31\n'
        + 'count V/B 2026-02-02, 1',
    });
    expect(desk.codes('a.germ')).toEqual(['5 count-in-future']);
    expect(desk.update(at('2026-02-01', 665))).toEqual([]);
    expect(desk.update(at('2026-02-01', 666))).toEqual(['a.germ']);
    expect(desk.codes('a.germ')).toEqual(['3 soak-too-long', '5 count-in-future']);
    expect(desk.update(at('2026-02-02', 0))).toEqual(['a.germ']);
    expect(desk.codes('a.germ')).toEqual(['3 soak-too-long']);
    expect(desk.update(at('2026-03-31'))).toEqual(['a.germ']);
    expect(desk.codes('a.germ')).toEqual(['3 lift-missing', '5 no-recent-count']);
  });

  test('follow the editor’s settings, and the limit records that go before them', () => {
    const desk = new Desk({ 'a.germ': 'lot V Veratrum, 60 seeds\nsoak V 2026-01-01 19:00, water, 20 h', 'b.germ': '# Limits' });
    expect(desk.codes('a.germ')).toEqual([]);
    desk.journal.settings = { soakHours: 12 };
    expect(desk.update()).toEqual(['a.germ']);
    expect(desk.messages('a.germ')[0]).toContain('the limit is 12 h (setting plumule.limits.soakHours)');
    expect(desk.write('b.germ', 0, 'limit soak, 20 h')).toEqual(['a.germ', 'b.germ']);
    expect(desk.codes('a.germ')).toEqual([]);
  });

  test('follow a stock to soaks two dilutions away', () => {
    const desk = new Desk({
      'a.germ': 'stock G1 2026-01-01, GA3 40 mg, 10 mL\ndilute G2 2026-01-01, from G1 5 mL, to 10 mL\ndilute G3 2026-01-01, from G2 5 mL, to 10 mL',
      'b.germ': 'lot V Veratrum, 60 seeds\nsplit V, A 20 seeds\nsoak V/A 2026-01-01 19:00, G3 5 mL, 20 h',
    });
    expect(desk.codes('b.germ')).toEqual([]);
    expect(desk.write('a.germ', 0, 'stock G1 2026-01-01, GA3 48 mg, 10 mL')).toEqual(['a.germ', 'b.germ']);
    expect(desk.messages('b.germ')[0]).toMatch(/^GA3 1200 ppm \(stock G3\) is above the limit of 1000 ppm/);
  });

  test('follow a guide that names a stock or an agent of the journal', () => {
    const desk = new Desk({
      'a.germ': 'agent kelp, 100 g/mol\nguide Veratrum, kelp 10 mM, source "a list"',
      'b.germ': 'lot V Veratrum, 60 seeds\nsplit V, A 20 seeds\nsoak V/A 2026-01-01 19:00, kelp 900 ppm, 20 h',
    });
    expect(desk.codes('b.germ')).toEqual([]);
    expect(desk.write('a.germ', 0, 'agent kelp, 50 g/mol')).toEqual(['a.germ', 'b.germ']);
    expect(desk.codes('b.germ')).toEqual(['3 beyond-guides']);
  });

  test('follow a guide to lots that use nothing of what changed', () => {
    const desk = new Desk({
      'a.germ': 'stock G1 2026-01-01, GA3 10 mg, 10 mL\nguide Veratrum, G1, source "a list"',
      'b.germ': 'lot V Veratrum, 60 seeds\nsplit V, A 20 seeds\nsoak V/A 2026-01-01 19:00, GA3 900 ppm, 20 h',
    });
    expect(desk.codes('b.germ')).toEqual([]);
    expect(desk.write('a.germ', 0, 'stock G1 2026-01-01, GA3 8 mg, 10 mL')).toEqual(['a.germ', 'b.germ']);
    expect(desk.codes('b.germ')).toEqual(['3 beyond-guides']);
  });

  test('do not depend on the order in which files come', () => {
    const desk = new Desk({ 'b.germ': 'lot V Veratrum, 6 seeds' });
    expect(desk.codes('b.germ')).toEqual([]);
    desk.journal.set('a.germ', 'lot V Iris alba, 9 seeds');
    desk.update();
    expect(desk.codes('a.germ')).toEqual([]);
    expect(desk.codes('b.germ')).toEqual(['1 duplicate-definition']);
  });

  test('follow a day line to the slots of the records below it', () => {
    const desk = new Desk({
      'a.germ': 'lot V Veratrum, 6 seeds\nlot P Paris, 6 seeds\nsow P 2026-01-11 11:00, at bag 1 slot 1\n'
        + 'day 2026-01-10\nsow V 10:00, at bag 1 slot 1\nmove V 12:00, at shelf',
    });
    expect(desk.codes('a.germ')).toEqual([]);
    desk.write('a.germ', 3, 'day 2026-01-11');
    expect(desk.codes('a.germ')).toEqual(['3 slot-taken']);
    desk.write('a.germ', 3, 'day 2026-01-12');
    expect(desk.codes('a.germ')).toEqual(['5 slot-taken']);
    desk.write('a.germ', 3, 'day 2026-01-10');
    expect(desk.codes('a.germ')).toEqual([]);
  });

  test('follow names that look like others, whatever changes with them', () => {
    const desk = new Desk({ 'a.germ': 'lot V Veratrum, at Тray\nlot P Paris, at Тray\nlot I Iris, at shelf\nlimit soak, 20 h' });
    expect(desk.codes('a.germ')).toEqual(['1 look-alike']);
    // One of those that have it goes, a new one comes together with a record of the whole journal.
    desk.write('a.germ', 0, 'lot V Veratrum, at bench');
    expect(desk.codes('a.germ')).toEqual(['2 look-alike']);
    const endOf = (line: number) => ({ line, character: desk.journal.files.get('a.germ')!.text.at(line).text.length });
    desk.journal.edit('a.germ', { start: { line: 2, character: 0 }, end: endOf(2) }, 'lot I Iris, at Вox');
    desk.journal.edit('a.germ', { start: { line: 3, character: 0 }, end: endOf(3) }, 'limit soak, 21 h');
    desk.update();
    expect(desk.codes('a.germ')).toEqual(['2 look-alike', '3 look-alike']);
  });

  test('follow the day lines: records below have other dates when one comes or goes', () => {
    const desk = new Desk({ 'a.germ': 'day 2026-01-01\nlot V Veratrum, 6 seeds, collected 2026-01-02\n# a day later\nsow V' });
    expect(desk.codes('a.germ')).toEqual(['4 sown-before-collected']);
    desk.write('a.germ', 2, 'day 2026-01-02');
    expect(desk.codes('a.germ')).toEqual([]);
    desk.write('a.germ', 2, '');
    expect(desk.codes('a.germ')).toEqual(['4 sown-before-collected']);
  });

  test('can be asked for between an edit and the next update; lines that went are left out', () => {
    const desk = new Desk({ 'a.germ': 'lot V Veratrum, 6 seeds\nsow V 2026-01-01, 7 seeds\nsow W 2026-01-01' });
    desk.journal.edit('a.germ', { start: { line: 0, character: 23 }, end: { line: 1, character: 25 } }, '');
    expect(desk.codes('a.germ')).toEqual(['2 unknown-lot']);
  });
});

test('before it is known what day it is, a file shows what its lines say by themselves', () => {
  const journal = new Journal();
  journal.set('a.germ', 'lot L Iris\nday 2026-01-02\nnote L, x\nday 2025-01-03\nnote L, y\nday 2026-01-04\ncuont L, 3\n');
  const book = new ProblemBook(journal);
  const codes = () => book.of('a.germ').map(({ problem: { code } }) => code);
  expect(codes()).toEqual(['unknown-keyword']);
  book.update(now);
  expect(codes()).toEqual(['year-slip', 'unknown-keyword']);
});

test('a soak that will be too long was too long from the minute in which it ends', () => {
  const desk = new Desk({ 'a.germ': 'lot V Veratrum, 6 seeds\nsoak V 2026-01-31 19:00, water, 30 h' });
  const said = (minutes: number) => {
    desk.update(at('2026-02-02', minutes));
    return desk.messages('a.germ').find(message => message.includes('in the soak'));
  };
  expect([58, 59, 60].map(minutes => said(minutes)?.slice(0, 10))).toEqual(['V will be ', 'V will be ', 'V was in t']);
});

describe('a file whose problems did not change', () => {
  const files = {
    'a.germ': 'lot V Veratrum, 6 seeds', 'b.germ': 'sow V 2026-01-01, 7 seeds', 'c.germ': 'note V 2026-01-01, firm',
  };

  test('is not said to have changed', () => {
    expect(new Desk(files).write('c.germ', 0, 'note V 2026-01-01, soft')).toEqual(['c.germ']);
  });

  test('has changed when only the words of a problem did', () => {
    const desk = new Desk(files);
    const [before] = desk.messages('b.germ');
    expect(desk.write('a.germ', 0, 'lot V Veratrum, 5 seeds')).toEqual(['a.germ', 'b.germ']);
    expect(desk.messages('b.germ')).not.toEqual([before]);
  });
});

describe('what is surely wrong with the beginning of a text', () => {
  const { book } = new Desk({ 'a.germ': 'lot V Veratrum, x, y\nsow W 2026-01-01\ncount V 2026-13-01, z\nsowed V' });
  const surely = (most: number) => book.surelyIn('a.germ', most).map(({ line, problem: { start } }) => `${line.number + 1}:${start}`);

  test('is what its lines say by themselves, from top to bottom and from left to right', () => {
    expect(surely(1000)).toEqual(['1:16', '1:19', '3:8', '3:20', '4:0']);
  });

  test('is no more than is asked for', () => {
    expect(surely(3)).toEqual(['1:16', '1:19', '3:8']);
    expect(surely(1)).toEqual(['1:16']);
    expect(surely(0)).toEqual([]);
    expect(book.surelyIn('b.germ', 9)).toEqual([]);
  });
});
