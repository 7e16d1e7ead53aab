import { describe, expect, test } from 'vitest';
import { highlightsAt } from '../../server/src/features/highlight.ts';
import { differences, variantsOf } from '../support/fixture.ts';
import { cursorOf, journalOf } from './journals.ts';

function check(source: string): void {
  for (const { fixture } of variantsOf(source)) {
    const { file, position } = cursorOf(fixture, 'here');
    const found = highlightsAt(journalOf(fixture), file, position)
      .map(({ place, role }) => ({ ...place, label: role }));
    const expected = fixture.expected.filter(({ label }) => label !== 'here');
    expect(differences({ ...fixture, expected }, found)).toBe('');
  }
}

describe('highlight', () => {
  test('shows a lot where this file names it, and tells the definition from the mentions', () => check(`
    --- a.germ
    lot VER-24 Veratrum nigrum, 60 seeds
        ^^^^^^ here
        ^^^^^^ definition
    split VER-24, A 24 seeds
          ^^^^^^ mention
    --- b.germ
    count VER-24/A 2026-01-19, 3
  `));

  test('shows a batch in its split and in its records', () => check(`
    lot VER-24 Veratrum nigrum, 60 seeds
    split VER-24, A 24 seeds
                  ^ definition
    count VER-24/A 2026-01-19, 3
                 ^ here
          ^^^^^^^^ mention
  `));

  test('shows nothing for a number', () => check(`
    count VER-24 2026-01-19, 3
                             ^ here
  `));
});
