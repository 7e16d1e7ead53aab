import { describe, expect, it } from 'vitest';
import { merge } from '../../server/src/merge/merge.ts';
import { factsOf, faultsOf } from './facts.ts';
import { BASE, merged } from './helpers.ts';

describe('what one side did alone', () => {
  it('holds: records in another order, with what the other side added', () => {
    const base = 'lot A-1 Adonis vernalis\nlot B-1 Bellis perennis\nlot C-1 Crambe maritima\n';
    const turned = 'lot C-1 Crambe maritima\nlot A-1 Adonis vernalis\nlot B-1 Bellis perennis\n';
    const added = base.replace('lot C-1', 'lot B-2 Bellis annua\nlot C-1');
    const expected = 'lot C-1 Crambe maritima\nlot A-1 Adonis vernalis\nlot B-1 Bellis perennis\nlot B-2 Bellis annua\n';
    expect(merged(turned, added, base).text).toBe(expected);
    expect(merged(added, turned, base).text).toBe(expected);
  });

  it('holds: a record formatted, with what the other side made of its facts', () => {
    const rough = BASE.replace('count GEN-25/A, 6, 1 rotted', 'Count GEN-25/A ,6 , 1 ROTTED');
    expect(merged(BASE, rough.replace('1 ROTTED', '2 rotted'), rough).text).toBe(rough.replace('1 ROTTED', '2 rotted'));
    expect(merged(BASE, `${rough}count GEN-25/B, 2\n`, rough).text).toBe(`${BASE}count GEN-25/B, 2\n`);
  });

  it('holds: a record moved below another day is of that day, and what was added below the old one is not', () => {
    const base = `${BASE}note GEN-25, watered\n`;
    const moved = base.replace('note GEN-25, watered\n', '').replace('count GEN-25/B, 0\n', 'count GEN-25/B, 0\nnote GEN-25, watered\n');
    const { text, conflicts } = merged(moved, `${base}note GEN-25, dry\n`, base);
    expect(conflicts).toEqual([]);
    expect(faultsOf(factsOf(base), factsOf(moved), factsOf(`${base}note GEN-25, dry\n`), factsOf(text))).toEqual([]);
  });

  it('holds: line ends, byte order mark, final line end', () => {
    const added = `${BASE}count GEN-25/B, 2\n`;
    expect(merged(BASE.replaceAll('\n', '\r\n'), added).text).toBe(added.replaceAll('\n', '\r\n'));
    expect(merged(added, BASE.replaceAll('\n', '\r\n')).text).toBe(added.replaceAll('\n', '\r\n'));
    expect(merged(`\uFEFF${BASE}`, added).text).toBe(`\uFEFF${added}`);
    expect(merged(added, BASE.slice(0, -1)).text).toBe(added.slice(0, -1));
    expect(merged(added, `${BASE.slice(0, -1)}0`, BASE.slice(0, -1)).text).toBe(`${BASE.slice(0, -1)}0\ncount GEN-25/B, 2\n`);
  });

  it('holds: rules and empty comments that stand there many times', () => {
    const base = ['lot A-1 Adonis vernalis', '# ---', 'lot B-1 Bellis perennis', '# ---', 'lot C-1 Crambe maritima', ''].join('\n');
    const ours = `# ---\n${base}`;
    const theirs = `${base}# ---\nlot D-1 Dodecatheon meadia\n`;
    expect(merged(ours, theirs, base)).toMatchObject({ text: `# ---\n${theirs}`, conflicts: [] });
  });

  it('holds: nothing begun with, and nothing left', () => {
    expect(merged('lot A-1 Adonis vernalis\n', 'lot B-1 Bellis perennis\n', '').text).toBe('lot A-1 Adonis vernalis\nlot B-1 Bellis perennis\n');
    expect(merged('', '', BASE).text).toBe('');
    expect(merged('', BASE, BASE).text).toBe('');
  });
});

describe('a large journal', () => {
  it('of fifty thousand records takes seconds, not minutes', () => {
    const lines = Array.from({ length: 50_000 }, (_, n) => `count L${n % 700} 20${10 + (n % 16)}-0${1 + (n % 9)}-1${n % 10}, ${n % 7}\n`);
    const base = lines.join('');
    const begun = Date.now();
    const { text, conflicts } = merge(base, `${base}note L1 2027-01-01, mine\n`, `note L2 2009-01-01, its\n${base.replace('L5 ', 'L6 ')}`);
    expect(conflicts).toEqual([]);
    expect(text).toHaveLength(base.length + 2 * 'note L1 2027-01-01, mine\n'.length - 1);
    expect(Date.now() - begun).toBeLessThan(40_000);
  }, 80_000);
});
