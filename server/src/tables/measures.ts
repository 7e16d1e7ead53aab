import { isUndefined, type Measured, type Undefined } from '../measures/measured.ts';
import type { BatchMeasures } from '../measures/batch.ts';
import type { GerminationTime } from '../measures/germination-time.ts';
import type { Proportion } from '../measures/proportion.ts';
import type { SeedRange } from '../model/estimate.ts';
import { reportBatch, type BatchReport } from '../report/batch-report.ts';
import { batchesOf, type BatchOf } from './source.ts';
import { number, table, text, whole, word } from './table.ts';

/** A number, or limits where only these are known; with what it is a share of. */
interface Value {
  readonly value?: number;
  readonly least?: number | undefined;
  readonly most?: number | undefined;
  readonly confidence?: { readonly low: number | undefined; readonly high: number | undefined };
  readonly count?: number;
  readonly of?: number | SeedRange;
}

interface Measure extends BatchOf {
  readonly measure: string;
  readonly unit: 'share' | 'day' | 'days';
  readonly found: Value | Undefined;
}

const shares = [
  'germinated_of_sown', 'germinated_of_full', 'germinated_of_viable', 'emerged_of_germinated', 'leaf_of_germinated',
  'leggy_of_germinated', 'abnormal_of_germinated', 'died_of_germinated', 'rotted_of_sown',
] as const;
const times = ['first_germinated', 't50_coolbear', 't10_of_sown', 't50_of_sown', 't90_of_sown', 'half_of_sown'] as const;
const names = [...shares, ...times, 'mean_time'] as const;

/** What is computed from the counts of a batch. */
export const measures = table<Measure>(
  {
    name: 'measures',
    says: 'A row for each batch that was counted and each measure. What counts leave open has limits instead of a value.',
    key: ['batch', 'measure'], references: [{ columns: ['journal', 'batch'], table: 'batches' }],
  },
  [
    text('lot', 'The id of the lot.', ({ lot }) => lot.id),
    text('batch', 'The path of the batch.', ({ batch }) => batch.path),
    word('measure', 'The measure.', names, each => each.measure),
    word('unit', 'What its numbers are: a share from 0 to 1, a day from day 0, or a number of days.', ['share', 'day', 'days'], ({ unit }) => unit),
    number('value', 'The number, if it is known.', of => known(of)?.value),
    number('value_least', 'The number, at least.', of => known(of)?.value ?? known(of)?.least),
    number('value_most', 'The number, at most.', of => known(of)?.value ?? known(of)?.most),
    number('low_95', 'The lower limit of the 95 % interval.', of => known(of)?.confidence?.low),
    number('high_95', 'The upper limit of the 95 % interval.', of => known(of)?.confidence?.high),
    whole('count', 'Of a share: how many.', of => known(of)?.count),
    whole('of_least', 'Of a share: of how many, at least.', of => endOf(known(of)?.of, 'least')),
    whole('of_most', 'Of a share: of how many, at most.', of => endOf(known(of)?.of, 'most')),
    text('why_unknown', 'Why there is no number.', ({ found }) => (isUndefined(found) ? found.undefined : undefined)),
  ],
  source => batchesOf(source).flatMap(each => measuresOf(each, reportBatch(each.lot, each.batch, source.now))),
);

function known({ found }: Measure): Value | undefined {
  return isUndefined(found) ? undefined : found;
}

function endOf(of: Value['of'], end: keyof SeedRange): number | undefined {
  return typeof of === 'object' ? of[end] : of;
}

function measuresOf(each: BatchOf, { measures: found, totals, germinationRange }: BatchReport): Measure[] {
  if (!totals) return [];
  const row = (measure: (typeof names)[number], unit: Measure['unit'], value: Value | Undefined): Measure => (
    { ...each, measure, unit, found: value });
  if (isUndefined(found)) {
    return [
      row('germinated_of_sown', 'share', germinationRange ? estimated(germinationRange) : found),
      ...names.slice(1).map(name => row(name, unitOf(name), found)),
    ];
  }
  return [
    ...shares.map(name => row(name, 'share', shareValue(shareIn(found, name)))),
    ...times.map(name => row(name, 'day', timeIn(found, name))),
    row('mean_time', 'days', meanIn(found)),
  ];
}

function unitOf(name: (typeof names)[number]): Measure['unit'] {
  if (name === 'mean_time') return 'days';
  return (shares as readonly string[]).includes(name) ? 'share' : 'day';
}

function estimated({ x, n, share, wilson }: NonNullable<BatchReport['germinationRange']>): Value {
  return { least: share.low, most: share.high, confidence: wilson, count: x, of: n };
}

function shareIn(
  { germination, seedlings, rotted }: BatchMeasures, name: (typeof shares)[number],
): Proportion | Undefined {
  switch (name) {
    case 'germinated_of_sown': return germination.sown;
    case 'germinated_of_full': return germination.full;
    case 'germinated_of_viable': return germination.viable;
    case 'emerged_of_germinated': return seedlings.emerged;
    case 'leaf_of_germinated': return seedlings.leaf;
    case 'leggy_of_germinated': return seedlings.leggy;
    case 'abnormal_of_germinated': return seedlings.abnormal;
    case 'died_of_germinated': return seedlings.died;
    case 'rotted_of_sown': return rotted;
    default: return name satisfies never;
  }
}

function shareValue(share: Proportion | Undefined): Value | Undefined {
  return isUndefined(share) ? share : { value: share.value, confidence: share.wilson, count: share.x, of: share.n };
}

function timeIn(
  { span, t50Coolbear, ofSown, medianLimits }: BatchMeasures, name: (typeof times)[number],
): Value | Undefined {
  switch (name) {
    case 'first_germinated': return isUndefined(span) ? span : { least: limit(span.after), most: span.first };
    case 't50_coolbear': return looks(t50Coolbear);
    case 't10_of_sown': return looks(ofSown.t10);
    case 't50_of_sown': return looks(ofSown.t50);
    case 't90_of_sown': return looks(ofSown.t90);
    case 'half_of_sown':
      if (isUndefined(medianLimits)) return medianLimits;
      return { confidence: { low: medianLimits.after, high: medianLimits.by } };
    default: return name satisfies never;
  }
}

/** A seed germinated between two looks, and a day between these would be made up. */
function looks(time: GerminationTime | Undefined): Value | Undefined {
  return isUndefined(time) ? time : { least: limit(time.after), most: time.by };
}

function meanIn({ meanTime: { earliest, mean } }: BatchMeasures): Value | Undefined {
  return isUndefined(mean) ? mean : { least: limit(earliest), most: mean.value };
}

function limit(measured: Measured): number | undefined {
  return isUndefined(measured) ? undefined : measured.value;
}
