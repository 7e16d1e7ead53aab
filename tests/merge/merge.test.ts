import { describe, expect, it } from 'vitest';
import { merge } from '../../server/src/merge/merge.ts';
import { BASE, changed, holds, merged } from './helpers.ts';

describe('records that both sides added', () => {
  it('stand in the order of time, whichever side has them', () => {
    const [later, sooner] = ['\nday 2026-02-08\ncount GEN-25/A, 5\n', '\nday 2026-02-05\ncount GEN-25/B, 2\n'];
    for (const [ours, theirs] of [[later, sooner], [sooner, later]] as const) {
      expect(merged(BASE + ours, BASE + theirs)).toMatchObject({ text: BASE + sooner + later, conflicts: [] });
    }
  });

  it('come below one “day” line where both wrote it', () => {
    const { text, conflicts } = merged(`${BASE}\nday 2026-02-08\ncount GEN-25/A, 5\n`, `${BASE}\nday 2026-02-08\ncount GEN-25/B, 2\n  Slow.\n`);
    expect({ text, conflicts }).toEqual({ text: `${BASE}\nday 2026-02-08\ncount GEN-25/A, 5\ncount GEN-25/B, 2\n  Slow.\n`, conflicts: [] });
  });

  it('stay below the “day” line that they were written under, where the other side begins a new day', () => {
    const { text } = merged(`${BASE}\nday 2026-02-08\ncount GEN-25/A, 5\n`, `${BASE}count GEN-25/A, 1 lost\n`);
    expect(text).toBe(`${BASE}count GEN-25/A, 1 lost\n\nday 2026-02-08\ncount GEN-25/A, 5\n`);
  });

  it('stand there once where both are the same, however the date and the blanks are written, with the remarks of both', () => {
    holds(`
      --- base
      lot A-1 Adonis vernalis
      --- ours
      lot A-1 Adonis vernalis
      day 2026-02-08
      soak A-1, GA3 500 ppm, 24 h
        In the jar with the lid.
      --- theirs
      lot A-1 Adonis vernalis
      soak A-1 2026-02-08,GA3 500ppm,  24 hours
        Cloudy.
      --- merged
      lot A-1 Adonis vernalis
      day 2026-02-08
      soak A-1, GA3 500 ppm, 24 h
        In the jar with the lid.
        Cloudy.
    `);
    const again = `${BASE}count GEN-25/A, 1\n`;
    expect(merged(again, `${again}count GEN-25/B, 2\n`)).toMatchObject({
      text: `${again}count GEN-25/B, 2\n`, once: ['count GEN-25/A, 1'], countedTwice: [],
    });
  });

  it('stand there as often as one side has them: two seedlings on one day may be two records', () => {
    const twice = `${BASE}count GEN-25/A, 1\ncount GEN-25/A, 1\n`;
    expect(merged(twice, `${BASE}count GEN-25/A, 1\n`).text).toBe(twice);
    expect(merged(twice, twice).text).toBe(twice);
  });

  it('are said where both counted the same batch, for the same seedlings may be in both', () => {
    expect(merged(`${BASE}count GEN-25/A, 1\n`, `${BASE}count GEN-25/A, 2\n`).countedTwice).toEqual(['GEN-25/A']);
    expect(merged(`${BASE}count GEN-25/A, =9\n`, `${BASE}count GEN-25/A, 2\n`).countedTwice).toEqual([]);
  });

  it('stand newest first in a journal that does', () => {
    holds(`
      --- base
      lot A-1 Adonis vernalis, 9 seeds

      count A-1 2026-02-01, 2
      count A-1 2026-01-25, 1
      sow A-1 2026-01-11
      --- ours
      lot A-1 Adonis vernalis, 9 seeds

      count A-1 2026-02-15, 1
      count A-1 2026-02-01, 2
      count A-1 2026-01-25, 1
      sow A-1 2026-01-11
      --- theirs
      lot A-1 Adonis vernalis, 9 seeds

      note A-1 2026-02-16, moss on it
      note A-1 2026-02-08, watered
      count A-1 2026-02-01, 2
      count A-1 2026-01-25, 1
      sow A-1 2026-01-11
      --- merged
      lot A-1 Adonis vernalis, 9 seeds

      note A-1 2026-02-16, moss on it

      count A-1 2026-02-15, 1
      note A-1 2026-02-08, watered
      count A-1 2026-02-01, 2
      count A-1 2026-01-25, 1
      sow A-1 2026-01-11
    `);
  });

  it('keep the comments above them, and comments of the other side between others apart', () => {
    holds(`
      --- base
      lot A-1 Adonis vernalis
      --- ours
      lot A-1 Adonis vernalis

      # February
      # count A-1 2026-02-02, 9
      note A-1 2026-02-08, watered
      --- theirs
      lot A-1 Adonis vernalis

      # January
      note A-1 2026-01-08, dry
      --- merged
      lot A-1 Adonis vernalis

      # January
      note A-1 2026-01-08, dry

      # February
      # count A-1 2026-02-02, 9
      note A-1 2026-02-08, watered
    `);
  });
});

