import { rangeOf } from '../journal/estimates.ts';
import { countsOf } from '../journal/life.ts';
import { factOf, countables, cutClasses } from '../model/record.ts';
import { winterOf } from '../model/winter.ts';
import { reportBatch, type BatchReport } from '../report/batch-report.ts';
import { isActiveSoak } from '../trials/treatment.ts';
import { batchesOf, warmth, type BatchOf } from './source.ts';
import { date, map, seeds, table, text, whole, word, yes } from './table.ts';

type ReportedBatch = BatchOf & { readonly report: BatchReport };

const states = [
  'not begun', 'scarified', 'in soak', 'soaked', 'soak without end', 'sown', 'outdoors', 'in stage', 'closed', 'gone',
] as const satisfies readonly BatchReport['state']['kind'][];

/** A lot itself, or what was split off it. */
export const batches = table<ReportedBatch>(
  {
    name: 'batches',
    says: 'A row for each batch. The lot itself is a batch too, with the seed that was left in it.',
    key: ['batch'], references: [{ columns: ['journal', 'lot'], table: 'lots' }],
  },
  [
    text('lot', 'The id of the lot.', ({ lot }) => lot.id),
    text('batch', 'The path of the batch; of the lot itself its id.', ({ batch }) => batch.path),
    text('parent', 'The batch that it was split off.', ({ batch }) => batch.parent?.path),
    date('split_date', 'When it was split off.', ({ batch }) => (batch.parent ? batch.made.moment?.day : undefined)),
    text('treatment', 'What was done to the seed, in words.', ({ report }) => report.treatment),
    yes('is_treated', 'Whether it was soaked in a hormone or another promoter.', ({ batch }) => batch.soaks.some(isActiveSoak)),
    ...seeds<ReportedBatch>('seeds', 'Seeds that it was given', ({ batch }) => rangeOf(batch, 'seeds')),
    ...seeds<ReportedBatch>('kept', 'Seeds that stayed after what was split off', ({ batch }) => rangeOf(batch, 'kept')),
    ...seeds<ReportedBatch>('sown', 'Seeds sown', ({ batch }) => (batch.sowing ? rangeOf(batch, 'sown') : undefined)),
    ...seeds<ReportedBatch>('tested', 'Seeds that the counts are about', ({ batch }) => rangeOf(batch, 'tested')),
    date('day_zero', 'The day from which days count.', ({ batch }) => batch.origin?.moment.day),
    word('day_zero_by', 'What makes it day 0.', ['sowing', 'end of the soak', 'start of the first stage'], ({ batch }) => batch.origin?.by),
    text('winter', 'The winter of day 0: 2025/26 north of the equator, from July to June; the year south of it, by the zone of the journal.', ({ lot, batch }) => (
      map(batch.origin, ({ moment }) => winterOf(moment.day, lot.zone)))),
    text('medium', 'What it was sown in.', ({ batch }) => batch.medium),
    ...warmth<ReportedBatch>(({ batch: { sowing } }) => sowing && factOf(sowing.record, 'temperature')?.value, 'Temperature at the first sowing'),
    text('place', 'Where it is.', ({ report: { places } }) => places.at(-1)),
    whole('counts', 'How often it was counted.', ({ batch }) => countsOf(batch).length),
    date('last_count_date', 'The day of the last count.', ({ batch }) => countsOf(batch).at(-1)?.entry.moment.day),
    ...countables.map(what => (
      whole<ReportedBatch>(what, `Counted as ${what} in all; not known before the first count.`, ({ report }) => report.totals?.[what]))),
    ...cutClasses.map(what => (
      whole<ReportedBatch>(`cut_${what}`, `Found ${what} by the cut test.`, ({ report }) => report.cut?.[what]))),
    word('state', 'Where it stands on the day of the export.', states, ({ report }) => report.state.kind),
    date('closed_date', 'When it was closed.', ({ batch }) => batch.closed?.entry.moment.day),
    yes('has_unread_records', 'Whether a record of it could not be read in full or has no date.', ({ batch }) => batch.unread),
  ],
  source => batchesOf(source).map(each => ({ ...each, report: reportBatch(each.lot, each.batch, source.now) })),
);
