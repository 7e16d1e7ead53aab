import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

describe('plumule', () => {
  it('prints its version and its help, and ends with 0', async () => {
    const folder = await folderWith({});
    expect(await plumule(folder, '--version')).toEqual({ code: 0, stdout: `${version}\n`, stderr: '' });
    const { code, stdout, stderr } = await plumule(folder, '--help');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toContain('Exit code\n');
    const check = await plumule(folder, 'check', '--help');
    expect(check.code).toBe(0);
    expect(check.stdout).toContain('UTF-16');
  });

  it('ends with 2 and helps on standard error where it does not understand', async () => {
    const folder = await folderWith({});
    for (const args of [[], ['chek'], ['check', '--fromat', 'json'], ['check', '--format', 'xml'], ['check', '--severity', 'bad']]) {
      const { code, stdout, stderr } = await plumule(folder, ...args);
      expect({ args, code, stdout }).toEqual({ args, code: 2, stdout: '' });
      expect(stderr).not.toBe('');
    }
    expect((await plumule(folder, 'chek')).stderr).toContain('Did you mean check?');
  });
});
