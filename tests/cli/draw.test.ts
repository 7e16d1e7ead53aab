import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { themes } from '../../server/src/pictures/theme.ts';
import { folderWith } from '../disk/helpers.ts';
import { shapesOf, withClass } from '../pictures/svg.ts';
import { plumule } from './run.ts';

const JOURNAL = `lot GEN-25 Gentiana lutea, 48 seeds
split GEN-25, A 20 seeds, B 20 seeds
soak GEN-25/A 2026-01-05 18:00, GA3 500 ppm, 24 h
sow GEN-25/A 2026-01-06 18:00
sow GEN-25/B 2026-01-06 18:00
count GEN-25/A 2026-02-10, 18
count GEN-25/B 2026-02-10, 7
lot IRI-1 Iris alba, 10 seeds
`;
const TODAY = ['--today', '2026-02-12'];

const LADDER = `lot L-1 Iris alba, 80 seeds
split L-1, A 20 seeds, B 20 seeds, C 20 seeds
soak L-1/A 2026-01-05 18:00, GA3 250 ppm, 24 h
soak L-1/B 2026-01-05 18:00, GA3 1000 ppm, 24 h
soak L-1/C 2026-01-05 18:00, water, 24 h
sow L-1/A 2026-01-06 18:00
sow L-1/B 2026-01-06 18:00
sow L-1/C 2026-01-06 18:00
count L-1/A 2026-02-10, 9
count L-1/B 2026-02-10, 14
count L-1/C 2026-02-10, 2
`;

describe('plumule draw', () => {
  it('prints the picture of a lot, and of a batch in the colours asked for', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    const lot = await plumule(folder, 'draw', 'GEN-25', ...TODAY);
    expect(lot).toMatchObject({ code: 0, stderr: '' });
    expect(lot.stdout).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" .*<\/svg>\n$/s);
    expect(withClass({ svg: { markup: lot.stdout } }, 'steps')).toHaveLength(2);
    const batch = await plumule(folder, 'draw', 'GEN-25/B', '--theme', 'dark', ...TODAY);
    expect(shapesOf({ svg: { markup: batch.stdout } }).find(({ name }) => name === 'title')!.text).toBe(
      'GEN-25/B Gentiana lutea',
    );
    expect(batch.stdout).toContain(themes.dark.paper);
  });

  it('writes a file in place of an older picture, and of nothing else', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL, 'old.svg': '<svg/>', 'notes.svg': 'mine' });
    expect(await plumule(folder, 'draw', 'GEN-25', '-o', 'old.svg', ...TODAY)).toEqual({
      code: 0,
      stdout: '',
      stderr: 'plumule: wrote old.svg\n',
    });
    expect(await readFile(path.join(folder, 'old.svg'), 'utf8')).toContain('18 of 20 germinated');
    expect(await plumule(folder, 'draw', 'GEN-25', '-o', 'notes.svg', ...TODAY)).toEqual({
      code: 2,
      stdout: '',
      stderr: 'plumule: notes.svg: this file exists and is not a picture; choose another name\n',
    });
    expect((await plumule(folder, 'draw', 'GEN-25', '-o', 'a.gif', ...TODAY)).stderr).toContain('are SVG or PNG files');
  });

  it('draws the season of the folder that is named', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    const { code, stdout } = await plumule(folder, 'draw', '--season', '.', ...TODAY);
    expect(code).toBe(0);
    expect(shapesOf({ svg: { markup: stdout } }).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['The season at a glance', 'GEN-25/A']),
    );
    expect((await plumule(folder, 'draw')).stderr).toBe('plumule: say what to draw: a lot, a batch, a plant, --season, --places or --stocks\n');
  });

  it('draws the winters of a plant, by its name or by one of its lots', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    const plant = await plumule(folder, 'draw', 'Gentiana lutea', '--winters', ...TODAY);
    expect(plant).toMatchObject({ code: 0, stderr: '' });
    expect(shapesOf({ svg: { markup: plant.stdout } }).find(({ name }) => name === 'title')!.text).toBe('Gentiana lutea, winter by winter');
    expect((await plumule(folder, 'draw', 'GEN-25/A', '--winters', ...TODAY)).stdout).toBe(plant.stdout);
    expect(await plumule(folder, 'draw', 'Iris alba', '--winters', ...TODAY)).toEqual({
      code: 1,
      stdout: '',
      stderr: 'plumule: Iris alba: there is nothing to draw yet, because no lot of it has a count on a known day\n',
    });
  });

  it('says of estimated seed why there is no picture', async () => {
    const folder = await folderWith({ 'winter.germ': 'lot IRI-2 Iris alba, about 40 seeds\nsow IRI-2 2026-01-06\ncount IRI-2 2026-02-10, 7\n' });
    expect((await plumule(folder, 'draw', 'IRI-2', ...TODAY)).stderr).toBe(
      'plumule: IRI-2: there is nothing to draw yet, because its seeds were estimated, not counted\n',
    );
  });

  it('says what it cannot draw, and what was meant', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    expect(await plumule(folder, 'draw', 'GEN-26', ...TODAY)).toEqual({
      code: 2,
      stdout: '',
      stderr: 'plumule: there is no lot, batch or plant “GEN-26”; did you mean “GEN-25”?\n',
    });
    expect(await plumule(folder, 'draw', 'IRI-1', ...TODAY)).toEqual({
      code: 1,
      stdout: '',
      stderr: 'plumule: IRI-1: there is nothing to draw yet, because it has no count on a known day\n',
    });
  });
});

