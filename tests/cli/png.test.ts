import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { findResvg, NO_RESVG, pngOf } from '../../server/src/cli/png.ts';
import { folderWith } from '../disk/helpers.ts';
import { copyProgram, plumule, shell } from './run.ts';

const JOURNAL = `lot GEN-25 Gentiana lutea, 60 seeds
split GEN-25, A 24 seeds, B 24 seeds
soak GEN-25/A 2026-01-10 19:00, GA3 500 ppm, 24 h
sow GEN-25/A 2026-01-11 19:10
sow GEN-25/B 2026-01-11 19:10
count GEN-25/A 2026-01-25, 9
count GEN-25/B 2026-01-25, 2
`;
const TODAY = ['--today', '2026-02-10'];
const resvg = await findResvg();
const letters = { svg: { markup: '<svg xmlns="http://www.w3.org/2000/svg" width="50" height="20"><text y="15">GEN</text></svg>' } };
/** A machine without resvg or a font can draw no PNG, and says so; where everything is checked, both are there. */
const canDraw = Boolean(process.env.CI) || (resvg !== undefined && pngOf(letters, resvg) !== undefined);

/** The pixels of a part of a PNG that are not of one colour: red, green, blue. */
function otherThan(
  paper: readonly number[], png: Buffer, crop: { left: number; top: number; right: number; bottom: number },
): number {
  const [width, height] = [png.readUInt32BE(16), png.readUInt32BE(20)];
  const address = `data:image/png;base64,${png.toString('base64')}`;
  const again = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image href="${address}" width="${width}" height="${height}"/></svg>`;
  const { pixels } = new resvg!.Resvg(again, { crop }).render();
  let others = 0;
  for (let at = 0; at < pixels.length; at += 4) if (paper.some((part, i) => pixels[at + i] !== part)) others++;
  return others;
}

describe('plumule draw as PNG', () => {
  it.skipIf(!canDraw)('has the size of the picture twice over, with its words, in the colours asked for', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    expect(await plumule(folder, 'draw', 'GEN-25', '-o', 'a.svg', '--theme', 'dark', ...TODAY)).toMatchObject({ code: 0 });
    expect(await plumule(folder, 'draw', 'GEN-25', '-o', 'a.PNG', '--theme', 'dark', ...TODAY)).toEqual({
      code: 0, stdout: '', stderr: 'plumule: wrote a.PNG\n',
    });
    const [svg, png] = [await readFile(path.join(folder, 'a.svg'), 'utf8'), await readFile(path.join(folder, 'a.PNG'))];
    const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/u.exec(svg)!.map(Number);
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([2 * width!, 2 * height!]);
    const paper = [0x1e, 0x21, 0x24];
    // The title stands in the first 26 pixels of the picture, with nothing else; above it there is paper.
    expect(otherThan(paper, png, { left: 0, top: 0, right: 600, bottom: 12 })).toBe(0);
    expect(otherThan(paper, png, { left: 24, top: 16, right: 400, bottom: 50 })).toBeGreaterThan(500);
  });

  it.skipIf(!canDraw)('replaces an older one, and nothing else', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL, 'b.png': 'a photo, or what else it may be' });
    for (let run = 0; run < 2; run++) {
      expect(await plumule(folder, 'draw', 'GEN-25', '-o', 'a.png', ...TODAY)).toMatchObject({ code: 0 });
    }
    expect(await plumule(folder, 'draw', 'GEN-25', '-o', 'b.png', ...TODAY)).toEqual({
      code: 2, stdout: '', stderr: 'plumule: b.png: this file exists and is not a picture; choose another name\n',
    });
  });

  it.skipIf(resvg === undefined && !process.env.CI)('is none where there is no font for its words', () => {
    expect(pngOf(letters, resvg!, { loadSystemFonts: false })).toBeUndefined();
  });

  it('is for names that end so: others are asked for again', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    expect((await plumule(folder, 'draw', 'GEN-25', '-o', 'a.jpg', ...TODAY)).stderr).toBe(
      'plumule: a.jpg: pictures are SVG or PNG files, so choose a name that ends in .svg or .png\n');
  });

  it('says what to install where resvg is missing, and writes nothing', async () => {
    const folder = await folderWith({ 'journal/winter.germ': JOURNAL });
    await copyProgram(folder);
    const run = await shell(folder, 'node plumule.cjs draw GEN-25 journal -o a.png');
    expect(run).toEqual({ code: 2, stdout: '', stderr: `plumule: a.png: ${NO_RESVG}\n` });
    expect(await readdir(folder)).not.toContain('a.png');
  });
});
