import { mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { copyProgram, shell } from './run.ts';

const CHECK = 'NODE_OPTIONS= node plumule.cjs check winter.germ';
const SOUND = { code: 0, stdout: '', stderr: 'plumule: checked 1 file: no problems\n' };

async function folderWithProgram(): Promise<string> {
  const folder = await folderWith({ 'winter.germ': 'lot GEN-25 Gentiana lutea, 60 seeds\n' });
  await copyProgram(folder);
  return folder;
}

/** The one file of kept code, with what tells whether it was written anew. */
async function kept(folder: string) {
  const [name, ...others] = await readdir(path.join(folder, 'compiled'));
  expect(others).toEqual([]);
  const file = path.join(folder, 'compiled', name!);
  const { ino, size } = await stat(file);
  return { file, ino, size };
}

describe('compiled code', () => {
  it('is kept beside the program by its first run, and used by the next', async () => {
    const folder = await folderWithProgram();
    expect(await shell(folder, CHECK)).toEqual(SOUND);
    const first = await kept(folder);
    expect(path.basename(first.file)).toContain(process.versions.v8);
    expect(first.size).toBeGreaterThan(500_000);
    expect(await shell(folder, CHECK)).toEqual(SOUND);
    // V8 would have refused what it could not use, and the program would have written it again.
    expect(await kept(folder)).toEqual(first);
  });

  it.each([
    ['nothing', () => ''],
    ['other bytes', () => 'no code at all\n'.repeat(100_000)],
    ['half of it', (code: Buffer) => code.subarray(0, code.length / 2)],
    ['one bit more', (code: Buffer) => code.map((byte, at) => (at === code.length >> 1 ? byte ^ 1 : byte))],
  ])('is made again where the file holds %s', async (_, broken) => {
    const folder = await folderWithProgram();
    await shell(folder, CHECK);
    const { file, size } = await kept(folder);
    await writeFile(file, broken(await readFile(file)));
    expect(await shell(folder, CHECK)).toEqual(SOUND);
    expect(Math.abs((await kept(folder)).size - size)).toBeLessThan(size / 10);
  });

  it('is not kept by a program of another text that has the same length', async () => {
    const folder = await folderWithProgram();
    await shell(folder, CHECK);
    const { file } = await kept(folder);
    const loader = path.join(folder, 'commands.cjs');
    const print = /-([0-9a-f]{16})-/.exec(path.basename(file))![1]!;
    await writeFile(loader, (await readFile(loader, 'utf8')).replace(print, print.replace(/./, first => (first === '0' ? '1' : '0'))));
    expect(await shell(folder, CHECK)).toEqual(SOUND);
    expect(await readdir(path.join(folder, 'compiled'))).toHaveLength(2);
  });

  it('is neither kept nor used under flags of Node, for V8 would refuse it', async () => {
    const folder = await folderWithProgram();
    expect(await shell(folder, CHECK.replace('NODE_OPTIONS=', 'NODE_OPTIONS=--max-old-space-size=300'))).toEqual(SOUND);
    expect(await shell(folder, CHECK.replace('node', 'node --stack-size=900'))).toEqual(SOUND);
    expect(await readdir(folder)).not.toContain('compiled');
  });

  it('leaves no part of itself behind where it cannot take its place', async () => {
    const folder = await folderWithProgram();
    await shell(folder, CHECK);
    const { file } = await kept(folder);
    await rm(file);
    await mkdir(path.join(file, 'in the way'), { recursive: true });
    expect(await shell(folder, CHECK)).toEqual(SOUND);
    expect(await readdir(path.join(folder, 'compiled'))).toEqual([path.basename(file)]);
    expect(await readdir(file)).toEqual(['in the way']);
  });

  it('is not missed where it cannot be kept', async () => {
    const folder = await folderWithProgram();
    await writeFile(path.join(folder, 'compiled'), 'a file where the folder would be');
    expect(await shell(folder, CHECK)).toEqual(SOUND);
    expect(await readFile(path.join(folder, 'compiled'), 'utf8')).toContain('a file');
  });
});
