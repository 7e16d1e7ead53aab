/** The due list in rows to be read: what is done in one round is one row. */
import { counted } from '../model/counted.ts';
import type { DueItem } from './due.ts';
import { placeKey, slotOf, type Slot } from './place-text.ts';
import { order } from './places.ts';

/** An item, or several of one kind that are seen to in one round. */
export interface DueRow {
  /** Stable, and unique in the list. */
  readonly key: string;
  /** The first that falls due; of a round it gives kind, group and day. */
  readonly item: DueItem;
  /** More than one for a round: in the order of its slots, then in which they fall due. */
  readonly items: readonly DueItem[];
  /** Where to go; of a round the bag, the tray or the shelf with all its slots. */
  readonly place: string | undefined;
  /**
   * In words, for a round: '12 counts at shelf 1, longest 40 days', or '6 at bag 3: chill 4 C 8 weeks ends', whose day
   * is that of the first.
   */
  readonly round: string | undefined;
}

/**
 * Overdue counts of one place, in whichever of its slots, are a round, and so are stages that have ended there and ask
 * for the same record, and soaks whose end nobody wrote; all else is a row of its own. So is
 * each thing of long ago, which is closed or taken up one by one.
 */
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
    if (!isRound) return { key: item.key, item, items: all, place: item.place, round: undefined };
    const place = containerOf(item);
    return { key, item, items: bySlot(all), place, round: inWords(all, place) };
  });
}

/**
 * The batches of a row, with the slots to look into.
 *
 * Example: ['PAR-25/A (slot 1)', 'PAR-25/B (slot 2)']
 */
export function namesInRow({ items }: DueRow): string[] {
  return items.map(item => {
    const slot = item.kind === 'soak' ? undefined : slotIn(item);
    return slot ? `${item.id} (slot ${slot.slot})` : item.id;
  });
}

/** Undefined for what is no part of a round. */
function roundOf(item: DueItem): string | undefined {
  const { kind, group, overdueDays, isEndMissing, ask, what } = item;
  if (group === 'long ago') return undefined;
  if (isEndMissing) return 'soaks';
  if (group !== 'overdue' || overdueDays === 0) return undefined;
  const place = placeKey(containerOf(item) ?? '');
  if (kind === 'count') return `counts/${place}`;
  return kind === 'stage' ? `stages/${place}/${ask?.keyword}/${what}` : undefined;
}

/** What is fetched or walked to; a batch in two places is one of neither. */
function containerOf(item: DueItem): string | undefined {
  const { container = '' } = slotIn(item) ?? {};
  return container === '' ? item.place : container;
}

function slotIn({ places }: DueItem): Slot | undefined {
  return places.length === 1 ? slotOf(places[0]!) : undefined;
}

function bySlot(items: readonly DueItem[]): DueItem[] {
  return items.toSorted((a, b) => order().compare(slotIn(a)?.slot ?? '', slotIn(b)?.slot ?? ''));
}

function inWords(items: readonly DueItem[], place: string | undefined): string {
  const [{ kind, what }] = items as [DueItem];
  const longest = Math.max(...items.map(({ overdueDays }) => overdueDays));
  const days = counted(longest, 'day');
  if (kind === 'soak') return `${items.length} soaks with no end recorded, longest ${days}`;
  const where = place === undefined ? 'with no place recorded' : `at ${place}`;
  if (kind === 'stage') return `${items.length} ${where}: ${what}`;
  return `${items.length} counts ${where}, longest ${days}`;
}
