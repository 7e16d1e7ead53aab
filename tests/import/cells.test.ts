import { describe, expect, it } from 'vitest';
import { countingShown } from '../../server/src/import/counting.ts';
import { orderShown, readCellDate } from '../../server/src/import/dates.ts';
import { decodeTable } from '../../server/src/import/encoding.ts';
import { readHeading } from '../../server/src/import/headings.ts';
import { idOf, pathOf, stemOf } from '../../server/src/import/ids.ts';
import { readMapping } from '../../server/src/import/mapping.ts';
import { howMany, wholeIn, withPoints } from '../../server/src/import/numbers.ts';
import { readTable } from '../../server/src/import/table.ts';
import { soakFacts } from '../../server/src/import/treatment.ts';
import { isoOf } from '../../server/src/model/day.ts';
import { imported, recordsFrom } from './helpers.ts';

const bytes = (text: string, encoding: BufferEncoding) => Buffer.from(text, encoding);

describe('the bytes of a sheet', () => {
  it.each([
    ['UTF-8', bytes('Größe “x”', 'utf8')],
    ['UTF-8', bytes('\ufeffGröße “x”', 'utf8')],
    ['UTF-16', bytes('\ufeffGröße “x”', 'utf16le')],
    ['UTF-16', bytes('Größe “x”', 'utf16le')],
    ['UTF-16', bytes('\ufeffGröße “x”', 'utf16le').swap16()],
    ['Windows-1252', Buffer.from([...bytes('Größe ', 'latin1'), 0x93, 0x78, 0x94])],
  ])('are read as %s', (encoding, given) => {
    expect(decodeTable(given)).toEqual({ text: 'Größe “x”', encoding });
  });

  it('are refused where they are a workbook, or no text', () => {
    expect(decodeTable(bytes('PK\u0003\u0004', 'latin1'))).toMatchObject({ fault: expect.stringContaining('it is a workbook') as string });
    for (const given of [[0x41, 0x81], [0x41, 0x42, 0], [0xff, 0xfe, 0x00, 0xd8], [0x41, 0xe4, 0x01]]) {
      expect(decodeTable(Uint8Array.from(given))).toHaveProperty('fault');
    }
    expect(decodeTable(new Uint8Array())).toEqual({ text: '', encoding: 'UTF-8' });
  });
});

describe('the cells of a sheet', () => {
  it.each([[',', 'Lot,Plant\n1,2\n'], [';', 'Lot;Temp\n1,5;2,5\n3,5;4\n'], ['\t', 'Lot\tPlant\n1,2\t3;4\n']])('are divided by the sign that is found: %j', (delimiter, text) => {
    const table = readTable(text);
    expect('fault' in table ? table : table.delimiter).toBe(delimiter);
  });

  it('may hold signs and line ends in quotation marks, and rows keep the numbers of the spreadsheet', () => {
    expect(readTable('a,b\r\n"x, y\nz",\r\n\r\n"say ""hi""",2\r\n')).toEqual({
      delimiter: ',', rows: [
        { number: 1, cells: ['a', 'b'] }, { number: 2, cells: ['x, y\nz', ''] }, { number: 3, cells: [''] },
        { number: 4, cells: ['say "hi"', '2'] },
      ],
    });
    expect(readTable('a,b\n"x,2\n')).toEqual({
      fault: 'a quotation mark in row 2 is not closed, or stands inside a cell; fix it in the sheet',
    });
  });
});

