/** A page of passages under one title: stocks, a winter in review. Text, Markdown and HTML tell the same of it. */
import type { Passage } from '../passages.ts';

export interface Sheet {
  readonly title: string;
  /** What is said first. */
  readonly lead: readonly string[];
  readonly passages: readonly Passage[];
  /** What has to be known of all of it, last. */
  readonly notes: readonly string[];
}
