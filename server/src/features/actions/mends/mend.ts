/** What a fix is that the line alone cannot give: it takes the journal, and may change other lines. */
import type { Found } from '../../../checks/check.ts';
import type { Journal } from '../../../journal/journal.ts';
import type { JournalLine } from '../../../journal/journal-file.ts';
import type { BatchEvent, Entry } from '../../../journal/life.ts';
import type { Moment } from '../../../journal/moment.ts';
import type { Span } from '../../../model/record.ts';
import { lifeOf, type Lived } from '../../events.ts';
import { placeOf } from '../../place.ts';
import type { Action, ActionEdit } from '../action.ts';

export interface Mend extends Action {
  /** Hardly anything else can be meant. */
  readonly evident?: true;
}

export interface MendContext {
  readonly journal: Journal;
  /** The file that is being worked in, and the present. */
  readonly file: string;
  readonly now: Moment;
}

/** The record that a problem is in, and the problem. */
export interface Slip extends Pick<Found, 'problem'> {
  readonly entry: Entry;
}

/**
 * What would mend one kind of problem. The journal may have changed since the problem was found: a mend goes by what
 * the journal says now, and is none where there is nothing to mend any more.
 */
export type Mender = (slip: Slip, context: MendContext) => Mend[];

type EventOf<Type extends BatchEvent['type']> = BatchEvent & { readonly type: Type };

/** The life that the record is an event of; undefined where it is none of that type. */
export function livedAs<Type extends BatchEvent['type']>(
  type: Type, entry: Entry, { journal }: MendContext,
): (Lived & { readonly event: EventOf<Type> }) | undefined {
  const lived = lifeOf(journal, entry);
  const event = lived?.event;
  return lived && event?.type === type ? { ...lived, event: event as EventOf<Type> } : undefined;
}

/** Another text in a place of a line. */
export function replace(line: JournalLine, span: Span, text: string | number): ActionEdit {
  return { ...placeOf(line, span), text: String(text) };
}

export function insert(line: JournalLine, at: number, text: string): ActionEdit {
  return replace(line, { start: at, end: at }, text);
}