describe('plumule report -o', () => {
  it('writes one page that stands alone, and does so again', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    for (let time = 0; time < 2; time++) {
      const outcome = await plumule(folder, 'report', '--format', 'html', '-o', 'report.html', ...TODAY);
      expect(outcome).toEqual({ code: 0, stdout: '', stderr: 'plumule: wrote report.html\n' });
    }
    const page = await readFile(path.join(folder, 'report.html'), 'utf8');
    expect(page).toMatch(/^<!DOCTYPE html>\n.*Report as of 2026-02-12.*<svg .*Worth repeating.*<\/html>\n$/s);
    expect((await plumule(folder, 'report', '--format', 'html', ...TODAY)).stdout).toBe(page);
  });

  it('writes Markdown with its pictures as files beside it, the verdict before the table', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    const outcome = await plumule(folder, 'report', '--format', 'md', '-o', 'report.md', ...TODAY);
    expect(outcome.stderr).toBe('plumule: wrote report.md and 1 picture beside it\n');
    expect((await readdir(folder)).sort()).toEqual(['report-GEN-25.svg', 'report.md', 'winter.germ']);
    const report = await readFile(path.join(folder, 'report.md'), 'utf8');
    const order = ['](report-GEN-25.svg)', 'Worth repeating', '| Batch |'].map(words => report.indexOf(words));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order[0]).toBeGreaterThan(0);
  });

  it('leaves a file of somebody’s own alone, and has no file for other formats', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    await writeFile(path.join(folder, 'mine.md'), '# My winter\n');
    expect((await plumule(folder, 'report', '--format', 'md', '-o', 'mine.md', ...TODAY)).code).toBe(2);
    expect(await readFile(path.join(folder, 'mine.md'), 'utf8')).toBe('# My winter\n');
    expect(await plumule(folder, 'report', '-o', 'a.txt')).toEqual({
      code: 2,
      stdout: '',
      stderr: 'plumule: --output is for --format html and md\n',
    });
  });

  it('draws a plant over its winters, the doses of a lot, what lies where, and what is left', async () => {
    const folder = await folderWith({ 'winter.germ': `${JOURNAL}stock G1 2026-01-01, GA3 20 mg, 20 mL\nsow IRI-1 2026-01-06, at frame\n` });
    expect((await plumule(folder, 'draw', 'gentiana  lutea')).stdout).toContain('Treated less untreated: Gentiana lutea');
    expect((await plumule(folder, 'draw', '--places')).stdout).toContain('What lies where');
    expect((await plumule(folder, 'draw', '--stocks')).stdout).toContain('What is left');
    expect(await plumule(folder, 'draw', 'Gentiana lutea', '--doses')).toMatchObject({
      stderr: 'plumule: Gentiana lutea is a plant, and --doses draws one lot: no lot of it has a ladder of doses\n', stdout: '', code: 2,
    });
    await writeFile(path.join(folder, 'ladder.germ'), LADDER);
    expect(await plumule(folder, 'draw', 'Iris alba', '--doses')).toMatchObject({
      stderr: 'plumule: Iris alba is a plant, and --doses draws one lot: name L-1\n', stdout: '', code: 2,
    });
    expect((await plumule(folder, 'draw', 'L-1', '--doses')).stdout).toContain('GA3 by dose in L-1');
    const { stderr, code } = await plumule(folder, 'draw', 'GEN-25', '--doses');
    expect({ stderr, code }).toEqual({
      stderr: 'plumule: GEN-25: there are no doses to draw, because only two or more of one agent beside untreated seed make a ladder\n', code: 1,
    });
  });
});
