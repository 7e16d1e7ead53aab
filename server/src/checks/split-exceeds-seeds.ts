import type { DatedEntry } from '../journal/life.ts';
import { givenTooMany } from '../journal/wrong-numbers.ts';
import { isOrAre } from '../model/counted.ts';
import { factOf, type Span } from '../model/record.ts';
import { seedsText } from '../words/seeds.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { factsSpan } from './spans.ts';

/** More seeds are given out than the lot or the batch has left, however many of an estimate there were. */
export const splitExceedsSeeds: LotCheck = function* (_lot, _context, events) {
  for (const event of [...events.of('split'), ...events.of('leave')]) {
    const mildest = givenTooMany(event);
    if (!mildest) continue;
    const { batch: { path, made }, entry } = event;
    const { asked, left, batch: { seeds } } = mildest;
    yield found(entry.line, 'split-exceeds-seeds', spanOf(entry), { takes: event.type === 'split' ? 'splits off' : 'gives away', asked: seedsText(asked), batch: path, left: leftText(left, seeds!) },
      { related: [relatedTo(made, `The ${seedsText(seeds)}`)] });
  }
};

/** Example: 'only 1 of 20 is', 'none of 20 are' */
function leftText(left: number, seeds: number): string {
  return left > 0 ? `only ${left} of ${seeds} ${isOrAre(left)}` : `none of ${seeds} are`;
}

function spanOf(entry: DatedEntry): Span {
  return factOf(entry.record, 'seeds') ?? factsSpan(entry, 'part');
}
