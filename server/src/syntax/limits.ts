import { keywords } from '../model/keywords.ts';
import type { Fact, Span, Written } from '../model/record.ts';
import { nearest } from './nearest.ts';
import type { LineReader } from './reader.ts';

/** Whether a limit of this is a time; else it is an agent, and the limit a strength. */
export function isLasting(subject: string): boolean {
  return /^(soak|stock|count)$/i.test(subject);
}

/** Reports a `limit` that limits nothing: soaks, stocks and counts have a longest time, an agent a highest strength. */
export function reportLimit(reader: LineReader, span: Span, subject: Written, facts: readonly Fact[]): void {
  const lasting = isLasting(subject.text);
  // `limit soaks` is a slip of the subject, which is said elsewhere.
  if (!lasting && nearest(subject.text, ['soak', 'stock', 'count']) !== undefined) return;
  const [wanted, other] = lasting ? ['duration', 'strength'] as const : ['strength', 'duration'] as const;
  const needed = lasting ? 'a length of time, such as “24 h”' : 'a strength, such as “1000 ppm”';
  const wrong = facts.find(({ type }) => type === other);
  const keyword = `limit ${subject.text}`;
  const plant = /^stock$/i.test(subject.text) ? facts.find(({ type }) => type === 'for') : undefined;
  if (plant) {
    const suggestion = 'A stock keeps equally long for all plants.';
    reader.report('unknown-fact', plant, { keyword, text: reader.shown(plant), suggestion });
  }
  if (wrong) {
    reader.report('unknown-fact', wrong, { keyword, text: reader.shown(wrong), suggestion: `It takes ${needed}.` });
  } else if (!facts.some(({ type }) => type === wanted)) {
    reader.report('missing-fact', span, { keyword, shape: needed, example: lasting ? `${keyword}, 24 h` : keywords.limit.example });
  }
}
