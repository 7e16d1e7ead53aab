import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fitMiddle, fitText, textWidth } from '../../server/src/pictures/text-size.ts';

describe('a text that has no room', () => {
  test('ends with an ellipsis, or has it in the middle where its end tells it from others', () => {
    expect(fitText('What lies where on the north bench', 12, 120)).toBe('What lies wher…');
    expect(fitMiddle('GEN-25/seedlings/north/A', 12, 120)).toBe('GEN-25/…north/A');
    expect(fitMiddle('GEN-25/seedlings/north/B', 12, 120)).toBe('GEN-25/…north/B');
  });

  test('has no number of which a part is cut off', () => {
    const text = 'GA3 1000 ppm 24.5 h';
    const cuts = Array.from({ length: 150 }, (_, width) => fitText(text, 12, width));
    const numbers = new Set(cuts.flatMap(cut => cut.split(' ').flatMap(word => /^[\d.]+/u.exec(word)?.[0] ?? [])));
    expect([...numbers]).toEqual(['1000', '24.5']);
  });

  test('is empty where there is no room for a character and the ellipsis', () => {
    expect(fitText('GEN-25', 12, 10)).toBe('');
    expect(fitMiddle('GEN-25', 12, 10)).toBe('');
  });

  test.each([['at its end', fitText], ['in the middle', fitMiddle]] as const)('is cut %s so that it has room, and only then', (_, fit) => {
    fc.assert(fc.property(fc.string({ maxLength: 60 }), fc.integer({ min: 0, max: 400 }), fc.constantFrom('bold', undefined), (text, width, weight) => {
      const cut = fit(text, 12, width, weight);
      expect(textWidth(cut, 12, weight)).toBeLessThanOrEqual(width);
      if (textWidth(text, 12, weight) <= width) expect(cut).toBe(text);
    }));
  });
});
