import { isSownTooMany } from '../journal/wrong-numbers.ts';
import { isOrAre } from '../model/counted.ts';
import { factOf } from '../model/record.ts';
import { seedsText } from '../words/seeds.ts';
import { found, relatedTo, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';

/** More seeds are sown than are there. Seed that is sown again after another treatment is the same seed. */
export const sownExceedsSeeds: LotCheck = function* (_lot, _context, events) {
  for (const event of events.of('sow')) {
    if (!isSownTooMany(event)) continue;
    const { batch: { path, made, sowing }, entry, asked, available } = event;
    const first = sowing && sowing.line !== entry.line ? relatedTo(sowing, 'Sown before') : undefined;
    yield found(entry.line, 'sown-exceeds-seeds', factOf(entry.record, 'seeds') ?? subjectOf(entry),
      { asked: asked === undefined ? 'all seeds' : seedsText(asked), batch: path, left: leftText(available!) },
      { related: [relatedTo(made, 'Where its seeds come from'), ...(first ? [first] : [])] });
  }
};

function leftText(left: number): string {
  return left > 0 ? `only ${left} ${isOrAre(left)}` : 'none are';
}