describe('a date in a cell', () => {
  const read = (cell: string, habit = {}) => {
    const reading = readCellDate(cell, habit);
    return !reading ? undefined : 'asks' in reading ? reading.asks : `${isoOf(reading.day)}${reading.time === undefined ? '' : ` ${reading.time}`}`;
  };

  it.each([
    ['2026-02-12', '2026-02-12'], ['2026/2/1', '2026-02-01'], ['20260212', '2026-02-12'], ['12.2.2026', '2026-02-12'], ['1.2.26', '2026-02-01'],
    ['13/2/2026', '2026-02-13'], ['2/13/26', '2026-02-13'], ['5/5/2026', '2026-05-05'], ['12 Feb 2026', '2026-02-12'], ['12-Feb-26', '2026-02-12'],
    ['Feb 12, 2026', '2026-02-12'], ['February 12th, 2026', '2026-02-12'], ['12. März 2026', '2026-03-12'], ['1er août 2026', '2026-08-01'],
    ['Do, 12.2.2026', '2026-02-12'], ['2026-02-12 00:00:00', '2026-02-12'], ['2026-02-12T19:30', '2026-02-12 19:30'], ['1/1/70', '1970-01-01'],
  ])('%s is %s', (cell, iso) => {
    expect(read(cell)).toBe(iso);
  });

  it('is asked about where it may be two, or where its year is missing', () => {
    expect([read('3/4/2026'), read('3/4/2026', { order: 'day-month' }), read('3/4/2026', { order: 'month-day' })]).toEqual(['order', '2026-04-03', '2026-03-04']);
    expect([read('12 Feb'), read('12 Feb', { year: 2026 }), read('13/2', { year: 2026 }), read('12.2.')]).toEqual(['year', '2026-02-12', '2026-02-13', 'year']);
  });

  it('is none where no calendar has it', () => {
    for (const cell of ['30 Feb 2026', '13/13/2026', '2026-02-30', 'soon', 'Ma 3', 'week 7', '24', '1/2', '']) {
      if (cell !== '1/2') expect(read(cell, { year: 2026 }), cell).toBeUndefined();
    }
    expect(read('12/13/2026', { order: 'day-month' })).toBeUndefined();
  });

  it('shows the order of its column, unless two contradict each other', () => {
    expect(orderShown(['3/4/2026', '25/4/2026 00:00'])).toBe('day-month');
    expect(orderShown(['3/4/2026', '4/25/2026'])).toBe('month-day');
    expect([orderShown(['3/4/2026', '2026-04-25']), orderShown(['25/4/2026', '4/25/2026'])]).toEqual([undefined, undefined]);
  });
});

describe('a number in a cell', () => {
  it.each([
    ['about 40', 'about 40'], ['~40', 'about 40'], ['ca. 40 seeds', 'about 40'], ['40?', 'about 40'], ['30-40', '30 to 40'], ['30 bis 40 Samen', '30 to 40'],
    ['24', '24'], ['24,0', '24'], ['24.00', '24'], ['24 seeds', '24'], ['1 200', '1200'], ['12 Korn', '12'],
  ])('%s is %s', (cell, many) => {
    expect(howMany(cell)).toBe(many);
  });

  it('is none where it may be two', () => {
    for (const cell of ['1.000', '1,000', '40-30', 'many', '24,5', '12/24', '50 %', '']) expect(howMany(cell), cell).toBeUndefined();
    expect([wholeIn('about 5'), wholeIn('=5'), wholeIn('5')]).toEqual([undefined, undefined, 5]);
    expect([withPoints('0,05 %'), withPoints('1,000 ppm'), withPoints('1,2,3')]).toEqual(['0.05 %', '1,000 ppm', '1,2,3']);
  });
});

describe('counts', () => {
  const series = (...numbers: number[]) => numbers.map((n, i) => ({ path: 'X', what: 'germinated', day: i, n }));
  const known = { seedsOf: () => 24, hasOthers: () => false };

  it('are new where they fall, totals where they would be more than the seeds, and either where nothing shows it', () => {
    expect(countingShown(series(0, 3, 1), known)).toBe('new');
    expect(countingShown(series(9, 14, 20), known)).toBe('total');
    expect(countingShown(series(0, 0, 3), known)).toBe('new');
    expect(countingShown(series(0, 3, 5), known)).toBeUndefined();
    expect(countingShown(series(20, 20, 3), known)).toBe('new');
    expect(countingShown([...series(0, 3, 1), ...series(9, 14, 20).map(each => ({ ...each, path: 'Y' }))], known)).toBeUndefined();
    expect(countingShown(series(3), { ...known, hasOthers: () => true })).toBeUndefined();
    expect(countingShown([], known)).toBe('new');
  });
});

describe('a treatment in words', () => {
  it.each([
    ['GA3 500ppm 24 hrs', ['GA3 500 ppm', '24 h']], ['500 ppm GA3', ['GA3 500 ppm']], ['GA-3 0,05 % for 24 hours', ['GA3 0.05 %', '24 h']],
    ['Water 24h', ['water', '24 h']], ['GA3 500 ppm + KNO3 0.2 %', ['GA3 500 ppm', 'KNO3 0.2 %']], ['ga3, unmeasured', ['GA3 unmeasured']],
    ['a pinch of GA3', ['GA3 unmeasured']],
  ])('%s is a soak', (cell, facts) => {
    expect(soakFacts(cell)?.map(fact => fact.replace(/(\d)(ppm|h)/, '$1 $2'))).toEqual(facts);
  });

  it('is none without a strength, and none that is not sure', () => {
    for (const cell of ['GA3', 'hormone', 'smoke', 'G1 10 mL', 'cold 8 weeks', 'GA3 weak', '500 ppm', 'sulphur, a pinch']) expect(soakFacts(cell), cell).toBeUndefined();
    expect(soakFacts('G1 10 mL', id => id === 'G1')).toEqual(['G1 10 mL']);
  });
});

