import path from 'node:path';
import { mkdir } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { repositoryWith } from './git.ts';
import { plumule } from './run.ts';
import { version } from '../../package.json';

const LOT = 'lot GEN-25 Gentiana lutea, 60 seeds\n';
const COUNTS = 'sow GEN-25 2026-01-11, 24 seeds\ncount GEN-25 2026-02-01, 6\n';

it('plumule diff tells what changed since a commit, wherever in the repository one is', async () => {
  const repository = await repositoryWith({ 'winter.germ': LOT + COUNTS, '.old/b.germ': 'lot X Iris\n' });
  const { folder } = repository;
  expect(await plumule(folder, 'diff')).toEqual({ code: 0, stdout: '', stderr: '' });
  await repository.commit('winter.germ', `${LOT}${COUNTS}count GEN-25 2026-02-08, 3\n`);
  await repository.write('lots.germ', LOT);
  await repository.write('winter.germ', `${COUNTS}count GEN-25 2026-02-08, 3, 1 rotted\n`);
  await mkdir(path.join(folder, 'deep'));
  expect(await plumule(path.join(folder, 'deep'), 'diff')).toMatchObject({
    code: 0, stdout: 'GEN-25: count on 8 February 2026 now also 1 rotted\n',
  });
  expect((await plumule(folder, 'diff', 'HEAD~1')).stdout).toBe(
    'GEN-25: 3 more germinated, 1 more rotted on 8 February 2026; germinated 9 of 24 = 37.5 % instead\n  of 6 of 24 = 25 %\n');
  const { stdout } = await plumule(folder, 'diff', 'HEAD~1', '--format', 'json');
  expect(JSON.parse(stdout)).toEqual({
    version: 1, plumule: version, since: 'HEAD~1', unread: [],
    changes: [{
      about: 'GEN-25',
      records: [{ change: 'new', record: 'count', day: '2026-02-08', words: ['3 more germinated, 1 more rotted on 8 February 2026'] }],
      germinated: {
        before: { count: 6, ofLeast: 24, ofMost: 24, basis: '24 sown' },
        after: { count: 9, ofLeast: 24, ofMost: 24, basis: '24 sown' },
      },
      words: ['3 more germinated, 1 more rotted on 8 February 2026', 'germinated 9 of 24 = 37.5 % instead of 6 of 24 = 25 %'],
    }],
  });
  expect(await plumule(folder, 'diff', 'gone')).toMatchObject({ code: 2, stdout: '' });
  expect((await plumule(folder, 'diff', '--output=x')).code).toBe(2);
});

it('plumule diff says when a share is no longer known, and has a line that names nothing in JSON too', async () => {
  const repository = await repositoryWith({ 'winter.germ': LOT + COUNTS });
  await repository.write('winter.germ', `${LOT}${COUNTS.replace(', 6', ', 60')}cuont GEN-25\n`);
  expect((await plumule(repository.folder, 'diff')).stdout).toBe([
    'a new line that cannot be read: cuont GEN-25',
    'GEN-25: count on 1 February 2026 now 60 instead of 6; how much has germinated is no longer known:',
    '  more are counted (60) than there are seeds (24); it was 6 of 24 = 25 %', '',
  ].join('\n'));
  const { stdout } = await plumule(repository.folder, 'diff', '--format', 'json');
  expect(JSON.parse(stdout)).toMatchObject({ changes: [
    { about: null, records: [{ change: 'new', record: null, day: null }], germinated: null },
    { about: 'GEN-25', germinated: { after: { undefined: 'more are counted (60) than there are seeds (24)' } } },
  ] });
});
