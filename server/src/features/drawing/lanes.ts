/** What a batch lay in, as bars on the axis of its days. */
import type { Batch } from '../../journal/life.ts';
import type { Moment } from '../../journal/moment.ts';
import type { Bar, Lane } from '../../pictures/germination/lanes.ts';
import type { TrialBatch } from '../../trials/groups.ts';
import { dosesText, soakLengthText } from '../../words/soaks.ts';
import { plannedEnd, stageText } from '../../words/stages.ts';

/** More lanes than this make a picture of its own. */
const MOST_LANES = 6;

const MINUTES = 1440;

/** One lane for all batches that lay in the same at the same time, under the names that these are given. */
export function lanesOf(batches: readonly TrialBatch[], nameOf = nameInLot): Lane[] {
  const lanes = new Map<string, { names: string[]; bars: readonly Bar[] }>();
  for (const { batch } of batches) {
    const bars = barsOf(batch);
    if (bars.length === 0) continue;
    const key = JSON.stringify(
      bars.map(({ kind, from, to, text }) => [kind, Math.round(from * 8), to && Math.round(to * 8), text]),
    );
    const lane = lanes.get(key) ?? { names: [], bars };
    lane.names.push(nameOf(batch));
    lanes.set(key, lane);
  }
  return [...lanes.values()].slice(0, MOST_LANES).map(({ names, bars }) => ({ label: names.join(', '), bars }));
}

function nameInLot({ parent, path }: Batch): string {
  return parent ? path.slice(path.indexOf('/') + 1) : path;
}

function barsOf({ soaks, stages, origin }: Batch): Bar[] {
  if (!origin) return [];
  const days = (moment: Moment) => daysBetween(origin.moment, moment);
  return [
    ...soaks.map((soak): Bar => ({
      kind: 'soak',
      from: days(soak.start),
      to: soak.end && days(soak.end),
      text: [dosesText(soak.doses), soakLengthText(soak)].filter(part => part !== undefined).join(' '),
    })),
    ...stages.map((stage): Bar => {
      const due = plannedEnd(stage);
      return {
        kind: stage.stage === 'chill' ? 'cold' : 'warm',
        from: days(stage.start),
        text: stageText(stage),
        to: stage.end ? days(stage.end) : due === undefined ? undefined : due - origin.moment.day,
      };
    }),
  ].filter(({ from, to }) => to === undefined || to > from);
}

/** Days with their parts where both times of day are known; what has none counts by whole days. */
function daysBetween(from: Moment, to: Moment): number {
  const part = from.minutes === undefined || to.minutes === undefined ? 0 : (to.minutes - from.minutes) / MINUTES;
  return to.day - from.day + part;
}
