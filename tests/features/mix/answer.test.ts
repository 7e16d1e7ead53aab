import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mixAnswer, type MixQuestion } from '../../../server/src/features/mix/answer.ts';
import { dayOf, isoOf } from '../../../server/src/model/day.ts';
import { parse } from '../../../server/src/syntax/parse.ts';
import { readFixture } from '../../support/fixture.ts';
import { journalOf } from '../journals.ts';

const today = dayOf(2026, 2, 10)!;

const bench = `
  stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18 mL
  dilute G1-500 2026-01-09, from G1 10 mL, to 20 mL
  stock G9 2020-01-09, GA3 20 mg, 20 mL
  stock K1 2026-01-09, KNO3 2 g, 1 L
  dilute G2 2026-01-10, from G1-500 20 mL, to 40 mL
`;

const packets = `
  powder P1 2020-03-01, GA3 1 g
  powder P2 2025-03-01, GA3 1 g, purity 90 % acid
  powder P3 2025-11-02, GA3 500 mg
  powder P4 2025-12-01, GA3 500 mg
  note P4 2026-01-05, thrown away
  powder P5 2026-01-01, GA3 500 mg, prity 90 %
  powder P6 2026-03-01, GA3 500 mg
  powder PK 2025-11-02, GA3K 1 g
  stock G1 2026-01-09, from P2 20 mg, 18 mL
`;

function answer(question: MixQuestion, source = bench) {
  return mixAnswer(question, journalOf(readFixture(source)), today);
}

describe('the questions for a solution', () => {
  test('begin with the agents that can be made up', () => {
    const { agents, plan, problems } = answer({});
    expect(agents).toContainEqual({ word: 'GA3', name: 'gibberellic acid', liquid: false });
    expect(agents).toContainEqual({ word: 'bleach', name: 'sodium hypochlorite', liquid: true });
    expect(agents.map(({ word }) => word)).not.toContain('water');
    expect({ plan, problems }).toEqual({ plan: undefined, problems: {} });
  });

  test('offer the journal’s stocks of the agent that something is left of', () => {
    expect(answer({ agent: 'GA3' }).stocks).toEqual([
      { id: 'G1', text: 'GA3 1000 ppm, 8 mL left' },
      { id: 'G2', text: 'GA3 250 ppm, 40 mL left' },
      { id: 'G9', text: 'GA3 1000 ppm, 20 mL left, past its date (was good until 2024-01-09)' },
    ]);
  });

  test('offer packets of its powder too, the newest that is good first, and none that is empty or cannot be read', () => {
    const { stocks } = answer({ agent: 'GA3' }, packets);
    expect(stocks).toEqual([
      { id: 'G1', text: 'GA3 1000 ppm, 18 mL left' },
      { id: 'P3', text: 'GA3 powder, 500 mg left' },
      { id: 'P2', text: 'GA3 powder, purity 90 % acid, 980 mg left' },
      { id: 'P1', text: 'GA3 powder, 1 g left, past its date (was good until 2024-03-01)' },
    ]);
    expect(answer({ agent: 'GA3K' }, packets).stocks).toEqual([{ id: 'PK', text: 'GA3K powder, 1 g left' }]);
  });

  test('say of each answer what is wrong with it, as the journal would', () => {
    expect(answer({ agent: 'H2O2' }).problems.agent).toContain('Did you mean “peroxide”?');
    expect(answer({ agent: 'GA3', strength: '0,5 g/L' }).problems.strength).toContain('Write 0.5');
    expect(answer({ volume: '20' }).problems.volume).toContain('has no unit');
    expect(answer({ agent: 'GA3', stock: 'G7' }).problems.stock).toBe('Its strength is unknown.');
    expect(answer({ id: 'G1' }).problems.id).toContain('is the name of something else');
    expect(answer({ id: 'GA3' }).problems.id).toContain('is the name of something else');
    expect(answer({ id: '7 up' }).problems.id).toBeDefined();
    expect(answer({ id: 'G1 extra' }).problems.id).toBeDefined();
    expect(answer({ id: 'G-new' }).problems).toEqual({});
  });
});

