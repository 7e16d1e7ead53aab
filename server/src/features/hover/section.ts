/** A hover is a row of sections, each of which has something to say of a thing or not. */
import type { Journal } from '../../journal/journal.ts';
import type { Moment } from '../../journal/moment.ts';
import type { ThemeName } from '../../pictures/theme.ts';
import { markdownBlocks } from '../markdown.ts';

export interface HoverContext {
  readonly journal: Journal;
  readonly now: Moment;
  /** The colours of pictures; undefined where none are shown. */
  readonly theme?: ThemeName | undefined;
}

/** Markdown, with all journal text in it escaped; undefined where there is nothing to say. */
export type Section<Subject> = (subject: Subject, context: HoverContext) => string | undefined;

export function sectionsOf<Subject>(
  sections: readonly Section<Subject>[], subject: Subject, context: HoverContext,
): string | undefined {
  const text = markdownBlocks(sections.map(section => section(subject, context)));
  return text === '' ? undefined : text;
}
