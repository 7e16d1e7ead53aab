import { factOf } from '../model/record.ts';
import { isoOf } from '../model/day.ts';
import type { Entry } from '../journal/life.ts';
import { found, type IdCheck } from './check.ts';

const genus = /^\p{Lu}\p{Ll}{3,}$/u;
const epithet = /^\p{Ll}[\p{Ll}-]{2,}(?: |$)/u;

/**
 * `lot Lilium regale`: the first word of the plant was taken for the id. A name that other records use is an id,
 * however it looks.
 */
export const forgottenId: IdCheck = function* (id, mentions, { journal }) {
  const [entry] = mentions;
  if (mentions.length !== 1 || entry?.record.keyword !== 'lot' || entry.record.broken) return;
  const { record: { subject, plant }, line } = entry;
  if (!subject || !plant || !genus.test(id) || !epithet.test(plant.text)) return;
  const free = freeId(entry, id, name => journal.mentionsOf(name).length === 0);
  const written = `${free} ${subject.text} ${plant.text}`;
  yield found(line, 'missing-subject', { start: subject.start, end: subject.end }, {
    keyword: 'lot', what: 'an id and then the plant’s name', suggestion: `For example: lot ${written}.`,
  }, { fixes: [{ title: `Call it “${free}”`, start: subject.start, end: subject.start, text: `${free} ` }] });
};

/** Three letters of the genus and the year of the harvest, or a number where no year is written. */
function freeId({ record }: Entry, name: string, isFree: (id: string) => boolean): string {
  const letters = name.slice(0, 3).toUpperCase();
  const collected = factOf(record, 'collected')?.when.value.last;
  const plain = `${letters}-${collected === undefined ? '1' : isoOf(collected).slice(2, 4)}`;
  if (isFree(plain)) return plain;
  let n = 2;
  while (!isFree(`${plain}-${n}`)) n++;
  return `${plain}-${n}`;
}
