import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { dayOfIso } from '../../server/src/model/day.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { anyLine, recordLine } from '../support/arbitrary-lines.ts';

const day = (iso: string) => dayOfIso(iso)!;

/** The facts of a line, without their places. */
function factsOf(line: string): unknown {
  const { record, problems } = parse(line);
  expect(problems).toEqual([]);
  return JSON.parse(JSON.stringify(record!.facts, (key, value: unknown) => {
    if (key === 'start' || key === 'end') return undefined;
    // A value with its place is shown as the value alone, a text as the text.
    if (typeof value === 'object' && value !== null && 'start' in value && !('type' in value)) {
      const rest = Object.fromEntries(Object.entries(value).filter(([name]) => name !== 'start' && name !== 'end'));
      const [only, ...more] = Object.values(rest);
      return more.length === 0 && only !== undefined ? only : rest;
    }
    return value;
  }));
}

describe('the head of a record', () => {
  it('has the subject, the date and the time, each with its place', () => {
    const { record } = parse('soak VER-24/A 2026-01-10 9:05, water');
    expect(record).toMatchObject({
      keyword: 'soak', keywordSpan: { start: 0, end: 4 }, subject: { text: 'VER-24/A', start: 5, end: 13 },
      date: { day: day('2026-01-10'), start: 14, end: 24 }, time: { minutes: 545, start: 25, end: 29 }, broken: false,
    });
  });

  it('has the plant of a lot up to the comma or the date', () => {
    expect(parse('lot X Iris × hollandica 2026-01-10, 3 seeds').record).toMatchObject({
      plant: { text: 'Iris × hollandica', start: 6, end: 23 }, date: { day: day('2026-01-10') },
    });
    expect(parse('lot X "Iris, dwarf" , 3 seeds').record!.plant).toEqual({ text: 'Iris, dwarf', start: 7, end: 18 });
  });

  it('of a guide is the plant', () => {
    expect(parse('guide  Veratrum nigrum, water').record!.subject).toEqual({ text: 'Veratrum nigrum', start: 7, end: 22 });
  });

  it('may be written with capitals and after a byte order mark', () => {
    expect(parse('\ufeffDay 2026-01-19').record).toMatchObject({
      keyword: 'day', keywordSpan: { start: 1, end: 4 }, date: { day: day('2026-01-19'), start: 5, end: 15 },
    });
  });

  test.each(['VER-24', 'Ö.1', '種-1', 'बीज', 'a_b', 'e\u0301-1'])('takes the id %s', id => {
    expect(parse(`count ${id}/A/1, 0`).record!.subject!.text).toBe(`${id}/A/1`);
    expect(parse(`stock ${id}, GA3 1 mg`).record!.subject!.text).toBe(id);
  });

  test.each(['Europe/Vienna', 'America/Argentina/Buenos_Aires', 'Etc/GMT+5', 'UTC+01:00'])('takes the zone %s', zone => {
    expect(parse(`zone ${zone}`)).toMatchObject({ problems: [], record: { subject: { text: zone } } });
  });
});

