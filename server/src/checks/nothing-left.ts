import { listed } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type LotCheck } from './check.ts';
import { subjectOf } from './spans.ts';

/** So many batches are worth naming. */
const MOST = 8;

/** A record on a batch all of whose seeds went to others. */
export const nothingLeft: LotCheck = function* (_lot, _context, events) {
  for (const { batch: { path, children }, entry } of events.of('misplaced')) {
    const names = children.map(child => child.path);
    const shown = names.length > MOST ? [...names.slice(0, MOST), 'others'] : names;
    yield found(entry.line, 'nothing-left', subjectOf(entry), { batch: path, children: listed(shown, 'and') },
      { fixes: names.slice(0, MOST).map(name => replacement(subjectOf(entry), name)) });
  }
};
