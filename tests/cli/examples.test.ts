import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { exampleOf } from '../../server/src/cli/program/command.ts';
import { plumule as program } from '../../server/src/cli/program.ts';
import { repositoryWith, type Repository } from './git.ts';
import { plumule } from './run.ts';

const README = fileURLToPath(new URL('../../README.md', import.meta.url));

/** The journal of the README under git, as it was before its last count and as it is, and what else examples name. */
async function keptFor(name: string): Promise<Repository> {
  const journal = /^```plumule\n(.*?)^```$/ms.exec(await readFile(README, 'utf8'))?.[1] ?? '';
  const before = journal.trimEnd().split('\n').slice(0, -1).join('\n');
  const repository = await repositoryWith({ 'winter.germ': `${before}\n` });
  await repository.commit('winter.germ', journal);
  // Versions of one file would be one journal with each other.
  if (name === 'merge') {
    await repository.write('before.germ', `${before}\n`);
    await repository.write('phone.germ', `${before}\n# Look at the tin, too.\n`);
  }
  if (name === 'import') await repository.write('notes.csv', 'Lot,Plant,Seeds\nIRI-26,Iris sibirica,40\n');
  return repository;
}

describe('the example in the help of', () => {
  it.each(program.commands.map(command => [command.name(), command] as const))('%s is there, and does something', async (name, command) => {
    const example = exampleOf(command);
    expect(example).toMatch(new RegExp(`^plumule ${name}( |$)`));
    const { folder } = await keptFor(name);
    const help = await plumule(folder, name, '--help');
    expect(help.stdout).toContain(`\nExample:\n  ${example}\n`);
    // It has tests of its own; within this process it would listen to the tests.
    if (name === 'serve') return;
    const [, ...given] = [...example.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');
    const { code, stdout, stderr } = await plumule(folder, ...given);
    expect([0, 1], stderr).toContain(code);
    if (given.includes('--output')) await readFile(path.join(folder, given[given.indexOf('--output') + 1]!));
    else if (name !== 'format') expect(stdout + stderr).not.toBe('');
  });
});
