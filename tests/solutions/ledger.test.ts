import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact } from '../../server/src/solutions/amounts.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { ledgerOf } from '../../server/src/solutions/ledger.ts';

describe('what is left of a solution', () => {
  it('is told after every draw in the order of time, without a rounding', () => {
    const ledger = ledgerOf(exact(1), [
      { key: 'second', when: 2, amount: exact(0.2) },
      { key: 'first', when: 1, amount: exact(0.1) },
      { key: 'third', when: 2, amount: exact(0.7) },
    ]);
    expect(ledger.entries.map(({ key }) => key)).toEqual(['first', 'second', 'third']);
    expect(ledger.entries.map(({ left }) => toNumber(left!.most))).toEqual([0.9, 0.7, 0]);
    expect(ledger.overdrawn).toBeUndefined();
  });

  it('names the draw that asks for more than there is, and by how much', () => {
    const ledger = ledgerOf(exact(18), [
      { key: 'G2', when: 1, amount: exact(10) },
      { key: 'soak', when: 2, amount: exact(10) },
      { key: 'drops', when: 3, amount: exact(1) },
    ]);
    expect(ledger.overdrawn?.key).toBe('soak');
    expect(toNumber(ledger.overdrawn!.missing)).toBe(2);
    expect(toNumber(ledger.entries[2]!.missing)).toBe(1);
    expect(toNumber(ledger.left!.most)).toBe(0);
  });

  it('takes up to 1 % too much in all for what measuring comes to', () => {
    const thirds = (ml: number) => ledgerOf(exact(10), [1, 2, 3].map(when => ({ key: when, when, amount: exact(ml) })));
    expect(thirds(3.34).overdrawn).toBeUndefined();
    expect(toNumber(thirds(3.34).left!.most)).toBe(0);
    expect(ledgerOf(exact(10), [{ key: 1, when: 1, amount: exact(10.1) }]).overdrawn).toBeUndefined();
    // 10.101 mL out of 10 mL.
    expect(thirds(3.367).overdrawn?.key).toBe(3);
    const sips = Array.from({ length: 4 }, (_, when) => ({ key: when, when: when + 9, amount: exact(0.03) }));
    expect(ledgerOf(exact(10), [{ key: 9, when: 0, amount: exact(10) }, ...sips]).overdrawn?.key).toBe(3);
  });

  it('keeps apart what was not measured', () => {
    const ledger = ledgerOf(exact(10), [{ key: 'known', when: 0, amount: exact(1) }, { key: 'some', when: 5, amount: undefined }]);
    expect(toNumber(ledger.left!.most)).toBe(9);
    expect(ledger.notMeasured).toEqual(['some']);
  });

  it('is of a part halved by eye what the other parts hold, within what each half may be', () => {
    // By hand: of 100 mg a half is 50, 45 to 55; a half of that 25, 20.25 to 30.25.
    const parts = (halved: number) => {
      const [entry] = ledgerOf(exact(100), [{ key: 1, when: 1, amount: { halved } }]).entries;
      return [entry!.taken!, entry!.left!].map(({ least, likely, most }) => [least, likely!, most].map(toNumber));
    };
    expect(parts(1)).toEqual([[45, 50, 55], [45, 50, 55]]);
    expect(parts(2)).toEqual([[20.25, 25, 30.25], [69.75, 75, 79.75]]);
  });

  it('goes on from what is found, and tells what cannot have been left', () => {
    const { entries, left } = ledgerOf(exact(10), [
      { key: 1, when: 1, amount: exact(4) },
      { key: 2, when: 2, amount: { found: exact(8) } }, { key: 3, when: 3, amount: exact(1) },
    ]);
    expect(toNumber(left!.most)).toBe(7);
    expect(entries.map(({ tooMuch }) => toNumber(tooMuch))).toEqual([0, 2, 0]);
  });

  it('is not known where the volume made is not', () => {
    const ledger = ledgerOf(undefined, [{ key: 'soak', when: 1, amount: exact(10) }]);
    expect(ledger.left).toBeUndefined();
    expect(ledger.entries[0]).toMatchObject({ left: undefined });
    expect(ledger.overdrawn).toBeUndefined();
  });

  it('is what was made, less what was drawn, in whatever order the draws are given', () => {
    const draw = fc.record({ when: fc.integer(), tenths: fc.integer({ min: 0, max: 1000 }) });
    fc.assert(fc.property(fc.array(draw, { maxLength: 30 }), fc.integer({ min: 0, max: 1000 }), (list, made) => {
      const of = (given: typeof list) =>
        ledgerOf(exact(made), given.map(({ when, tenths }, key) => ({ key, when, amount: exact(tenths).div(10) })));
      const total = list.reduce((sum, { tenths }) => sum + tenths, 0);
      const { left, overdrawn, entries } = of(list);
      expect(of([...list].reverse()).left!.most.equals(left!.most)).toBe(true);
      expect(overdrawn !== undefined).toBe(total > made * 10 * 1.01);
      const missing = entries.reduce((sum, entry) => sum.add(entry.missing), exact(0));
      expect(left!.most.sub(missing).equals(exact(made).sub(exact(total).div(10)))).toBe(true);
    }));
  });
});
