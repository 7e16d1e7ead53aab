import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const JOURNAL = `lot GEN-25 Gentiana lutea, 24 seeds, at tin
sow GEN-25 2026-01-11, 24 seeds, at bag 3 slot 1
move GEN-25 2026-02-01, at fridge
`;

async function places(...more: string[]) {
  const folder = await folderWith({ 'winter.germ': JOURNAL });
  return plumule(folder, 'report', '--places', ...more);
}

describe('plumule report --places', () => {
  it('prints what lies where on the day, in each format', async () => {
    const text = await places('--today', '2026-01-20');
    expect(text).toMatchObject({ code: 0, stderr: '' });
    expect(text.stdout).toContain('bag 3\n  Slot  What');
    expect((await places('--as-of', '2026-03-01')).stdout).toContain('\nfridge\n');
    expect((await places('--today', '2026-01-20', '--format', 'md')).stdout).toContain('| 1 | GEN-25 | Gentiana lutea |');
    expect((await places('--today', '2026-01-20', '--format', 'html')).stdout).toMatch(/^<!DOCTYPE html>[^]*<h2>bag 3<\/h2>[^]*<\/html>\n$/);
    expect(JSON.parse((await places('--today', '2026-01-20', '--format', 'json')).stdout)).toMatchObject({
      version: 1, plumule: version, unread: [],
      journals: [{ files: ['winter.germ'], now: '2026-01-20', containers: [{ name: 'bag 3', contents: [{ slot: '1', id: 'GEN-25' }] }] }],
    });
  });

  it('takes no option that is about lots', async () => {
    expect(await places('--lot', 'GEN-25')).toMatchObject({ code: 2, stdout: '' });
    expect(await places('--by', 'species')).toMatchObject({ code: 2, stdout: '' });
  });
});
