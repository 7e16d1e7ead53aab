/** The life of a batch in one line. */
import { soakState } from '../calendar/soaks.ts';
import type { Moment } from '../journal/moment.ts';
import type { Batch, BatchEvent, Soak } from '../journal/life.ts';
import { printMoment } from '../journal/moment.ts';
import { printTemperature } from '../model/quantity.ts';
import { cutClasses, factOf, type JournalRecord } from '../model/record.ts';
import type { Journal } from '../journal/journal.ts';
import { agoText } from './days.ts';
import { leavingText } from './leaving.ts';
import { dosesText, noEndText, soakLengthText, soFarText } from './soaks.ts';
import { stageProgressText } from './stages.ts';
import { stepsText } from './steps.ts';

/**
 * What happened to the seed of a batch up to now, counts and remarks left out; undefined where nothing did.
 *
 * Stages of a regime that nobody wrote down are among it, marked as planned.
 *
 * Example: 'soaked 24 h in GA3 500 ppm (G2), sown 10 weeks ago at 18 C, 4 C for 63 of 90 days'
 */
export function lifeLine(batch: Batch, journal: Journal, now: Moment): string | undefined {
  const steps = stepsText(batch, now.day, event => [stepText(event, batch, journal, now) ?? []].flat());
  return steps.length === 0 ? undefined : steps.join(', ');
}

function stepText(event: BatchEvent, batch: Batch, journal: Journal, now: Moment): string | undefined {
  const { record, moment } = event.entry;
  const isFirst = event.entry.line === batch.sowing?.line;
  const did = (what: string) => `${moment.day > now.day ? 'to be ' : ''}${what} ${agoText(moment.day, now.day)}`;
  switch (event.type) {
    case 'soak': return soakStep(event.soak, batch, journal.zone, now);
    case 'scarify': return did('scarified');
    case 'sow': return `${did(event.again ? 'sown again' : isFirst ? 'sown' : 'more sown')}${sowingText(record)}`;
    case 'stage': return stageProgressText(event.stage, now.day);
    case 'apply': return did(`given drops of ${dosesText(event.doses, true)}`);
    case 'pot': return did(`potted${seedlingsText(record)}`);
    case 'cut': return did(`cut open (${cutClasses.filter(what => event.classes[what] > 0).map(what => `${event.classes[what]} ${what}`).join(', ')})`);
    case 'leave': case 'gone': return did(leavingText(event));
    case 'discard': return did('discarded');
    case 'split': case 'lift': case 'move': case 'count': case 'judge': case 'note': case 'photo': case 'due': case 'misplaced': case 'blank':
      return undefined;
    default: return event satisfies never;
  }
}

function soakStep(soak: Soak, batch: Batch, zone: string | undefined, now: Moment): string {
  const liquid = dosesText(soak.doses, true);
  const length = soakLengthText(soak);
  const long = length ? ` ${length}` : '';
  switch (soakState(soak, batch, now)) {
    case 'to come': return `to be soaked${long} in ${liquid} ${agoText(soak.start.day, now.day)}`;
    case 'out': return `soaked${long} in ${liquid}`;
    case 'no end recorded': return `soaked in ${liquid} (${noEndText(soak, now)})`;
    case 'in it': return `in ${liquid} now (${soFarText(soak, now, zone)}${soak.end ? `, out ${printMoment(soak.end)}` : ''})`;
  }
}

function sowingText(record: JournalRecord): string {
  const temperature = factOf(record, 'temperature')?.value;
  const regime = factOf(record, 'regime')?.value.text;
  return `${factOf(record, 'outdoors') ? ' outdoors' : ''}${temperature ? ` at ${printTemperature(temperature)}` : ''}${regime === undefined ? '' : ` under the regime ${regime}`}`;
}

function seedlingsText(record: JournalRecord): string {
  const seedlings = factOf(record, 'seedlings')?.n.value;
  return seedlings === undefined ? '' : ` (${seedlings} ${seedlings === 1 ? 'seedling' : 'seedlings'})`;
}
