/** What a record can be about: lots and batches first, the likeliest for its keyword at the top. */
import type { Journal } from '../../journal/journal.ts';
import { isBefore, type Moment } from '../../journal/moment.ts';
import { isUndefined } from '../../measures/measured.ts';
import { meaningOfKeyword, type EventMeaning } from '../../model/events.ts';
import { keywords, type Keyword, type SubjectKind } from '../../model/keywords.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { symbolOf } from '../symbols.ts';
import { germinatedOf } from '../../words/germination.ts';
import { ofText } from '../../words/shares.ts';
import { dosesText } from '../../words/soaks.ts';
import { stageProgressText } from '../../words/stages.ts';
import { openBatches, otherBatches, type BatchNow } from './batches.ts';
import { regimesOf, stocksOf } from './defined.ts';
import { dayOfScene, fits, fitsLower, type Scene } from './scene.ts';
import { stocks } from './substances.ts';
import { MOST, type Suggestion } from './suggestion.ts';
import { zones } from './zones.ts';

export function subjects(keyword: Keyword, scene: Scene): Suggestion[] {
  const kind: SubjectKind = keywords[keyword].subject;
  switch (kind) {
    case 'batch': return batches(keyword, scene).map(suggestionOf(scene));
    case 'any': {
      const found = batches(keyword, scene).map(suggestionOf(scene));
      return found.length < MOST ? [...found, ...others(scene)] : found;
    }
    case 'stock': return stocks(scene, keyword).map(({ kind, label, detail }) => ({ kind, label, ...(detail && { detail }) }));
    case 'limited': return limited(scene);
    case 'zone': return zones(scene);
    default: return [];
  }
}

/** The batches that what is typed fits, the likeliest first. Closed ones only where something is typed. */
export function batches(keyword: Keyword, scene: Scene, most = MOST): BatchNow[] {
  const { journal, now } = scene;
  const wanted = scene.typed.toLowerCase();
  const fitting = (all: readonly BatchNow[]) => (wanted === '' ? all : all.filter(({ find }) => fitsLower(find, wanted)));
  const open = likeliest(keyword, fitting(openBatches(journal, now.day)), dayOfScene(scene), most);
  return wanted === '' ? open : [...open, ...fitting(otherBatches(journal, now.day)).slice(0, most - open.length)];
}

/** Those that a record of a keyword on a day is about most likely; of what is as likely the first. */
export function likeliest(keyword: Keyword, batches: readonly BatchNow[], day: Day, most: number): BatchNow[] {
  const byRank: Readonly<Record<Rank, BatchNow[]>> = { 0: [], 1: [], 2: [] };
  const rank = ranks[meaningOfKeyword(keyword)?.likeliest ?? 'any'];
  for (const each of batches) {
    if (byRank[0].length === most) break;
    byRank[rank(each, day)].push(each);
  }
  return [...byRank[0], ...byRank[1], ...byRank[2]].slice(0, most);
}

/** How likely a record of a keyword is about a batch: 0 is likeliest. */
type Rank = 0 | 1 | 2;

const ranks: Readonly<Record<EventMeaning['likeliest'], (batch: BatchNow, day: Day) => Rank>> = {
  any: () => 0,
  'in a soak': ({ soaking }) => (soaking ? 0 : 1),
  unsown: ({ standing: { sowing, totals }, batch: { soaks } }) => (
    sowing || totals.germinated > 0 ? 2 : soaks.length > 0 ? 1 : 0),
  'ready to sow': ({ standing, soaking, batch }) => (standing.sowing ? 2 : soaking || batch.soaks.length > 0 ? 0 : 1),
  'in medium': ({ standing: { sowing }, batch: { soaks } }) => (sowing || soaks.length > 0 ? 0 : 1),
  'to count': ({ counted, standing: { past } }, day) => {
    if (!counted) return 2;
    return past.some(({ type, entry }) => type === 'count' && entry.moment.day === day) ? 1 : 0;
  },
  sown: ({ standing: { sowing } }) => (sowing ? 0 : 1),
  germinated: ({ standing: { totals } }) => (totals.germinated > totals.died ? 0 : 1),
  undivided: ({ standing, batch }) => (standing.sowing || batch.children.length > 0 ? 1 : 0),
};

