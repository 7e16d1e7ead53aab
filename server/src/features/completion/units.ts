/** The unit behind a number, or the word that says what it counts. */
import type { Keyword } from '../../model/keywords.ts';
import type { Dimension, DurationUnit } from '../../model/quantity.ts';
import type { Span } from '../../model/record.ts';
import { taken } from '../../syntax/fact-types.ts';
import { isLasting } from '../../syntax/limits.ts';
import { counts, cuts } from './counted.ts';
import { likelyAmounts } from './likely-amounts.ts';
import { otherFacts, plantIn, type Scene } from './scene.ts';
import { seedsToGive } from './seed-numbers.ts';
import type { SpotOf } from './spot.ts';
import { strengthsFor } from './strengths.ts';
import type { Suggestion } from './suggestion.ts';

/** The usual units of each kind, the likeliest first. */
const units: Readonly<Record<Dimension, readonly string[]>> = {
  duration: ['h', 'days', 'weeks', 'months', 'min', 'years'], temperature: ['C', 'F'], volume: ['mL', 'L', 'uL'],
  strength: ['ppm', '%', 'mM', 'mg/L', 'g/L', 'uM'], mass: ['mg', 'g'], molarMass: ['g/mol'],
};

/** Of stages, and of what keeps: nobody says those by the hour. */
const daysFirst: readonly DurationUnit[] = ['days', 'weeks', 'months', 'years', 'h', 'min'];
const yearsFirst: readonly DurationUnit[] = ['years', 'months', 'weeks', 'days'];

const warmth: readonly Dimension[] = ['temperature'];

export function amounts(spot: SpotOf<'amount'>, scene: Scene): Suggestion[] {
  const { of, number, segment } = spot;
  if (of === 'part') return number === undefined ? seedsLeft(scene, segment) : counted(number, ['seeds']);
  if (of === 'substance') return behindName(spot, scene);
  if (of === 'fact') return alone(spot, scene);
  return number === undefined ? likelyAmounts(spot, scene) : withLikely(spot, scene, unitsOf(spot, number, scene));
}

/** What begins with the digits typed comes first. */
function withLikely(spot: SpotOf<'amount'>, scene: Scene, others: readonly Suggestion[]): Suggestion[] {
  const likely = likelyAmounts(spot, scene)
    .filter(({ label, detail }) => detail !== undefined && label.startsWith(spot.number ?? ''));
  return [...likely, ...others.filter(({ label }) => !likely.some(each => each.label === label))];
}

/** Behind the number in a fact that has a word of its own. */
function unitsOf({ of, has, name }: SpotOf<'amount'>, number: string, scene: Scene): Suggestion[] {
  switch (of) {
    case 'stage': return inStage(number, has);
    case 'keeps': return counted(number, yearsFirst);
    case 'purity': return counted(number, ['%']);
    case 'solubility': return counted(number, ['g/L', 'mg/L', '%']);
    case 'halved': return counted(number, ['times']);
    default: return measured(number, [dimensionTaken(name, scene)]);
  }
}

/** Powder is weighed. */
function dimensionTaken(id: string, { journal }: Scene): Dimension {
  return journal.solution(id)?.form === 'powder' ? 'mass' : 'volume';
}

/** A number that is a fact by itself. */
function alone({ keyword, number, segment }: SpotOf<'amount'>, scene: Scene): Suggestion[] {
  if (number === undefined) return [];
  if (keyword === 'count') return counts(number, segment, scene);
  if (keyword === 'cut') return cuts(number, segment, scene);
  if (keyword === 'limit') return ofLimit(number, scene);
  if (keyword === 'left') return measured(number, [dimensionTaken(scene.entry?.record.subject?.text ?? '', scene)]);
  if (isPair(number)) return taken(keyword).units.has('temperature') ? measured(number, warmth) : [];
  const written = new Set(otherFacts(scene, segment).map(({ type }) => type));
  const takes = taken(keyword);
  const words = [...takes.counts].filter(([word, type]) => word.endsWith('s') && !written.has(type)).map(([word]) => word);
  const dimensions = [...takes.units].filter(([, type]) => !written.has(type)).map(([dimension]) => dimension);
  const durations = isStaged(keyword) ? daysFirst : units.duration;
  return [...counted(number, words), ...measured(number, sorted(keyword, dimensions), durations)];
}

