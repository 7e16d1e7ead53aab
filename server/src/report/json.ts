/**
 * A report as plain data for other programs: every number at full precision, days as ISO 8601 dates, `null` for what is
 * not known, and `{ "undefined": reason }` for a number that cannot be given. The README describes the shape.
 */
import { rangeOf } from '../journal/estimates.ts';
import type { Batch, LeaveEvent, Dose, Soak, Stage } from '../journal/life.ts';
import { printMoment, type Moment } from '../journal/moment.ts';
import { isUndefined } from '../measures/measured.ts';
import { seedsGone } from '../words/leaving.ts';
import { isoOf } from '../model/day.ts';
import type { Temperature } from '../model/quantity.ts';
import { factOf, type JournalRecord } from '../model/record.ts';
import { toNumber } from '../solutions/display.ts';
import type { BatchReport } from './batch-report.ts';
import { courseData, measuresData } from './measures-data.ts';
import { plantsData } from './plant-data.ts';
import type { LotReport, Report } from './report.ts';
import type { BatchState } from '../words/state.ts';
import { trialData } from './trial-data.ts';

/** Version of the shape; it grows when something in it changes its meaning or goes, not when something comes. */
export const REPORT_SHAPE = 1;

export function reportData({ now, zone, lots, plants, homeless, ahead }: Report): object {
  return {
    now: momentData(now), zone: zone ?? null, linesWithoutLot: homeless, countsAhead: ahead, lots: lots.map(lotData),
    plants: plants ? plantsData(plants) : null,
  };
}

function lotData({ lot, batches, leavings, trial, replacing, errors }: LotReport): object {
  const { record, line } = lot.definition;
  const text = (type: 'from' | 'stored' | 'dormancy') => factOf(record, type)?.value.text ?? null;
  return {
    id: lot.id,
    plant: lot.plant ?? null,
    file: line.store.name,
    line: line.number + 1,
    seeds: lot.root.seeds ?? null,
    ...estimateData(lot.root, ['seeds']),
    ...harvestsData(record),
    collected: lot.collected ? { first: isoOf(lot.collected.first), last: isoOf(lot.collected.last) } : null,
    from: text('from'),
    stored: text('stored'),
    dormancy: text('dormancy'),
    ...replacing,
    errors,
    batches: batches.map(batchData),
    leavings: leavings.map(event => ({ batch: event.batch.path, ...leavingData(event) })),
    trial: trialData(trial),
  };
}

function batchData(
  { batch, treatment, totals, germination, days, origin, cut, state, leavings, ...rest }: BatchReport,
): object {
  return {
    batch: batch.path,
    treatment,
    soaks: batch.soaks.map(soakData),
    stages: batch.stages.map(stageData),
    plannedStages: rest.plannedStages.map(plannedData),
    seeds: batch.seeds ?? null,
    kept: batch.kept ?? null,
    sown: batch.sowing ? (batch.sown ?? null) : null,
    ...estimateData(batch, batch.sowing ? ['seeds', 'kept', 'sown'] : ['seeds', 'kept']),
    dayZero: origin ? { date: isoOf(origin.moment.day), by: origin.by } : null,
    totals: totals ?? null,
    cut: cut ?? null,
    germination: isUndefined(germination) ? germination : {
      germinated: germination.x, of: germination.n, ofWhat: germination.of, share: germination.value,
      wilson: germination.wilson, clopperPearson: germination.exact,
    },
    ...(rest.germinationRange && { germinationRange: rest.germinationRange }),
    days,
    course: courseData(rest.course),
    measures: measuresData(rest.measures),
    place: rest.places.at(-1) ?? null,
    places: rest.places,
    medium: batch.medium ?? null,
    temperature: temperatureData(temperatureOf(batch)),
    state: stateData(state),
    potted: rest.potted,
    leavings: leavings.map(leavingData),
  };
}

function leavingData(event: LeaveEvent): object {
  const { how, whither, seedlings, entry: { moment } } = event;
  const seeds = seedsGone(event);
  const isCounted = seeds.least === seeds.most;
  return {
    on: isoOf(moment.day), how, whither: whither ?? null, seeds: isCounted ? seeds.most : null, seedlings,
    ...(isCounted ? {} : { estimated: { seeds } }),
  };
}

