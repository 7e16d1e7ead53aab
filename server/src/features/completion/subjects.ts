/** What a record can be about: lots and batches first, the likeliest for its keyword at the top. */
import { isBefore } from '../../journal/moment.ts';
import { isUndefined } from '../../measures/measured.ts';
import { keywords, type Keyword, type SubjectKind } from '../../model/keywords.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { symbolOf } from '../symbols.ts';
import { germinatedOf } from '../words/germination.ts';
import { dosesText } from '../words/soaks.ts';
import { stageProgressText } from '../words/stages.ts';
import { openBatches, otherBatches, type BatchNow } from './batches.ts';
import { best } from './best.ts';
import { dayOfScene, fits, fitsLower, type Scene } from './scene.ts';
import { MOST, type Suggestion } from './suggestion.ts';
import { zones } from './zones.ts';

export function subjects(keyword: Keyword, scene: Scene): Suggestion[] {
  const kind: SubjectKind = keywords[keyword].subject;
  switch (kind) {
    case 'batch': return batches(keyword, scene).map(suggestionOf(scene));
    case 'any': return [...batches(keyword, scene).map(suggestionOf(scene)), ...others(scene)];
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
  const closed = wanted === '' ? [] : best(fitting(otherBatches(journal, now.day)), most - open.length, newestFirst);
  return [...open, ...closed];
}

/** Those that a record of a keyword on a day is about most likely. */
export function likeliest(keyword: Keyword, open: readonly BatchNow[], day: Day, most: number): BatchNow[] {
  const rank = ranks[keyword] ?? (() => 0);
  const ranked = open.map((each): Ranked => ({ each, rank: rank(each, day) }));
  return best(ranked, most, (a, b) => a.rank - b.rank || newestFirst(a.each, b.each)).map(({ each }) => each);
}

interface Ranked {
  readonly each: BatchNow;
  readonly rank: number;
}

/** By the day of the last record, then by the path. */
export function newestFirst(a: BatchNow, b: BatchNow): number {
  return b.last - a.last || (a.key < b.key ? -1 : 1);
}

/** How likely a record of a keyword is about a batch: 0 is likeliest. */
const ranks: Partial<Record<Keyword, (batch: BatchNow, day: number) => number>> = {
  lift: ({ soaking }) => (soaking ? 0 : 1),
  soak: unsown, scarify: unsown,
  sow: ({ standing, soaking, batch }) => (standing.sowing ? 2 : soaking || batch.soaks.length > 0 ? 0 : 1),
  chill: inMedium, warm: inMedium,
  count: ({ counted, standing: { past } }, day) => {
    if (!counted) return 2;
    return past.some(({ type, entry }) => type === 'count' && entry.moment.day === day) ? 1 : 0;
  },
  cut: sown, discard: sown, pot: germinated, apply: germinated,
  split: ({ standing, batch }) => (standing.sowing || batch.children.length > 0 ? 1 : 0),
};

function unsown({ standing: { sowing }, batch: { soaks } }: BatchNow): number {
  return sowing ? 2 : soaks.length > 0 ? 1 : 0;
}

function inMedium({ standing: { sowing }, batch: { soaks } }: BatchNow): number {
  return sowing || soaks.length > 0 ? 0 : 1;
}

function sown({ standing: { sowing } }: BatchNow): number {
  return sowing ? 0 : 1;
}

function germinated({ standing: { totals } }: BatchNow): number {
  return totals.germinated > totals.died ? 0 : 1;
}

function suggestionOf({ now: { day } }: Scene): (batch: BatchNow) => Suggestion {
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
    past.some(({ type }) => type === 'count') && !isUndefined(share) ? `${share.x} of ${share.n}` : undefined,
    open ? undefined : 'nothing left to come',
  ].filter(text => text !== undefined);
  return texts.length > 0 ? texts.join(' · ') : batch.soaks.length > 0 ? 'soaked' : 'not sown';
}

/** Stocks and regimes, with what the outline says of them. */
function others(scene: Scene): Suggestion[] {
  const { journal } = scene;
  return journal.definedIds().flatMap((id): Suggestion[] => {
    if (!fits(scene, id) || journal.lot(id)) return [];
    const [definition] = journal.definitionsOf(id);
    const symbol = definition && symbolOf(journal, definition.record);
    if (symbol?.kind !== 'stock' && symbol?.kind !== 'regime') return [];
    return [{ kind: symbol.kind, label: id, ...(symbol.detail && { detail: symbol.detail }) }];
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
