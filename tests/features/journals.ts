/** What the tests of features share: fixtures as journals, moments, and the hover at a mark. */
import { Journal } from '../../server/src/journal/journal.ts';
import type { Moment } from '../../server/src/journal/moment.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { hoverAt, type Hover } from '../../server/src/features/hover/hover.ts';
import type { Place } from '../../server/src/features/place.ts';
import type { Position } from '../../server/src/text/line-store.ts';
import { variantsOf, type Fixture, type Mark } from '../support/fixture.ts';

export function journalOf({ files }: Fixture): Journal {
  const journal = new Journal();
  for (const { name, text } of files) journal.set(name, text);
  return journal;
}

/** Where the mark with this label ends: behind the last character of a path stands the batch, not its lot. */
export function cursorOf({ expected }: Fixture, label: string): { file: string; position: Position } {
  const mark = expected.find(each => each.label === label);
  if (!mark) throw new Error(`no mark ${label}`);
  return { file: mark.file, position: { line: mark.line, character: mark.end } };
}

export function marksOf(places: readonly Place[], label: string): Mark[] {
  return places.map(place => ({ ...place, label }));
}

/** Example: at('2026-01-19 08:30') */
export function at(text: string): Moment {
  const [date = '', time] = text.split(' ');
  const [hours, minutes] = (time ?? '').split(':').map(Number);
  return { day: dayOfIso(date)!, minutes: time === undefined ? undefined : hours! * 60 + minutes! };
}

function hoverOf(fixture: Fixture, now: string): Hover | undefined {
  const { file, position } = cursorOf(fixture, 'here');
  return hoverAt(journalOf(fixture), file, position, at(now));
}

/**
 * The Markdown over the mark `here`. Throws where it is another one with other line ends, without a last newline, or
 * with an emoji in the plant's name, and where it says to be about other words than the marked ones.
 */
export function hover(source: string, now: string): string | undefined {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => ({ fixture, found: hoverOf(fixture, now) }));
  for (const { fixture, found } of [first!, ...others]) {
    const mark = fixture.expected.find(({ label }) => label === 'here')!;
    const text = found?.markdown.replaceAll(/ ?🌱/g, '');
    if (text !== first!.found?.markdown) throw new Error(`another hover in a variant:\n${text}`);
    if (found && (found.place.start !== mark.start || found.place.end !== mark.end)) {
      throw new Error(`the hover is about columns ${found.place.start} to ${found.place.end}`);
    }
  }
  return first!.found?.markdown;
}