/** Where a packet holds two harvests; `collected` takes in both. */
function harvestsData(record: JournalRecord): object {
  const harvests = factOf(record, 'collected')?.harvests;
  return harvests ? { harvests: harvests.map(({ first, last }) => ({ first: isoOf(first), last: isoOf(last) })) } : {};
}

/** Numbers of seeds that were estimated, where there are any: from the least to the most. */
function estimateData(batch: Batch, whats: readonly ('seeds' | 'kept' | 'sown')[]): object {
  const ranges = whats.flatMap(what => {
    const range = rangeOf(batch, what);
    return range && batch[what] === undefined ? [[what, range] as const] : [];
  });
  return ranges.length > 0 ? { estimated: Object.fromEntries(ranges) } : {};
}

/** That of the first sowing. */
function temperatureOf({ sowing }: Batch): Temperature | undefined {
  return sowing && factOf(sowing.record, 'temperature')?.value;
}

function soakData({ start, end, endedBy, length, doses }: Soak): object {
  return {
    start: momentData(start),
    end: end ? momentData(end) : null,
    endedBy: endedBy ?? null,
    hours: length ? { least: length.least / 60, most: length.most / 60 } : null,
    doses: doses.map(doseData),
  };
}

function doseData({ agent, stock, ppm, unmeasured, parts, stale, byEye }: Dose): object {
  return {
    agent: agent?.word ?? null,
    stock: stock ?? null,
    ppm: stale && ppm.ok ? { undefined: 'It came from a bottle past its date.' } : ppmData(ppm),
    atMost: stale && ppm.ok ? { ppm: toNumber(ppm.value), made: isoOf(stale.made) } : null,
    unmeasured,
    about: byEye,
    parts: parts.map(part => ({
      stock: part.stock ?? null, volume: part.fact.volume?.value ?? null,
      ppm: ppmData(part.held), adds: ppmData(part.ppm),
    })),
  };
}

function ppmData(ppm: Dose['ppm']): number | object {
  return ppm.ok ? toNumber(ppm.value) : { undefined: ppm.refusal.message };
}

function stageData({ stage, temperature, planned, start, end }: Stage): object {
  return {
    stage, temperature: temperatureData(temperature), planned: planned ?? null,
    start: isoOf(start.day), end: end ? isoOf(end.day) : null,
  };
}

function plannedData({ stage, temperature, duration, start, end, passed }: BatchReport['plannedStages'][number]): object {
  return {
    stage, temperature: temperatureData(temperature), planned: duration ?? null,
    start: isoOf(start), end: end === undefined ? null : isoOf(end), passed,
  };
}

/** As it was written, in degrees of its unit. */
export function temperatureData(temperature: Temperature | undefined): object | null {
  return temperature ? { ...temperature, night: temperature.night ?? null } : null;
}

function stateData(state: BatchState): object {
  switch (state.kind) {
    case 'not begun': return { kind: state.kind };
    case 'scarified': return { kind: state.kind, since: isoOf(state.since) };
    case 'in soak': {
      const { since, until } = state;
      return { kind: state.kind, since: momentData(since), until: until ? momentData(until) : null };
    }
    case 'soak without end': return { kind: state.kind, since: momentData(state.soak.start), days: state.days };
    case 'soaked': return { kind: state.kind, since: momentData(state.since) };
    case 'sown': case 'outdoors': return { kind: state.kind, since: isoOf(state.since), days: state.days };
    case 'in stage': {
      const { stage, days, planned } = state;
      return { kind: state.kind, stage: stage.stage, since: isoOf(stage.start.day), days, planned: planned ?? null };
    }
    case 'gone': return { kind: state.kind, how: state.how, whither: state.whither ?? null, on: isoOf(state.on) };
    case 'closed': return { kind: state.kind, by: state.by, on: isoOf(state.on) };
  }
}

/** Example: '2026-01-10T19:00', or '2026-01-10' where no time was written */
function momentData(moment: Moment): string {
  return printMoment(moment).replace(' ', 'T');
}
