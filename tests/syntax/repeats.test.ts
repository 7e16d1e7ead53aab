import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keywords } from '../../server/src/model/keywords.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { Repeats } from '../../server/src/syntax/repeats.ts';
import { anyLine, brokenLine, recordLine } from '../support/arbitrary-lines.ts';

const example = fc.constantFrom(...Object.values(keywords).map(({ example: line }) => line));
const record = recordLine.chain(({ tidy, loose }) => fc.constantFrom(tidy, loose));
const whole = fc.oneof(example, record, anyLine, brokenLine);

/** Texts that mean something else by what stands around them. */
const slip = fc.constantFrom(
  '', ' ', ',', ', ', '"', ', "', '",', ',5', '5', '-', '=', '/', 'T', '° C', '\ufeff', '\t', '，', 'A', 'GA3', ', GA3', ' at ',
  ' 2026-01-19', ' 19:30', 'w/v');

const words = Object.keys(keywords);

/** Lines whose heads and tails come again and again, put together in other ways, with slips at joints and elsewhere. */
const repeating = fc.tuple(
  fc.array(whole, { minLength: 2, maxLength: 6 }),
  fc.array(
    fc.tuple(fc.nat(), fc.nat(), fc.nat(), fc.option(fc.tuple(slip, fc.nat(), fc.nat(3)))),
    { minLength: 8, maxLength: 40 }),
).map(([lines, picks]) => {
  const commas = lines.flatMap(line => [...line.matchAll(/,/g)].map(({ index }) => ({ line, index })));
  const heads = [...commas.map(({ line, index }) => line.slice(0, index)), ...lines];
  const tails = [...commas.map(({ line, index }) => line.slice(index)), ''];
  return picks.map(([h, t, w, slipped]) => {
    const as = heads[h % heads.length]!;
    const head = w % 3 === 0 ? as.replace(/^\S*/, words[w % words.length]!) : as;
    const line = `${head}${tails[t % tails.length]!}`;
    if (!slipped) return line;
    const [text, place, length] = slipped;
    const at = place % 4 === 0 ? head.length : place % (line.length + 1);
    return line.slice(0, at) + text + line.slice(at + length);
  });
});

describe('reading with what was read before', () => {
  it('is reading each line by itself', () => {
    fc.assert(fc.property(repeating, lines => {
      const repeats = new Repeats();
      // The second time all is known that can be.
      for (const line of [...lines, ...lines]) expect(repeats.read(line), line).toEqual(parse(line));
    }), { numRuns: 300 });
  });

  it.each([
    ['a lot that has the name of an agent', 'soak GA3, water, 24 h', 'soak VER, GA3 500 ppm', 'soak GA3, GA3 500 ppm'],
    ['a limit that is none of its agent', 'limit soak, 24 h', 'limit GA3a, 500 ppm', 'limit GA3a, 24 h', 'limit soak, 500 ppm'],
    ['a comma within a number', 'lot X Iris 5, 3 seeds', 'lot X Iris p,5 seeds', 'lot X Iris 5,5 seeds'],
    ['a comma within quotation marks', 'lot X "Iris, blue", 5 seeds', 'lot X Iris p, blue", 5 seeds', 'lot X "Iris, 5 seeds'],
    ['another column', 'count VER-24, 3', 'count VER-24/A, 3'],
    ['another record', 'count VER, 24 seeds', 'split VER, A 24 seeds', 'count VER, A 24 seeds'],
  ])('is so for %s', (_, ...lines) => {
    const repeats = new Repeats();
    for (const line of lines) expect(repeats.read(line), line).toEqual(parse(line));
  });

  it('is so for whatever was forgotten meanwhile', () => {
    const repeats = new Repeats();
    for (let n = 0; n < 20_000; n++) repeats.read(`count LOT-${n}/A, ${n}`);
    for (const line of ['count LOT-7/A, 7', 'count LOT-19999/A, 7', 'count LOT-7/A, 19999']) expect(repeats.read(line)).toEqual(parse(line));
  });

  it('keeps once what lines repeat', () => {
    const repeats = new Repeats();
    const [first, second, third] = ['count VER-24/A, 3', 'count VER-24/A, 3', 'count PRI-25/B, 3'].map(line => repeats.read(line).record!);
    expect(second!.subject).toBe(first!.subject);
    expect(second!.facts).toBe(first!.facts);
    expect(third!.facts).toBe(first!.facts);
    expect(second).not.toBe(first);
  });
});
