import fc from 'fast-check';
import { expect, test } from 'vitest';
import { TokenAnswers, TokenData } from '../../server/src/lsp/token-data.ts';

type Token = readonly [line: number, start: number, length: number, type: number, bits: number];

function dataOf(tokens: readonly Token[]): TokenData {
  const data = new TokenData();
  for (const token of tokens) data.add(...token);
  return data;
}

/** As they are sent. */
function numbersOf({ data }: { readonly data: readonly number[] }): number[] {
  return JSON.parse(JSON.stringify(data)) as number[];
}

/** As an editor reads them, LSP 3.17. */
function decoded(numbers: readonly number[]): Token[] {
  const tokens: Token[] = [];
  let [line, start] = [0, 0];
  for (let i = 0; i < numbers.length; i += 5) {
    if (numbers[i] !== 0) start = 0;
    line += numbers[i]!;
    start += numbers[i + 1]!;
    tokens.push([line, start, numbers[i + 2]!, numbers[i + 3]!, numbers[i + 4]!]);
  }
  return tokens;
}

const tokens = fc.array(fc.tuple(
  fc.integer({ min: 0, max: 2 }), fc.oneof(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 8, max: 1_000_000 })),
  fc.integer({ min: 1, max: 12 }),
  fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 9 }),
)).map(steps => {
  let [line, end] = [0, 0];
  return steps.map(([down, gap, length, type, bits]): Token => {
    if (down > 0) end = 0;
    line += down;
    const start = end + gap;
    end = start + length;
    return [line, start, length, type, bits];
  });
});

test('tokens come back from their numbers as they were, however many there are', () => {
  const many = Array.from({ length: 9000 }, (_, n): Token => [n >> 1, n % 2 === 0 ? 4 : 9, 3, n % 4, n % 7]);
  expect(decoded(numbersOf(new TokenAnswers().full('a', dataOf(many))))).toEqual(many);
  fc.assert(fc.property(tokens, all => {
    expect(decoded(numbersOf(new TokenAnswers().full('a', dataOf(all))))).toEqual(all);
  }));
});

test('what changed, done to the last answer, gives the new one', () => {
  fc.assert(fc.property(tokens, tokens, (before, now) => {
    const answers = new TokenAnswers();
    const full = answers.full('a', dataOf(before));
    const answer = answers.since('a', full.resultId!, dataOf(now));
    const numbers = numbersOf(full);
    if (!('edits' in answer)) throw new Error('all tokens came');
    for (const { start, deleteCount, data: added = [] } of answer.edits) numbers.splice(start, deleteCount, ...added);
    expect(decoded(numbers)).toEqual(now);
    expect(answer.resultId).not.toBe(full.resultId);
  }), { numRuns: 500 });
});

test('all tokens come to who names another answer than the last of that document', () => {
  const answers = new TokenAnswers();
  const { resultId } = answers.full('a', dataOf([[0, 0, 1, 0, 0]]));
  const all = (uri: string, data: TokenData) =>
    JSON.parse(JSON.stringify(answers.since(uri, resultId!, data))) as unknown;
  expect(all('b', dataOf([[0, 0, 1, 0, 0]]))).toMatchObject({ data: [0, 0, 1, 0, 0] });
  answers.keepOnly(uri => uri !== 'a');
  expect(all('a', dataOf([]))).toMatchObject({ data: [] });
});

test('one number that changed is all that is sent anew', () => {
  const answers = new TokenAnswers();
  const row = (n: number): Token => [n, 12, 300, 1, 4];
  const before = Array.from({ length: 40 }, (_, n) => row(n));
  const { resultId } = answers.full('a', dataOf(before));
  const now = before.map((token, n): Token => (n === 20 ? [20, 12, 310, 1, 4] : token));
  expect(answers.since('a', resultId!, dataOf(now))).toMatchObject({ edits: [{ start: 102, deleteCount: 1, data: [310] }] });
});
