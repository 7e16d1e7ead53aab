/** How many seeds and seedlings: those that are there to sow, to give out, to pot. */
import { counted } from '../../model/counted.ts';
import { factOf, type Span } from '../../model/record.ts';
import type { Keyword } from '../../model/keywords.ts';
import { seedsText } from '../../words/seeds.ts';
import { fact } from './fact-template.ts';
import { livedIn, othersOf, type Scene } from './scene.ts';
import type { Suggestion } from './suggestion.ts';

/** Seeds of a part where nothing says how many. Common practice, no source. */
const SIDE = 24;

const letters = Array.from({ length: 26 }, (_, n) => String.fromCharCode(65 + n));
const numbers = Array.from({ length: 100 }, (_, n) => String(n + 1));

/** Seeds that the parent still has to give out; undefined where that is not known. */
export function seedsToGive(scene: Scene, segment: Span): number | undefined {
  const lived = livedIn(scene);
  const left = lived?.event?.type === 'split' ? lived.event.left : lived?.batch.kept;
  const given = othersOf(scene, segment, 'part').reduce((sum, { n }) => sum + (n?.value ?? 0), 0);
  return left === undefined ? undefined : left - given;
}

/** How many, as a grower says it who did not count. */
export function estimates(seeds: number): Suggestion[] {
  const least = Math.max(1, Math.round(seeds * 0.8));
  return [`about ${seedsText(seeds)}`, `${least} to ${seedsText(Math.max(least + 1, Math.round(seeds * 1.2)))}`]
    .map(shape => ({ ...fact(shape), detail: 'not counted' }));
}

/** The next part: as many seeds as the one before it, or half of what is left; never more than that. */
export function part(scene: Scene, segment: Span): Suggestion[] {
  const others = othersOf(scene, segment, 'part');
  const made = livedIn(scene)?.batch.children.filter(({ made: { line } }) => line !== scene.line) ?? [];
  const taken = new Set([...made.map(({ path }) => path.slice(path.lastIndexOf('/') + 1)), ...others.map(({ name }) => name.text)]);
  const isNumbered = taken.size > 0 && [...taken].every(name => /^\d+$/.test(name));
  const name = (isNumbered ? numbers : letters).find(each => !taken.has(each));
  const left = seedsToGive(scene, segment) ?? Infinity;
  if (name === undefined || left < 1) return [];
  const wanted = others.at(-1)?.n?.value ?? made.at(-1)?.seeds ?? Math.min(SIDE, Math.ceil(left / 2));
  const seeds = Math.min(wanted, left);
  const counted: Suggestion = {
    kind: 'fact', label: `${name} ${seedsText(seeds)}`,
  };
  // Who counted the whole can count the parts; a heap that nobody counted is divided by eye.
  if (left !== Infinity) return [counted];
  const byEye = (what: string): Suggestion =>
    ({ kind: 'fact', label: `${name} ${what}`, detail: 'not counted' });
  return [counted, byEye('half'), byEye(`about ${seedsText(seeds)}`)];
}

/** All that are there; undefined where that is not known. */
export function seedsToSow(scene: Scene): Suggestion | undefined {
  const lived = livedIn(scene);
  const there = lived?.event?.type === 'sow' ? lived.event.available : lived?.batch.kept;
  return there === undefined || there < 1 ? undefined : { ...fact(seedsText(there)), detail: 'all that are left' };
}

/** For a `pot` what has germinated and was not potted before; for drops the seedlings that live. */
export function seedlings(keyword: Keyword, scene: Scene): Suggestion | undefined {
  const batch = livedIn(scene)?.batch;
  if (!batch) return undefined;
  const { germinated, died } = batch.totals;
  const potted = batch.events.filter(({ type, entry: { line } }) => type === 'pot' && line !== scene.line)
    .reduce((sum, { entry }) => sum + (factOf(entry.record, 'seedlings')?.n.value ?? 0), 0);
  const left = batch.events.reduce((sum, event) => (
    sum + (event.type === 'leave' && event.entry.line !== scene.line ? event.seedlings : 0)), 0);
  const there = keyword === 'pot' ? germinated - potted : germinated - died - left;
  if (there < 1) return undefined;
  const detail = keyword === 'pot' ? `at most ${there} more` : left > 0 ? 'germinated, less those that died or left' : 'germinated, less those that died';
  return { ...fact(counted(there, 'seedling')), detail };
}
