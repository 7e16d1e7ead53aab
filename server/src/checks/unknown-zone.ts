import { isZone } from '../journal/zone.ts';
import { found, type JournalCheck } from './check.ts';

/** A `zone` that the list of time zones does not have. */
export const unknownZone: JournalCheck = function* ({ journal }) {
  for (const { line, record: { subject } } of journal.globalEntries('zone')) {
    if (!subject || isZone(subject.text)) continue;
    const near = zoneOfCity(subject.text);
    const suggestion = near ? `Did you mean “${near}”?` : 'Write a region and a city, such as Europe/Vienna or America/New_York.';
    yield found(line, 'unknown-zone', subject, { zone: subject.text, suggestion });
  }
};

const regions = ['Europe', 'America', 'Asia', 'Australia', 'Africa', 'Pacific', 'Atlantic'];

/** The zone of a city whose region was left out. */
function zoneOfCity(name: string): string | undefined {
  if (!/^[A-Za-z][A-Za-z_-]{2,30}$/.test(name)) return undefined;
  const city = `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
  return regions.map(region => `${region}/${city}`).find(isZone);
}
