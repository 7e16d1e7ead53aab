/**
 * So many of something.
 *
 * Example: counted(1, 'batch', 'batches') is '1 batch', counted(2, 'seed') is '2 seeds'
 */
export function counted(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** Example: '1 seed is', '2 seeds are' */
export function isOrAre(n: number): string {
  return n === 1 ? 'is' : 'are';
}
