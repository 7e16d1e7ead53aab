/** The unit behind a number, or the word that says what it counts. */
import type { Keyword } from '../../model/keywords.ts';
import type { Dimension } from '../../model/quantity.ts';
import { taken } from '../../syntax/fact-types.ts';
import { isLasting } from '../../syntax/limits.ts';
import { counts, cuts } from './counted.ts';
import { livedIn, otherFacts, othersOf, plantIn, type Scene } from './scene.ts';
import type { SpotOf } from './spot.ts';
import { strengthsFor } from './strengths.ts';
import type { Suggestion } from './suggestion.ts';

/** The usual units of each kind, the likeliest first. */
const units: Readonly<Record<Dimension, readonly string[]>> = {
  duration: ['h', 'days', 'weeks', 'months', 'min', 'years'], temperature: ['C', 'F'], volume: ['mL', 'L', 'uL'],
  strength: ['ppm', '%', 'mM', 'mg/L', 'g/L', 'uM'], mass: ['mg', 'g'], molarMass: ['g/mol'],
};

const warmth: readonly Dimension[] = ['temperature'];

export function amounts(spot: SpotOf<'amount'>, scene: Scene): Suggestion[] {
  const { keyword, of, number, segment } = spot;
  switch (of) {
    case 'part': return number === undefined ? seedsLeft(scene) : counted(number, ['seeds']);
    case 'draw': return number === undefined ? [] : measured(number, ['volume']);
    case 'stage': return number === undefined ? [] : measured(number, isPair(number) ? warmth : ['duration', ...warmth]);
    case 'substance': return behindName(spot, scene);
    case 'fact': break;
  }
  if (number === undefined) return [];
  if (keyword === 'count') return counts(number, segment, scene);
  if (keyword === 'cut') return cuts(number, segment, scene);
  if (keyword === 'limit') return measured(number, [isLasting(scene.entry?.record.subject?.text ?? '') ? 'duration' : 'strength']);
  if (isPair(number)) return taken(keyword).units.has('temperature') ? measured(number, warmth) : [];
  const written = new Set(otherFacts(scene, segment).map(({ type }) => type));
  const takes = taken(keyword);
  const words = [...takes.counts].filter(([word, type]) => word.endsWith('s') && !written.has(type)).map(([word]) => word);
  const dimensions = [...takes.units].filter(([, type]) => !written.has(type)).map(([dimension]) => dimension);
  return [...counted(number, words), ...measured(number, sorted(keyword, dimensions))];
}

/** Seed that lies in the cold is said by the day, a soak by the hour. */
function sorted(keyword: Keyword, dimensions: readonly Dimension[]): Dimension[] {
  const first: Dimension = keyword === 'sow' || keyword === 'chill' || keyword === 'warm' ? 'temperature' : 'duration';
  return [...dimensions].sort((a, b) => Number(b === first) - Number(a === first));
}

function isPair(number: string): boolean {
  return number.includes('/');
}

function measured(number: string, dimensions: readonly Dimension[]): Suggestion[] {
  return counted(number, dimensions.flatMap(dimension => units[dimension]));
}

function counted(number: string, words: readonly string[]): Suggestion[] {
  return words.map(word => ({ kind: 'number', label: `${number} ${word}` }));
}

function behindName({ keyword, name, number }: SpotOf<'amount'>, scene: Scene): Suggestion[] {
  const agent = scene.journal.agents.get(name);
  if (agent?.role === 'water') return [];
  if (keyword === 'stock') return number === undefined ? [] : measured(number, ['mass', 'strength']);
  if (!agent) return number === undefined || !scene.journal.solution(name) ? [] : measured(number, ['volume']);
  const strengths = strengthsFor(agent, plantIn(scene), scene.journal)
    .map(({ text, from }): Suggestion => ({ kind: 'number', label: text, detail: from }));
  if (number !== undefined) return [...strengths.filter(({ label }) => label.startsWith(number)), ...measured(number, ['strength'])];
  return [...strengths, { kind: 'word', label: 'unmeasured', detail: 'a little powder; nobody knows its strength' }];
}

/** Seeds that the parent still has to give out. */
function seedsLeft(scene: Scene): Suggestion[] {
  const lived = livedIn(scene);
  const left = lived?.event?.type === 'split' ? lived.event.left : lived?.batch.kept;
  const given = othersOf(scene, { start: -1, end: -1 }, 'part').reduce((sum, { n }) => sum + n.value, 0);
  const rest = left === undefined ? undefined : left - given;
  return rest !== undefined && rest > 0 ? counted(String(rest), ['seeds']).map(each => ({ ...each, detail: 'all that is left' })) : [];
}
