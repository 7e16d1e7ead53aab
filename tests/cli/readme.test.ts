import { existsSync, readdirSync } from 'node:fs';
import { appendFile, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { scripts } from '../../package.json';
import { cautionsFor, type CautionId } from '../../server/src/solutions/cautions.ts';
import { folderWith } from '../disk/helpers.ts';
import { shell } from './run.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const README = await readFile(path.join(ROOT, 'README.md'), 'utf8');
const DEVELOPERS = await readFile(path.join(ROOT, 'DEVELOPERS.md'), 'utf8');

describe('the README', () => {
  it('shows what the command line really prints of the journal that it shows', async () => {
    const folder = await folderWith({ 'winter.germ': '' });
    const blocks = [...README.matchAll(/^```(plumule|console)\n(.*?)^```$/gms)];
    let runs = 0;
    for (const [, kind, text = ''] of blocks) {
      if (kind === 'plumule') {
        await appendFile(path.join(folder, 'winter.germ'), `${text}\n`);
        continue;
      }
      const [command = '', ...output] = text.split('\n');
      expect(command).toMatch(/^\$ plumule /);
      expect((await shell(folder, `${command.slice(2)} 2>/dev/null`)).stdout).toBe(output.join('\n'));
      runs++;
    }
    expect(runs).toBe(7);
  });

  it('shows a journal with no problem, and then one with three', async () => {
    const journals = [...README.matchAll(/^```plumule\n(.*?)^```$/gms)].map(([, text = '']) => text);
    const folder = await folderWith({ 'winter.germ': journals[0]! });
    expect(await shell(folder, 'plumule check --today 2026-02-10')).toMatchObject({ code: 0, stdout: '' });
    await appendFile(path.join(folder, 'winter.germ'), `\n${journals[1]!}`);
    expect((await shell(folder, 'plumule check --today 2026-02-17')).stderr).toContain('1 error, 2 warnings');
  });

  it('has every caution that Plumule gives', () => {
    const all: CautionId[] = ['alcohol', 'bleach', 'peroxide', 'acid', 'alkali', 'oxidiser', 'poison', 'treated-seed'];
    const words = README.replaceAll(/\s+/g, ' ');
    for (const { id, text } of cautionsFor('powder', [{ cautions: all, dissolvesIn: 'water' }])) {
      // It stands alone there, so it has to say what is poisonous.
      expect(words).toContain(id === 'poison' ? text.replace('Poisonous', 'Thiourea is poisonous') : text);
    }
  });
});

describe('the page for developers', () => {
  it('names files and folders that are there', () => {
    const named = [...DEVELOPERS.matchAll(/`([\w.-]+\/[\w./-]*)`/g)].map(([, name = '']) => name);
    expect(named.length).toBeGreaterThan(20);
    const gone = named.filter(name => ![ROOT, path.join(ROOT, 'server/src')].some(base => existsSync(path.join(base, name))));
    expect(gone).toEqual([]);
    const files = readdirSync(path.join(ROOT, 'server/src'), { recursive: true, encoding: 'utf8' }).map(file => path.basename(file));
    const bare = [...DEVELOPERS.matchAll(/`([\w-]+\.ts)`/g)].map(([, name = '']) => name);
    expect(bare).not.toEqual([]);
    expect(bare.filter(name => !files.includes(name))).toEqual([]);
  });

  it('names scripts that there are', () => {
    const named = [...DEVELOPERS.matchAll(/npm run ([\w:]+)/g)].map(([, name = '']) => name);
    expect(named).not.toEqual([]);
    for (const name of named) expect(Object.keys(scripts)).toContain(name);
  });
});