describe('dates', () => {
  it('are written out where the “day” line above was changed on the other side', () => {
    const { text, conflicts } = merged(changed('day 2026-02-01', 'day 2026-02-02'), `${BASE}count GEN-25/B, 7\n`);
    expect(conflicts).toEqual([]);
    expect(text).toBe(`${changed('day 2026-02-01', 'day 2026-02-02')}count GEN-25/B 2026-02-01, 7\n`);
  });

  it('stay where one side took the “day” line out and wrote the dates on the records', () => {
    const own = BASE.replace(/day 2026-02-01\n/, '').replace('A, 6', 'A 2026-02-01, 6').replace('B, 1', 'B 2026-02-01, 1');
    const { text, conflicts } = merged(own, `${BASE}count GEN-25/B 08:00, 7\n`);
    expect({ text, conflicts }).toEqual({ text: `${own}count GEN-25/B 2026-02-01 08:00, 7\n`, conflicts: [] });
  });

  it('come with a “day” line of their own where a slip on the line leaves no place for them', () => {
    const { text } = merged(changed('day 2026-02-01', 'day 2026-02-02'), `${BASE}cuont GEN-25/B, 7\n`);
    expect(text).toBe(`${changed('day 2026-02-01', 'day 2026-02-02')}day 2026-02-01\ncuont GEN-25/B, 7\nday 2026-02-02\n`);
  });

  it('come to no record that had none: it stays above every “day” line', () => {
    const base = 'lot A-1 Adonis vernalis, 9 seeds\n\nlot B-1 Bellis perennis, 9 seeds\n';
    const { text } = merged(`day 2026-02-01\n\n${base}`, `${base}split B-1, A 3 seeds\n`, base);
    expect(text).toBe('split B-1, A 3 seeds\nday 2026-02-01\n\nlot A-1 Adonis vernalis, 9 seeds\n\nlot B-1 Bellis perennis, 9 seeds\n');
  });

  it('that cannot be read stay above the same records', () => {
    const base = 'lot A-1 Adonis vernalis\n\nday 2026-02-30\nnote A-1, dry\n';
    const { text } = merged(`${base}note A-1, wet\n`, base.replace('2026-02-30', '2026-02-28'), base);
    expect(text).toBe('lot A-1 Adonis vernalis\n\nday 2026-02-28\nnote A-1, dry\nday 2026-02-30\nnote A-1, wet\nday 2026-02-28\n');
  });

  it('that cannot be read stay with their records where the other side took the “day” line out', () => {
    const { text } = merged('note A-1, dry\n', 'day 2026-02-31\nnote A-1, dry\n', 'day 2026-02-01\nnote A-1, dry\n');
    expect(text).toBe('<<<<<<< ours\nnote A-1, dry\n=======\nday 2026-02-31\nnote A-1, dry\n>>>>>>> theirs\nday 2026-02-31\n');
  });

  it('stay with a line with a slip where the other side took the “day” line out, and go to no record without one', () => {
    const base = 'day 2026-02-01\ncount A-1, 3 seeed\n';
    const [ours, theirs] = [base.replace('3', '4'), 'count A-1, 3 seeed\nnote A-1, dry\n'];
    expect(merged(ours, theirs, base).text).toBe('note A-1, dry\n<<<<<<< ours\nday 2026-02-01\ncount A-1, 4 seeed\n'
      + '=======\ncount A-1, 3 seeed\n>>>>>>> theirs\n');
  });

  it('that cannot be read are in one conflict, so that none comes to stand above a record of the other side', () => {
    const ours = 'day 2026-02-31\nnote A-1, dry\nday 2026-02-02\nnote A-1, wet\n';
    const { text } = merged(ours, 'note A-1, dry\nnote A-1, wet\n', 'day 2026-02-01\nnote A-1, dry\nnote A-1, wet\n');
    expect(text).toBe('<<<<<<< ours\nnote A-1 2026-02-02, wet\nday 2026-02-31\nnote A-1, dry\n'
      + '=======\nnote A-1, dry\nnote A-1, wet\n>>>>>>> theirs\nday 2026-02-31\nday 2026-02-02\n');
  });
});

