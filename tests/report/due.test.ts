import { describe, expect, it } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { agendaOf, type AgendaOptions } from '../../server/src/report/agenda.ts';
import { agendaData } from '../../server/src/report/due-data.ts';
import { dueText } from '../../server/src/report/due-text.ts';
import { readFixture } from '../support/fixture.ts';
import { at } from './helpers.ts';

const SOURCE = `
  --- 2025.germ
  zone Europe/Vienna
  lot GEN-25 Gentiana lutea, 60 seeds
  split GEN-25, A 24 seeds, B 24 seeds
  soak GEN-25/A 2026-01-11 19:00, water, 24 h, at jar 1
  due GEN-25/B 2026-01-09, look for mould
  --- 2026.germ
  lot PAR-26 Paris quadrifolia, 20 seeds
  sow PAR-26 2026-01-06 18:00, 20 seeds, at bag 3 slot 1
  due PAR-26 2026-03-01, into the fridge
`;

function agenda(source: string, options: AgendaOptions) {
  const journal = new Journal();
  for (const { name, text } of readFixture(source).files) journal.set(name, text);
  return agendaOf(journal, options);
}

const now = at('2026-01-12', 8);

describe('what is due, as text', () => {
  it('is grouped, and has of each item its file and line, its place and the record to write', () => {
    expect(dueText([agenda(SOURCE, { now })])).toBe(`Due as of 2026-01-12 08:00

Overdue
  2026-01-09        GEN-25/B  look for mould
                    2025.germ:5  3 days late, Gentiana lutea
                    write: note GEN-25/B 2026-01-12, done: look for mould

Today
  2026-01-12 19:00  GEN-25/A  lift out of water after 24 h
                    2025.germ:4  Gentiana lutea, at jar 1
                    write: lift GEN-25/A 2026-01-12 19:00

This week
  2026-01-13        PAR-26  count; last looked at on 2026-01-06 (sow)
                    2026.germ:2  Paris quadrifolia, at bag 3 slot 1
                    write: count PAR-26 2026-01-13,

Later
  2026-03-01        PAR-26  into the fridge
                    2026.germ:3  Paris quadrifolia, at bag 3 slot 1
                    write: note PAR-26 2026-03-01, done: into the fridge
`);
  });

  it('has the slot of each batch where several of a bag are overdue', () => {
    const bag = `
      lot PAR-26 Paris quadrifolia, 20 seeds
      split PAR-26, A 10 seeds, B 10 seeds
      sow PAR-26/A 2026-01-03, at bag 3 slot 2
      sow PAR-26/B 2026-01-03, at bag 3 slot 1
    `;
    expect(dueText([agenda(bag, { now })])).toBe(`Due as of 2026-01-12 08:00

Overdue
  2026-01-10  2 counts at bag 3, longest 2 days
              PAR-26/B (slot 1), PAR-26/A (slot 2)
`);
  });

  it('says so where nothing is, and names the journals where there are several', () => {
    const empty = agenda('', { now, name: 'a' });
    expect(dueText([empty, empty])).toBe('Due in a as of 2026-01-12 08:00\n\nNothing is due.\n\nDue in a as of 2026-01-12 08:00\n\nNothing is due.\n');
  });

  it('is within 100 columns but for the record to copy, and steers no terminal', () => {
    const text = dueText([agenda(`
      lot A Iris alba
      due A 2026-02-01, ${'look \u001B[31m at it '.repeat(30)}
    `, { now })]);
    expect(text).not.toContain('\u001B');
    expect(text).toContain('\uFFFD[31m');
    for (const line of text.split('\n')) if (!line.includes('write: ')) expect(line.length).toBeLessThanOrEqual(100);
  });
});

describe('an agenda', () => {
  const ids = (options: Partial<AgendaOptions>) => agenda(SOURCE, { now, ...options }).items.map(({ id }) => id);

  it('reaches so many days ahead, and always has what is overdue', () => {
    expect(ids({ days: 0 })).toEqual(['GEN-25/B', 'GEN-25/A']);
    expect(ids({ days: 1 })).toEqual(['GEN-25/B', 'GEN-25/A', 'PAR-26']);
    expect(ids({ days: 47 })).toHaveLength(3);
    expect(ids({ days: 48 })).toHaveLength(4);
  });

  it('is about what the files asked for say something of', () => {
    expect(ids({ files: ['2026.germ'] })).toEqual(['PAR-26', 'PAR-26']);
    expect(ids({ files: ['2025.germ', '2026.germ'] })).toHaveLength(4);
  });

  it('is empty before the first record', () => {
    expect(agenda(SOURCE, { now: at('2020-01-01') }).items.filter(({ kind }) => kind !== 'ahead' && kind !== 'reminder')).toEqual([]);
  });
});

describe('what is due, as data', () => {
  it('has each item with its place in the file, and null for what the journal does not say', () => {
    const { due, ...head } = agendaData(agenda(SOURCE, { now })) as { due: object[] };
    expect(head).toEqual({ now: '2026-01-12T08:00', zone: 'Europe/Vienna', longPast: 0, longAgo: [] });
    expect(due[0]).toEqual({
      key: 'reminder/GEN-25/B/2026-01-09', group: 'overdue', kind: 'reminder', id: 'GEN-25/B', plant: 'Gentiana lutea',
      place: null, places: [], what: 'look for mould', at: '2026-01-09', overdueDays: 3, overdueMinutes: null,
      write: 'note GEN-25/B 2026-01-12, done: look for mould', file: '2025.germ', line: 5, column: 5, endColumn: 13,
    });
    expect(due[1]).toMatchObject({ group: 'today', at: '2026-01-12T19:00', write: 'lift GEN-25/A 2026-01-12 19:00', line: 4 });
  });
});
