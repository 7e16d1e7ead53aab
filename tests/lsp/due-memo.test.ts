import { describe, expect, it } from 'vitest';
import { Journal } from '../../server/src/journal/journal.ts';
import { dueNow } from '../../server/src/lsp/due-memo.ts';
import { at } from '../features/journals.ts';

describe('what is due, kept', () => {
  it('is the same list until the journal, the minute or the day changes', () => {
    const journal = new Journal();
    journal.set('a.germ', 'lot A Iris alba\ndue A 2026-02-01, look');
    const first = dueNow(journal, at('2026-01-11 08:00'));
    expect(dueNow(journal, at('2026-01-11 08:00'))).toBe(first);
    expect(dueNow(journal, at('2026-01-11 08:01'))).not.toBe(first);
    expect(dueNow(journal, at('2026-02-02 08:01'))[0]?.group).toBe('overdue');
    journal.set('a.germ', 'lot A Iris alba');
    expect(dueNow(journal, at('2026-02-02 08:01'))).toEqual([]);
    const other = new Journal();
    expect(dueNow(other, at('2026-01-11 08:00'))).toEqual([]);
  });
});
