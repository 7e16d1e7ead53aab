/** Seeds given out, sown or counted that are not there. */
import { found, relatedTo, subjectOf, type LotCheck } from './check.ts';
import { spanOfParts } from './spans.ts';
import { factOf } from '../model/record.ts';
import { isRemarkKind } from '../model/keywords.ts';
import { listed } from '../syntax/nearest.ts';

export const splitExceedsSeeds: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      if (event.type !== 'split' || event.left === undefined || event.asked <= event.left) continue;
      yield found(event.entry.line, 'split-exceeds-seeds', spanOfParts(event.entry.record),
        { asked: event.asked, batch: batch.path, left: event.left, seeds: batch.seeds ?? '' }, [], [relatedTo(batch.made, `The ${batch.seeds ?? ''} seeds`)]);
    }
  }
};

export const sownExceedsSeeds: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      if (event.type !== 'sow' || event.emptied || event.available === undefined) continue;
      const { asked, available, entry } = event;
      const tooMany = asked === undefined ? available === 0 : asked > available;
      if (tooMany) {
        yield found(entry.line, 'sown-exceeds-seeds', factOf(entry.record, 'seeds') ?? subjectOf(entry),
          { asked: asked ?? 'all', batch: batch.path, left: available }, [], [relatedTo(batch.made, 'Where its seeds come from')]);
      }
    }
  }
};

/** A record on a batch all of whose seeds went to others. */
export const nothingLeft: LotCheck = function* ({ batches }) {
  for (const batch of batches.values()) {
    for (const event of batch.events) {
      if (!event.emptied || event.type === 'split' || isRemarkKind(event.entry.record.keyword)) continue;
      const children = batch.children.map(child => child.path);
      yield found(event.entry.line, 'nothing-left', subjectOf(event.entry), { batch: batch.path, children: listed(children, 'and') },
        children.map(path => ({ title: `Write it for ${path}`, ...subjectOf(event.entry), text: path })));
    }
  }
};
