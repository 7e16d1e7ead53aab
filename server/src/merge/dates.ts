/** That no record comes to be of another day by where it stands now. */
import { dayOfIso } from '../model/day.ts';
import { ownDate } from '../syntax/own-date.ts';
import type { Item } from './items.ts';
import type { Row } from './rows.ts';
import type { Conflict } from './settle.ts';

export type Part = { readonly item: Item } | { readonly conflict: Conflict };

/** Lines of the merged file: blank ones above, then those of an item, or those of a conflict on both sides. */
export interface Passage {
  readonly gap: readonly Row[];
  readonly lines: readonly Row[];
  /** Why there is a conflict; `lines` are ours then. */
  readonly reason?: Conflict['reason'];
  readonly theirs?: readonly Row[];
  readonly item: Item;
}

/**
 * The lines of the parts. A record that had its date from a `day` line and would now have another one gets it written
 * out; where a slip in its line forbids that, it gets a `day` line of its own. One that had none stays above all
 * `day` lines.
 */
export function dated(parts: readonly Part[]): Passage[] {
  const passages: Passage[] = [];
  const undated: Passage[] = [];
  /** Those in which one side has no date, and the other one a date that only a `day` line can give. */
  const split: Conflict[] = [];
  const last: Passage[] = [];
  let under = '';
  let firstDay: number | undefined;
  for (const part of parts) {
    const items = itemsIn(part);
    if ('item' in part && part.item.kind === 'day') {
      firstDay ??= passages.length;
      ({ under } = part.item);
    }
    const strays = items.filter(item => item.leans && item.under !== under);
    const isStuck = strays.some(item => !canBeDated(item));
    if (isStuck && items.every(isUndated)) undated.push(passageOf(part, ''));
    else if (isStuck && 'conflict' in part && items.some(isUndated)) split.push(part.conflict);
    else if (isStuck && under === '') last.push(passageOf(part, under));
    else passages.push(passageOf(part, under));
    if ('item' in part && part.item.kind === 'conflict') under = part.item.under;
  }
  const end = passages.findIndex(({ item }) => item.kind === 'end');
  passages.splice(end, 0, ...last);
  passages.splice(aboveDay(passages, firstDay ?? end), 0, ...undated, ...together(split));
  return passages;
}

/**
 * As one conflict: were each resolved by itself, a record without a date could come to stand below a `day` line of the
 * other side. On both sides what has no date stands above what has one.
 */
function together(conflicts: readonly Conflict[]): Passage[] {
  const [first] = conflicts;
  if (!first) return [];
  const side = (of: 'ours' | 'theirs') => conflicts.flatMap(conflict => conflict[of] ?? [])
    .sort((a, b) => Number(needsDayLine(a)) - Number(needsDayLine(b))).flatMap(item => linesOf(item, ''));
  return [{
    gap: first.gap, reason: first.reason, item: (first.ours ?? first.theirs)!, lines: side('ours'), theirs: side('theirs'),
  }];
}

function needsDayLine(item: Item): boolean {
  return item.leans && item.under !== '' && !canBeDated(item);
}

function isUndated({ leans, under }: Item): boolean {
  return leans && under === '';
}

function itemsIn(part: Part): Item[] {
  if ('item' in part) return [part.item];
  return [part.conflict.ours, part.conflict.theirs].filter(item => item !== undefined);
}

/** Above a `day` line and the comments that stand right above it. */
function aboveDay(passages: readonly Passage[], day: number): number {
  let at = day;
  while (at > 0 && passages[at - 1]!.item.kind === 'comment' && passages[at]!.gap.length === 0) at--;
  return at;
}

function passageOf(part: Part, under: string): Passage {
  if ('item' in part) return { gap: part.item.gap, lines: linesOf(part.item, under), item: part.item };
  const { reason, gap, ours, theirs } = part.conflict;
  return {
    gap, reason, item: (ours ?? theirs)!,
    lines: ours ? linesOf(ours, under) : [], theirs: theirs ? linesOf(theirs, under) : [],
  };
}

function linesOf(item: Item, under: string): Row[] {
  const { head, tail, leans } = item;
  if (!head) return [];
  if (!leans || item.under === under) return [head, ...tail];
  const day = dayOfIso(item.under);
  if (day !== undefined && canBeDated(item)) {
    const { at, text } = ownDate(head.text, item.reading!.record!, day);
    return [{ ...head, text: head.text.slice(0, at) + text + head.text.slice(at) }, ...tail];
  }
  // Where there is no day to go back to, it stands where nothing below it would take this one.
  return [dayRow(item.under), head, ...tail, ...(under === '' ? [] : [dayRow(under)])];
}

function dayRow(under: string): Row {
  return { text: /^\d/.test(under) ? `day ${under}` : under, end: undefined };
}

/** Whether its date can stand on its own line. */
function canBeDated({ under, reading }: Item): boolean {
  return dayOfIso(under) !== undefined && reading?.record !== undefined && reading.problems.length === 0;
}
