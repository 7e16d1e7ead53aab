/**
 * The first `most` of the items in an order, without sorting the others: there may be thousands.
 *
 * Example: best([5, 3, 9, 1], 2, (a, b) => a - b) is [1, 3]
 */
export function best<Item>(items: Iterable<Item>, most: number, compare: (a: Item, b: Item) => number): Item[] {
  const found: Item[] = [];
  if (most <= 0) return found;
  for (const item of items) {
    if (found.length === most && compare(item, found[most - 1]!) >= 0) continue;
    let [low, high] = [0, found.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (compare(found[middle]!, item) <= 0) low = middle + 1;
      else high = middle;
    }
    found.splice(low, 0, item);
    if (found.length > most) found.pop();
  }
  return found;
}
