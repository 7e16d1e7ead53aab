import { once } from 'node:events';
import { symlink, truncate } from 'node:fs/promises';
import { createServer } from 'node:net';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { MOST_BYTES, readJournal } from '../../server/src/disk/read.ts';
import { decode } from '../../server/src/disk/utf8.ts';
import { folderWith } from './helpers.ts';

async function read(content: string | Uint8Array): Promise<string> {
  const folder = await folderWith({ 'a.germ': content });
  return readJournal(path.join(folder, 'a.germ'));
}

describe('reading a journal', () => {
  it('gives the text with its line ends as they are', async () => {
    expect(await read('lot A-1 種子 🌱\r\n# end')).toBe('lot A-1 種子 🌱\r\n# end');
  });

  it('leaves out a byte order mark at the beginning and nowhere else', async () => {
    expect(await read('\uFEFF# a\uFEFF')).toBe('# a\uFEFF');
  });

  it('names the first byte that is no UTF-8, where it is and in which line', async () => {
    const latin1 = Buffer.from('# Käfig\n# sow at 18 °C', 'latin1');
    await expect(read(latin1)).rejects.toThrow('it is not UTF-8: byte 0xE4 at offset 3, in line 1; save it as UTF-8');
  });

  it('counts bytes, not characters, up to that byte, and passes over a U+FFFD that was written', async () => {
    const bytes = Buffer.concat([Buffer.from('\uFEFF# 🌱\uFFFD\n種'), Buffer.from([0xb0]), Buffer.from(' C')]);
    // 3 (mark) + 2 + 4 (seedling) + 3 (U+FFFD) + 1 + 3
    await expect(read(bytes)).rejects.toThrow('byte 0xB0 at offset 16, in line 2');
  });

  it('calls a sequence that the end of the file cuts off no UTF-8', async () => {
    await expect(read(Buffer.from('# 種').subarray(0, 4))).rejects.toThrow('byte 0xE7 at offset 2, in line 1');
  });

  it('recognises UTF-16', async () => {
    await expect(read(Buffer.from('\uFEFFlot', 'utf16le'))).rejects.toThrow('it is UTF-16, not UTF-8');
  });

  it('says of a path that leads nowhere that it is gone', async () => {
    const folder = await folderWith({});
    await expect(readJournal(path.join(folder, 'a.germ'))).rejects.toMatchObject({
      message: 'there is no such file or folder', gone: true, path: path.join(folder, 'a.germ'),
    });
  });

  it('does not read a socket, which like a pipe has no end, nor a folder', async () => {
    const folder = await folderWith({ 'b.germ/c.germ': '' });
    const socket = createServer().listen(path.join(folder, 'a.germ'));
    onTestFinished(() => void socket.close());
    await once(socket, 'listening');
    await expect(readJournal(path.join(folder, 'a.germ'))).rejects.toMatchObject({ message: 'it is not a regular file', gone: false });
    await expect(readJournal(path.join(folder, 'b.germ'))).rejects.toThrow('it is not a regular file');
  });

  it('does not read a file that is larger than any journal, without looking into it', async () => {
    const folder = await folderWith({ 'a.germ': '', 'b.germ': '' });
    await truncate(path.join(folder, 'a.germ'), MOST_BYTES + 1);
    await expect(readJournal(path.join(folder, 'a.germ'))).rejects.toThrow('it is larger than 16 MiB');
    await truncate(path.join(folder, 'b.germ'), MOST_BYTES);
    expect(await readJournal(path.join(folder, 'b.germ'))).toHaveLength(MOST_BYTES);
  });

  it('says when links form a loop', async () => {
    const folder = await folderWith({});
    await symlink(path.join(folder, 'a.germ'), path.join(folder, 'a.germ'));
    await expect(readJournal(path.join(folder, 'a.germ'))).rejects.toThrow('its symbolic links form a loop');
  });

  it('finds any stray byte put into any text', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'grapheme' }), (before, after) => {
      const head = Buffer.from(before);
      // 0xFF occurs nowhere in UTF-8; as the first of two it could pass for UTF-16.
      fc.pre(head.length > 0);
      const bytes = Buffer.concat([head, Buffer.from([0xff]), Buffer.from(after)]);
      expect(() => decode('a.germ', bytes)).toThrow(`byte 0xFF at offset ${head.length},`);
    }));
  });
});
