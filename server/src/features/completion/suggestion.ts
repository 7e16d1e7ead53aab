/** What is offered at a position, in the editor's own terms. All texts are plain, none is Markdown. */
import type { Span } from '../../model/record.ts';
import type { Template } from './template.ts';

export type SuggestionKind =
  | 'keyword' | 'lot' | 'batch' | 'stock' | 'regime' | 'agent' | 'plant' | 'date' | 'fact' | 'number' | 'word' | 'text'
  | 'place' | 'zone' | 'lines';

export interface Suggestion {
  readonly kind: SuggestionKind;
  readonly label: string;
  /** A few words beside it. */
  readonly detail?: string;
  /** A sentence or two about it. */
  readonly more?: string;
  /** What is written; the label where it says nothing. */
  readonly write?: Template;
  /** What is written where blanks cannot be filled in; by default the template with its blanks as they stand. */
  readonly plain?: string;
  /** What it is found by, where that is more than the label. */
  readonly find?: string;
}

/** More are no help in choosing. */
export const MOST = 100;

export interface Completions extends Span {
  /** Columns `start` to `end` are replaced; what stands in front of the cursor has been typed so far. */
  readonly cursor: number;
  /** The best first. */
  readonly items: readonly Suggestion[];
  /** There is more than is shown: ask again when more is typed. */
  readonly incomplete: boolean;
}