/**
 * Open batches that lie in no soak, each with its plant and where it stands: first those of the lot in hand, if they
 * are neither sown nor begun to germinate, then the likeliest.
 */
export function batchesToSoak(journal: Journal, now: Moment, lot: string | undefined): Suggestion[] {
  const free = openBatches(journal, now.day).filter(({ soaking }) => !soaking);
  const likely = likeliest('soak', free, now.day, MOST);
  const isInHand = (each: BatchNow) => each.lot.id === lot && ranks.unsown(each, now.day) < 2;
  return [...likely.filter(isInHand), ...likely.filter(each => !isInHand(each))].map(suggestionOf({ now }));
}

function suggestionOf({ now: { day } }: Pick<Scene, 'now'>): (batch: BatchNow) => Suggestion {
  return each => ({
    kind: each.batch.parent ? 'batch' : 'lot', label: each.batch.path,
    find: [each.batch.path, each.lot.plant].filter(text => text !== undefined).join(' '),
    detail: [each.lot.plant, stateText(each, day)].filter(text => text).join(' · '),
  });
}

/**
 * The state of a batch in few words.
 *
 * Example: 'sown, day 12 · 3 of 24'
 */
function stateText({ batch, standing, soaking, open }: BatchNow, day: number): string {
  const { closed, givenOut, past, sowing } = standing;
  if (closed) return `closed ${isoOf(closed.entry.moment.day)}`;
  if (givenOut) return 'all given out';
  const doses = batch.soaks.at(-1)?.doses ?? [];
  if (soaking) return doses.length === 0 ? 'in a soak' : `in ${dosesText(doses)}`;
  const now = { day, minutes: undefined };
  const stage = batch.stages.find(({ start, end }) => start.day <= day && (!end || isBefore(now, end)));
  const share = germinatedOf(batch);
  const number = sowing && batch.origin ? `sown, day ${day - batch.origin.moment.day}` : undefined;
  const texts = [
    stage ? stageProgressText(stage, day) : number,
    past.some(({ type }) => type === 'count') && !isUndefined(share) ? `${share.x} of ${ofText(share.n)}` : undefined,
    open ? undefined : 'nothing left to come',
  ].filter(text => text !== undefined);
  return texts.length > 0 ? texts.join(' · ') : batch.soaks.length > 0 ? 'soaked' : 'not sown';
}

/** Stocks and regimes, with what the outline says of them. */
function others(scene: Scene): Suggestion[] {
  const { journal } = scene;
  const defined = [...stocksOf(journal).map(({ entry }) => entry), ...regimesOf(journal)];
  return defined.filter(({ record }) => fits(scene, record.subject?.text ?? '')).flatMap(({ record }): Suggestion[] => {
    const symbol = symbolOf(journal, record);
    if (symbol?.kind !== 'stock' && symbol?.kind !== 'regime') return [];
    return [{ kind: symbol.kind, label: symbol.name, ...(symbol.detail && { detail: symbol.detail }) }];
  });
}

/** What a limit can be for. */
function limited(scene: Scene): Suggestion[] {
  const words: Suggestion[] = [
    { kind: 'word', label: 'soak', detail: 'the longest soak' },
    { kind: 'word', label: 'stock', detail: 'how long a stock keeps' },
    { kind: 'word', label: 'count', detail: 'the longest time between two counts' },
  ];
  const agents = [...scene.journal.agents.values()].filter(({ role }) => role !== 'water')
    .map(({ word, name, remark }): Suggestion => ({ kind: 'agent', label: word, detail: remark ?? name }));
  return [...words, ...agents].filter(({ label }) => fits(scene, label));
}
