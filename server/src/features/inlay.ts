/** What the lines of counts, soaks, stages and stocks come to, shown at their ends. */
import { whereSeedNow, whereText } from '../calendar/places.ts';
import { staysOf } from '../calendar/stays.ts';
import type { JournalLine } from '../journal/journal-file.ts';
import type { Journal } from '../journal/journal.ts';
import {
  dayNumber, tellsMore, type Batch, type BatchEvent, type CountEvent, type Dose, type Lot, type Soak, type Stage,
} from '../journal/life.ts';
import { lengthText, printMoment, type Moment } from '../journal/moment.ts';
import { isUndefined } from '../measures/measured.ts';
import { isoOf } from '../model/day.ts';
import { factOf } from '../model/record.ts';
import { lifeOf, type Lived } from './events.ts';
import { daysText } from '../words/days.ts';
import { germinatedAt, originText } from '../words/germination.ts';
import { intervalText, shareText } from '../words/shares.ts';
import { dosesText } from '../words/soaks.ts';
import { plannedEnd } from '../words/stages.ts';
import { contentHeld } from '../words/held.ts';

export interface Hint {
  readonly line: number;
  /** The end of the line. */
  readonly character: number;
  readonly text: string;
  /** What the text is based on. */
  readonly more: string | undefined;
}

export interface HintKinds {
  readonly counts: boolean;
  readonly soaks: boolean;
  readonly stages: boolean;
  readonly stocks: boolean;
}

type Shown = Pick<Hint, 'text' | 'more'>;

/**
 * Hints for the lines from one to another. None for a line with a mistake: it is still being written. A count without
 * its numbers has the place to go to.
 */
export function hintsIn(
  journal: Journal, file: string, from: number, to: number, kinds: HintKinds, now: Moment,
): Hint[] {
  const text = journal.files.get(file)?.text;
  const hints: Hint[] = [];
  if (!text) return hints;
  for (let number = Math.max(0, from); number <= Math.min(to, text.lineCount - 1); number++) {
    const line = text.at(number);
    const { record, problems } = line.content;
    if (!record || problems.some(({ code }) => code !== 'not-counted')) continue;
    const entry = journal.entryAt(line);
    const lived = entry && lifeOf(journal, entry);
    const ofStock = kinds.stocks ? stockHint(journal, line) : undefined;
    const shown = lived?.event ? hintOf(lived, lived.event, kinds, now) : ofStock;
    if (shown) hints.push({ line: number, character: line.text.length, ...shown });
  }
  return hints;
}

function hintOf({ lot, batch }: Lived, event: BatchEvent, kinds: HintKinds, now: Moment): Shown | undefined {
  if (event.type === 'blank') return kinds.counts ? placeHint(lot, event) : undefined;
  if (!tellsMore(event)) return undefined;
  switch (event.type) {
    case 'count': return kinds.counts ? countHint(batch, event) : undefined;
    case 'soak': return kinds.soaks ? withDose(event.soak.doses, soakHint(event.soak)) : undefined;
    case 'apply': return kinds.soaks ? withDose(event.doses, undefined) : undefined;
    case 'lift': return kinds.soaks && event.soak?.length ? { text: lengthText(event.soak.length), more: undefined } : undefined;
    case 'stage': return kinds.stages ? stageHint(event.stage, now) : undefined;
    case 'split': case 'sow': case 'cut': case 'leave': case 'gone': return undefined;
    default: return event satisfies never;
  }
}

/** Example: 'GA3 1000 ppm', 'GA3 about 250 ppm'; of a bottle made from what was past its time 'GA3 at most 1000 ppm' */
function stockHint(journal: Journal, line: JournalLine): Shown | undefined {
  const { keyword, subject } = line.content.record!;
  if (keyword !== 'stock' && keyword !== 'dilute') return undefined;
  const solution = subject && journal.solution(subject.text);
  if (solution?.entry.line !== line || !solution.agent || !solution.ppm.ok) return undefined;
  // That of a liquid as bought stands on its label, and on the line.
  if (solution.form === 'bought') return undefined;
  return { text: contentHeld(solution, journal), more: undefined };
}

/** Example: 'at bag 3 slot 2' */
function placeHint(lot: Lot, { batch, entry }: BatchEvent): Shown | undefined {
  const place = whereText(whereSeedNow(staysOf(lot), batch.path, entry.moment));
  return place === undefined ? undefined : { text: `at ${place}`, more: undefined };
}