/** Seed that lies in the cold is said by the day, a soak by the hour. */
function sorted(keyword: Keyword, dimensions: readonly Dimension[]): Dimension[] {
  const first: Dimension = keyword === 'sow' || isStaged(keyword) ? 'temperature' : 'duration';
  return [...dimensions].sort((a, b) => Number(b === first) - Number(a === first));
}

function isStaged(keyword: Keyword): boolean {
  return keyword === 'chill' || keyword === 'warm';
}

function inStage(number: string, has: Dimension | undefined): Suggestion[] {
  const takesWarmth = has !== 'temperature';
  const takesTime = has !== 'duration' && !isPair(number);
  return measured(number, [...(takesWarmth ? warmth : []), ...(takesTime ? ['duration'] as const : [])], daysFirst);
}

function ofLimit(number: string, { entry }: Scene): Suggestion[] {
  const subject = entry?.record.subject?.text.toLowerCase() ?? '';
  if (!isLasting(subject)) return measured(number, ['strength']);
  return measured(number, ['duration'], subject === 'stock' ? yearsFirst : subject === 'count' ? daysFirst : units.duration);
}

function isPair(number: string): boolean {
  return number.includes('/');
}

function measured(
  number: string, dimensions: readonly Dimension[], durations: readonly string[] = units.duration,
): Suggestion[] {
  return counted(number, dimensions.flatMap(dimension => (dimension === 'duration' ? durations : units[dimension])));
}

function counted(number: string, words: readonly string[]): Suggestion[] {
  return words.map(word => ({ kind: 'number', label: `${number} ${number === '1' ? singular(word) : word}` }));
}

/** Of the words that stand behind a number; a unit has none. */
function singular(word: string): string {
  return /^[a-z]{3,}s$/.test(word) ? word.slice(0, -1) : word;
}

function behindName(spot: SpotOf<'amount'>, scene: Scene): Suggestion[] {
  const { keyword, name, number } = spot;
  const agent = scene.journal.agents.get(name);
  if (agent?.role === 'water') return [];
  if (keyword === 'powder') return number === undefined ? likelyAmounts(spot, scene) : measured(number, ['mass']);
  if (keyword === 'stock') return number === undefined ? likelyAmounts(spot, scene) : measured(number, ['mass', 'strength']);
  if (!agent) {
    const solution = scene.journal.solution(name);
    if (!solution) return [];
    if (number !== undefined) return withLikely(spot, scene, measured(number, [dimensionTaken(name, scene)]));
    const pinch: Suggestion = { kind: 'word', label: 'unmeasured', detail: 'a little powder of unknown strength' };
    return [...likelyAmounts(spot, scene), ...(solution.form === 'powder' ? [pinch] : [])];
  }
  const strengths = strengthsFor(agent, plantIn(scene), scene.journal)
    .map(({ text, from }): Suggestion => ({ kind: 'number', label: text, detail: from }));
  if (number !== undefined) return [...strengths.filter(({ label }) => label.startsWith(number)), ...measured(number, ['strength'])];
  return [...strengths, { kind: 'word', label: 'unmeasured', detail: 'a little powder of unknown strength' }];
}

function seedsLeft(scene: Scene, segment: Span): Suggestion[] {
  const left = seedsToGive(scene, segment);
  if (left === undefined) return ['half', 'about 24 seeds'].map(text => ({ kind: 'number', label: text, detail: 'not counted' }));
  return left > 0 ? counted(String(left), ['seeds']).map(each => ({ ...each, detail: 'all that is left' })) : [];
}
