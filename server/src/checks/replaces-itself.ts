import { circleFrom } from '../journal/replacing.ts';
import { factsOf } from '../model/record.ts';
import { found, relatedTo, type LotCheck } from './check.ts';

/** Lots that a message names; of a longer way the first ones and the last. */
const MOST = 5;

/** A lot that replaces itself, at once or by way of others: one of them is the older. */
export const replacesItself: LotCheck = function* ({ id, definition }, { journal }) {
  const { line, record } = definition;
  for (const { value, start, end } of factsOf(record, 'replaces')) {
    const circle = circleFrom(journal, id, value.text);
    if (!circle) continue;
    const chain = circle.length === 1 ? `${id} cannot replace itself` : `${id} replaces ${wayText(circle)}`;
    const comma = line.text.lastIndexOf(',', start);
    const fixes = [{ title: `Take out “replaces ${value.text}”`, start: comma, end, text: '' }];
    const others = circle.slice(0, -1).map(other => relatedTo(journal.lot(other)!.definition, `${other} is defined here`));
    yield found(line, 'replaces-itself', { start: value.start, end: value.end }, { chain, older: value.text }, { fixes, related: others });
  }
};

function wayText(circle: readonly string[]): string {
  const last = circle.at(-1)!;
  const way = circle.length > MOST ? [...circle.slice(0, MOST - 1), '…', last] : circle;
  return way.join(', which replaces ');
}
