/** Cold so far against cold wanted, in plain words. */
import type { Chilling, Cold } from '../calendar/chilling.ts';

/** What is counted; common practice, no source. */
const RULE = 'whole calendar days; 0 and 10 °C are included';
const HALVES = 'a day and a night temperature count for 12 h each';

/**
 * Days, and hours within 0 to 10 °C where all temperatures are known, with the rule that they are counted by.
 *
 * Example: 'Chill so far 63 of 90 days, 1512 of 2160 h within 0 to 10 °C (whole days of the calendar; ...).'
 */
export function chillText({ soFar, wanted, current, halfDays }: Chilling): string {
  const goesOn = current && current.wanted.days !== wanted.days ? ` In the current stage ${amountText(current.soFar, current.wanted)}.` : '';
  const rule = soFar.hours === undefined ? 'whole calendar days; no hours, because a temperature is missing'
    : `${RULE}${halfDays ? `; ${HALVES}` : ''}`;
  return `Chill so far ${amountText(soFar, wanted)} (${rule}).${goesOn}`;
}

function amountText(had: Cold, wanted: Cold): string {
  const days = had.days === undefined ? 'of unknown length'
    : wanted.days === undefined ? `${had.days} days, planned length not recorded` : `${had.days} of ${wanted.days} days`;
  if (had.hours === undefined) return days;
  return `${days}, ${had.hours} ${wanted.hours === undefined ? '' : `of ${wanted.hours} `}h within 0 to 10 °C`;
}
