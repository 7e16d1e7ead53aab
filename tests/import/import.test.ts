import { describe, expect, it } from 'vitest';
import { imported, recordsFrom, saved, sheetNamed } from './helpers.ts';

describe('a sheet with a row a lot', () => {
  const sheet = sheetNamed('a-row-a-lot.csv');

  it('gives a lot, its soak, its sowing and its count for each row, and keeps the rest as remarks', () => {
    expect(recordsFrom(sheet)).toEqual({
      lines: [
        'lot GEN-25 Gentiana lutea, 60 seeds, collected 2025-09, from own bed',
        'soak GEN-25 2026-01-10, GA3 500 ppm, 24 h',
        'sow GEN-25 2026-01-11, 15 °C, in "grit, loam", at tray 4',
        'count GEN-25 2026-02-08, 14',
        '  nice seed',
        'lot GEN-25b Gentiana lutea, about 40 seeds, collected 2025, from seed swap',
        'sow GEN-25b 2026-01-11, 15 °C, in grit, at tray 5',
        'count GEN-25b 2026-02-08, 2',
        '  Treatment: control',
        '  Price: 3.50',
        'lot L17 Primula vialii, 30 to 40 seeds, collected 2025-09-20, from "by post, in a tin"',
        '  looked old',
        '  smelled odd',
        'note L17 2026-01-12, Soaked: GA3',
        'sow L17 2026-01-13, 18 °C',
        'lot MEC-25 Meconopsis betonicifolia, 25 seeds, collected 2025-10',
        '  Treatment: water 24 h',
        '  Germinated: 7',
      ],
      left: ['5: it names no lot'],
      told: [
        '6: “Treatment: water 24 h” is kept as a remark: the day of the soak is unknown',
        '6: “Germinated: 7” is kept as a remark: the day of the count is unknown',
      ],
    });
  });

  it('adds nothing when it is imported again, and only what is new when the sheet has grown', () => {
    const first = imported(sheet);
    const again = imported(sheet, { journal: first.after, mapping: saved(first) });
    expect([again.records, again.after, again.rows.known]).toEqual([0, first.after, [2, 3, 4, 6]]);
    const row = { number: 7, cells: ['MEC-26', 'Meconopsis betonicifolia', '9'] };
    const more = { ...sheet, rows: [...sheet.rows, row] };
    expect(recordsFrom(more, { journal: first.after }).lines).toEqual(['lot MEC-26 Meconopsis betonicifolia, 9 seeds']);
  });

  it('overwrites nothing: what the journal says otherwise stays, and is named', () => {
    const journal = imported(sheet).after.replace('60 seeds', '58 seeds').replace('2026-02-08, 14', '2026-02-08 19:00, 14, 2 rotted');
    const again = imported(sheet, { journal });
    expect([again.records, again.after]).toEqual([0, journal]);
    expect(again.told.map(({ why }) => why)[0]).toBe('the journal has “lot GEN-25 Gentiana lutea, 58 seeds, collected 2025-09, from own bed”, ' +
      'the sheet “lot GEN-25 Gentiana lutea, 60 seeds, collected 2025-09, from own bed”; it stays as it is');
    expect(again.told).toHaveLength(3);
  });
});

describe('a sheet with a row a count', () => {
  const sheet = sheetNamed('eine-zeile-je-zaehlung.csv');
  const journal = 'lot ADO-25 Adonis vernalis, 24 seeds\nlot HEP-25 Hepatica nobilis\n\n# February\nday 2026-02-12\ncount ADO-25, 0\n';

  it('asks whether its numbers are new or totals, where they may be either', () => {
    const { questions, after } = imported(sheet, { journal });
    expect([questions.map(({ about }) => about), after]).toEqual([['counts'], journal]);
  });

  it('puts its records above the first “day” line, knows a count that is there, and lists what has no date or no lot', () => {
    const given = { journal, answers: { counts: 'total' as const } };
    expect(recordsFrom(sheet, given)).toEqual({
      lines: [
        'count ADO-25 2026-02-19, =3 germinated', '  weiße Wurzeln', 'count ADO-25 2026-02-26, =9 germinated, =1 rotted',
        'count ADO-25 2026-03-05, =11 germinated, =1 rotted', 'note HEP-25 2026-02-12, verschimmelt, weg',
      ],
      left: ['7: the day of the count is unknown', '8: the journal has no lot XXX-1, and the sheet names no plant for it'],
      told: [],
    });
    expect(imported(sheet, given).after).toContain('\n\n# from notes.csv\ncount ADO-25 2026-02-19');
    expect(imported(sheet, given).after.endsWith('\n\n# February\nday 2026-02-12\ncount ADO-25, 0\n')).toBe(true);
  });
});

