import { leadWords } from '../../syntax/fact-types.ts';
import type { Suggestion } from './suggestion.ts';
import { withBlanks, type Template } from './template.ts';

const leads = Object.values(leadWords).flat();

/**
 * A fact after its example, with its numbers to fill in; of a text behind a word the whole text.
 *
 * Example: factTemplate('at bag 3 slot 2') is ['at ', { blank: 'bag 3 slot 2' }]
 */
export function factTemplate(shape: string): Template {
  const lead = leads.find(word => shape.startsWith(`${word} `));
  if (lead === 'at') return ['at ', { blank: shape.slice(3) }];
  if (/\d/.test(shape)) return withBlanks(shape);
  return lead === undefined ? [{ blank: shape }] : [`${lead} `, { blank: shape.slice(lead.length + 1) }];
}

/** A fact as it stands in the list: who takes it has read its numbers, and goes on behind it with the next comma. */
export function fact(shape: string): Suggestion {
  return { kind: 'fact', label: shape };
}
