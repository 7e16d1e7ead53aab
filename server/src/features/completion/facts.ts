/** The facts that a record still lacks, those that it needs first. */
import type { Journal } from '../../journal/journal.ts';
import type { Limit, Limits } from '../../journal/limits.ts';
import { after, printMoment, type Moment } from '../../journal/moment.ts';
import { keywords, type FactUse, type Keyword } from '../../model/keywords.ts';
import { printQuantity, type Duration } from '../../model/quantity.ts';
import { dormancies, type FactType } from '../../model/record.ts';
import { isLasting } from '../../syntax/limits.ts';
import { counts, cuts } from './counted.ts';
import { fact } from './fact-template.ts';
import { keepingIn, madeUpTo, purities } from './likely-amounts.ts';
import { nextStage } from './next-stage.ts';
import { olderOfPlant } from './older-lots.ts';
import { places } from './places.ts';
import { otherFacts, othersOf, plantIn, type Scene } from './scene.ts';
import { estimates, part, seedlings, seedsToSow } from './seed-numbers.ts';
import { quoted, seenTexts } from './seen.ts';
import { dormancyWords, judgeDays, regimes } from './values.ts';
import type { SpotOf } from './spot.ts';
import { stocks, substances } from './substances.ts';
import type { Suggestion } from './suggestion.ts';
import { choice, type Template } from './template.ts';

/** Choices beyond these are found behind the word. */
const CHOICES = 10;

export function facts({ keyword, segment }: SpotOf<'fact'>, scene: Scene): Suggestion[] {
  const written = new Set(otherFacts(scene, segment).map(({ type }) => type));
  const uses = keywords[keyword].facts.filter((use: FactUse) => use.many === true || !written.has(use.type));
  const isNeeded = ({ required, type, unless }: FactUse) =>
    required === true && !written.has(type) && !(unless && written.has(unless));
  const seen = new Set<string>();
  return [...uses].sort((a, b) => Number(isNeeded(b)) - Number(isNeeded(a)))
    .filter(({ type }) => !isSettled(keyword, type, written, scene) && !isOtherLimit(keyword, type, scene))
    .flatMap(use => {
      const [first, ...others] = suggestionsFor(use, keyword, scene, segment);
      // Of several to choose from none is needed more than the others.
      if (!first || others.length > 0 || !isNeeded(use)) return first ? [first, ...others] : [];
      return [{ ...first, detail: first.detail ?? 'needed' }];
    })
    .filter(({ label }) => !seen.has(label) && seen.add(label));
}

/** A soak ends in one way, and what is left has one unit. */
function isSettled(
  keyword: Keyword, type: FactType, written: ReadonlySet<FactType>, { entry, journal }: Scene,
): boolean {
  const other = { duration: 'until', until: 'duration' } as const;
  if (keyword === 'left') return type !== restType(entry?.record.subject?.text, journal) || written.size > 0;
  return keyword === 'soak' && (type === 'duration' || type === 'until') && written.has(other[type]);
}

/** Powder is weighed, a liquid is measured. */
function restType(id: string | undefined, journal: Journal): 'mass' | 'volume' {
  return id !== undefined && journal.solution(id)?.form === 'powder' ? 'mass' : 'volume';
}

/** How long a stock keeps is of no plant. */
function isOfStocks({ entry }: Scene): boolean {
  return entry?.record.subject?.text.toLowerCase() === 'stock';
}

/** The limit of an agent is a strength, any other is a time. */
function isOtherLimit(keyword: Keyword, type: FactType, { entry }: Scene): boolean {
  if (keyword !== 'limit') return false;
  return type === (isLasting(entry?.record.subject?.text ?? '') ? 'strength' : 'duration');
}

