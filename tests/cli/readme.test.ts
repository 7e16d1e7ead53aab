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
const COMMANDS = await readFile(path.join(ROOT, 'syntaxes/commands.md'), 'utf8');
const DEVELOPERS = await readFile(path.join(ROOT, 'DEVELOPERS.md'), 'utf8');

/** What stands in the blocks of code of a page that are marked with a word. */
function blocks(page: string): { readonly kind: string; readonly text: string }[] {
  return [...page.matchAll(/^```(plumule|console)\n(.*?)^```$/gms)].map(([, kind = '', text = '']) => ({ kind, text }));
}

/** Runs each command that a page shows on the journal that it shows above it, or on the one in `before`. */
async function outputsOf(page: string, before = ''): Promise<{ readonly shown: string[]; readonly printed: string[] }> {
  const folder = await folderWith({ 'winter.germ': before });
  const [shown, printed]: [string[], string[]] = [[], []];
  for (const { kind, text } of blocks(page)) {
    if (kind === 'plumule') {
      await appendFile(path.join(folder, 'winter.germ'), `${text}\n`);
      continue;
    }
    const [command = ''] = text.split('\n');
    expect(command).toMatch(/^\$ plumule /);
    shown.push(text);
    printed.push(`${command}\n${(await shell(folder, `${command.slice(2)} 2>/dev/null`)).stdout}`);
  }
  return { shown, printed };
}

describe('the README', () => {
  it('shows what the command line really prints of the journal that it shows', async () => {
    const { shown, printed } = await outputsOf(README);
    expect(printed).toEqual(shown);
    expect(shown.length).toBe(2);
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

describe('the page on the command line', () => {
  it('shows what the command line really prints of the journal in the README', async () => {
    const { shown, printed } = await outputsOf(COMMANDS, `${blocks(README)[0]!.text}\n`);
    expect(printed).toEqual(shown);
    expect(shown.length).toBe(6);
  });

  it('has a line for every command', async () => {
    const folder = await folderWith({});
    const help = (await shell(folder, 'plumule --help')).stdout;
    const listed = [...help.split('Commands:\n')[1]!.split('\n\n')[0]!.matchAll(/^  (\w+) /gm)].map(([, name = '']) => name).filter(name => name !== 'help');
    expect(listed.length).toBeGreaterThan(10);
    for (const name of listed) expect(COMMANDS).toContain(`    plumule ${name} `);
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
