/** What a slip is and what to say of it. */
import { keywords } from '../model/keywords.ts';
import type { Fix, ProblemCode } from '../model/problems.ts';
import { countables, cutClasses, type Span } from '../model/record.ts';
import type { Taken } from './fact-types.ts';
import type { Piece, RecordSyntax } from './grammar.ts';
import type { Head } from './head.ts';
import { listed } from './nearest.ts';
import { replacement, shown, type LineReader } from './reader.ts';

/** The record that the fact stands in. */
export interface Place {
  readonly reader: LineReader;
  readonly takes: Taken;
  readonly syntax: RecordSyntax;
  readonly head: Head;
}

export interface Diagnosis {
  readonly code?: ProblemCode;
  readonly span: Span;
  readonly suggestion: string;
  readonly fixes?: readonly Fix[];
}

/** Recognises one slip that growers make; `whole` is all that stands between the two commas. */
export type Diagnose = (place: Place, pieces: readonly Piece[], whole: Span) => Diagnosis | undefined;

/** What the record does take. */
export function offered({ takes }: Place): string {
  if (takes.types.has('count')) return `You can count ${listed(countables, 'and')}.`;
  if (takes.types.has('cut')) return `A cut test counts ${listed(cutClasses, 'and')}.`;
  const { facts, dated } = keywords[takes.keyword];
  if (facts.length > 0) return `It takes ${listed(facts.map(({ shape }) => `“${shape}”`), 'or')}.`;
  return dated === 'yes' ? 'It takes a batch, a date and a time, and nothing else.' : 'It takes nothing after a comma.';
}

/** One thing alone can be meant in a place; undefined where nothing is. */
export function meant(span: Span, text: string | undefined): Diagnosis | undefined {
  if (text === undefined) return undefined;
  return { span, suggestion: `Did you mean “${shown(text)}”?`, fixes: [replacement(span, text)] };
}

/** The fact before, with its comma. */
export function factBefore({ syntax }: Place, { start }: Span): RecordSyntax['facts'][number] | undefined {
  const index = syntax.facts.findLastIndex(({ comma }) => comma < start);
  return syntax.facts[index - 1];
}
