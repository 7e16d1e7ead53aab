/** Slips with numbers: without a word, with the wrong one, in a form that is not read. */
import { keywords } from '../model/keywords.ts';
import { factBefore, meant, offered, type Diagnose } from './diagnosis.ts';
import { beginsFact, type Taken } from './fact-types.ts';
import type { Amount } from './grammar.ts';
import { nearest } from './nearest.ts';
import { numeralOf } from './numbers.ts';
import { dimensionOf, meantTemperatures } from './quantities.ts';
import { insertion, shown } from './reader.ts';

/** A strength or a mass of nothing: `500 ppm`, `GA3, 500 ppm`, `500 ppm GA3`. */
export const agentless: Diagnose = (place, pieces, whole) => {
  const { reader, takes } = place;
  const [first, second] = pieces;
  if (takes.named !== 'substance' || first?.kind !== 'amount') return undefined;
  const dimension = dimensionOf(first);
  if (dimension !== 'strength' && dimension !== 'mass') return undefined;
  const amount = reader.slice(first);
  if (second?.kind === 'word' && pieces.length === 2) return meant(whole, `${second.text} ${amount}`);
  if (takes.leads.has('purity') && first.unit?.image === '%') return meant(first, `purity ${amount}`);
  const before = factBefore(place, whole)?.pieces ?? [];
  const [name] = before;
  const alone = before.length === 1 && name?.kind === 'word' ? name : undefined;
  return {
    code: 'missing-agent', span: first, suggestion: `${alone ? shown(alone.text) : 'GA3'} ${shown(amount)}`,
    fixes: alone ? [{ title: 'Take out the comma before it', start: alone.end, end: first.start, text: ' ' }] : [],
  };
};

/** `ca. 60 seeds`, `~60 seeds`. */
export const vagueNumber: Diagnose = ({ reader, takes }, pieces) => {
  const [first, second] = pieces;
  if (!first || first.kind === 'amount' || second?.kind !== 'amount' || !beginsFact(takes, pieces, 1)) return undefined;
  return {
    span: first, suggestion: 'Write the number alone; how sure it is can stand in a remark.',
    fixes: [{ title: `Take out “${reader.shown(first)}”`, start: first.start, end: second.start, text: '' }],
  };
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
    code: 'missing-unit', span: first, suggestion: offered(place),
    fixes: units.map(unit => insertion(first.end, ` ${unit}`, `Change to “${number} ${unit}”`)),
  };
};

/** Words that growers use for what the journal calls otherwise. */
const synonyms: Readonly<Record<string, readonly string[]>> = {
  germinated: ['sprouted', 'sprouts', 'radicles', 'chitted', 'new', 'more'], emerged: ['up', 'shoots', 'seedlings'],
  leaf: ['leaves'], rotted: ['mouldy', 'moldy', 'mould', 'mold', 'soft'], died: ['dead'], lost: ['eaten', 'missing'],
  fresh: ['firm', 'viable', 'alive'], dead: ['rotted', 'rotten', 'soft'], seedlings: ['plants', 'plantlets'],
};

export const unknownUnit: Diagnose = ({ takes }, [first]) => {
  if (first?.kind !== 'amount' || !first.unit) return undefined;
  const { unit } = first;
  if (takes.types.has('count') && unit.image.toLowerCase() === 'total') return meant(first, `=${numeralOf(first)}`);
  const word = synonymOf(first, takes) ?? (dimensionOf(first) ? undefined : nearest(unit.image, takes.spellings));
  return meant({ start: unit.startOffset, end: first.end }, word);
};

function synonymOf({ unit }: Amount, takes: Taken): string | undefined {
  const word = unit?.image.toLowerCase() ?? '';
  return Object.keys(synonyms).find(known => takes.counts.has(known) && synonyms[known]!.includes(word));
}
