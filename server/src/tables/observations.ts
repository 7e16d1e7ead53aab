import { testedAt } from '../journal/estimates.ts';
import type { CountEvent, CutEvent } from '../journal/life.ts';
import type { SeedRange } from '../model/estimate.ts';
import { countables, cutClasses } from '../model/record.ts';
import { eventColumns } from './events.ts';
import { recordsOf, type EventRecord } from './records.ts';
import { seeds, table, whole, word } from './table.ts';

const writings = ['new', 'total', 'implied'] as const;

interface Observation {
  readonly of: EventRecord;
  readonly kind: string;
  readonly fresh: number;
  readonly total: number;
  readonly written: (typeof writings)[number];
  readonly tested: SeedRange | undefined;
}

/** What one look found. */
export const observations = table<Observation>(
  {
    name: 'observations',
    says: 'A row for each count or cut test and each kind of thing that it counted, zeros that were counted included.',
    key: ['file', 'line', 'kind'],
    references: [{ columns: ['journal', 'file', 'line'], table: 'events' }],
  },
  [
    ...eventColumns.map(({ cell, ...field }) => ({ ...field, cell: ({ of }: Observation) => cell(of) })),
    word('kind', 'What was counted.', [...countables, ...cutClasses], ({ kind }) => kind),
    whole('new', 'How many are new since the last count.', ({ fresh }) => fresh),
    whole('total', 'How many there have been so far.', ({ total }) => total),
    word('recorded_as', 'Whether the record says what is new or the total so far, or implies it: what has a leaf has germinated.', writings, ({ written }) => written),
    ...seeds<Observation>('tested', 'Seeds that the count is about', ({ tested }) => tested),
  ],
  source => recordsOf(source).events.flatMap(observationsOf),
);

function observationsOf(of: EventRecord): Observation[] {
  const { event, batch } = of;
  if (!batch) return [];
  if (event?.type === 'count') return countedOf(of, event, testedAt(batch, event));
  return event?.type === 'cut' ? cutOf(of, event, testedAt(batch, event)) : [];
}

/** What the record names, and what follows from that. */
function countedOf(
  of: EventRecord, { counts, before, after }: CountEvent, tested: SeedRange | undefined,
): Observation[] {
  return countables.flatMap(what => {
    const own = counts.filter(count => count.what === what);
    if (own.length === 0 && before[what] === after[what]) return [];
    const written = own.length === 0 ? 'implied' : own.some(({ total }) => total) ? 'total' : 'new';
    return [{ of, kind: what, fresh: after[what] - before[what], total: after[what], written, tested }];
  });
}

function cutOf(of: EventRecord, { classes, entry }: CutEvent, tested: SeedRange | undefined): Observation[] {
  return cutClasses.filter(what => entry.record.facts.some(fact => fact.type === 'cut' && fact.what === what))
    .map(what => ({ of, kind: what, fresh: classes[what], total: classes[what], written: 'new', tested }));
}
