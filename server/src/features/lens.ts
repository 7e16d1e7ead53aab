/** What stands above the record of a lot: how its batches do, what is due, the way to the comparison. */
import { dueOfBatch, type Due, type DueKind } from '../calendar/due-sources.ts';
import { standingOf } from '../calendar/standing.ts';
import type { Journal } from '../journal/journal.ts';
import { countsOf, isUsed, type Batch, type Lot } from '../journal/life.ts';
import type { Moment } from '../journal/moment.ts';
import { isUndefined } from '../measures/measured.ts';
import type { Day } from '../model/day.ts';
import { placeOf, type Place } from './place.ts';
import { trialOf } from '../trials/lot-trial.ts';
import { agoText } from '../words/days.ts';
import { germinatedOf } from '../words/germination.ts';
import { openText, usedBatches, verdictTexts } from '../words/lot-line.ts';
import { shareText } from '../words/shares.ts';
import { groupLabel } from '../words/trials.ts';

export interface Lens {
  readonly place: Place;
  readonly lot: string;
  /** `compare`: two batches at least were counted. `advise`: nothing was done to the seed yet. */
  readonly about: 'state' | 'shares' | 'compare' | 'advise';
}

/** Batches shown one by one. */
const MOST = 4;
/** A treatment in more signs than this is left to the hover. */
const LONGEST_LABEL = 32;
/** Today and tomorrow: what comes later is on the due list. */
const AHEAD = 2;

/**
 * One to three for each lot that a file defines; their titles are worked out only when they come into view. A line may
 * be longer than the editor is wide: what one looks for stands first, the shares of all batches last.
 */
export function lensesOf(journal: Journal, file: string): Lens[] {
  const text = journal.files.get(file)?.text;
  const lenses: Lens[] = [];
  for (const line of text ?? []) {
    const { record } = line.content;
    if (record?.keyword !== 'lot' || !record.subject) continue;
    const lot = journal.lot(record.subject.text);
    if (lot?.definition.line !== line) continue;
    const place = placeOf(line, record.keywordSpan);
    lenses.push(...aboutsOf(lot).map(about => ({ place, lot: lot.id, about })));
  }
  return lenses;
}

function aboutsOf(lot: Lot): Lens['about'][] {
  const batches = [...lot.batches.values()];
  return [
    ...batches.filter(isCounted).length > 1 ? ['compare' as const] : [],
    batches.some(isUsed) ? 'state' : 'advise',
    ...usedBatches(lot).some(isCounted) ? ['shares' as const] : [],
  ];
}

function isCounted(batch: Batch): boolean {
  return countsOf(batch).length > 0;
}

/**
 * Undefined for a lot that is gone.
 *
 * Example: '2 of 2 open · cannot tell yet · count A due 3 days ago', and of its shares
 * 'GA3 500 ppm 24 h (A) 3 of 24 = 12.5 % · no soak (B) 0 of 24 = 0 %'
 */
export function lensTitle(journal: Journal, { lot: id, about }: Pick<Lens, 'lot' | 'about'>, now: Moment): string | undefined {
  const lot = journal.lot(id);
  if (!lot) return undefined;
  switch (about) {
    case 'compare': return 'compare';
    case 'advise': return 'what to do with it';
    case 'state': return stateTitle(journal, lot, now);
    case 'shares': return sharesTitle(lot, now.day);
  }
}

function stateTitle(journal: Journal, lot: Lot, now: Moment): string {
  const batches = usedBatches(lot);
  return [
    openText(batches, now),
    ...verdictTexts(lot, now.day),
    batches.some(({ unread }) => unread) ? 'a record with an error is left out' : undefined,
    dueText(journal, lot, now),
  ].filter(text => text !== undefined).join(' · ');
}

function sharesTitle(lot: Lot, today: Day): string {
  const labels = labelsOf(lot, today);
  const counted = usedBatches(lot).filter(isCounted).map(batch => countedText(lot, batch, labels.get(batch)));
  const more = counted.length - MOST;
  return [...counted.slice(0, MOST), ...more > 0 ? [`${more} more`] : []].join(' · ');
}

/** A batch by what follows its lot's id; what stayed of a divided lot is `rest`. */
function nameIn({ id, batches }: Lot, path: string): string {
  return path === id ? (batches.size > 1 ? 'rest' : '') : path.slice(id.length + 1);
}

/** What was done to the seed of each batch, where that tells batches of the lot apart and is short. */
function labelsOf(lot: Lot, today: Day): ReadonlyMap<Batch, string> {
  const { groups } = trialOf(lot, today);
  const labels = groups.map(groupLabel);
  if (new Set(labels).size < 2) return new Map();
  return new Map(groups.flatMap(({ batches }, i) =>
    (labels[i]!.length > LONGEST_LABEL ? [] : batches
      // What was treated late is counted with what it was before.
      .filter(({ endedBy }) => endedBy?.type !== 'soak' && endedBy?.type !== 'apply')
      .map(({ batch }) => [batch, labels[i]!] as const))));
}

function countedText(lot: Lot, batch: Batch, label: string | undefined): string {
  const share = germinatedOf(batch);
  const text = isUndefined(share) ? `${batch.totals.germinated} germinated` : shareText(share.x, share.n);
  const name = nameIn(lot, batch.path);
  return `${label === undefined ? name : `${label} (${name})`} ${text}`.trim();
}

const asks: Readonly<Record<DueKind, string>> = {
  soak: 'lift', stage: 'end of stage', count: 'count', judge: 'judge', stock: 'stock', reminder: 'reminder', ahead: 'plan',
};

/** The first thing that is due by tomorrow, with how many more there are. */
function dueText(journal: Journal, lot: Lot, now: Moment): string | undefined {
  const found = [...lot.batches.values()].flatMap(batch => [...dueOfBatch(journal, lot, standingOf(batch, now), now)])
    .filter(({ at }) => at.day - now.day < AHEAD)
    .sort((a, b) => a.at.day - b.at.day || (a.at.minutes ?? 0) - (b.at.minutes ?? 0));
  const [first] = found;
  if (!first) return undefined;
  const same = found.filter(({ kind, at }) => kind === first.kind && at.day === first.at.day);
  const rest = found.length - same.length;
  return `${namesOf(lot, first.kind, same)} due ${agoText(first.at.day, now.day)}${rest > 0 ? `, ${rest} more` : ''}`;
}

function namesOf(lot: Lot, kind: DueKind, found: readonly Due[]): string {
  const names = found.slice(0, MOST).map(({ id }) => nameIn(lot, id)).filter(name => name !== '');
  return `${[asks[kind], names.join(', ')].filter(text => text !== '').join(' ')}${found.length > MOST ? ' …' : ''}`;
}
