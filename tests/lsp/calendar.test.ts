import { expect, test } from 'vitest';
import type { DueShown, PlaceShown, RoundShown, StockShown, SoakShown, Written } from '../../server/src/lsp/calendar-shapes.ts';
import { inSession } from '../support/lsp-client.ts';

const settings = { asOf: '2026-01-11T18:30' };
const journal = `zone Europe/Vienna
lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h, at bag 1 slot 2
`;

test('a running soak is due at its end, in the journal’s zone, and lies in its slot', () => inSession(
  { settings, files: { 'a.germ': journal } },
  async session => {
    const due = await session.ask<DueShown[]>('plumule/due', {});
    expect(due.map(({ id, when, group, writes }) => ({ id, when, group, writes }))).toContainEqual({
      id: 'VER-24/A', when: '2026-01-11 19:00', group: 'today', writes: 'lift VER-24/A, with the present time',
    });
    const [soak] = await session.ask<SoakShown[]>('plumule/soaks', {});
    // 19:00 in Vienna in January is 18:00 in universal time (IANA: CET, +01:00).
    expect(soak?.end).toBe(Date.UTC(2026, 0, 11, 18));
    expect(soak?.limitText).toBe('2026-01-11 19:00');
    const places = await session.ask<PlaceShown[]>('plumule/places', {});
    expect(places.map(({ name }) => name)).toEqual(['bag 1']);
    expect(places[0]?.places[0]?.stays.map(({ id }) => id)).toEqual(['VER-24/A']);
  }));

test('potted seedlings lie on the bench, and the seed that was not potted in its tray', () => inSession(
  {
    settings: { asOf: '2026-03-20T08:00' },
    files: { 'a.germ': 'lot A Iris\nsplit A, B 24 seeds\nsow A/B 2026-01-10, at tray 4\ncount A/B 2026-03-01, 9\npot A/B 2026-03-15, 9 seedlings, at bench 1\n' },
  },
  async session => {
    const places = await session.ask<PlaceShown[]>('plumule/places', {});
    const told = places.flatMap(({ name, places: slots }) => slots.flatMap(({ stays }) =>
      stays.map(({ id, what, at }) => [name, id, what, at.range.start.line])));
    expect(told).toEqual([['bench 1', 'A/B', '9 seedlings', 4], ['tray 4', 'A/B', '15 seeds', 2]]);
  }));

test('bottles and packets are listed with what is left of them, but for those that are gone', () => inSession(
  {
    settings,
    files: {
      'a.germ': 'powder P1 2026-01-01, GA3 1 g\nstock G1 2026-01-02, from P1 20 mg, 20 mL\nlot L Iris\nsoak L 2026-01-03, G1 5 mL\n'
        + 'stock G0 2026-01-02, GA3 20 mg, 20 mL\nnote G0 2026-01-03, thrown away\n',
    },
  },
  async session => {
    const stocks = await session.ask<StockShown[]>('plumule/stocks', {});
    const told = stocks.map(({ at, ...it }) => [it.id, it.holds, it.left, it.state, it.note, at.range.start.line]);
    expect(told).toEqual([
      ['P1', 'GA3 powder', '980 mg', 'good', 'good until 2030-01-01', 0],
      ['G1', 'GA3 1000 ppm', '15 mL', 'good', 'good until 2030-01-02', 1],
    ]);
  }));

test('lifting writes the present time below a day line of today', () => inSession(
  { settings, files: { 'a.germ': journal } },
  async session => {
    await session.open('a.germ', journal, 7);
    const written = await session.ask<Written>('plumule/lift', { batches: ['VER-24/A'], uri: session.uri('a.germ') });
    expect(written.version).toBe(7);
    expect(written.text).toBe('\n\nday 2026-01-11\nlift VER-24/A 18:30');
  }));

test('soaks that end together are lifted together', () => inSession(
  { settings, files: { 'a.germ': `${journal}soak VER-24/B 2026-01-10 19:00, water, 24 h\n` } },
  async session => {
    const written = await session.ask<Written>('plumule/lift', { batches: ['VER-24/A', 'VER-24/B'], uri: session.uri('a.germ') });
    expect(written.text).toBe('\n\nday 2026-01-11\nlift VER-24/A 18:30\nlift VER-24/B 18:30');
  }));