describe('headings', () => {
  it.each([
    ['Species', 'species'], ['Sowing date', 'sown'], ['Date sown', 'sown'], ['No. of seeds', 'seeds'], ['# sown', 'seeds sown'], ['Aussaat', 'sown'],
    ['Récolte', 'collected'], ['Germination date', 'noted'], ['Total germinated', 'germinated'], ['Anzahl Samen', 'seeds'], ['Bemerkungen', 'remark'],
    ['Planted', undefined], ['Price', undefined],
  ])('“%s” is %s', (heading, role) => {
    expect(readHeading(heading).role).toBe(role);
  });

  it('say totals, units and agents', () => {
    expect(readHeading('Germinated so far')).toEqual({ role: 'germinated', counts: 'total' });
    expect(readHeading('Temp (°C)')).toEqual({ role: 'temperature', unit: '°C' });
    expect(readHeading('GA₃ [ppm]')).toEqual({ role: 'strength', agent: 'GA3', unit: 'ppm' });
  });
});

describe('shares in place of counts', () => {
  const lines = (heading: string, ...cells: readonly string[]) => recordsFrom([
    `Lot;Plant;Seeds;Sown;${heading};Date`, ...cells.map((cell, i) => `P${i};Penstemon;200;2026-01-11;${cell};2026-02-13`),
  ].join('\n')).lines.filter(line => /^(?:count|note)/.test(line));

  it('are no numbers of seeds, whatever sign or word says so', () => {
    for (const heading of ['Germinated %', '% germinated', 'Germinated (%)', 'Germinated percent', 'Gekeimt in Prozent']) {
      expect(lines(heading, '50')).toEqual([`note P0 2026-02-13, ${heading}: 50`]);
    }
    expect(recordsFrom('Lot,Plant,Seeds,Sown,% up 2026-02-12\nA,Iris,200,2026-01-11,50\n').lines).toEqual(
      ['lot A Iris, 200 seeds', '  % up 2026-02-12: 50', 'sow A 2026-01-11']);
  });

  it('show in a column of broken numbers, of which a whole one is none either', () => {
    expect(lines('Germinated', '0.5', '1')).toEqual(['note P0 2026-02-13, Germinated: 0.5', 'note P1 2026-02-13, Germinated: 1']);
    expect(lines('Germinated', '12,5', '50')).toEqual(['note P0 2026-02-13, Germinated: 12,5', 'note P1 2026-02-13, Germinated: 50']);
    expect(lines('Germinated', '3.0', '5.0')).toEqual(['count P0 2026-02-13, 3', 'count P1 2026-02-13, 5']);
    // A slip in one of many.
    expect(lines('Germinated', '3', '1.5', '4', '5', '6')).toContain('count P4 2026-02-13, 6');
  });
});

describe('ids', () => {
  it('keep what a journal can read, and change no more than they must', () => {
    expect(['GEN-25', 'GEN 25', '17', '2025/14', '#3', '種 1'].map(idOf)).toEqual(['GEN-25', 'GEN-25', 'L17', 'L2025-14', 'L3', '種-1']);
    expect(['', '?!'].map(idOf)).toEqual([undefined, undefined]);
    expect([pathOf('GEN-25/A'), pathOf('2025/14')]).toEqual([{ lot: 'GEN-25', part: 'A' }, { lot: 'L2025-14' }]);
    expect([stemOf('Gentiana lutea', 2025), stemOf('× Heucherella', 2009), stemOf('Écheveria', undefined), stemOf('7', 1999)]).toEqual(['GEN-25', 'HEU-09', 'ECH', 'LOT-99']);
  });
});

