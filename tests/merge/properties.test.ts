import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { merge } from '../../server/src/merge/merge.ts';
import { versions } from './arbitrary-versions.ts';
import { commentsOf, factsOf, faultsOf, hasUnreadDay, lostFrom, remarksOf, wordsOf } from './facts.ts';

const RUNS = { numRuns: Number(process.env.RUNS ?? 150) };

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

  it('loses no record and no remark that a side wrote, conflict or not', () => {
    fc.assert(fc.property(versions, ({ base, ours, theirs }) => {
      const { text, conflicts } = merge(base, ours, theirs);
      // Where a date is in conflict with a “day” line that has none, nothing can say both.
      const facts = conflicts.length > 0 && (hasUnreadDay(ours) || hasUnreadDay(theirs)) ? wordsOf : factsOf;
      for (const read of [facts, remarksOf, commentsOf]) {
        expect(lostFrom(read(base), read(ours), read(theirs), read(text))).toEqual([]);
      }
    }), RUNS);
  });

  it('says the same whichever side is called ours', () => {
    fc.assert(fc.property(versions, ({ base, ours, theirs }) => {
      const one = merge(base, ours, theirs);
      const other = merge(base, theirs, ours);
      expect(other.conflicts.length).toBe(one.conflicts.length);
      fc.pre(one.conflicts.length === 0);
      expect(new Map([...factsOf(other.text)].sort())).toEqual(new Map([...factsOf(one.text)].sort()));
    }), RUNS);
  });
});
