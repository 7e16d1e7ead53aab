import { describe, expect, test } from 'vitest';
import { completionsAt } from '../../../server/src/features/completion/completion.ts';
import { plainText } from '../../../server/src/features/completion/template.ts';
import { keywords } from '../../../server/src/model/keywords.ts';
import { Journal } from '../../../server/src/journal/journal.ts';
import { ProblemBook } from '../../../server/src/checks/problem-book.ts';
import { parse } from '../../../server/src/syntax/parse.ts';
import { at } from '../journals.ts';
import { isOpen, labels, NOW, offered, taken } from './offered.ts';

const journal = `zone Europe/Vienna
lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
sow VER-24/A 2026-01-11, at shelf 2
sow VER-24/B 2026-01-11, at shelf 1
`;

/** At the end of a text. */
function atEnd(text: string) {
  const all = new Journal();
  all.set('a.germ', text);
  const lines = text.split('\n');
  return completionsAt(all, 'a.germ', { line: lines.length - 1, character: lines.at(-1)!.length }, at(NOW));
}

function lines(text: string, label: string): string {
  return plainText(atEnd(text)?.items.find(item => item.label === label)?.write ?? []);
}

describe('at the start of a line', () => {
  test('every keyword is offered, with what it is for', () => {
    const found = labels(atEnd(journal));
    for (const [keyword, { says }] of Object.entries(keywords)) expect(found).toContain(`${keyword} · ${says}`);
  });

  test('a keyword is taken with the rest of a record, without a mistake', () => {
    for (const above of ['', journal, `${journal}day 2026-01-18\n`]) {
      for (const { label, kind, write } of atEnd(above)!.items) {
        if (kind !== 'keyword') continue;
        // What was counted only the grower knows.
        const text = plainText(write!.map(part => (isOpen(part) ? (label === 'cut' ? '1 dead' : '1') : part)));
        expect([text, parse(text).problems]).toEqual([text, []]);
        expect([text, parse(text).record?.keyword]).toEqual([text, label]);
      }
    }
  });

  test('a judging is proposed for a day after day 0, not for a date of an example', () => {
    expect(plainText(atEnd(`${journal}jud`)!.items[0]!.write!)).toBe('judge VER-24/A 2026-01-19, on day 120');
  });

  test('the record is about the likeliest batch, and has a date only where no `day` line gives one', () => {
    expect(plainText(atEnd(`${journal}cou`)!.items[0]!.write!)).toBe('count VER-24/A 2026-01-19, ');
    expect(plainText(atEnd(`${journal}day 2026-01-18\ncou`)!.items[0]!.write!)).toBe('count VER-24/A, ');
  });

  test('a soak and a lift have the time, below the `day` line of today alone', () => {
    const text = (above: string) => plainText(atEnd(`${journal}${above}lif`)!.items[0]!.write!);
    expect(text('')).toBe('lift VER-24/A 2026-01-19 19:05');
    expect(text('day 2026-01-19\n')).toBe('lift VER-24/A 19:05');
    expect(text('day 2026-01-18\n')).toBe('lift VER-24/A');
  });

  test('a client that has no blanks gets the keyword alone', () => {
    expect(atEnd(`${journal}cou`)!.items[0]!.plain).toBe('count ');
  });

  test('in front of the rest of a record the keyword alone is replaced', () => {
    const source = `
      lot VER-24 Veratrum nigrum, 60 seeds
      cou VER-24 2026-01-19, 3
        ^ here
    `;
    const found = offered(source)!;
    expect(labels(found)).toEqual([`count · ${keywords.count.says}`]);
    expect(taken(source, found.items[0]!, found)).toBe('count VER-24 2026-01-19, 3');
  });

  test('a word from what a keyword is for leads to it', () => {
    expect(labels(atEnd('cold'))).toEqual([`chill · ${keywords.chill.says}`, `regime · ${keywords.regime.says}`]);
  });

  test('nothing is offered in a remark, a comment, or a line that is no record', () => {
    for (const text of ['  ', '  co', '# co', '12', '- co']) expect([text, atEnd(text)]).toEqual([text, undefined]);
  });
});