test('records of today go into the file that has today’s day line, wherever the lot was defined', () => inSession(
  { settings, files: { 'a.germ': journal, 'b.germ': 'day 2026-01-11\n' } },
  async session => {
    const written = await session.ask<Written>('plumule/lift', { batches: ['VER-24/A'], uri: session.uri('a.germ') });
    expect(written.uri).toBe(session.uri('b.germ'));
    expect(written.text).toBe('\nlift VER-24/A 18:30');
  }));

test('the calendar file is one that begins and ends as RFC 5545 asks', () => inSession(
  { settings, files: { 'a.germ': journal } },
  async session => {
    const ics = await session.ask<string>('plumule/ics', { stamp: Date.UTC(2026, 0, 11) });
    expect(ics.startsWith('BEGIN:VCALENDAR\r\n')).toBe(true);
    expect(ics.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(ics).toContain('VER-24/A');
  }));

test('a round of counts without a file in hand goes into the first journal, and the summary counts its lots', () => inSession(
  { settings, files: { 'a.germ': `${journal}lift VER-24/A 2026-01-11 18:00\nsow VER-24/A 2026-01-11\n` } },
  async session => {
    const written = await session.ask<Written>('plumule/round', {});
    expect(written).toMatchObject({ uri: session.uri('a.germ'), text: expect.stringContaining('count VER-24/A, ') });
    expect(await session.ask('plumule/summary', {})).toEqual({
      files: 1, lots: 1, keywords: ['zone', 'lot', 'split', 'soak', 'lift', 'sow'],
    });
  }));

test('seed in a damp towel is on the list, in the round and pointed out, once it was counted there', () => inSession(
  {
    settings: { asOf: '2026-04-01T08:00' },
    files: {
      'a.germ': `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 20 seeds, B 20 seeds
chill VER-24/A 2025-12-01, 4 C, at bag 1 slot 2
count VER-24/A 2026-01-01, 0
chill VER-24/B 2025-12-01, 4 C, at bag 1 slot 3
`,
    },
  },
  async session => {
    const due = await session.ask<DueShown[]>('plumule/due', {});
    expect(due.map(({ id, when, place, writes }) => ({ id, when, place, writes }))).toEqual([
      { id: 'VER-24/A', when: '2026-01-08', place: 'bag 1 slot 2', writes: 'count VER-24/A, …' },
    ]);
    expect((await session.ask<Written>('plumule/round', {})).text.match(/^count .*$/gm)).toEqual(['count VER-24/A, ']);
    // The other is no part of that round, and can be counted all the same.
    expect(await session.ask<Written>('plumule/coldRound', {})).toMatchObject({
      text: expect.stringMatching(/^\nday 2026-04-01\ncount VER-24\/B, $/m), snippet: expect.stringContaining('count VER-24/B, $1'),
    });
    await session.shows('a.germ', ['no-recent-count']);
    expect(session.shown('a.germ')![0]!.range.start).toEqual({ line: 3, character: 6 });
  }));

test('batches that nobody wrote of for more than a year are put apart, and counted only when asked for', () => inSession(
  {
    settings: { asOf: '2026-02-01T08:00' },
    files: {
      'a.germ': `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 20 seeds, B 20 seeds, C 20 seeds
sow VER-24/A 2023-01-01, at bag 1 slot 1
sow VER-24/B 2023-01-01, at bag 1 slot 2
sow VER-24/C 2026-01-01, at bag 1 slot 3
`,
    },
  },
  async session => {
    const due = await session.ask<DueShown[]>('plumule/due', {});
    expect(due.map(({ id, group, writes }) => [id, group, writes])).toEqual([
      ['VER-24/C', 'overdue', 'count VER-24/C, …'], ['VER-24/A', 'long ago', 'count VER-24/A, …'], ['VER-24/B', 'long ago', 'count VER-24/B, …'],
    ]);
    expect((await session.ask<Written>('plumule/round', {})).text.match(/^count .*$/gm)).toEqual(['count VER-24/C, ']);
    expect((await session.ask<Written>('plumule/leftOffRound', {})).text.match(/^count .*$/gm)).toEqual(['count VER-24/A, ', 'count VER-24/B, ']);
    const rounds = (leftOff: boolean) => session.ask<RoundShown[]>('plumule/rounds', { leftOff });
    expect([await rounds(false), await rounds(true)].map(([first]) => first?.batches)).toEqual([1, 2]);
    const ics = await session.ask<string>('plumule/ics', { stamp: Date.UTC(2026, 1, 1) });
    expect(ics.match(/^SUMMARY.*$/gm)?.map(line => line.trim())).toEqual([
      expect.stringContaining('VER-24/C: count'), 'SUMMARY:Nothing done for more than a year: 2 things',
    ]);
  }));

test('overdue counts in the slots of a bag are one row, whose records are written from slot to slot', () => inSession(
  {
    settings: { asOf: '2026-02-01T08:00' },
    files: {
      'a.germ': `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 20 seeds, B 20 seeds
warm VER-24/A 2026-01-01, 20 C, at bag 1 slot 10
warm VER-24/B 2026-01-02, 20 C, at bag 1 slot 9
`,
    },
  },
  async session => {
    const [row, ...others] = await session.ask<DueShown[]>('plumule/due', {});
    expect(others).toEqual([]);
    expect(row).toMatchObject({
      what: '2 counts at bag 1, longest 24 days', id: '', place: 'bag 1',
      writes: 'a “count” for each of VER-24/B (slot 9), VER-24/A (slot 10)',
    });
    const { text } = await session.ask<Written>('plumule/write', { key: row!.key, uri: session.uri('a.germ') });
    expect(text.match(/^count .*$/gm)).toEqual(['count VER-24/B, ', 'count VER-24/A, ']);
  }));

test('stages that ended in a bag are one row, whose records are written from slot to slot', () => inSession(
  {
    settings: { asOf: '2026-02-01T08:00' },
    files: {
      'a.germ': `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 20 seeds, B 20 seeds
chill VER-24/A 2026-01-01, 4 C, 4 weeks, at bag 1 slot 10
chill VER-24/B 2026-01-02, 4 C, 4 weeks, at bag 1 slot 9
count VER-24/A 2026-01-31, 2
count VER-24/B 2026-01-31, 0
`,
    },
  },
  async session => {
    const [row] = await session.ask<DueShown[]>('plumule/due', {});
    expect(row).toMatchObject({
      what: '2 at bag 1: chill 4 C 4 weeks ends', writes: 'a “warm” for each of VER-24/B (slot 9), VER-24/A (slot 10)',
    });
    const { text } = await session.ask<Written>('plumule/write', { key: row!.key, uri: session.uri('a.germ') });
    expect(text.match(/^warm .*$/gm)).toEqual(['warm VER-24/B', 'warm VER-24/A']);
  }));

test('what is due of several journals is one list in the order of time, each item told from one of the same name', () => inSession(
  {
    settings, folder: false,
    files: {
      'x/a.germ': journal, 'y/b.germ': journal.replace('2026-01-10 19:00', '2026-01-10 18:45').replace('24 seeds, B', '20 seeds, B'),
      'y/c.germ': 'due VER-24 2026-01-11, ask for more\n',
    },
  },
  async session => {
    const added = ['x', 'y'].map(name => ({ uri: session.uri(name), name }));
    await session.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added, removed: [] } });
    const due = await session.ask<DueShown[]>('plumule/due', {});
    expect(due.map(({ kind, when }) => `${kind} ${when}`)).toEqual([
      'reminder 2026-01-11', 'soak 2026-01-11 18:45', 'soak 2026-01-11 19:00',
    ]);
    expect(new Set(due.map(({ folder, key }) => `${folder} ${key}`)).size).toBe(3);
    const soaks = await session.ask<SoakShown[]>('plumule/soaks', {});
    expect(new Set(soaks.map(({ key }) => key)).size).toBe(2);
  }));

test('what an item says it writes, it writes', () => inSession(
  { settings, files: { 'a.germ': `${journal}sow VER-24/B 2026-01-01\n` } },
  async session => {
    const due = await session.ask<DueShown[]>('plumule/due', {});
    const written = await Promise.all(due.map(async ({ key, writes }) => {
      const { text } = await session.ask<Written>('plumule/write', { key, uri: session.uri('a.germ') });
      return [writes, text.trimStart()];
    }));
    expect(written).toEqual([
      ['count VER-24/B, …', 'day 2026-01-11\ncount VER-24/B, '],
      ['lift VER-24/A, with the present time', 'day 2026-01-11\nlift VER-24/A 18:30'],
    ]);
  }));