describe('a sheet with a row an event', () => {
  const journal = 'lot A12 Primula rosea, 60 seeds\n';
  const sheet = 'Date,Pot,What,Number\n2026-01-02,A12,into fridge,\n2026-01-05,A12,sown,40\n2026-02-01,A12,germinated,3\n'
    + '2026-02-08,A12,Rotted,1\n2026-02-09,A12,watered,\n2026-02-10,A12,moss,5\n2026-02-30,A12,germinated,2\n'
    + '2026-02-20,A12,germinated,1-2\n2026-03-01,A12,pricked out,3\n2026-03-08,A12,germinated,2\n';

  it('takes what a column says as what the number of the row is', () => {
    expect(recordsFrom(sheet, { journal })).toEqual({
      lines: [
        'chill A12 2026-01-02', 'sow A12 2026-01-05, 40 seeds', 'count A12 2026-02-01, 3', 'count A12 2026-02-08, 1 rotted',
        'note A12 2026-02-09, What: watered', 'note A12 2026-02-10, What: moss; Number: 5', 'note A12 2026-02-20, germinated: 1-2',
        'pot A12 2026-03-01', '  Number: 3', 'count A12 2026-03-08, 2',
      ],
      left: ['8: “2026-02-30” is not a day'], told: [],
    });
  });

  it('is read the same by the mapping that it gave, and adds nothing when it is imported again', () => {
    const first = imported(sheet, { journal });
    expect(first.mapping.columns.map(({ is }) => is)).toEqual(['date', 'lot', 'what', 'number']);
    expect(imported(sheet, { journal: first.after, mapping: saved(first) }).after).toBe(first.after);
  });

  it('is one only where the words and the numbers show it', () => {
    const is = (text: string) => imported(text, { journal }).mapping.columns.map(column => column.is);
    expect(is('Date,Lot,What,Number\n2026-01-02,A12,Iris alba,3\n2026-01-03,A13,Iris nigra,4\n')).not.toContain('what');
    expect(is('Date,Lot,What,Number\n2026-01-02,A12,germinated,few\n2026-01-03,A12,germinated,many\n')).not.toContain('number');
    expect(is('Lot,What,Number\nA12,germinated,3\nA12,germinated,4\n')).not.toContain('what');
  });
});

it('a column that is headed by an agent holds what seed was soaked in', () => {
  const sheet = 'Lot,Plant,Sown,Soaked,GA3\nA-1,Iris alba,2026-01-12,2026-01-11,500ppm\nA-2,Iris alba,2026-01-12,2026-01-11,1000 ppm 24h\n'
    + 'A-3,Iris alba,2026-01-12,,-\nA-4,Iris alba,2026-01-12,2026-01-11,yes\nA-5,Iris alba,2026-01-12,2026-01-11,500\n';
  const { lines, told } = recordsFrom(sheet);
  expect(lines.filter(line => !line.startsWith('lot') && !line.startsWith('sow'))).toEqual([
    'soak A-1 2026-01-11, GA3 500 ppm', 'soak A-2 2026-01-11, GA3 1000 ppm, 24 h', 'note A-4 2026-01-11, Soaked: GA3 yes', 'note A-5 2026-01-11, Soaked: GA3 500',
  ]);
  expect(told).toEqual([]);
});

describe('a sheet with a column a date', () => {
  const sheet = sheetNamed('a-column-a-date.csv');

  it('reads headings above several columns, and takes an empty cell for the one above only when told to', () => {
    const answers = { year: 2026, counts: 'total' as const, sameAsAbove: true };
    expect(recordsFrom(sheet, { answers })).toEqual({
      lines: [
        'lot PEN-25 Penstemon digitalis',
        '  A: by the window',
        'split PEN-25, A 24 seeds, B 24 seeds, C 24 seeds',
        '  B: „Küche“',
        'count PEN-25/A 2026-02-12, 0', 'count PEN-25/B 2026-02-12, 0', 'count PEN-25/C 2026-02-12, 0',
        'count PEN-25/A 2026-02-19, =3 germinated', 'count PEN-25/B 2026-02-19, 0, =1 rotted',
        'note PEN-25/C 2026-02-19, mould!',
        'count PEN-25/A 2026-02-26, =8 germinated, =1 rotted', 'count PEN-25/B 2026-02-26, =2 germinated', 'count PEN-25/C 2026-02-26, =2 germinated',
      ],
      left: ['1: it stands above the headings: “Winter sowing 2026”'], told: [],
    });
    expect(recordsFrom(sheet, { answers: { ...answers, sameAsAbove: false } }).left).toContain('6: it names no lot');
  });

  it('asks for the year first', () => {
    expect(imported(sheet).questions).toMatchObject([{ about: 'year', text: '“12/2” has no year. Which year is it?' }]);
  });

  it('takes a column that was added for one more day', () => {
    const answers = { year: 2026, counts: 'total' as const, sameAsAbove: true };
    const first = imported(sheet, { answers });
    const cells = ['', '', '5/3', '30'];
    const rows = sheet.rows.map(({ number, cells: row }, n) => ({ number, cells: [...row, ...cells.slice(n, n + 1)] }));
    const more = imported({ ...sheet, rows }, { journal: first.after, mapping: saved(first) });
    expect(more.mapping.columns.at(-1)).toEqual({ heading: 'Rotted: 5/3', is: 'rotted', date: '2026-03-05' });
    expect(more.after.slice(first.after.length).trim().split('\n').at(-1)).toBe('count PEN-25/A 2026-03-05, =30 rotted');
  });
});