describe('several lines at once', () => {
  test('a trial has a treated and an untreated batch, seed held back, and no problem but that its seed has yet to be sown', () => {
    const text = lines('', 'trial');
    expect(text).toBe([
      'lot LOT-26 name of the plant, 60 seeds', 'split LOT-26, A 24 seeds, B 24 seeds', 'day 2026-01-19',
      'soak LOT-26/A 19:05, GA3 500 ppm, 24 h', 'soak LOT-26/B 19:05, water, 24 h',
    ].join('\n'));
    const all = new Journal();
    all.set('a.germ', text);
    const book = new ProblemBook(all);
    book.update(at(NOW));
    expect(book.of('a.germ').map(({ problem }) => problem.code)).toEqual([]);
  });

  test('a trial says what so many seeds can show: 24 a side tell 82 % from 40 %', () => {
    expect(atEnd('')?.items.find(({ label }) => label === 'trial')?.more).toContain('finds a gain from 40 % of the untreated to 81 % of the treated seed');
  });

  test('an id that is taken is not given again', () => {
    expect(lines('lot LOT-26 Iris\n', 'trial')).toMatch(/^lot LOT-26-1 /);
  });

  test('a ladder goes from water up to the limit', () => {
    expect(lines('lot IRI-25 Iris, 40 seeds\nlimit GA3, 800 ppm\nday 2026-01-19\n', 'ladder')).toBe([
      'split IRI-25, A 10 seeds, B 10 seeds, C 10 seeds, D 10 seeds', 'soak IRI-25/A 19:05, water, 24 h',
      'soak IRI-25/B 19:05, GA3 200 ppm, 24 h', 'soak IRI-25/C 19:05, GA3 400 ppm, 24 h', 'soak IRI-25/D 19:05, GA3 800 ppm, 24 h',
    ].join('\n'));
  });

  test('a ladder is of doses that dissolve', () => {
    const ladder = (solubility: string) => lines(`agent GA3, solubility ${solubility}\nlot IRI-25 Iris, 40 seeds\nlimit GA3, 800 ppm\n`, 'ladder');
    expect(ladder('0.8 g/L')).toContain('GA3 800 ppm');
    expect(ladder('0.79 g/L')).toBe('');
  });

  test('a trial takes no dose that is too strong or does not dissolve', () => {
    for (const line of ['limit GA3, 50 ppm', 'agent GA3, solubility 0.05 g/L']) {
      expect(lines(`${line}\n`, 'trial')).toContain('GA3 unmeasured');
    }
  });

  test('a counting round has a line for each open batch in the order of the places, its number to fill in', () => {
    expect(lines(journal, 'counting round')).toBe('day 2026-01-19\ncount VER-24/B, \ncount VER-24/A, ');
    expect(lines(`${journal}day 2026-01-19\ncount VER-24/B, 0\n`, 'counting round')).toBe('count VER-24/A, ');
    expect(lines('lot IRI-25 Iris\n', 'counting round')).toBe('');
    // Sown 404 days before.
    expect(lines(`${journal}lot OLD-24 Iris\nsow OLD-24 2024-12-11\n`, 'counting round')).toBe('day 2026-01-19\ncount VER-24/B, \ncount VER-24/A, ');
  });

  test('a new journal is offered in an empty file only', () => {
    const text = lines('', 'new journal');
    expect(text.split('\n').map(line => parse(line).problems.length)).toEqual(text.split('\n').map(() => 0));
    expect(text).toMatch(/^# Winter 2025\/26/);
    expect(lines(journal, 'new journal')).toBe('');
  });

  test.each([
    ['', 'zone Europe/Vienna\nlimit soak, 24 h\nlimit GA3, 1000 ppm\n\n'],
    ['zone America/Lima', 'limit soak, 24 h\nlimit GA3, 1000 ppm\n\n'],
    ['limit GA3, 500 ppm\nlimit GA3, 2000 ppm, for Iris', 'zone Europe/Vienna\nlimit soak, 24 h\n\n'],
    ['limit soak, 12 h\nlimit GA3, 2000 ppm, for Iris', 'zone Europe/Vienna\nlimit GA3, 1000 ppm\n\n'],
    ['zone Asia/Tokyo\nlimit soak, 12 h\nlimit GA3, 500 ppm', ''],
  ])('beside %j a new journal begins with the settings that are not there', (other, settings) => {
    const all = new Journal();
    all.set('a.germ', other);
    all.set('b.germ', '');
    const { write } = completionsAt(all, 'b.germ', { line: 0, character: 0 }, at(NOW))!.items.find(({ label }) => label === 'new journal')!;
    expect(plainText(write!)).toMatch(new RegExp(`^# Winter 20.+, the bench\n\n${settings}day 2026-01-`));
  });
});
