import { describe, expect, test } from 'vitest';
import { expectAllMarked, problemsIn } from './marked.ts';

const now = '2026-07-01';

describe('a record after a batch was closed', () => {
  test('is marked after it was thrown away, whatever it is but a remark', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      sow VER-24 2026-01-10
      discard VER-24 2026-03-01, all soft
      note VER-24 2026-03-02, it smelled
      photo VER-24 2026-03-02, mould.jpg
      due VER-24 2026-04-01, order new seed
      count VER-24 2026-03-02, 1
            ^^^^^^ after-close
      pot VER-24 2026-03-02, 1 seedling
          ^^^^^^ after-close
      chill VER-24 2026-03-02, 4 C
            ^^^^^^ after-close
      discard VER-24 2026-03-03, again
              ^^^^^^ after-close
    `, { now });
  });

  test('is right before it in time, and on the same day above it', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      discard VER-24 2026-03-01, all soft
      sow VER-24 2026-01-10
      count VER-24 2026-02-28, 1
      lot VER-25 Veratrum nigrum, 60 seeds
      sow VER-25 2026-01-10
      day 2026-03-01
      count VER-25, 0
      discard VER-25, all soft
    `, { now });
  });

  test('is right where a cut test closed the batch and the record is of its seedlings', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 20 seeds
      sow VER-24 2026-01-10
      count VER-24 2026-02-01, 9, 4 emerged
      cut VER-24 2026-03-01, 11 dead
      pot VER-24 2026-03-02, 9 seedlings, at bench 1
      move VER-24 2026-03-20, at cold frame
      count VER-24 2026-04-01, 9 leaf, 1 died, 2 leggy
      count VER-24 2026-04-02, 1
            ^^^^^^ after-close
      count VER-24 2026-04-03, 1 rotted
            ^^^^^^ after-close
      count VER-24 2026-04-04, 2 leaf
            ^^^^^^ after-close
      sow VER-24 2026-04-05, 1 seed
          ^^^^^^ after-close
      cut VER-24 2026-04-06, 1 dead
          ^^^^^^ after-close
      discard VER-24 2026-06-01, the rest
    `, { now });
  });

  test('is right for the batches that were split off before', () => {
    expectAllMarked(`
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 20 seeds
      discard VER-24 2026-03-01, all soft
      sow VER-24/A 2026-03-10
      count VER-24/A 2026-06-20, 1
    `, { now });
  });

  test('says what closed it', () => {
    expect(problemsIn('after-close', 'lot V Veratrum\ndiscard V 2026-03-01, soft\nsow V 2026-03-02')[0]?.message)
      .toMatch(/^V was closed by “discard” on 2026-03-01\./);
  });
});
