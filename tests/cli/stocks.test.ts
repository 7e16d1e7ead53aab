import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { paragraph } from '../../server/src/report/table.ts';
import { builtInAgents } from '../../server/src/solutions/agents.ts';
import { cautionsFor } from '../../server/src/solutions/cautions.ts';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const agent = builtInAgents.get('GA3')!;
const JOURNAL = `lot GEN-25 Gentiana lutea, 24 seeds
powder P1 2025-11-02, GA3 400 mg, purity 90 %, at freezer
stock G1 2026-01-09, from P1 halved 2 times, 100 mL, at fridge
soak GEN-25 2026-01-11 19:00, G1 20 mL, 24 h
soak GEN-25 2026-01-13 19:00, G1, 24 h
stock B1 2025-06-01, bleach 3 %, 500 mL
stock B2 2025-06-01, bleach 3 %, 500 mL
note B2 2025-09-01, thrown away
stock S1 2026-05-01, GA3 20 mg, 20 mL
`;

async function stocks(...more: string[]) {
  const folder = await folderWith({ 'winter.germ': JOURNAL });
  return { folder, ...await plumule(folder, 'report', '--stocks', ...more) };
}

describe('plumule report --stocks', () => {
  it('prints what is left on the day, in each format', async () => {
    const text = await stocks('--today', '2026-02-01');
    expect(text).toMatchObject({ code: 0, stderr: '' });
    expect(text.stdout.split('\n')).toEqual([
      'What is left as of 2026-02-01',
      '',
      '  Bottles',
      '    Name  Holds              Left               Of  Good until  At',
      '    G1    GA3 about 900 ppm  at most 80 mL  100 mL  2030-01-09  fridge',
      '    G1: taken once without a volume.',
      '',
      '  Packets of powder',
      '    Name  Holds                    Left                           Of  Good until  At',
      '    P1    GA3 powder, purity 90 %  about 300 mg (279 to 319)  400 mg  2029-11-02  freezer',
      ...paragraph(cautionsFor('powder', [agent]).map(({ text }) => text).join(' '), 96).map(line => `    ${line}`),
      '',
      '  Past their date',
      '    Name  Holds       Left        Of  Good until  At',
      '    B1    bleach 3 %  500 mL  500 mL  2025-07-27  –',
      '    A solution past its date is weaker than its label. Replace it, and write a note when you throw',
      '    it away.',
      '',
      'Used up or thrown away: B2.',
      '',
      '“At most”: some was taken without an amount, so less may be left, or none. “About”: powder was',
      'halved by eye; a half holds 45 to 55 % (common practice, no source).',
      '',
    ]);
    expect((await stocks('--today', '2026-02-01', '--format', 'md')).stdout).toContain('- [Packets of powder](#packets-of-powder)');
    expect((await stocks('--today', '2026-02-01', '--format', 'html')).stdout).toMatch(/^<!DOCTYPE html>[^]*<a href="#part-0-1">Packets of powder<\/a>[^]*<\/html>\n$/);
    expect(JSON.parse((await stocks('--today', '2026-02-01', '--format', 'json')).stdout)).toMatchObject({
      version: 1, plumule: version, unread: [],
      journals: [{
        files: ['winter.germ'], now: '2026-02-01',
        stocks: [
          { id: 'P1', kind: 'packet', unit: 'mg', made: 400, left: { least: 279, most: 319, likely: 300 }, state: 'good', ppm: null },
          { id: 'G1', kind: 'stock', unit: 'mL', from: 'P1', ppm: 900, about: true, left: { least: 0, most: 80, likely: null }, takenWithoutAmount: 1 },
          { id: 'B1', kind: 'bought', state: 'expired', left: { least: 500 } },
          { id: 'B2', state: 'gone', goneSince: '2025-09-01', left: { most: 0 } },
        ],
      }],
    });
  });

  it('says what was weighed again, and goes on from it', async () => {
    const folder = await folderWith({ 'winter.germ': `${JOURNAL}left P1 2026-01-20, 310 mg\nleft G1 2026-01-20, 75 mL\n` });
    const { stdout } = await plumule(folder, 'report', '--stocks', '--today', '2026-02-01');
    expect(stdout).toMatch(/G1 +GA3 about 900 ppm +75 mL +100 mL[^]*G1: 75 mL measured on 2026-01-20\.[^]*P1 +GA3 powder, purity 90 % +310 mg +400 mg/);
    expect(stdout).toContain('P1: 310 mg weighed on 2026-01-20.');
    expect(stdout).not.toContain('at most');
    const { stdout: data } = await plumule(folder, 'report', '--stocks', '--today', '2026-02-01', '--format', 'json');
    const { journals: [{ stocks: [p1, g1, b1] }] } = JSON.parse(data);
    expect([p1.measured, g1.measured, b1.measured]).toEqual([{ on: '2026-01-20', amount: 310 }, { on: '2026-01-20', amount: 75 }, null]);
    expect(g1.takenWithoutAmount).toBe(0);
  });

  it('counts what was taken by a day', async () => {
    expect((await stocks('--as-of', '2026-01-10')).stdout).toContain('G1    GA3 about 900 ppm  100 mL');
    expect((await stocks('--as-of', '2025-01-01')).stdout).toContain('No bottle and no packet has anything left.');
  });

  it('writes a page or Markdown to a file, and takes no option that is about lots', async () => {
    const { folder, stdout, stderr, code } = await stocks('--format', 'html', '-o', 'left.html', '--today', '2026-02-01');
    expect({ stdout, stderr, code }).toEqual({ stdout: '', stderr: 'plumule: wrote left.html\n', code: 0 });
    expect(await readFile(join(folder, 'left.html'), 'utf8')).toContain('<h2>Bottles</h2>');
    expect(await stocks('-o', 'left.txt')).toMatchObject({ code: 2, stdout: '' });
    expect(await stocks('--lot', 'GEN-25')).toMatchObject({ code: 2, stdout: '' });
    expect(await stocks('--places')).toMatchObject({ code: 2, stdout: '' });
  });
});