describe('a conflict', () => {
  it('stands around one record that both changed, and around nothing else', () => {
    const { text, conflicts } = merged(changed('A, 3', 'A, 4'), changed('A, 3', 'A, 5').replace('B, 1', 'B, 2'));
    expect(conflicts).toEqual(['7 changed on both sides']);
    const block = '<<<<<<< ours\ncount GEN-25/A, 4\n  Radicles white and straight.\n=======\ncount GEN-25/A, 5\n  Radicles white and straight.\n>>>>>>> theirs';
    expect(text).toBe(changed('count GEN-25/A, 3\n  Radicles white and straight.', block).replace('B, 1', 'B, 2'));
  });

  it('has the dates of both where both moved the same records to other days', () => {
    const { text, conflicts } = merged(changed('day 2026-02-01', 'day 2026-02-02'), changed('day 2026-02-01', 'day 2026-02-03'));
    expect(conflicts).toHaveLength(2);
    expect(text).toContain('<<<<<<< ours\ncount GEN-25/B 2026-02-02, 1\n=======\ncount GEN-25/B, 1\n>>>>>>> theirs\n');
  });

  it('is where one side took out what the other one changed, and where it only added a remark to it', () => {
    const without = changed('count GEN-25/B, 0\n', '');
    expect(merged(without, changed('B, 0', 'B, 2')).conflicts).toEqual(['9 deleted on one side and changed on the other']);
    expect(merged(changed('B, 0\n', 'B, 0\n  Mould.\n'), without).conflicts).toEqual(['9 deleted on one side and changed on the other']);
    expect(merged(without, changed('A, 6', 'A, 7')).conflicts).toEqual([]);
  });

  it('is where both gave one name: a lot, a batch, a stock; a limit; another zone', () => {
    for (const [ours, theirs] of [
      ['lot X Iris alba, 5 seeds', 'lot X Adonis vernalis, 9 seeds'], ['lot X Iris alba', 'stock X 2026-01-09, GA3 20 mg, 20 mL'],
      ['split GEN-25, C 3 seeds', 'split GEN-25, D 2 seeds, C 4 seeds'], ['limit soak, 20 h', 'limit soak, 30 h'],
      ['limit GA3, 200 ppm, for Primula', 'limit GA3, 500 ppm, for Primula'],
    ] as const) {
      const { text, conflicts } = merged(`${BASE}${ours}\nnote GEN-25, mine\n`, `${BASE}${theirs}\nnote GEN-25, its\n`);
      expect(conflicts).toEqual(['14 the same name on both sides']);
      expect(text).toBe(`${BASE}<<<<<<< ours\n${ours}\n=======\n${theirs}\n>>>>>>> theirs\nnote GEN-25, mine\nnote GEN-25, its\n`);
    }
    expect(merged('zone Europe/Vienna\n', 'zone Europe/Rome\n', '').conflicts).toHaveLength(1);
    expect(merged(`${BASE}limit GA3, 9 ppm, for Iris\n`, `${BASE}limit GA3, 8 ppm\n`).conflicts).toEqual([]);
  });

  it('is where one side gave a lot another name and the other one took that name', () => {
    const base = 'lot A-1 Adonis vernalis, 9 seeds\nlot C-1 Crambe maritima\n';
    expect(merged(base.replace('A-1', 'B-1'), `${base}lot B-1 Bellis perennis\n`, base).conflicts).toEqual(['1 the same name on both sides']);
  });

  it('is where both changed the same remark; remarks that both added are kept', () => {
    const remark = '  Radicles white and straight.';
    expect(merged(changed(remark, '  White.'), changed(remark, '  Straight.')).conflicts).toEqual(['7 changed on both sides']);
    const { text, conflicts } = merged(changed(remark, `  5 mm.\n${remark}\n  Moss.`), changed(remark, `${remark}\n  Watered.\n  Moss.`));
    expect({ text, conflicts }).toEqual({ text: changed(remark, `  5 mm.\n${remark}\n  Moss.\n  Watered.`), conflicts: [] });
  });

  it('is where a line that cannot be read was changed on both sides', () => {
    const base = `${BASE}cuont GEN-25/B, 7\n`;
    const other = (n: number) => base.replace('cuont GEN-25/B, 7', `cuont GEN-25/B, ${n}`);
    expect(merged(other(8), other(9), base).conflicts).toEqual(['14 changed on both sides']);
    expect(merged(other(8), `${base}count GEN-25/B, 1\n`, base)).toMatchObject({ text: `${other(8)}count GEN-25/B, 1\n`, conflicts: [] });
  });

  it('has marks as long as git asks for, with the line ends of the file', () => {
    const [ours, theirs] = [changed('A, 3', 'A, 4'), changed('A, 3', 'A, 5')].map(text => text.replaceAll('\n', '\r\n')) as [string, string];
    const { text } = merge(BASE.replaceAll('\n', '\r\n'), ours, theirs, { markerSize: 9, labels: { ours: 'mine', theirs: 'yours' } });
    expect(text).toContain('\r\n<<<<<<<<< mine\r\ncount GEN-25/A, 4\r\n');
    expect(text).toContain('\r\n=========\r\n');
    expect(text).toContain('\r\n>>>>>>>>> yours\r\ncount GEN-25/B, 0\r\n');
  });

  it('that both began with, as git makes one of several common versions, is one still where each side chose another part', () => {
    const block = '<<<<<<< a\ncount GEN-25/B, 2\n=======\ncount GEN-25/B, 3\n>>>>>>> b';
    const base = changed('count GEN-25/B, 1', block);
    expect(merged(changed('B, 1', 'B, 2'), changed('B, 1', 'B, 3'), base).conflicts).toEqual(['13 changed on both sides']);
    expect(merged(changed('B, 1', 'B, 3'), changed('B, 1', 'B, 3'), base)).toMatchObject({ text: changed('B, 1', 'B, 3'), conflicts: [] });
  });

  it('that was left in a file stays whole, with the records that the other side added behind it', () => {
    const block = '<<<<<<< a\ncount GEN-25/B, 2\n=======\ncount GEN-25/B, 3\n>>>>>>> b';
    const ours = changed('count GEN-25/B, 1', block);
    expect(merged(ours, `${BASE}count GEN-25/A, 1\n`).text).toContain(block);
  });
});
