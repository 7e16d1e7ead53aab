/** Words that are missing or misspelt, where more must be known than the line. */
import { shown } from '../../../syntax/reader.ts';
import { nearest } from '../../../syntax/nearest.ts';
import { factsOf } from '../../../model/record.ts';
import { zoneNames } from '../../completion/zones.ts';
import { insert, replace, type Mender } from './mend.ts';

/** A zone of the engine's list that is spelt nearly so, or whose city it is. */
export const unknownZone: Mender = ({ entry: { line, record: { subject } } }) => {
  if (!subject) return [];
  const names = zoneNames();
  const city = subject.text.replaceAll(' ', '_').toLowerCase();
  const name = names.find(each => each.toLowerCase() === city || each.toLowerCase().endsWith(`/${city}`)) ?? nearest(subject.text, names);
  if (name === undefined || name === subject.text) return [];
  return [{ title: `Change to “${name}”`, edits: [replace(line, subject, name)], evident: true }];
};

/** Powder on a damp towel has no strength, nor has a pinch in a bottle. */
export const strengthMissing: Mender = ({ entry: { line, record }, problem }) => {
  const substance = factsOf(record, 'substance').find(({ name }) => name.start === problem.start);
  if (!substance || substance.mass || substance.strength || substance.unmeasured || substance.volume) return [];
  const { name } = substance;
  return [{ title: `Say that it was not measured: “${shown(name.text)} unmeasured”`, edits: [insert(line, name.end, ' unmeasured')] }];
};
