/** Slips with numbers: without a word, with the wrong one, in a form that is not read. */
import { keywords } from '../model/keywords.ts';
import { factBefore, meant, offered, type Diagnose } from './diagnosis.ts';
import { beginsFact, type Taken } from './fact-types.ts';
import type { Amount } from './grammar.ts';
import { listed } from './nearest.ts';
import { numeralOf } from './numbers.ts';
import { dimensionOf, meantTemperatures } from './quantities.ts';
import { unitMeantBy } from './other-units.ts';
import { insertion, replacement, shown } from './reader.ts';

/** A strength or a mass of nothing: `500 ppm`, `GA3, 500 ppm`, `500 ppm GA3`. */
export const agentless: Diagnose = (place, pieces, whole) => {
  const { reader, takes } = place;
  const [first, second] = pieces;
  if (takes.named !== 'substance' || first?.kind !== 'amount') return undefined;
  const dimension = dimensionOf(first);
  if (dimension !== 'strength' && dimension !== 'mass') return undefined;
  const amount = reader.slice(first);
  const pure = takes.leads.has('purity') && first.unit?.image === '%' && (!second || (second.kind === 'word' && /^pur/i.test(second.text)));
  if (pure) return meant(whole, `purity ${amount}`);
  if (second?.kind === 'word' && pieces.length === 2) return meant(whole, `${second.text} ${amount}`);
  const before = factBefore(place, whole)?.pieces ?? [];
  const [name] = before;
  const alone = before.length === 1 && name?.kind === 'word' ? name : undefined;
  return {
    code: 'missing-agent', span: first, suggestion: `${alone ? shown(alone.text) : 'GA3'} ${shown(amount)}`,
    fixes: alone ? [{ title: 'Take out the comma before it', start: alone.end, end: first.start, text: ' ' }] : [],
  };
};

/** Where it has one. */
export const ABOUT_SEEDS = 'If you did not count them, write “about” before the number.';
/** Where the format has no way to write an estimate. */
export const ESTIMATE_IN_REMARK = 'Write the number alone, and say in a remark that it is an estimate.';

/** `ca. 60 seeds`, `~60 seeds`. */
export const vagueNumber: Diagnose = ({ reader, takes }, pieces) => {
  const [first, second] = pieces;
  if (!first || first.kind === 'amount' || second?.kind !== 'amount' || !beginsFact(takes, pieces, 1)) return undefined;
  if (takes.types.has('seeds') && takes.counts.get(second.unit?.image.toLowerCase() ?? '') === 'seeds') {
    return {
      span: first, suggestion: ABOUT_SEEDS,
      fixes: [{ title: 'Write “about”', start: first.start, end: second.start, text: 'about ' }],
    };
  }
  if (reader.slice(first) === '+' && takes.types.has('count')) {
    return {
      span: first, suggestion: 'A number is what is new since the last count, so it needs no “+”.',
      fixes: [{ title: 'Take out “+”', start: first.start, end: second.start, text: '' }],
    };
  }
  // No fix here takes the word out, for the number alone would be one that somebody counted: a remark keeps the word.
  return { span: first, suggestion: ESTIMATE_IN_REMARK };
};

/** `1 000 seeds`. */
export const spacedNumber: Diagnose = ({ reader }, pieces) => {
  const [first, second] = pieces;
  if (first?.kind !== 'amount' || first.unit || second?.kind !== 'amount') return undefined;
  if (!/^\d{3}$/.test(second.number.image)) return undefined;
  const span = { start: first.start, end: second.number.startOffset + 3 };
  const found = meant(span, reader.slice(span).replaceAll(/\s/g, ''));
  return found && { ...found, code: 'bad-number' };
};

/** `20 C/10 C`, `20 / 10 C`. */
export const looseTemperatures: Diagnose = ({ reader, takes }, _, whole) =>
  (takes.units.has('temperature') ? meant(whole, meantTemperatures(reader.slice(whole))) : undefined);

/** A number with no word behind it. */
export const bareNumber: Diagnose = (place, [first]) => {
  if (first?.kind !== 'amount' || first.unit) return undefined;
  const number = place.reader.slice(first);
  const units = keywords[place.takes.keyword].facts.flatMap(({ shape }) => /^[\d/]+ (\S+)$/.exec(shape)?.[1] ?? []);
  return {
    code: 'missing-unit', span: first,
    suggestion: units.length > 0 ? `Write ${listed(units.map(unit => `“${shown(number)} ${unit}”`), 'or')}.` : offered(place),
    fixes: units.map(unit => insertion(first.end, ` ${unit}`, `Change to “${number} ${unit}”`)),
  };
};

/** Words that growers use for what the journal calls otherwise. */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  germinated: ['sprouted', 'sprouts', 'sprout', 'radicles', 'chitted', 'new', 'more', 'germ', 'germs', 'germinate', 'seed', 'seeds'], emerged: ['up', 'shoots', 'seedlings'],
  leaf: ['leaves'], rotted: ['mouldy', 'moldy', 'mould', 'mold', 'soft'], died: ['dead'], lost: ['eaten', 'missing'],
  fresh: ['firm', 'viable', 'alive'], dead: ['rotted', 'rotten', 'soft'], seedlings: ['plants', 'plantlets'],
};

/** `3 of 24`, `12 %` of a count. */
export const shareCounted: Diagnose = ({ reader, takes }, [first, second], whole) => {
  if (!takes.types.has('count') || first?.kind !== 'amount') return undefined;
  const unit = first.unit?.image.toLowerCase();
  if (unit === '%') return { span: first, suggestion: 'Write how many seeds, not a percentage.' };
  if (unit !== 'of' || second?.kind !== 'amount') return undefined;
  const number = reader.slice({ start: first.start, end: first.unit!.startOffset }).trim();
  return { span: whole, suggestion: `Write “${number}”; the “sow” record says how many you sowed.`, fixes: [replacement(whole, number)] };
};

/** `20 C 60 days` in a regime. */
export const stageless: Diagnose = ({ takes }, [first], whole) => {
  const dimension = first?.kind === 'amount' && takes.keyword === 'regime' ? dimensionOf(first) : undefined;
  if (!first || (dimension !== 'temperature' && dimension !== 'duration')) return undefined;
  return {
    span: whole, suggestion: 'Begin each stage with “warm” or “chill”.',
    fixes: ['warm', 'chill'].map(stage => insertion(first.start, `${stage} `, `Write “${stage}” before it`)),
  };
};

export const unknownUnit: Diagnose = ({ takes }, [first]) => {
  if (first?.kind !== 'amount' || !first.unit) return undefined;
  const { unit } = first;
  if (takes.types.has('count') && unit.image.toLowerCase() === 'total') return meant(first, `=${numeralOf(first)}`);
  const word = synonymOf(first, takes) ?? (dimensionOf(first) ? undefined : unitMeantBy(unit.image, takes.spellings));
  return meant({ start: unit.startOffset, end: first.end }, word);
};

function synonymOf({ unit }: Amount, takes: Taken): string | undefined {
  const word = unit?.image.toLowerCase() ?? '';
  return Object.keys(synonyms).find(known => takes.counts.has(known) && synonyms[known]!.includes(word));
}
