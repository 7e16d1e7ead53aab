/** Units as growers abbreviate and spell them, where the journal does not: what was meant, for a fix. */
import { spellingsOf, unitOf, type Dimension } from '../model/quantity.ts';
import { nearest } from './nearest.ts';

const meant: Readonly<Record<string, readonly string[]>> = {
  months: ['mo', 'mos', 'mon', 'mth', 'mths', 'mnth', 'mnths'], years: ['y', 'yr', 'yrs'], weeks: ['w'], h: ['hs'],
  C: ['deg', 'degs', 'degree', 'degrees', 'celsius', 'centigrade', 'oc', 'º', 'ºc', '°'], F: ['fahrenheit', 'of'],
  mg: ['mgs', 'mgr', 'milligram', 'milligrams'], g: ['gm', 'gms', 'gr', 'grs', 'gs'], mL: ['mls', 'cc', 'millilitre', 'millilitres'],
  '%': ['percent', 'pct'], seeds: ['sds', 's', 'sd'],
};

const byWord = new Map(Object.entries(meant).flatMap(([unit, words]) => words.map(word => [word, unit] as const)));

/** The unit or counting word that a word was probably meant for, of those that fit the place; undefined for none. */
export function unitMeantBy(word: string, spellings: readonly string[]): string | undefined {
  const known = byWord.get(word.toLowerCase().replace(/\.$/, ''));
  return known !== undefined && spellings.includes(known) ? known : nearest(word, spellings);
}

/** The dimension of the unit that a word was probably meant for; undefined where nothing is near. */
export function dimensionMeantBy(word: string, dimensions: readonly Dimension[]): Dimension | undefined {
  const near = unitMeantBy(word, dimensions.flatMap(spellingsOf));
  return near === undefined ? undefined : unitOf(near)?.dimension;
}
