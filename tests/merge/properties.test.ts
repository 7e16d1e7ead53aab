import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { merge } from '../../server/src/merge/merge.ts';
import { redatedVersions, versions } from './arbitrary-versions.ts';
import { commentsOf, factsOf, faultsOf, lostFrom, mostOf, remarksOf, resolved, type Side } from './facts.ts';

const RUNS = { numRuns: Number(process.env.RUNS ?? 150) };

const someSides = fc.array(fc.constantFrom<Side>('ours', 'theirs'), { minLength: 2, maxLength: 6 });
// Most of what goes wrong needs `day` lines that nobody can read, and these journals are short.
const anyVersions = fc.oneof({ weight: 1, arbitrary: versions }, { weight: 3, arbitrary: redatedVersions });

describe('merging any two versions of a journal', () => {
  it('is the other version, byte for byte, where one side changed nothing', () => {
    fc.assert(fc.property(versions, ({ base, ours }) => {
      expect(merge(base, base, ours)).toMatchObject({ text: ours, conflicts: [] });
      expect(merge(base, ours, base)).toMatchObject({ text: ours, conflicts: [] });
      expect(merge(base, ours, ours)).toMatchObject({ text: ours, conflicts: [] });
    }), RUNS);
  });

  it('has exactly the facts of both sides, each of its own day, where nothing conflicts', () => {
    fc.assert(fc.property(versions, ({ base, ours, theirs }) => {
      const { text, conflicts } = merge(base, ours, theirs);
      fc.pre(conflicts.length === 0);
      expect(faultsOf(factsOf(base), factsOf(ours), factsOf(theirs), factsOf(text))).toEqual([]);
    }), RUNS);
  });

  it('loses no record, date or remark that a side wrote, conflict or not', () => {
    fc.assert(fc.property(anyVersions, ({ base, ours, theirs }) => {
      const { text } = merge(base, ours, theirs);
      for (const read of [factsOf, remarksOf, commentsOf]) {
        const either = mostOf(read(resolved(text, 'ours')), read(resolved(text, 'theirs')));
        expect(lostFrom(read(base), read(ours), read(theirs), either)).toEqual([]);
      }
    }), RUNS);
  });

  it('gives no record a date that neither side gave it, whichever side is taken in which conflict', () => {
    fc.assert(fc.property(anyVersions, someSides, ({ base, ours, theirs }, mixed) => {
      const { text } = merge(base, ours, theirs);
      const known = mostOf(factsOf(ours), factsOf(theirs));
      for (const sides of ['ours', 'theirs', mixed] as const) {
        expect([...factsOf(resolved(text, sides)).keys()].filter(fact => !known.has(fact))).toEqual([]);
      }
    }), RUNS);
  });

  it('keeps every record of its own day where both sides of a conflict are kept', () => {
    fc.assert(fc.property(anyVersions, ({ base, ours, theirs }) => {
      const { text, conflicts } = merge(base, ours, theirs, { keepBoth: true });
      const [mine, its, all] = [factsOf(ours), factsOf(theirs), factsOf(text)];
      expect(conflicts).toEqual([]);
      expect(lostFrom(factsOf(base), mine, its, all)).toEqual([]);
      expect([...all.keys()].filter(fact => !mine.has(fact) && !its.has(fact))).toEqual([]);
    }), RUNS);
  });

  it('says the same whichever side is called ours', () => {
    fc.assert(fc.property(versions, ({ base, ours, theirs }) => {
      const one = merge(base, ours, theirs);
      const other = merge(base, theirs, ours);
      expect(other.conflicts.length > 0).toBe(one.conflicts.length > 0);
      fc.pre(one.conflicts.length === 0);
      expect(new Map([...factsOf(other.text)].sort())).toEqual(new Map([...factsOf(one.text)].sort()));
    }), RUNS);
  });
});
