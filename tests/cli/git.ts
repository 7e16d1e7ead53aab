/** Real repositories of git for tests, apart from whatever the machine has set up for its own. */
import { execFile } from 'node:child_process';
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { folderWith } from '../disk/helpers.ts';
import type { Outcome } from './run.ts';

const BUILT = fileURLToPath(new URL('../../dist/plumule.cjs', import.meta.url));
const ENV = {
  GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null', GIT_TERMINAL_PROMPT: '0', GIT_EDITOR: 'true',
  GIT_AUTHOR_NAME: 'A Grower', GIT_AUTHOR_EMAIL: 'grower@example.org',
  GIT_COMMITTER_NAME: 'A Grower', GIT_COMMITTER_EMAIL: 'grower@example.org',
};
const run = promisify(execFile);

export class Repository {
  constructor(readonly folder: string) {}

  /** Runs git; an exit code other than 0 is an outcome like any other. */
  async git(...args: string[]): Promise<Outcome> {
    try {
      // As npm would put it on the path.
      const env = { ...process.env, ...ENV, PATH: `${path.join(this.folder, '.git', 'bin')}:${process.env.PATH ?? ''}` };
      const { stdout, stderr } = await run('git', args, { cwd: this.folder, env });
      return { code: 0, stdout, stderr };
    } catch (error) {
      const { code, stdout, stderr } = error as { code: number; stdout: string; stderr: string };
      return { code, stdout, stderr };
    }
  }

  async write(name: string, text: string): Promise<void> {
    await mkdir(path.dirname(path.join(this.folder, name)), { recursive: true });
    await writeFile(path.join(this.folder, name), text);
  }

  /** Writes a file and commits it with all else that changed. */
  async commit(name: string, text: string): Promise<void> {
    await this.write(name, text);
    await this.git('add', '--all');
    await this.git('commit', '-m', `Change ${name}`);
  }
}

/** A repository with one commit, on the branch `main`, in which `plumule` is the built command line. */
export async function repositoryWith(files: Readonly<Record<string, string>>): Promise<Repository> {
  const repository = new Repository(await folderWith(files));
  await repository.git('init', '--initial-branch', 'main');
  const command = `#!/bin/sh\nexec "${process.execPath}" "${BUILT}" "$@"\n`;
  await mkdir(path.join(repository.folder, '.git', 'bin'));
  await writeFile(path.join(repository.folder, '.git', 'bin', 'plumule'), command, { mode: 0o755 });
  await repository.git('add', '--all');
  await repository.git('commit', '-m', 'Begin');
  return repository;
}
