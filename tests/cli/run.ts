import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { vi } from 'vitest';

// On a busy machine a few starts of Node take seconds.
vi.setConfig({ testTimeout: 60_000 });

const BUILT = fileURLToPath(new URL('../../dist/plumule.cjs', import.meta.url));

export interface Outcome {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the built command line in a folder, without a terminal. */
export async function plumule(folder: string, ...args: string[]): Promise<Outcome> {
  return run(process.execPath, [BUILT, ...args], folder);
}

/** Runs a line of the shell in which `plumule` is the built command line. */
export async function shell(folder: string, line: string): Promise<Outcome> {
  return run('bash', ['-c', `plumule() { ${JSON.stringify(process.execPath)} ${JSON.stringify(BUILT)} "$@"; }; ${line}`], folder);
}

async function run(program: string, args: readonly string[], cwd: string): Promise<Outcome> {
  if (!existsSync(BUILT)) throw new Error('npm run build comes first: dist/plumule.cjs is not there');
  const child = spawn(program, args, { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
  const [stdout, stderr, code] = await Promise.all([
    collect(child.stdout), collect(child.stderr), new Promise<number | null>(done => child.on('close', done)),
  ]);
  return { code, stdout, stderr };
}

async function collect(stream: NodeJS.ReadableStream): Promise<string> {
  stream.setEncoding('utf8');
  let text = '';
  for await (const part of stream) text += String(part);
  return text;
}
