/** What a column can be. */
import type { Countable } from '../model/record.ts';

export const counted = ['germinated', 'emerged', 'leaf', 'rotted', 'died', 'lost'] as const satisfies readonly Countable[];

/** What a column can be, and what `mapping.json` calls it, with a word of help each. */
export const roles = {
  'lot': 'the id of the lot, or of a batch such as GEN-25/A',
  'batch': 'the part of the lot: A, B, 1',
  'plant': 'the name of the plant',
  'genus': 'the genus, with the rest of the name in another column',
  'species': 'the rest of the name behind the genus',
  'seeds': 'how many seeds',
  'collected': 'when the seed was collected',
  'from': 'where the seed came from',
  'stored': 'how the seed is kept',
  'place': 'where it is',
  'treatment': 'what the seed was soaked in',
  'strength': 'the strength of the “agent”, in the “unit” given',
  'soaked': 'the day of the soak',
  'soak time': 'how long it was soaked',
  'sown': 'the day of sowing',
  'seeds sown': 'how many seeds were sown',
  'medium': 'what it was sown in',
  'temperature': 'the temperature at sowing',
  'chilled': 'the day on which the cold began',
  'cold time': 'how long the cold was planned to last',
  'warmed': 'the day on which a warm stage began',
  'potted': 'the day on which seedlings were pricked out',
  'planted': 'the day on which all of it was planted out',
  'discarded': 'the day on which it was given up',
  'date': 'the day of the row, for its counts and remarks',
  'germinated': 'how many germinated',
  'emerged': 'how many emerged',
  'leaf': 'how many have a first leaf',
  'rotted': 'how many rotted',
  'died': 'how many seedlings died',
  'lost': 'how many seeds were lost',
  'what': 'what happened on the day of the row: sown, germinated, rotted, potted',
  'number': 'how many, of what the column with “what” says',
  'noted': 'a day on which something was seen that the heading says',
  'remark': 'anything else, kept as a remark',
  'nothing': 'leave it out',
} as const;

export type Role = keyof typeof roles;

export function isRole(text: string): text is Role {
  return Object.hasOwn(roles, text);
}

export const dateRoles: readonly Role[] = ['soaked', 'sown', 'chilled', 'warmed', 'potted', 'planted', 'discarded', 'date', 'noted'];

export function isCounted(role: Role): role is (typeof counted)[number] {
  return counted.some(each => each === role);
}
