/** Cold and warm stages in plain words. */
import { isPassed, type PlannedStage } from '../calendar/regimes.ts';
import type { Stage } from '../journal/life.ts';
import type { Day } from '../model/day.ts';
import { dayAfter, printQuantity, printTemperature } from '../model/quantity.ts';
import { daysText } from './days.ts';

/** The temperature, or what kind of stage it is where none is written. */
function warmth({ stage, temperature }: Stage): string {
  return temperature ? printTemperature(temperature) : stage;
}

/**
 * A stage of a regime that nobody wrote down.
 *
 * Example: '4 C 90 days (planned)', '4 C 90 days (planned, passed)' when its time is over
 */
export function plannedText(planned: PlannedStage, today: Day | undefined): string {
  const { stage, temperature, duration } = planned;
  const words = [temperature ? printTemperature(temperature) : stage, ...(duration ? [printQuantity(duration)] : [])];
  return `${words.join(' ')} (${plannedMark(planned, today)})`;
}

/** How a stage that nobody wrote down is marked, wherever it is told. */
export function plannedMark(planned: PlannedStage, today: Day | undefined): string {
  return today !== undefined && isPassed(planned, today) ? 'planned, passed' : 'planned';
}

/** The day on which a stage is to end; undefined where no duration is written. */
export function plannedEnd({ start, planned }: Stage): Day | undefined {
  return planned && dayAfter(start.day, planned);
}

/**
 * A stage as it was meant; where nothing was said of its length, as it was.
 *
 * Example: '4 C 90 days'
 */
export function stageText(stage: Stage): string {
  const { planned, start, end } = stage;
  if (planned) return `${warmth(stage)} ${printQuantity(planned)}`;
  return end ? `${warmth(stage)} ${daysText(end.day - start.day)}` : warmth(stage);
}

/**
 * A stage as far as it has gone; one that has not begun as it is meant.
 *
 * Example: '4 C for 63 of 90 days', '20 C for 60 days', '4 C for 95 days (90 planned)'
 */
export function stageProgressText(stage: Stage, today: Day): string {
  const { start, end } = stage;
  if (start.day > today) return `${stageText(stage)} to come`;
  const days = (end && end.day <= today ? end.day : today) - start.day;
  const last = plannedEnd(stage);
  const planned = last === undefined ? undefined : last - start.day;
  const length = planned === undefined || planned === days ? daysText(days)
    : days < planned ? `${days} of ${daysText(planned)}` : `${daysText(days)} (${planned} planned)`;
  return `${warmth(stage)} for ${length}`;
}