describe('rows that stay out', () => {
  it('stand in the list with the reason', () => {
    const sheet = 'Lot,Plant,Batch,Seeds,Date,Germinated\n' +
      'A 1,Iris,,9,,\nA-1,Iris,,9,,\nG1,Iris,,9,,\nB 1,Iris,C,,12.2.2026,3\nB 1,Iris,?,9,,\nQ,,,,12.2.2026,3\nA 1,Iris,,9,,\n?!,Iris,,9,,\nA 1,,,,,\n,,,,,\n';
    const { left } = recordsFrom(sheet, { journal: 'stock G1 2026-01-01, GA3 20 mg, 20 mL\n' });
    expect(left).toEqual([
      '3: “A 1” and “A-1” would both be the lot A-1', '4: “G1” is the name of a stock in the journal',
      '5: the journal has no batch B-1/C, and the sheet does not say how many seeds are in it', '6: “?” cannot be the name of a batch',
      '7: the journal has no lot Q, and the sheet names no plant for it', '8: it says the same as row 2', '9: “?!” cannot be the id of a lot',
      '10: it says nothing that a record could hold',
    ]);
  });

  it('are those that add others up', () => {
    for (const sum of ['Total', 'Summe:', 'Penstemon total', 'Average', 'Zwischensumme']) {
      expect(recordsFrom(`Lot,Plant,Seeds\nA,Penstemon,20\n${sum},Penstemon,20\n`).left, sum).toEqual(['3: it looks like a row of sums']);
      expect(recordsFrom(`Plant,Seeds\nPenstemon,20\n${sum},20\n`).left, sum).toEqual(['3: it looks like a row of sums']);
    }
    expect(recordsFrom('Lot,Plant,Seeds\nSUM-1,Summum alba,20\n').left).toEqual([]);
  });

  it('are those of a plant of which the journal has two lots, or one that says something else', () => {
    const journal = 'lot IRI-1 Iris sibirica, 9 seeds\nlot IRI-2 Iris sibirica, 9 seeds\nlot GEN-25 Gentiana lutea, 60 seeds\n';
    expect(recordsFrom('Plant,Date,Germinated\nIris sibirica,12.2.2026,3\nIris sibirica,13.2.2026,0\n', { journal }).left).toEqual(
      [2, 3].map(row => `${row}: the journal has 2 lots of Iris sibirica; give the sheet a column with ids`));
    expect(recordsFrom('Plant,Seeds\nGentiana lutea,50\n', { journal }).left).toEqual([
      '2: the journal has GEN-25 Gentiana lutea, which says something else; make both say the same, or give the sheet a column with ids',
    ]);
  });
});

describe('questions', () => {
  it('come before anything is read in one of two ways', () => {
    const sheet = 'Plant,Sown,Seeds\nIris,3/4/2026,9\n';
    expect(imported(sheet).questions).toMatchObject([{ about: 'dates', text: '“3/4/2026 (row 2, Sown)” can be read in two ways, and the sheet does not show which. Does the day come first, or the month?' }]);
    expect(recordsFrom(sheet, { answers: { dates: 'month-day' } }).lines).toEqual(['lot IRI-26 Iris, 9 seeds', 'sow IRI-26 2026-03-04']);
    // Another column shows it.
    expect(recordsFrom('Plant,Sown,Fridge\nIris,3/4/2026,25/4/2026\n').lines).toContain('sow IRI-26 2026-04-03');
  });
});

describe('a mapping that was edited', () => {
  const mapping = '{"delimiter":",","headingRow":1,"lots":"row","columns":[{"heading":"Plant","is":"plant"},{"heading":"Got","is":"from"}]}';

  it('counts instead of the guess', () => {
    const read = readMapping(mapping);
    if ('fault' in read) throw new Error(read.fault);
    expect(recordsFrom('Plant,Got\nIris,a friend\n', { mapping: read }).lines).toEqual(['lot IRI Iris, from a friend']);
  });

  it.each([
    ['plant"},', 'plnt"},', '“is” of the column “Plant” cannot be “plnt”; did you mean “plant”?'],
    ['"delimiter":","', '"delimiter":"|"', '“delimiter” must be "," or ";" or "\\t"'],
    ['"headingRow":1', '"headingRow":0', '“headingRow” must be a whole number from 1 to 1000000'],
    ['"lots"', '"lost"', 'it has a member “lost”; it can have delimiter, headingRow, lots, columns, dates, year, counts, weekDay, soakedBefore, sameAsAbove'],
    ['"is":"from"', '"is":"germinated","date":"soon"', '“date” of the column “Got” must be a day such as 2026-01-19'],
    ['[{', '{{', expect.stringContaining('it is not JSON') as string],
  ])('is refused with the reason where it cannot be read', (from, to, fault) => {
    expect(readMapping(mapping.replace(from, to))).toEqual({ fault });
  });
});
