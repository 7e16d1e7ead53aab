/** Numbers of seeds that do not add up: the number that fits, here or where the seeds come from. */
import type { Batch } from '../../../journal/life.ts';
import { factOf, factsOf, type FactOfType } from '../../../model/record.ts';
import { livedAs, replace, type Mend, type Mender } from './mend.ts';

/** More is sown than is there. */
export const sownExceedsSeeds: Mender = ({ entry }, context) => {
  const lived = livedAs('sow', entry, context);
  const seeds = factOf(entry.record, 'seeds');
  const { asked, available } = lived?.event ?? {};
  if (!lived || !seeds?.n || asked === undefined || available === undefined || asked <= available) return [];
  return [
    ...(available > 0 ? [{ title: `Sow ${available}: all that are left`, edits: [replace(entry.line, seeds.n, available)] }] : []),
    ...moreInLot(lived.batch, asked - available),
  ];
};

/** More is given out than is left. */
export const splitExceedsSeeds: Mender = ({ entry }, context) => {
  const lived = livedAs('split', entry, context);
  const { asked = 0, left } = lived?.event ?? {};
  if (!lived || left === undefined || asked <= left) return [];
  const parts = factsOf(entry.record, 'part');
  const last = parts.at(-1)!;
  const rest = last.n ? last.n.value - (asked - left) : 0;
  return [
    ...evenly(entry, parts, left),
    ...(last.n && rest > 0 ? [{
      title: `Give ${last.name.text} ${rest}: what the others leave over`, edits: [replace(entry.line, last.n, rest)],
    }] : []),
    ...moreInLot(lived.batch, asked - left),
  ];
};

/** Parts that were to be equal, as large as they can be. */
function evenly({ line }: Parameters<Mender>[0]['entry'], parts: readonly FactOfType<'part'>[], left: number): Mend[] {
  const each = Math.floor(left / parts.length);
  const numbers = parts.flatMap(({ n }) => n ?? []);
  const isEven = parts.length > 1 && numbers.length === parts.length
    && numbers.every(({ value }) => value === numbers[0]!.value);
  if (!isEven || each < 1) return [];
  const over = left - each * parts.length;
  const rest = over > 0 ? ` and keep ${over}` : '';
  return [{ title: `Give each ${each}${rest}: the ${left} that are left`, edits: numbers.map(n => replace(line, n, each)) }];
}

/** The lot has more than its record says. */
function moreInLot({ parent, seeds, made }: Batch, more: number): Mend[] {
  const fact = parent ? undefined : factOf(made.record, 'seeds');
  if (!fact?.n || seeds === undefined) return [];
  return [{ title: `Change the lot to ${seeds + more} seeds`, edits: [replace(made.line, fact.n, seeds + more)] }];
}

/** A cut test that names one class only sorted everything into it. */
export const cutDoesNotAddUp: Mender = ({ entry }, context) => {
  const expected = livedAs('cut', entry, context)?.event.expected;
  const [only, ...others] = factsOf(entry.record, 'cut');
  if (!only || others.length > 0 || expected === undefined || only.n.value === expected) return [];
  return [{
    title: `Change to ${expected} ${only.what}: all that had not germinated`, edits: [replace(entry.line, only.n, expected)],
    evident: true,
  }];
};
