import fc from 'fast-check';
import { expect, test } from 'vitest';
import { namesNear } from '../../server/src/checks/near-names.ts';
import { problemsIn } from './marked.ts';

const many = Array.from({ length: 3000 }, (_, n) => `Iris-${n}`);

test('of few names all are near', () => {
  const few = many.slice(0, 1000);
  expect(namesNear('Lilium', few)).toBe(few);
});

test('of very many those are near that one slip tells from the name, in their order', () => {
  expect(namesNear('iris-7', many).slice(0, 4)).toEqual(['Iris-0', 'Iris-1', 'Iris-2', 'Iris-3']);
  expect(namesNear('Lilium', many)).toEqual([]);
  expect(namesNear('', many)).toEqual([]);
  expect(namesNear('I'.repeat(100_000), many)).toEqual([]);
  fc.assert(fc.property(fc.nat(2999), fc.nat(), fc.string({ maxLength: 1 }), fc.boolean(), (n, at, typed, swap) => {
    const name = many[n]!;
    const i = at % name.length;
    const slip = swap
      ? name.slice(0, i) + (name[i + 1] ?? '') + name[i]! + name.slice(i + 2)
      : name.slice(0, i) + typed + name.slice(i + at % 2);
    expect(namesNear(slip, many)).toContain(name);
  }));
});

test('however many names differ in the same letter, few of them are compared', () => {
  const alike = Array.from({ length: 3000 }, (_, n) => `Iris-${String.fromCodePoint(0x4e00 + n)}`);
  expect(namesNear('Iris-a', alike)).toHaveLength(50);
});

test('a slip of one of very many lots, or batches, is told', () => {
  const lots = many.map(name => `lot ${name}a Iris sibirica, 20 seeds`).join('\n');
  const [problem] = problemsIn('unknown-lot', `${lots}\nsow Iris-2999b 2026-01-10`);
  expect(problem!.message).toContain('Did you mean “Iris-2999a”?');
  const splits = many.map(name => `split L, ${name}a 20 seeds`).join('\n');
  const [batch] = problemsIn('unknown-batch', `lot L Iris\n${splits}\nsow L/Iris-2999b 2026-01-10`);
  expect(batch!.message).toContain('Did you mean “L/Iris-2999a”?');
});
