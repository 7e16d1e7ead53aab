// On Debian: apt-get install python3-pil, a reader and writer of pictures that nobody here wrote.
import { spawnSync } from 'node:child_process';
import { mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barePhoto } from '../../../server/src/publish/photos/bare.ts';
import { folderWith } from '../../disk/helpers.ts';

const SCRIPT = fileURLToPath(new URL('photos.py', import.meta.url));
const PYTHON = ['python3', '/usr/bin/python3'].find(command => spawnSync(command, ['-c', 'import PIL']).status === 0);
// Only a run that is meant to check everything fails for want of the program.
const missing = PYTHON === undefined && !process.env.CI;

function pillow(...args: readonly string[]): string {
  const run = spawnSync(PYTHON!, [SCRIPT, ...args], { encoding: 'utf8' });
  if (run.status !== 0) throw new Error(run.stderr);
  return run.stdout;
}

describe.skipIf(missing)(`Pillow${missing ? ' (not installed here: nothing was compared)' : ''}`, () => {
  it('finds the same pictures, colours, pace and orientation, and nothing else that was said', async () => {
    const folder = await folderWith({});
    const [before, after] = [path.join(folder, 'before'), path.join(folder, 'after')];
    await mkdir(before);
    await mkdir(after);
    pillow('make', before);
    for (const name of await readdir(before)) {
      const bare = barePhoto(await readFile(path.join(before, name)));
      expect(bare, name).toBeDefined();
      await writeFile(path.join(after, name), bare!);
      expect(barePhoto(bare!), `${name}, again`).toEqual(bare);
    }
    expect(pillow('compare', before, after)).toBe('');
    // The comparison itself finds what is left in.
    expect(pillow('compare', before, before)).toContain('telephone.jpg: tells where');
  });

  it('breaks off nowhere in a way that throws, and gives no picture that breaks off', async () => {
    const folder = await folderWith({});
    pillow('make', folder);
    const photos = await Promise.all((await readdir(folder)).map(name => readFile(path.join(folder, name))));
    const share = fc.double({ min: 0, max: 0.95, noNaN: true });
    fc.assert(fc.property(fc.constantFrom(...photos), share, fc.nat(255), (photo, part, byte) => {
      const at = Math.floor(part * photo.length);
      const wrong = Uint8Array.from(photo);
      wrong[at] = byte;
      barePhoto(wrong);
      const cut = barePhoto(photo.subarray(0, at));
      // A second picture behind the first one does not matter.
      if (cut) expect(cut).toEqual(barePhoto(photo));
    }), { numRuns: 3000 });
  });
});

it('what is no picture that is known gives none', () => {
  for (const text of ['', 'a picture', '\xff\xd8', '\x89PNG\r\n\x1a\n', 'GIF89a', 'RIFF\0\0\0\0WEBP'.slice(0, 11)]) {
    expect(barePhoto(Buffer.from(text, 'latin1')), JSON.stringify(text)).toBeUndefined();
  }
});

describe('a WebP', () => {
  const chunk = (type: string, size: number) => `${type}${String.fromCharCode(size)}\0\0\0${'x'.repeat(size)}`;
  const webp = (chunks: string) => Buffer.from(`RIFF${String.fromCharCode(4 + chunks.length)}\0\0\0WEBP${chunks}`, 'latin1');

  it('that breaks off between two of its parts gives none', () => {
    const whole = webp(chunk('ICCP', 4) + chunk('VP8 ', 6) + chunk('VP8 ', 6));
    expect(barePhoto(whole)).toEqual(Uint8Array.from(whole));
    for (const end of [12, 24, 38]) expect(barePhoto(whole.subarray(0, end)), String(end)).toBeUndefined();
  });

  it('in which there is no picture gives none', () => {
    expect(barePhoto(webp(''))).toBeUndefined();
    expect(barePhoto(webp(chunk('ICCP', 4)))).toBeUndefined();
  });
});