describe('a stock that too little is left of', () => {
  test('is refused, with what the rest of it makes', () => {
    const question = { agent: 'GA3', strength: '500 ppm', volume: '18 mL', stock: 'G1' };
    expect(answer(question)).toMatchObject({
      plan: undefined, record: undefined,
      refusal: {
        code: 'too-little-left', message: 'It takes 9 mL of G1, and 8 mL of it is left.',
        nearest: [{ kind: 'less-volume', text: '8 mL of it makes 16 mL of 500 ppm.' }],
      },
    });
    expect(answer({ ...question, volume: '16 mL' }).refusal).toBeUndefined();
    const used = `${bench}  dilute G3 2026-01-11, from G1 8 mL, to 20 mL\n`;
    expect(answer(question, used).refusal).toMatchObject({ message: 'It takes 9 mL of G1, and 0 mL of it is left.', nearest: [] });
  });

  test('is refused like a packet with too little powder', () => {
    const question = { agent: 'GA3', strength: '1000 ppm', volume: '1 L', stock: 'P3' };
    expect(answer(question, packets)).toMatchObject({
      plan: undefined, record: undefined, again: { field: 'volume', value: '500 mL' },
      refusal: { message: 'It takes 1 g of P3, and 500 mg of it is left.', nearest: [{ text: '500 mg of it makes 500 mL of 1000 ppm.' }] },
    });
    expect(answer({ ...question, volume: '500 mL' }, packets).refusal).toBeUndefined();
  });
});

