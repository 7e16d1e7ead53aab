import { describe, expect, test } from 'vitest';
import { signatureAt } from '../../server/src/features/signature.ts';
import { variantsOf } from '../support/fixture.ts';
import { cursorOf, journalOf } from './journals.ts';

/** The label with the active part in brackets, where the mark `here` ends. */
function signature(source: string): string | undefined {
  const [first, ...others] = variantsOf(source).map(({ fixture }) => {
    const { file, position } = cursorOf(fixture, 'here');
    const found = signatureAt(journalOf(fixture), file, position);
    if (!found) return undefined;
    const { label, parts, active } = found;
    if (active === undefined) return label;
    const { start, end } = parts[active]!;
    return `${label.slice(0, start)}<${label.slice(start, end)}>${label.slice(end)}`;
  });
  for (const other of others) expect(other).toBe(first);
  return first;
}

const at = (line: string) => signature(`\n  ${line}\n  ${' '.repeat(line.length - 1)}^ here`);

describe('the signature of a record', () => {
  test('shows what it is made of, and marks what comes next', () => {
    expect(at('sow ')).toBe('sow <BATCH> [DATE] [TIME], 24 seeds, 18 C, at bag 3 slot 2, in seed compost and grit, regime twowinters, outdoors, look again 2027-03-01');
    expect(at('sow V-1 ')).toMatch(/^sow BATCH <\[DATE\]> \[TIME\], /);
    expect(at('sow V-1 19:')).toMatch(/^sow BATCH \[DATE\] <\[TIME\]>, /);
    expect(at('sow V-1 2026-01-11 ')).toMatch(/^sow BATCH \[DATE\] <\[TIME\]>, /);
  });

  test('marks the plant of a lot, and its date', () => {
    expect(at('lot V-1 Vera')).toMatch(/^lot ID <PLANT> \[DATE\] \[TIME\], /);
    expect(at('lot V-1 Veratrum 2026-')).toMatch(/^lot ID PLANT <\[DATE\]> \[TIME\], /);
  });

  test('leaves out the facts that the line has, but for the one that is being written', () => {
    expect(at('sow V-1, 18 C, 24 seeds, at b')).toBe('sow BATCH [DATE] [TIME], <at bag 3 slot 2>, in seed compost and grit, regime twowinters, outdoors, look again 2027-03-01');
  });

  test('marks what is needed where a fact begins', () => {
    expect(at('dilute G2, ')).toBe('dilute ID [DATE] [TIME], <from G1 10 mL>, to 20 mL, keeps 4 years, at bag 3 slot 2');
    expect(at('dilute G2, from G1 10 mL, ')).toBe('dilute ID [DATE] [TIME], <to 20 mL>, keeps 4 years, at bag 3 slot 2');
    expect(at('pot V-1, ')).toBe('pot BATCH [DATE] [TIME], <9 seedlings>, at bag 3 slot 2');
  });

  test('keeps what can be repeated', () => {
    expect(at('count V-1, 3, 1 rotted, ')).toBe('count BATCH [DATE] [TIME], <3 germinated>, look again 2027-03-01');
  });

  test('marks the text of a note, commas and all', () => {
    expect(at('note V-1, seed coats hard, 24 h')).toBe('note ID [DATE] [TIME], <text>');
  });

  test('marks nothing for a fact that the record does not take', () => {
    expect(at('lift V-1, at b')).toBe('lift BATCH [DATE] [TIME]');
  });

  test('says of a reminder that its date is no choice', () => {
    expect(at('due V-1 ')).toBe('due ID <DATE> [TIME], text');
  });

  test('is shown in no remark, comment, keyword, and behind no word that is none', () => {
    for (const line of ['  at b', '# sow ', 'sow', 'sowed V-1, ']) expect([line, at(line)]).toEqual([line, undefined]);
  });
});

test('the parts say what they are', () => {
  const [{ fixture } = { fixture: undefined }] = variantsOf('\n  soak V-1, \n          ^ here');
  const found = signatureAt(journalOf(fixture!), 'journal.germ', { line: 0, character: 10 });
  expect(found?.says).toBe('seed goes into a liquid, or onto a damp towel with unmeasured powder');
  expect(found?.parts.map(({ says }) => says)).toEqual([
    'a lot or a batch', 'year-month-day; without one, that of the “day” line above', 'of day, such as 19:30',
    'needed; can be repeated', undefined, undefined, undefined, undefined,
  ]);
});
