import { execFile, spawnSync } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { plumule as commands } from '../../server/src/cli/program.ts';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const MAN = fileURLToPath(new URL('../../dist/plumule.1', import.meta.url));
const run = promisify(execFile);

const JOURNAL = `zone Europe/Vienna
lot GEN-25 Gentiana lutea, 60 seeds
split GEN-25, A 24 seeds, B 24 seeds
soak GEN-25/A 2026-01-10, water, 24 h
lot $(touch\tx) Iris
lot \`x\` Iris
# lot OLD
`;
const COMMANDS = commands.commands.map(command => command.name());

/** Where a shell is not installed, only CI tries it. */
function has(program: string): boolean {
  const present = spawnSync(program, ['--version']).status === 0;
  if (!present && process.env.CI === 'true') throw new Error(`${program} is not installed; .ci/run does that`);
  return present;
}

/** A folder with a journal and with the completions of a shell in `completions`. */
async function folderFor(shell: string): Promise<string> {
  const folder = await folderWith({ 'winter.germ': JOURNAL, 'old/2024.germ': 'lot VER-24 Veratrum\n' });
  await writeFile(path.join(folder, 'completions'), (await plumule(folder, 'completions', shell)).stdout);
  return folder;
}

/** The last word is what stands before the cursor, perhaps nothing. */
async function inBash(folder: string, ...words: string[]): Promise<string[]> {
  const script = 'source ./completions; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _plumule; printf "%s\\n" "${COMPREPLY[@]}"';
  const { stdout } = await run('bash', ['--norc', '-c', script, 'bash', ...words], { cwd: folder });
  return stdout.split('\n').filter(line => line !== '');
}

async function inFish(folder: string, ...words: string[]): Promise<string[]> {
  const script = 'source ./completions; complete -C $argv[1]';
  const env = { ...process.env, HOME: folder };
  const { stdout } = await run('fish', ['--no-config', '-c', script, words.join(' ')], { cwd: folder, env });
  return stdout.split('\n').flatMap(line => (line === '' ? [] : [line.split('\t')[0]!]));
}

/** What zsh hands to its own system of completions, which works on a terminal only: the commands, or what one takes. */
async function inZsh(folder: string, call: string, name = ''): Promise<string[]> {
  const script = `_arguments() { if [[ $1 == -C ]]; then state=\${2:+\${NAME:+rest}}; state=\${state:-command}; line=($NAME); else print -rl -- "$@"; fi }
_describe() { print -rl -- "\${(@P)2}" }
compadd() { shift; print -rl -- "$@" }
compdef() { : }
source ./completions; ${call}`;
  const { stdout } = await run('zsh', ['-f', '-c', script], { cwd: folder, env: { ...process.env, NAME: name } });
  return stdout.split('\n').filter(line => line !== '');
}

describe('the completions', () => {
  it('complete commands, options, what options take, and ids in bash', async () => {
    const folder = await folderFor('bash');
    expect(await inBash(folder, 'plumule', '')).toEqual(expect.arrayContaining([...COMMANDS, '--help', '--version']));
    expect(await inBash(folder, 'plumule', 'rep')).toEqual(['report']);
    expect(await inBash(folder, 'plumule', 'report', '--format', '')).toEqual(['text', 'json', 'md', 'html']);
    expect(await inBash(folder, 'plumule', 'report', '--de')).toEqual(['--details']);
    expect((await inBash(folder, 'plumule', 'report', '--lot', '')).sort()).toEqual(['GEN-25', 'VER-24']);
    expect((await inBash(folder, 'plumule', 'draw', '')).sort()).toEqual(['GEN-25', 'GEN-25/A', 'VER-24']);
    expect(await inBash(folder, 'plumule', 'setup', '')).toEqual(['git']);
    // Files are what bash offers by itself.
    expect(await inBash(folder, 'plumule', 'check', '')).toEqual([]);
    expect(await inBash(folder, 'plumule', 'draw', 'GEN-25', '--output', '')).toEqual([]);
  });

  it.skipIf(!has('fish'))('complete the same in fish', async () => {
    const folder = await folderFor('fish');
    expect(await inFish(folder, 'plumule', '')).toEqual(expect.arrayContaining(COMMANDS));
    expect(await inFish(folder, 'plumule', 'rep')).toEqual(['report']);
    expect((await inFish(folder, 'plumule', 'report', '--format', '')).sort()).toEqual(['html', 'json', 'md', 'text']);
    expect((await inFish(folder, 'plumule', 'report', '--lot', '')).sort()).toEqual(['GEN-25', 'VER-24']);
    expect((await inFish(folder, 'plumule', 'draw', '')).sort()).toEqual(['GEN-25', 'GEN-25/A', 'VER-24']);
    expect(await inFish(folder, 'plumule', 'check', 'win')).toEqual(['winter.germ']);
  });

  it.skipIf(!has('zsh'))('tell zsh the commands, the options of each, and ids', async () => {
    const folder = await folderFor('zsh');
    const listed = await inZsh(folder, '_plumule');
    expect(listed.map(line => line.split(':')[0])).toEqual(expect.arrayContaining(COMMANDS));
    expect(await inZsh(folder, '_plumule', 'report')).toEqual(expect.arrayContaining([
      '--format[how to print it]:<name>:(text json md html)', '--details[show the tests behind the verdicts too]',
      '--lot[only this lot; you can repeat it]:<id>:_plumule_lots', '*:\\[paths...\\]:_files',
    ]));
    expect((await inZsh(folder, '_plumule_lots')).sort()).toEqual(['GEN-25', 'VER-24']);
    expect((await inZsh(folder, '_plumule_batches')).sort()).toEqual(['GEN-25', 'GEN-25/A', 'VER-24']);
  });
});

describe('the man page', () => {
  it('tells of every command, and man finds nothing wrong with it', async () => {
    const page = await readFile(MAN, 'utf8');
    for (const name of COMMANDS) expect(page).toContain(`.SS ${name}\n`);
    expect(page).toMatch(/^[\n\x20-\x7e]*$/);
    if (!has('man')) return;
    const { stdout, stderr } = await run('man', ['--warnings', '--encoding=UTF-8', '--local-file', MAN], { env: { ...process.env, MANWIDTH: '90' } });
    expect(stderr).toBe('');
    expect(stdout).toContain('plumule report');
  });
});