function suggestionsFor(use: FactUse, keyword: Keyword, scene: Scene, segment: SpotOf<'fact'>['segment']): Suggestion[] {
  const { type, shape } = use;
  switch (type) {
    case 'text': case 'path': return [];
    case 'count': return countFacts(scene, segment);
    case 'cut': return cuts(undefined, segment, scene);
    case 'substance': return substances(keyword, segment, scene);
    case 'part': return part(scene, segment);
    case 'seeds': return seeds(keyword, shape, scene);
    case 'seedlings': return [seedlings(keyword, scene) ?? fact(shape)];
    case 'to': return [likely('to', madeUpTo(scene), shape)];
    case 'purity': return [likely('purity', purities(scene), shape)];
    case 'keeps': {
      const { value, isDefault } = keepingIn(scene);
      return [{ ...fact(`keeps ${printQuantity(value)}`), detail: isDefault ? 'common practice' : 'the limit' }];
    }
    case 'until': return until(scene);
    case 'on': return judgeDays.map(day => fact(`on ${day}`));
    case 'strength': return [limited(scene) ?? fact(shape)];
    case 'duration': case 'temperature': return keyword === 'limit' ? [limited(scene) ?? fact(shape)] : [...durations(type, keyword, scene), fact(shape)];
    case 'at': return [led('at', choicesOf(places(scene).map(({ label }) => quoted(label)), shape))];
    case 'from': case 'stored': case 'in': return [led(type, choicesOf(seenTexts(scene, type).map(quoted), shape))];
    case 'whither': return [led(shape.split(' ')[0]!, choicesOf(seenTexts(scene, type).map(quoted), shape))];
    case 'for': return isOfStocks(scene) ? [] : [led(type, choicesOf(seenTexts(scene, 'genus'), shape))];
    case 'source': return [led('source', choice(seenTexts(scene, type).slice(0, CHOICES).map(text => `"${text}"`), ''))];
    // A day that nobody wrote must not come into the record with a key: without one the record is a mistake.
    case 'collected': case 'bought': return [led(type, { blank: '' })];
    case 'look': return [led('look again', { blank: '' })];
    case 'dormancy': return [{ ...led('dormancy', choice(dormancies, 'PD')), more: dormancyWords }];
    case 'regime': return regimes(scene).length === 0 ? [] : [led('regime', choice(regimes(scene).map(({ label }) => label), ''))];
    case 'replaces': {
      const ids = olderOfPlant(scene);
      return ids.length === 0 ? [] : [led('replaces', choice(ids.slice(0, CHOICES), ''))];
    }
    case 'draw': {
      // The packets that a stock is made from stand among the agents.
      if (keyword !== 'dilute') return [];
      const labels = stocks({ ...scene, typed: '' }, keyword).map(({ label }) => label);
      return [led('from', choice(labels, 'G1'), [' ', { blank: '10' }, ' mL'])];
    }
    case 'stage': return [fact(shape), fact('warm 20 C 60 days')];
    default: return [fact(shape)];
  }
}

/** What is counted can be counted again; of what nobody counted, an estimate is as good. */
function seeds(keyword: Keyword, shape: string, scene: Scene): Suggestion[] {
  const there = keyword === 'sow' ? seedsToSow(scene) : undefined;
  if (there) return [there];
  return keyword === 'lot' || keyword === 'sow' ? [fact(shape), ...estimates(parseInt(shape, 10))] : [fact(shape)];
}

function led(word: string, blank: Template[number], rest: Template = []): Suggestion {
  return { kind: 'fact', label: `${word} …`, find: word, write: [`${word} `, blank, ...rest] };
}

/** The first of the amounts behind its word, or the example. */
function likely(word: string, [first]: readonly Suggestion[], shape: string): Suggestion {
  if (!first) return fact(shape);
  const { label, detail } = first;
  return { ...fact(`${word} ${label}`), ...(detail !== undefined && { detail }) };
}

/** On a `limit` what holds without it. */
function limited({ entry, journal: { agents, limits } }: Scene): Suggestion | undefined {
  const word = entry?.record.subject?.text ?? '';
  const agent = agents.get(word);
  const limit = agent ? limits.strength(agent, undefined) : limitOf(word.toLowerCase(), limits);
  return limit && { ...fact(printQuantity(limit.value)), detail: limit.origin };
}

function limitOf(word: string, limits: Limits): Limit<Duration> | undefined {
  switch (word) {
    case 'soak': case 'count': return limits[word](undefined);
    case 'stock': return limits.stock;
    default: return undefined;
  }
}

/** One of those, or what the example has behind its first word. */
function choicesOf(texts: readonly string[], shape: string): Template[number] {
  return choice(texts.slice(0, CHOICES), shape.slice(shape.indexOf(' ') + 1));
}

function countFacts(scene: Scene, segment: SpotOf<'fact'>['segment']): Suggestion[] {
  const stages = counts(undefined, segment, scene);
  const isFirst = othersOf(scene, segment, 'count').length === 0;
  return isFirst ? [...stages, { kind: 'number', label: '0', detail: 'nothing new', more: 'It is worth recording a day on which nothing had come up.' }] : stages;
}

/** The end of a soak that lasts as long as the limit allows. */
function until(scene: Scene): Suggestion[] {
  const start: Moment | undefined = scene.entry?.moment;
  if (!start) return [];
  const limit = scene.journal.limits.soak(plantIn(scene));
  const end = printMoment(after(start, limit.value, scene.journal.zone));
  return [{ kind: 'fact', label: `until ${end}`, detail: `${printQuantity(limit.value)}, the limit` }];
}

/** What the grower's books, the limits and the regime say of how long and how warm. */
function durations(type: 'duration' | 'temperature', keyword: Keyword, scene: Scene): Suggestion[] {
  if (type === 'temperature') return keyword === 'chill' || keyword === 'warm' ? nextStage(keyword, scene) : [];
  const plant = plantIn(scene);
  const guides = scene.journal.guides.of(plant);
  if (keyword === 'soak') {
    const { value } = scene.journal.limits.soak(plant);
    return [
      ...guides.flatMap(({ soak, plant: of }) => (soak ? [{ ...fact(printQuantity(soak)), detail: `guide for ${of}` }] : [])),
      { ...fact(printQuantity(value)), detail: 'the limit' },
    ];
  }
  return guides.flatMap(({ stages, plant: of }) => stages.flatMap(({ stage, duration }) =>
    (stage === keyword && duration ? [{ ...fact(printQuantity(duration.value)), detail: `guide for ${of}` }] : [])));
}
