import { describe, expect, test } from 'vitest';
import { workspaceSymbols } from '../../server/src/features/workspace-symbols.ts';
import { readFixture } from '../support/fixture.ts';
import { twoBatches } from '../trials/helpers.ts';
import { at, journalOf } from './journals.ts';

const now = at('2026-02-10');

const journal = journalOf(readFixture(`
  --- 2025.germ
  lot VER-24 Veratrum nigrum, 60 seeds
  split VER-24, A 24 seeds
  lot NIG-25 Nigella hispanica
  --- 2026.germ
  lot ANE-26 Anemone blanda
  split ANE-26, A 10 seeds
  stock G1 2026-01-09, GA3 20 mg, 20 mL
  regime vernal, chill 4 C 90 days
  agent kelp, an extract
`));

function names(query: string): string[] {
  return workspaceSymbols(journal, query, now).map(({ kind, name, place }) => `${kind} ${name} (${place.file}:${place.line + 1})`);
}

describe('search for symbols', () => {
  test('finds by the beginning of an id first, whatever the case', () => {
    expect(names('ver')).toEqual(['lot VER-24 Veratrum nigrum (2025.germ:1)', 'regime vernal (2026.germ:4)']);
  });

  test('finds by the plant, words before parts of words', () => {
    expect(names('nig')).toEqual(['lot NIG-25 Nigella hispanica (2025.germ:3)', 'lot VER-24 Veratrum nigrum (2025.germ:1)']);
    expect(names('nemone')).toEqual(['lot ANE-26 Anemone blanda (2026.germ:1)']);
  });

  test('finds by letters in order', () => {
    expect(names('v24')).toEqual(['lot VER-24 Veratrum nigrum (2025.germ:1)']);
    expect(names('ane bla')).toEqual(['lot ANE-26 Anemone blanda (2026.germ:1)']);
    expect(names('42v')).toEqual([]);
  });

  test('finds batches where the query has a slash', () => {
    expect(names('ane-26/a')).toEqual(['batch ANE-26/A Anemone blanda (2026.germ:2)']);
    expect(names('/a')).toEqual(['batch ANE-26/A Anemone blanda (2026.germ:2)', 'batch VER-24/A Veratrum nigrum (2025.germ:2)']);
  });

  test('gives everything for an empty query', () => {
    expect(names('')).toHaveLength(6);
  });

  test('says where a lot stands and whether treating it paid; only where it stands if much is found', () => {
    const text = `${twoBatches().replaceAll(/^ +/gm, '').trim()}\n${Array.from({ length: 30 }, (_, n) => `lot N-${n} Adonis\n`).join('')}`;
    const found = journalOf({ files: [{ name: 'a.germ', text }], expected: [] });
    expect(workspaceSymbols(found, 'iris', now).map(({ detail }) => detail)).toEqual(['60 seeds · 2 of 2 open: sown, day 30 · worth repeating']);
    expect(workspaceSymbols(found, '', now)[0]?.detail).toBe('60 seeds · 2 of 2 open: sown, day 30');
  });

  test('gives no more than anybody reads', () => {
    const many = journalOf({ files: [{ name: 'a.germ', text: Array.from({ length: 500 }, (_, n) => `lot X-${n} Primula\n`).join('') }], expected: [] });
    expect(workspaceSymbols(many, 'x', now)).toHaveLength(200);
    expect(workspaceSymbols(many, 'X-499', now)[0]?.name).toBe('X-499 Primula');
  });
});
