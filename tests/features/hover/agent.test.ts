import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

/** Without the caution at the end. */
function agentHover(source: string): string | undefined {
  return hover(source, '2026-02-10')?.split('\n\n⚠')[0];
}

describe('hover on an agent', () => {
  test('tells what it is, its limit, and how it dissolves', () => {
    expect(agentHover(`
      limit GA3, 500 ppm
      soak VER-24 2026-01-10, GA3 250 ppm
                              ^^^ here
    `)).toMatchInlineSnapshot(`
      "**GA3** · gibberellic acid · C19H22O6 · 346.379 g/mol (from standard atomic weights) · hormone

      - Limit 500 ppm (the “limit” record in journal.germ, line 1)
      - Outside 5 to 5000 ppm the unit is probably wrong (common practice, no source)
      - Dissolves in water to 5 g/L (a supplier’s product data page, unverified)
      - Keeps 4 years as dry powder, 4 years in a stock, 1 year once diluted
      - In water at 20 C, about half of it is gone after 14 days (a supplier’s product data page, unverified)."
    `);
  });

  test('that is a salt has the limit of its acid', () => {
    expect(agentHover(`
      soak VER-24 2026-01-10, GA3K 250 ppm
                              ^^^^ here
    `)).toContain('- Limit 1000 ppm GA3 (default: common practice, no source)');
  });

  test('that the journal declares is what the journal says, escaped', () => {
    expect(agentHover(`
      agent kelp, 100 g/mol, solubility 10 g/L, extract of *seaweed*
            ^^^^ here
    `)).toMatchInlineSnapshot(`
      "**kelp** · 100 g/mol (declared)

      - Dissolves in water to 10 g/L (declared in the journal)
      - extract of \\*seaweed\\*"
    `);
  });

  test('that is water is only that', () => {
    expect(hover(`
      soak VER-24 2026-01-10, water
                              ^^^^^ here
    `, '2026-02-10')).toBe('**water**');
  });

  test('that hurts ends with its caution', () => {
    expect(hover(`
      soak VER-24 2026-01-10, KNO3 0.2 %
                              ^^^^ here
    `, '2026-02-10')).toContain('⚠ The product’s label, its safety data sheet, local rules and licensed practice come first. Powder: keep it out of eyes and lungs. Wear gloves and glasses, and keep out of draughts. Nitrate feeds fire: keep it away from alcohol and anything else that burns.');
  });
});
