import { describe, expect, test } from 'vitest';
import { documentSymbols, type OutlineSymbol } from '../../server/src/features/document-symbols.ts';
import { variantsOf } from '../support/fixture.ts';
import { twoBatches } from '../trials/helpers.ts';
import { at, journalOf } from './journals.ts';

/** The outline of the last file: kind, name and detail, the words that it stands at, and its lines from 1. */
function outline(source: string): string[] {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const { name, text } = fixture.files.at(-1)!;
    const lines = text.split(/\r?\n/);
    const tell = (symbols: readonly OutlineSymbol[], depth: number): string[] => symbols.flatMap(symbol => {
      const { kind, detail, place, lines: { start, end }, children } = symbol;
      const at = lines[place.line]!.slice(place.start, place.end);
      const told = `${'  '.repeat(depth)}${kind} ${symbol.name} (${detail}) at ${place.line + 1} “${at}”, lines ${start + 1}-${end + 1}`;
      return [told, ...tell(children, depth + 1)];
    });
    return tell(documentSymbols(journalOf(fixture), name, at('2026-02-10')), 0).map(line => line.replaceAll(/ ?🌱/g, ''));
  });
  for (const other of others) expect(other).toEqual(first);
  return first!;
}

describe('outline', () => {
  test('has headings as containers, lots with their batches below, and what else is defined', () => {
    expect(outline(`
      agent kelp, seaweed extract
      # Bench
      stock G1 2026-01-09, GA3 18 mg, 18 mL
      dilute G2 2026-01-09, from G1 10 mL, to 20 mL
      regime cold, chill 4 C 90 days, warm 18 C
      ## Seed
      lot VER-24 Veratrum nigrum, 60 seeds
        From the north side.
      split VER-24, A 24 seeds, B 24 seeds
      split VER-24/A, 1 12 seeds
        Twelve to spare.
      # Books
      guide Veratrum, GA3 500 ppm, source "a seed list"
    `)).toMatchInlineSnapshot(`
      [
        "agent kelp (seaweed extract) at 1 “kelp”, lines 1-1",
        "heading Bench () at 2 “Bench”, lines 2-11",
        "  stock G1 (GA3 1000 ppm) at 3 “G1”, lines 3-3",
        "  stock G2 (GA3 500 ppm) at 4 “G2”, lines 4-4",
        "  regime cold (2 stages) at 5 “cold”, lines 5-5",
        "  heading Seed () at 6 “Seed”, lines 6-11",
        "    lot VER-24 Veratrum nigrum (60 seeds · not begun) at 7 “VER-24”, lines 7-11",
        "      batch A (24 seeds) at 9 “A”, lines 9-9",
        "        batch 1 (12 seeds) at 10 “1”, lines 10-11",
        "      batch B (24 seeds) at 9 “B”, lines 9-9",
        "heading Books () at 12 “Books”, lines 12-13",
        "  guide Veratrum (a seed list) at 13 “Veratrum”, lines 13-13",
      ]
    `);
  });

  test('has a lot of another file where this one first speaks of it, once', () => {
    expect(outline(`
      --- 2025.germ
      lot VER-24 Veratrum nigrum, 60 seeds
      split VER-24, A 24 seeds
      lot VER-25 Veratrum album
      --- 2026.germ
      count VER-24/A 2026-01-19, 3
      split VER-24/A 2026-01-20, 1 12 seeds
      count VER-24/A/1 2026-02-19, 3
    `)).toMatchInlineSnapshot(`
      [
        "lot VER-24 Veratrum nigrum (defined in 2025.germ) at 1 “VER-24”, lines 1-1",
        "  batch 1 (12 seeds) at 2 “1”, lines 2-2",
      ]
    `);
  });

  test('has a batch below its lot whatever the order of their lines', () => {
    expect(outline(`
      split VER-24/A, 1 12 seeds
      split VER-24, A 24 seeds
      lot VER-24 Veratrum nigrum
    `)).toMatchInlineSnapshot(`
      [
        "lot VER-24 Veratrum nigrum (not begun) at 3 “VER-24”, lines 3-3",
        "  batch A (24 seeds) at 2 “A”, lines 2-2",
        "    batch 1 (12 seeds) at 1 “1”, lines 1-1",
      ]
    `);
  });

  test('says where a lot stands and whether treating it paid; only where it stands in a file of many lots', () => {
    const treated = `${twoBatches().replaceAll(/^ +/gm, '').trim()}\n`;
    const details = (text: string) => documentSymbols(journalOf({ files: [{ name: 'a.germ', text }], expected: [] }), 'a.germ', at('2026-02-10'))
      .map(({ detail }) => detail);
    expect(details(treated)).toEqual(['60 seeds · 2 of 2 open: sown, day 30 · worth repeating']);
    expect(details(`${treated}${'lot N Iris\n'.repeat(50)}`)[0]).toBe('60 seeds · 2 of 2 open: sown, day 30');
  });

  test('says of an id that is defined twice where it stands only once', () => {
    expect(outline('lot L Iris, 9 seeds\nlot L Iris, 8 seeds')).toEqual([
      'lot L Iris (9 seeds · not begun) at 1 “L”, lines 1-1', 'lot L Iris (8 seeds) at 2 “L”, lines 2-2',
    ]);
  });

  test('leaves out what nothing defines', () => {
    expect(outline('count VER-24 2026-01-19, 3')).toEqual([]);
  });
});