describe('a fact', () => {
  test.each([
    ['count X, 3', [{ type: 'count', what: 'germinated', n: 3, total: false }]],
    ['count X, = 9 Emerged', [{ type: 'count', what: 'emerged', n: 9, total: true }]],
    ['cut X, 2 fresh, 1 empty', [{ type: 'cut', what: 'fresh', n: 2 }, { type: 'cut', what: 'empty', n: 1 }]],
    ['split X, A 24 seeds, 1 25, b2 1 seed', [
      { type: 'part', name: 'A', n: 24 }, { type: 'part', name: '1', n: 25 }, { type: 'part', name: 'b2', n: 1 },
    ]],
    ['split X, 1 half, 2 About 24 seeds, 3 20 to 30 seeds, 4half half', [
      { type: 'part', name: '1', estimate: { kind: 'half' } }, { type: 'part', name: '2', estimate: { kind: 'about', n: 24, least: 21, most: 27 } },
      { type: 'part', name: '3', estimate: { kind: 'between', least: 20, most: 30 } }, { type: 'part', name: '4half', estimate: { kind: 'half' } },
    ]],
    ['soak X, GA3 500ppm, 24h, 15 ml', [
      { type: 'substance', name: 'GA3', strength: { value: 500, unit: 'ppm' } },
      { type: 'duration', value: { value: 24, unit: 'h' } }, { type: 'volume', value: { value: 15, unit: 'mL' } },
    ]],
    ['soak X, G2 10 mL, water, GA3 Unmeasured', [
      { type: 'substance', name: 'G2', volume: { value: 10, unit: 'mL' } }, { type: 'substance', name: 'water' },
      { type: 'substance', name: 'GA3', unmeasured: {} },
    ]],
    ['soak X, GA3 0.05 % w/v', [{ type: 'substance', name: 'GA3', strength: { value: 0.05, unit: '%' } }]],
    ['soak X, GA3 0.5 mg/mL', [{ type: 'substance', name: 'GA3', strength: { value: 0.5, unit: 'g/L' } }]],
    ['soak X, GA3 5 µg/ml', [{ type: 'substance', name: 'GA3', strength: { value: 5, unit: 'mg/L' } }]],
    ['soak X, GA3 1.44 mmol/l', [{ type: 'substance', name: 'GA3', strength: { value: 1.44, unit: 'mM' } }]],
    ['soak X, water, until 2026-01-11 19:00', [
      { type: 'substance', name: 'water' }, { type: 'until', date: day('2026-01-11'), time: 1140 },
    ]],
    ['soak X, water, until 2026-01-11', [{ type: 'substance', name: 'water' }, { type: 'until', date: day('2026-01-11') }]],
    ['stock G1, GA3 20 mg halved 3 times, purity 90%', [
      { type: 'substance', name: 'GA3', mass: { value: 20, unit: 'mg' }, halved: 3 }, { type: 'purity', percent: 90 },
    ]],
    ['dilute G2, from G1 10 µL, to 0.5 L, keeps 4 years', [
      { type: 'draw', stock: 'G1', volume: { value: 10, unit: 'uL' } }, { type: 'to', value: { value: 0.5, unit: 'L' } },
      { type: 'keeps', value: { value: 4, unit: 'years' } },
    ]],
    ['warm X, 20/10 °C, 12 Weeks', [
      { type: 'temperature', value: { day: 20, night: 10, unit: 'C' } }, { type: 'duration', value: { value: 12, unit: 'weeks' } },
    ]],
    ['chill X, -18℃', [{ type: 'temperature', value: { day: -18, unit: 'C' } }]],
    ['chill X, 39° F', [{ type: 'temperature', value: { day: 39, unit: 'F' } }]],
    ['regime R, warm 20 C 60 days, chill 90 d 4 C, warm', [
      { type: 'stage', stage: 'warm', temperature: { day: 20, unit: 'C' }, duration: { value: 60, unit: 'days' } },
      { type: 'stage', stage: 'chill', temperature: { day: 4, unit: 'C' }, duration: { value: 90, unit: 'days' } },
      { type: 'stage', stage: 'warm' },
    ]],
    ['lot X Y, 60 Seeds, collected 2025, from own  garden, dormancy py+pd', [
      { type: 'seeds', n: 60 }, { type: 'collected', when: { first: day('2025-01-01'), last: day('2025-12-31') } },
      { type: 'from', value: 'own  garden' }, { type: 'dormancy', value: 'PY+PD' },
    ]],
    ['lot X Y, collected 2024-02', [{ type: 'collected', when: { first: day('2024-02-01'), last: day('2024-02-29') } }]],
    ['sow X, in 3" pots, at "bag 3, slot 2", regime R', [
      { type: 'in', value: '3" pots' }, { type: 'at', value: 'bag 3, slot 2' }, { type: 'regime', value: 'R' },
    ]],
    ['move X, at shelf 1,5 (left)', [{ type: 'at', value: 'shelf 1,5 (left)' }]],
    ['apply X, GA3 100 ppm, 2 drops, 4 seedlings', [
      { type: 'substance', name: 'GA3', strength: { value: 100, unit: 'ppm' } }, { type: 'drops', n: 2 }, { type: 'seedlings', n: 4 },
    ]],
    ['limit GA3, 500 ppm, for Primula vialii', [
      { type: 'strength', value: { value: 500, unit: 'ppm' } }, { type: 'for', value: 'Primula vialii' },
    ]],
    ['agent kelp, 76.117 g/mol, solubility 5 g/L, from the shop', [
      { type: 'molarMass', value: { value: 76.117, unit: 'g/mol' } }, { type: 'solubility', value: { value: 5, unit: 'g/L' } },
      { type: 'text', value: 'from the shop' },
    ]],
    ['note X,  so, 0,5 so ', [{ type: 'text', value: 'so, 0,5 so' }]],
    ['discard X, "all, soft"', [{ type: 'text', value: 'all, soft' }]],
    ['photo X, photos/a b.jpg', [{ type: 'path', value: 'photos/a b.jpg' }]],
    ['photo X, 2026-01-19 3.jpg', [{ type: 'path', value: '2026-01-19 3.jpg' }]],
  ])('%s', (line, facts) => {
    expect(factsOf(line)).toEqual(facts);
  });
});

describe('what a record keeps', () => {
  it('is its words where they stand on the line', () => {
    fc.assert(fc.property(recordLine, ({ loose }) => {
      const texts: { text: string; start: number; end: number }[] = [];
      JSON.stringify(parse(loose).record, (_, value: { text?: unknown } | null) => {
        if (typeof value === 'object' && typeof value?.text === 'string') texts.push(value as (typeof texts)[number]);
        return value;
      });
      for (const { text, start, end } of texts) {
        const written = loose.slice(start, end).trim();
        expect([written, written.toUpperCase()]).toContain(text);
      }
    }), { numRuns: 1000 });
  });

  it('is nothing of the lexer, which would hold the memory of every token', () => {
    fc.assert(fc.property(anyLine, line => {
      expect(JSON.stringify(parse(line))).not.toMatch(/tokenType|"image"|startOffset/);
    }), { numRuns: 500 });
  });
});

describe('the kinds of lines', () => {
  test.each([
    ['', 'blank'], ['  \t', 'blank'], ['\ufeff', 'blank'], ['# a', 'comment'], ['\ufeff# a', 'comment'], [' count X, 3', 'remark'],
    ['\u3000remark', 'remark'], ['count X, 3', 'record'], ['cuont X', 'unread'], ['3', 'unread'], ['種子', 'unread'],
  ])('%j is %s', (line, kind) => {
    expect(parse(line).kind).toBe(kind);
  });
});
