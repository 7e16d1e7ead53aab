/** Plans as `due` records: of a sowing in a regime, of a regime begun today, and back from a wanted day. */
import { recordLine, stageFacts, stageName } from '../../calendar/ask.ts';
import { scheduleRecords } from '../../calendar/backwards.ts';
import { stagesOf } from '../../calendar/regime-match.ts';
import { regimePlan, regimePlans } from '../../calendar/regimes.ts';
import { hasCome } from '../../calendar/standing.ts';
import { guideSoaks, ownLeafDays, startOf, when, type LeafDays } from '../../calendar/when.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Entry } from '../../journal/life.ts';
import { rootOf } from '../../journal/mentions.ts';
import type { Moment } from '../../journal/moment.ts';
import { isUndefined, type Undefined } from '../../measures/measured.ts';
import { counted } from '../../model/counted.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { factOf } from '../../model/record.ts';
import type { Position } from '../../text/line-store.ts';
import { lifeOf } from '../events.ts';
import { daysText } from '../../words/days.ts';
import { guideSoakText } from '../../words/schedules.ts';
import type { Action } from './action.ts';
import { editBelow } from './below.ts';

/**
 * On a `sow` in a regime the stages that are still to come; on a `regime` its stages as if it were begun today; on a
 * `due` to come of seed that is not sown yet, for each regime, what has to be begun when so that it has ended by that
 * day, with the soak of each guide for the plant, too; where the text of the reminder speaks of leaves, the days to a
 * first leaf that the own records have are added. On a `move` the stage that comes next, which may have begun with it.
 */
export function planActions(journal: Journal, file: string, { line: number }: Position, now: Moment): Action[] {
  const text = journal.files.get(file)?.text;
  const entry = text && number < text.lineCount ? journal.entryAt(text.at(number)) : undefined;
  switch (entry?.record.keyword) {
    case 'sow': return planOfSowing(journal, entry, now);
    case 'regime': return planFromToday(journal, entry, now);
    case 'due': return plansBack(journal, entry, now);
    case 'move': return stageOfMove(journal, entry, now);
    default: return [];
  }
}

function planOfSowing(journal: Journal, entry: Entry, now: Moment): Action[] {
  const batch = lifeOf(journal, entry)?.batch;
  const plan = batch && regimePlans(batch, now).find(({ sowing }) => sowing.line === entry.line);
  if (!batch || !plan || plan.cutShort) return [];
  const { regime, stages, end } = plan;
  const due = (day: Day, text: string) => dueRecord(batch.path, day, text);
  // The first stage begins with the sowing itself.
  const ahead = stages.filter(({ state, number, start }) => state === 'to come' && number > 0 && start !== undefined);
  const records = [
    ...ahead.map(stage => due(stage.start!, `${stageName(stage)}, regime ${regime}`)),
    ...(end !== undefined && end > now.day ? [due(end, `regime ${regime} ends`)] : []),
  ];
  return actionOf(journal, entry, `Write the plan of regime ${regime} for ${batch.path}`, records);
}

/** The record of the stage that comes next, for seed that was moved into the cold or out of it. */
function stageOfMove(journal: Journal, entry: Entry, now: Moment): Action[] {
  const batch = lifeOf(journal, entry)?.batch;
  const { moment } = entry;
  const plan = batch && moment && hasCome(moment, now) ? regimePlan(batch, now) : undefined;
  const { current, next, regime } = plan ?? {};
  const begun = current && (current.records.at(-1)?.start.day ?? current.start);
  if (!batch || !moment || !next || begun === undefined || moment.day <= begun) return [];
  const facts = stageFacts(next.temperature, next.duration);
  const record = recordLine({ keyword: next.stage, subject: batch.path, facts, timed: false }, moment);
  return actionOf(journal, entry, `Start ${stageName(next)} of regime ${regime!} with this move`, [record]);
}

function planFromToday(journal: Journal, entry: Entry, { day }: Moment): Action[] {
  const { record: { subject } } = entry;
  if (!subject || journal.definitionsOf(subject.text)[0]?.line !== entry.line) return [];
  const regime = subject.text;
  const { schedule } = when({
    stages: stagesOf(entry.record), fixed: { by: 'start', day }, soak: undefined, leaf: undefined, today: day,
  });
  if (isUndefined(schedule) || schedule.stages.length === 0) return [];
  return actionOf(journal, entry, `Write the plan of regime ${regime}, starting today`, [
    ...scheduleRecords(regime, schedule, regime, undefined), dueRecord(regime, schedule.end, `regime ${regime} ends`),
  ]);
}

function plansBack(journal: Journal, entry: Entry, now: Moment): Action[] {
  const { record, moment } = entry;
  const lived = lifeOf(journal, entry);
  if (!lived || !moment || hasCome(moment, now)) return [];
  const { batch, lot } = lived;
  if (batch.sowing || batch.closed || batch.children.length > 0) return [];
  const isLeaf = /\blea(?:f|ves)\b/i.test(factOf(record, 'text')?.value.text ?? '');
  const leaf = isLeaf ? ownLeafDays(journal, lot.plant) : undefined;
  // Where nobody knows how long leaves take, all that can be planned for is the end of the regime.
  const fixed = { by: leaf && !isUndefined(leaf) ? 'leaf' : 'end', day: moment.day } as const;
  const soaks = batch.soaks.length > 0 ? [] : guideSoaks(journal, lot.plant);
  return regimesOf(journal).flatMap(({ id, definition }) =>
    [undefined, ...soaks].flatMap((guided) => {
      const soak = guided?.soak;
      const { schedule } = when({ stages: stagesOf(definition.record), fixed, soak, leaf, today: now.day });
      if (isUndefined(schedule) || startOf(schedule) < now.day) return [];
      const begin = guided ? `${guideSoakText(guided)} from ${isoOf(startOf(schedule))}, sown` : 'sow';
      const title = `Plan back from ${isoOf(moment.day)} in regime ${id}: ${begin} by ${isoOf(schedule.sow)}${leafText(leaf)}`;
      return actionOf(journal, entry, title, scheduleRecords(batch.path, schedule, id, soak));
    }));
}

function leafText(leaf: LeafDays | Undefined | undefined): string {
  if (!leaf) return '';
  if (isUndefined(leaf)) return ', so that it ends then (days to a first leaf unknown)';
  const batches = leaf.own?.batches ?? 0;
  return ` (${daysText(leaf.days)} to a first leaf, from ${counted(batches, 'batch', 'batches')})`;
}

function regimesOf(journal: Journal): { id: string; definition: Entry }[] {
  return journal.definedIds().flatMap(id => {
    const definition = journal.definitionsOf(id).find(({ record }) => record.keyword === 'regime');
    return definition ? [{ id, definition }] : [];
  });
}

function dueRecord(subject: string, day: Day, facts: string): string {
  return recordLine({ keyword: 'due', subject, facts, timed: false }, { day, minutes: undefined });
}

/** What stands in the journal already is not written again. */
function actionOf(journal: Journal, entry: Entry, title: string, records: readonly string[]): Action[] {
  const known = new Set(journal.mentionsOf(rootOf(entry.record.subject!.text)).map(({ line }) => line.text.trim()));
  const missing = records.filter(record => !known.has(record));
  return missing.length === 0 ? [] : [{ title, edits: [editBelow(entry.line, missing)] }];
}
