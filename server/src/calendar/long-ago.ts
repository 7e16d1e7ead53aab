/** What nobody acted on for so long that it is put apart, in few words: each kind of it is one row. */
import { counted } from '../model/counted.ts';
import { isoOf } from '../model/day.ts';
import type { DueItem } from './due.ts';
import type { DueKind } from './due-sources.ts';
import { order } from './places.ts';

export const LONG_AGO = 'Nothing done for more than a year';

export interface LongAgoRow {
  /** Example: '12 counts, the first due on 2017-12-22' */
  readonly what: string;
  readonly names: readonly string[];
}

const kinds = {
  count: ['count', 'counts'],
  soak: ['soak with no end recorded', 'soaks with no end recorded'],
  stage: ['stage that ended', 'stages that ended'],
  judge: ['trial to judge', 'trials to judge'],
  stock: ['stock past its date', 'stocks past their date'],
  reminder: ['reminder', 'reminders'],
  ahead: ['plan', 'plans'],
} as const satisfies Readonly<Record<DueKind, readonly [one: string, many: string]>>;

/** The items in rows, by kind, each with the names of what it is about. */
export function longAgoRows(items: readonly DueItem[]): LongAgoRow[] {
  return (Object.keys(kinds) as DueKind[]).flatMap((kind): LongAgoRow[] => {
    const [one, many] = kinds[kind];
    const own = items.filter(item => item.kind === kind);
    if (own.length === 0) return [];
    const first = isoOf(Math.min(...own.map(({ day }) => day)));
    const names = [...new Set(own.map(({ id }) => id))].sort(order().compare);
    return [{ what: `${counted(own.length, one, many)}, ${own.length > 1 ? 'the first ' : ''}due on ${first}`, names }];
  });
}
