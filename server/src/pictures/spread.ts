/**
 * Moves labels apart that would cover each other, each as little as it takes, within the limits; in the order of what
 * they wanted. Where there is no room for all at that distance, they share the room evenly.
 *
 * @example
 * spread([50, 52, 90], 10, { low: 0, high: 100 }) // [46, 56, 90]
 */
export function spread(
  wanted: readonly number[], distance: number, { low, high }: { readonly low: number; readonly high: number },
): number[] {
  const count = wanted.length;
  const apart = count > 1 ? Math.min(distance, (high - low) / (count - 1)) : distance;
  const order = wanted.map((at, i) => ({ at, i })).sort((a, b) => a.at - b.at || a.i - b.i)
    .map(({ at, i }) => ({ at: Math.min(high, Math.max(low, at)), i }));
  // Blocks of labels that touch: each lies around the mean of what its labels wanted.
  const blocks: { sum: number; size: number; top: number }[] = [];
  for (const { at } of order) {
    let block = { sum: at, size: 1, top: at };
    for (let last = blocks.at(-1); last && last.top + last.size * apart > block.top; last = blocks.at(-1)) {
      blocks.pop();
      const size = last.size + block.size;
      // What the labels of the second block wanted of its first one is further up in the joint block.
      const sum = last.sum + block.sum - block.size * last.size * apart;
      block = { sum, size, top: placed(sum / size, size) };
    }
    blocks.push(block);
  }
  const places = blocks.flatMap(({ top, size }) => Array.from({ length: size }, (_, i) => top + i * apart));
  const result: number[] = [];
  for (const [place, { i }] of order.entries()) result[i] = places[place]!;
  return result;

  function placed(top: number, size: number): number {
    return Math.max(low, Math.min(top, high - (size - 1) * apart));
  }
}