/** Example: 'day 8 · 3 of 24 = 12.5 % · rotted 1' */
function countHint(batch: Batch, event: CountEvent): Shown | undefined {
  const day = dayNumber(batch, event.entry.moment);
  const from = batch.origin && day !== undefined ? `Day ${day} from ${originText(batch.origin)}.` : undefined;
  const share = isRead(batch, event) ? germinatedAt(batch, event) : undefined;
  const { after, counts } = event;
  const others = counts.map(({ what }) => what).filter(what => what !== 'germinated').map(what => `${what} ${after[what]}`);
  const totals = share && [
    isUndefined(share) ? `germinated ${after.germinated}` : shareText(share.x, share.n), ...new Set(others),
  ];
  const texts = [day === undefined ? undefined : `day ${day}`, ...(totals ?? [])].filter(text => text !== undefined);
  const basis = share && (isUndefined(share) ? `No percentage: ${share.undefined}.`
    : `Germinated so far, ${intervalText(share.x, share.n)}; ${share.of}.`);
  if (texts.length === 0) return undefined;
  return { text: texts.join(' · '), more: [basis, from].filter(text => text !== undefined).join(' ') || undefined };
}

/** Whether all that happened to the batch up to an event could be read, so that its totals are right. */
function isRead({ unread, parent, events }: Batch, event: BatchEvent): boolean {
  if (!unread) return true;
  const first = events.findIndex(({ entry }) => entry.record.broken);
  return first > events.indexOf(event) && parent?.unread !== true;
}

/** Example: 'out 2026-01-11 19:00', 'lifted 2026-01-11 18:45 · 23.8 h' */
function soakHint({ entry, end, endedBy, length }: Soak): Shown {
  if (!end) return { text: 'no end recorded', more: undefined };
  const long = length && lengthText({ ...length, wallClock: false });
  const more = length?.wallClock ? 'By the wall clock: the journal has no “zone” record.' : undefined;
  const unit = factOf(entry.record, 'duration')?.value.unit;
  const isWritten = unit === 'h' || unit === 'min';
  const hours = long === undefined ? '' : ` · ${long}`;
  switch (endedBy) {
    case 'lift': return { text: `lifted ${printMoment(end)}${hours}`, more };
    case 'until': return { text: long ?? `out ${printMoment(end)}`, more };
    case 'next': return { text: `out by ${printMoment(end)} at the latest`, more: 'No “lift” recorded.' };
    default: return { text: `out ${printMoment(end)}${isWritten ? '' : hours}`, more };
  }
}

/**
 * With what is in the dish before it, where that does not stand on the line: it was poured together, or the line names
 * a bottle alone.
 *
 * Example: 'GA3 125 ppm · out 2026-01-11 19:00'
 */
function withDose(doses: readonly Dose[], shown: Shown | undefined): Shown | undefined {
  const mixed = doses.filter(({ parts, agent, ppm }) => (
    agent && ppm.ok && parts.some(({ isPoured, stock, fact }) => isPoured || (stock !== undefined && !fact.strength))));
  if (mixed.length === 0) return shown;
  const texts = [dosesText(mixed), ...(shown ? [shown.text] : [])];
  return { text: texts.join(' · '), more: shown?.more };
}

/**
 * Example: 'until 2026-05-02, day 63 of 90', '90 days, over since 2026-05-02 (2 days)', '78 of 90 days, ended
 * 2026-04-20'
 */
function stageHint(stage: Stage, { day: today }: Moment): Shown | undefined {
  const { start, end } = stage;
  const last = plannedEnd(stage);
  const planned = last === undefined ? undefined : last - start.day;
  const of = planned === undefined ? '' : ` of ${planned}`;
  if (end && end.day <= today) {
    const days = end.day - start.day;
    const length = planned === undefined || planned === days ? daysText(days) : `${days} of ${daysText(planned)}`;
    return { text: `${length}, ended ${isoOf(end.day)}`, more: undefined };
  }
  if (last !== undefined && planned !== undefined && last < today) {
    return { text: `${daysText(planned)}, over since ${isoOf(last)} (${daysText(today - last)})`, more: undefined };
  }
  const day = start.day <= today ? `day ${today - start.day}${of}` : undefined;
  const until = last === undefined ? undefined : `until ${isoOf(last)}`;
  const text = [until, day].filter(each => each !== undefined).join(', ');
  return text === '' ? undefined : { text, more: undefined };
}