describe('the record of a solution', () => {
  const record = (question: MixQuestion, source?: string) => answer(question, source).record;

  test('drawn from a stock of the journal is a dilution, under a name that is free', () => {
    const question = { agent: 'GA3', strength: '500 ppm', volume: '10 mL', stock: 'G1' };
    expect(record(question)).toBe('dilute G1-500-2, from G1 5 mL, to 10 mL');
    // 45 mg in 45.1 mL are 997.8 ppm, of which 5.01 mL come closest: 499.9 ppm. The name is that of what was asked for.
    const odd = 'stock S1 2026-01-09, GA3 50 mg, purity 90 %, 45.1 mL';
    expect(record({ ...question, stock: 'S1' }, odd)).toBe('dilute S1-500, from S1 5 mL, to 10 mL');
    expect(answer({ ...question, stock: 'S1' }, odd).text).toMatch(/^.*1\. Take 5 mL of the 998 ppm GA3 stock .* Label it: GA3 499 ppm, /s);
    const { refusal } = answer({ ...question, strength: '999 ppm', stock: 'S1' }, odd);
    expect([refusal?.message, refusal?.nearest[0]?.text]).toEqual([
      '999 ppm cannot be made from 997.8 ppm: water only makes it weaker.', 'The nearest is the stock itself, undiluted: 998 ppm.',
    ]);
    expect(record({ ...question, id: 'Gx' })).toBe('dilute Gx, from G1 5 mL, to 10 mL');
    expect(answer(question)).toMatchObject({ plan: { result: { ppm: 500 } }, title: 'GA3 500 ppm, 10 mL' });
    expect(answer(question).text).toContain('1. Take 5 mL of the 1000 ppm GA3 stock');
  });

  test('from powder is a stock that follows in the row of names', () => {
    expect(record({ agent: 'GA3', strength: '1000 ppm', volume: '100 mL', purity: '90 % acid' }))
      .toBe('stock G10, GA3 110 mg, purity 90 % acid, 100 mL');
    expect(record({ agent: 'thiourea', strength: '1 %', volume: '100 mL' })).toBe('stock K2, thiourea 1 g, 100 mL');
    expect(record({ agent: 'GA3', strength: '1000 ppm', volume: '100 mL' }, 'lot S1 Primula, 2 seeds'))
      .toBe('stock S2, GA3 100 mg, 100 mL');
    expect(record({ agent: 'GA3', strength: '1000 ppm', volume: '100 mL' }, 'stock winter 2026-01-01, GA3 1 mg, 1 mL'))
      .toBe('stock winter-2, GA3 100 mg, 100 mL');
  });

  test('from a packet tells how often it was halved', () => {
    const packet = { agent: 'GA3', strength: '500 ppm', volume: '20 mL', packet: '100 mg' };
    expect(record({ ...packet, halved: '2' })).toBe('stock G10, GA3 100 mg halved 2 times, 50 mL');
    expect(record({ ...packet, halved: '1' })).toBe('stock G10, GA3 100 mg halved 1 time, 100 mL');
    expect(record({ ...packet, halved: '0' })).toBe('stock G10, GA3 100 mg, 200 mL');
  });

  test('from a packet of the journal names it, and takes its purity from it', () => {
    const question = { agent: 'GA3', strength: '1000 ppm', volume: '100 mL' };
    expect(record({ ...question, stock: 'P2' }, packets)).toBe('stock G2, from P2 110 mg, 100 mL');
    expect(record({ ...question, stock: 'P3', id: 'GX' }, packets)).toBe('stock GX, from P3 100 mg, 100 mL');
    expect(parse('stock G2 2026-02-10, from P2 110 mg, 100 mL').problems).toEqual([]);
    expect(record(question, 'powder P1 2025-11-02, GA3 1 g')).toBe('stock S1, GA3 100 mg, 100 mL');
    expect(answer({ ...question, stock: 'P5' }, packets).problems.stock).toBe('Fix its line first.');
  });

  test('from a packet is labelled with the last good day that its record gives it, and a dilution with that of its bottle', () => {
    const packet = 'powder P1 2026-02-01, GA3 1 g';
    const steps = { agent: 'GA3', strength: '1000 ppm', volume: '100 mL', stock: 'P1' };
    const { text, record: written } = answer(steps, packet);
    const keeps = journalOf(readFixture(`${packet}\nday 2026-02-10\n${written}`)).solution('S1')!.keeps!;
    // Four years from the day on which it is dissolved; the packet itself is good until nine days before.
    expect(isoOf(keeps.until)).toBe('2030-02-10');
    expect(text).toContain('Label it: GA3 1000 ppm, 2026-02-10, good until 2030-02-10.');
    expect(answer({ ...steps, strength: '500 ppm', stock: 'S' }, 'stock S 2026-01-09, GA3 100 mg, 100 mL, keeps 3 months').text)
      .toContain('good until 2026-04-09');
  });

  test('from what is past its date is made with a warning', () => {
    const question = { agent: 'GA3', strength: '1000 ppm', volume: '100 mL' };
    expect(answer({ ...question, stock: 'P1' }, packets).text)
      .toContain('! P1 was good until 2024-03-01, so the strength is at most 1000 ppm.');
    expect(answer({ ...question, strength: '500 ppm', volume: '10 mL', stock: 'G9' }).text)
      .toContain('! G9 was good until 2024-01-09, so the strength is at most 500 ppm.');
    expect(answer({ ...question, stock: 'P3' }, packets).plan?.warnings).toEqual([]);
  });

  test('from what is not known exactly is labelled so, with a warning', () => {
    const bottles = `
      stock H1 2026-01-09, GA3 400 mg halved 2 times, 100 mL
      powder P1 2026-01-01, GA3 1 g, bought 2020-01
      stock S1 2026-01-09, from P1 100 mg, 100 mL
    `;
    const question = { agent: 'GA3', strength: '500 ppm', volume: '20 mL' };
    const halved = answer({ ...question, stock: 'H1' }, bottles).text;
    expect(halved).toContain('! The powder in H1 was halved by eye, so the strength is about 500 ppm.');
    expect(halved).toContain('Label it: GA3 about 500 ppm, 2026-02-10,');
    // The powder was good until 2024-01-31.
    const stale = answer({ ...question, stock: 'S1' }, bottles).text;
    expect(stale).toContain('! S1 was made from what was past its date, so the strength is at most 500 ppm.');
    expect(stale).toContain('Label it: GA3 at most 500 ppm, 2026-02-10,');
    expect(answer({ ...question, packet: '100 mg', halved: '2' }).text).toContain('Label it: GA3 about 500 ppm, 2026-02-10,');
    expect(answer({ ...question, packet: '100 mg', halved: '0' }).text).toContain('Label it: GA3 500 ppm, 2026-02-10,');
  });

  test('is none for a stock that the journal does not have, and none where nothing can be made', () => {
    expect(record({ agent: 'GA3', strength: '500 ppm', volume: '20 mL', from: '1000 ppm' })).toBeUndefined();
    const refused = answer({ agent: 'GA3', strength: '5000 ppm', volume: '20 mL', stock: 'G1' });
    expect(refused).toMatchObject({ plan: undefined, record: undefined, refusal: { code: 'stronger-than-stock' } });
  });

  test('goes by the limits and agents of the journal', () => {
    const source = 'limit GA3, 100 ppm\nagent kelp, 76.1 g/mol';
    const warnings = answer({ agent: 'GA3', strength: '500 ppm', volume: '1 L' }, source).plan?.warnings;
    expect(warnings?.map(({ id }) => id)).toEqual(['above-limit']);
    expect(record({ agent: 'kelp', strength: '1 mM', volume: '1 L' }, source)).toBe('stock S1, kelp 76.1 mg, 1 L');
  });

  test('is always one that a journal reads without a problem', () => {
    const question = fc.record({
      agent: fc.constantFrom('GA3', 'GA3K', 'KNO3', 'thiourea', 'BA', 'GA4+7'),
      strength: fc.tuple(fc.double({ min: 0.1, max: 2000, noNaN: true }), fc.constantFrom('ppm', 'uM', 'mg/L'))
        .map(([value, unit]) => `${value.toFixed(3)} ${unit}`),
      volume: fc.integer({ min: 1, max: 3000 }).map(ml => `${ml} mL`),
      purity: fc.constantFrom(undefined, '90', '12.5 % acid', '99 % salt'),
      packet: fc.constantFrom(undefined, '100 mg', '1 g'),
    });
    fc.assert(fc.property(question, asked => {
      const { record: line, plan } = answer(asked);
      expect(line === undefined).toBe(plan === undefined);
      if (line !== undefined) expect(parse(line).problems.map(({ message }) => message)).toEqual([]);
    }), { numRuns: 300 });
  });
});

