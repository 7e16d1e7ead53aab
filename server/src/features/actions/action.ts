/** What an action of the editor would change. */
import type { Place } from '../place.ts';

/** A text that takes the place of another one within a line; it may bring new lines along. */
export interface ActionEdit extends Place {
  readonly text: string;
}

export interface Action {
  readonly title: string;
  readonly edits: readonly ActionEdit[];
}
