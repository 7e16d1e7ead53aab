/** The stages of batches on an axis of dates: of one batch, and of all that are open. */
import { stageName } from '../../calendar/ask.ts';
import { scheduleFrom } from '../../calendar/backwards.ts';
import { due } from '../../calendar/due.ts';
import { order, whereNow } from '../../calendar/places.ts';
import { stagesOf } from '../../calendar/regime-match.ts';
import { regimePlan, type RegimePlan } from '../../calendar/regimes.ts';
import { isOpen, standingOf } from '../../calendar/standing.ts';
import { staysOf } from '../../calendar/stays.ts';
import type { Journal } from '../../journal/journal.ts';
import { isUsed, type Batch, type Lot } from '../../journal/life.ts';
import type { Moment } from '../../journal/moment.ts';
import { isUndefined } from '../../measures/measured.ts';
import type { Day } from '../../model/day.ts';
import { printQuantity, printTemperature } from '../../model/quantity.ts';
import type { JournalRecord } from '../../model/record.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import { timelinePicture, type Stretch, type TimelineRow } from '../../pictures/timeline.ts';
import { dosesText } from '../../words/soaks.ts';
import { plannedEnd, stageText } from '../../words/stages.ts';

/** All open batches to which something was done, by where they lie. */
export function seasonPicture(journal: Journal, now: Moment, frame: Frame): Picture | undefined {
  const next = nextDue(journal, now);
  const rows = [...journal.lots()].flatMap(lot =>
    [...lot.batches.values()]
      .filter(batch => isUsed(batch) && isOpen(standingOf(batch, now)))
      .map(batch => ({
        ...rowOf(batch, now),
        heading: placeOf(lot, batch, now),
        due: next.get(batch.path),
      })),
  );
  const inOrder = rows.sort((a, b) => order().compare(a.heading, b.heading) || order().compare(a.label, b.label));
  return timelinePicture({ title: 'The season at a glance', rows: inOrder, today: now.day }, frame);
}

/** The stages of a batch; undefined for one that has none. */
export function stagesPicture(batch: Batch, now: Moment, frame: Frame): Picture | undefined {
  const row = rowOf(batch, now);
  if (!row.stretches.some(({ kind }) => kind !== 'soak')) return undefined;
  return timelinePicture({ title: `Stages of ${batch.path}`, rows: [row], today: now.day }, frame);
}

/** The stages of a regime from a day on; undefined where one of them has no length. */
export function regimePicture(
  id: string, record: JournalRecord, start: Day, now: Moment, frame: Frame,
): Picture | undefined {
  const schedule = scheduleFrom(start, stagesOf(record), { soak: undefined, daysAfter: 0 });
  if (isUndefined(schedule) || schedule.stages.length === 0) return undefined;
  const stretches = schedule.stages.map((stage): Stretch => (
    { kind: kindOf(stage.stage), from: stage.start, to: stage.end, isPlanned: true, text: stageName(stage) }));
  const row = { label: id, heading: undefined, stretches, sown: undefined, due: undefined };
  return timelinePicture({ title: `Stages of regime ${id}`, rows: [row], today: now.day }, frame);
}

function placeOf(lot: Lot, { path }: Batch, now: Moment): string {
  return (
    whereNow(staysOf(lot), path, now)
      .at(-1)
      ?.replace(/ slot \S+$/u, '') ?? 'no place recorded'
  );
}

/** What is due next of each batch or bottle. */
export function nextDue(journal: Journal, now: Moment): Map<string, NonNullable<TimelineRow['due']>> {
  const next = new Map<string, NonNullable<TimelineRow['due']>>();
  for (const { id, day, what, entry: { line } } of due(journal, now)) {
    if (!next.has(id)) next.set(id, { day, what, line });
  }
  return next;
}

function rowOf(batch: Batch, now: Moment): TimelineRow {
  const plan = regimePlan(batch, now);
  const soaks = batch.soaks.map(({ start, end, doses, entry: { line } }): Stretch => ({
    kind: 'soak',
    from: start.day,
    to: end?.day ?? start.day,
    isPlanned: start.day > now.day,
    text: dosesText(doses),
    line,
  }));
  return {
    label: batch.path,
    heading: undefined,
    due: undefined,
    sown: batch.sowing?.moment.day,
    sownIn: batch.sowing?.line,
    stretches: [...soaks, ...(plan ? planned(plan, now.day) : recorded(batch, now.day))],
  };
}

function planned({ stages, sowing }: RegimePlan, today: Day): Stretch[] {
  return stages.flatMap(({ stage, start, end, temperature, duration, state, records }) => {
    if (start === undefined) return [];
    const words = [temperature ? printTemperature(temperature) : stage, duration && printQuantity(duration)];
    return divided(
      {
        kind: kindOf(stage),
        from: start,
        to: end,
        text: words.filter(word => word !== undefined).join(' '),
        line: (records[0]?.entry ?? sowing).line,
      },
      state === 'done' ? Infinity : today,
    );
  });
}

function recorded({ stages }: Batch, today: Day): Stretch[] {
  return stages.flatMap(stage =>
    divided(
      {
        kind: kindOf(stage.stage),
        from: stage.start.day,
        to: stage.end?.day ?? plannedEnd(stage),
        text: stageText(stage),
        line: stage.entry.line,
      },
      today,
    ),
  );
}

/** Up to today it was, from then on it is planned; a stage without an end goes on to this day. */
function divided({ to, ...stretch }: Omit<Stretch, 'isPlanned'>, today: Day): Stretch[] {
  const { from } = stretch;
  if (from > today || (from === today && to !== undefined && to > today))
    return [{ ...stretch, to, isPlanned: true }];
  if (to === undefined || to <= today) return [{ ...stretch, to: to ?? Math.max(from, today), isPlanned: false }];
  return [
    { ...stretch, to: Math.max(from, today), isPlanned: false },
    { ...stretch, from: today, to, isPlanned: true },
  ];
}

function kindOf(stage: 'chill' | 'warm'): 'cold' | 'warm' {
  return stage === 'chill' ? 'cold' : 'warm';
}
