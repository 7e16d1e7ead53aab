/** The due list in rows to be read: what is done in one round is one row. */
import { counted } from '../model/counted.ts';
import type { DueItem } from './due.ts';

/** An item, or several of one kind that are seen to in one round. */
export interface DueRow {
  /** Stable, and unique in the list. */
  readonly key: string;
  /** The first of them; of a round it gives kind, group, day and place. */
  readonly item: DueItem;
  /** More than one for a round, in their order. */
  readonly items: readonly DueItem[];
  /** In words, for a round: '12 counts at shelf 1, longest 40 days'. */
  readonly round: string | undefined;
}

/** Overdue counts of one place are a round, and so are soaks whose end nobody wrote; all else is a row of its own. */
export function dueRows(items: readonly DueItem[]): DueRow[] {
  const rounds = new Map<string, DueItem[]>();
  for (const item of items) {
    const key = roundOf(item) ?? item.key;
    const same = rounds.get(key);
    if (same) same.push(item);
    else rounds.set(key, [item]);
  }
  return [...rounds].map(([key, all]): DueRow => {
    const item = all[0]!;
    const isRound = all.length > 1;
    return { key: isRound ? key : item.key, item, items: all, round: isRound ? inWords(all) : undefined };
  });
}

/** Undefined for what is no part of a round. */
function roundOf({ kind, group, overdueDays, isEndMissing, place }: DueItem): string | undefined {
  if (isEndMissing) return 'soaks';
  return kind === 'count' && group === 'overdue' && overdueDays > 0 ? `counts/${place?.toLowerCase() ?? ''}` : undefined;
}

function inWords(items: readonly DueItem[]): string {
  const [{ kind, place }] = items as [DueItem];
  const longest = Math.max(...items.map(({ overdueDays }) => overdueDays));
  const days = counted(longest, 'day');
  if (kind === 'soak') return `${items.length} soaks with no end recorded, longest ${days}`;
  return `${items.length} counts ${place === undefined ? 'with no place recorded' : `at ${place}`}, longest ${days}`;
}