describe('a refusal', () => {
  test.each([
    [{ strength: '500 ppm', volume: '20 mL', packet: '1 mg' }, { field: 'volume', value: '2 mL' }],
    [{ strength: '5000 ppm', volume: '8 mL', stock: 'G1' }, { field: 'strength', value: '1000 ppm' }],
    [{ strength: '500 ppm', volume: '40 mL', stock: 'G1' }, { field: 'volume', value: '16 mL' }],
    [{ strength: '10 ppm', volume: '1 mL' }, { field: 'volume', value: '100 mL' }],
  ])('of %o is asked again with what can be made', (question, again) => {
    expect(answer({ agent: 'GA3', ...question }).again).toEqual(again);
  });

  test('is none when it is asked again with that', () => {
    const amount = (unit: string, most: number) => fc.integer({ min: 1, max: most }).map(n => `${n / 10} ${unit}`);
    const from = fc.oneof(
      fc.constant({}), fc.constantFrom('G1', 'G9', 'G2').map(stock => ({ stock })), amount('ppm', 20_000).map(strength => ({ from: strength })),
      fc.record({ packet: amount('mg', 2000), halved: fc.integer({ min: 0, max: 4 }).map(String) }),
    );
    fc.assert(fc.property(amount('ppm', 30_000), amount('mL', 3000), from, (strength, volume, source) => {
      const question: MixQuestion = { agent: 'GA3', strength, volume, ...source };
      const { again } = answer(question);
      if (!again) return;
      const { problems, refusal } = answer({ ...question, [again.field]: again.value });
      expect({ problems, refusal }).toEqual({ problems: {}, refusal: undefined });
    }), { numRuns: 400 });
  });
});