describe('a sheet with weeks after sowing', () => {
  const sheet = sheetNamed('weeks.csv');

  it('asks on which day of the week was counted', () => {
    expect(imported(sheet).questions.map(({ about }) => about)).toEqual(['weekDay']);
  });

  it('makes ids from plants, and dates from the sowing', () => {
    const { lines } = recordsFrom(sheet, { answers: { weekDay: 7, soakedBefore: 1 } });
    expect(lines).toEqual([
      'lot CRO-25 Crocus tommasinianus', 'soak CRO-25 2025-09-02, GA3 500 ppm', 'sow CRO-25 2025-09-03, 50 seeds',
      'count CRO-25 2025-09-10, 0', 'count CRO-25 2025-09-17, 4', 'note CRO-25 2025-09-20, Up on', 'count CRO-25 2025-09-24, 3',
      'count CRO-25 2025-10-01, 1',
      'lot CRO-25-2 Crocus tommasinianus', 'soak CRO-25-2 2025-09-02, GA3 0 ppm', 'sow CRO-25-2 2025-09-03, 50 seeds',
      'count CRO-25-2 2025-09-10, 0', 'count CRO-25-2 2025-09-24, 1', 'count CRO-25-2 2025-10-01, 0',
      'lot IRI-25 Iris “Émile”', 'soak IRI-25 2025-09-12, GA3 0.5 ppm', 'sow IRI-25 2025-09-13, 12 seeds',
    ]);
    const soakless = recordsFrom(sheet, { answers: { weekDay: 7 } });
    expect(soakless.lines).toContain('  GA3 (ppm): 500');
    expect(soakless.told[0]).toBe('2: “GA3 (ppm): 500” is kept as a remark: the day of the soak is unknown');
  });

  it('finds its lots again when a row comes in between', () => {
    const given = { answers: { weekDay: 7 } };
    const journal = imported(sheet, given).after;
    const between = { number: 3, cells: ['Crocus tommasinianus', '20', '4/9/2025'] };
    const rows = sheet.rows.toSpliced(2, 0, between).map((row, n) => ({ ...row, number: n + 1 }));
    expect(recordsFrom({ ...sheet, rows }, { journal, ...given }).lines).toEqual([
      'lot CRO-25-3 Crocus tommasinianus', 'sow CRO-25-3 2025-09-04, 20 seeds',
    ]);
  });
});

describe('a row that says how many seeds were sown and counts nothing', () => {
  const sheet = 'Date,Lot,Plant,Treatment,Sown,Germinated\n13/01/2026,G1,Gentiana acaulis,GA3 500 ppm 24 h,30,\n13/02/2026,G1,Gentiana acaulis,,,5\n';

  it('is a sowing on its day', () => {
    expect(recordsFrom(sheet, { answers: { counts: 'new' } }).lines).toEqual([
      'lot G1 Gentiana acaulis', '  Treatment: GA3 500 ppm 24 h', 'sow G1 2026-01-13, 30 seeds', 'count G1 2026-02-13, 5',
    ]);
  });

  it('and its soak began before, if the grower says when', () => {
    expect(recordsFrom(sheet, { answers: { counts: 'new', soakedBefore: 1 } }).lines).toContain('soak G1 2026-01-12, GA3 500 ppm, 24 h');
  });
});

// Each pump made some expression go through the rest of the cell for each of its signs: for these, minutes or hours.
describe('a cell of a hundred thousand signs', () => {
  it.each([',', ':', '(', '[', 'T', ' ', '1', '; ', '2026 '])('of %j is a remark, whatever its column', pump => {
    const long = `a${pump.repeat(100_000 / pump.length)}z`;
    const quoted = `"${long}"`;
    const { lines } = recordsFrom(`Lot,Plant,Seeds,Sown,Treatment,Note\nGEN-25,Gentiana lutea,9,${quoted},${quoted},${quoted}\n`);
    expect(lines[0]).toBe('lot GEN-25 Gentiana lutea, 9 seeds');
    expect(lines.join('\n').length).toBeGreaterThan(100_000);
  });
});
