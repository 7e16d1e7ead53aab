import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { copyFile } from 'node:fs/promises';
import path from 'node:path';
import { Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { run } from '../../server/src/cli/run.ts';

const BUILT = fileURLToPath(new URL('../../dist/plumule.cjs', import.meta.url));

export interface Outcome {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

let last: Promise<unknown> = Promise.resolve();

/**
 * Runs the command line in a folder, with no terminal, inside this process: for as long as it runs, the current folder,
 * the output and the exit code of the process are its own. Runs follow one after the other.
 */
export async function plumule(folder: string, ...args: string[]): Promise<Outcome> {
  const outcome = last.then(() => inProcess(folder, args));
  last = outcome.catch(() => undefined);
  return outcome;
}

async function inProcess(folder: string, args: readonly string[]): Promise<Outcome> {
  const { stdout, stderr } = Object.getOwnPropertyDescriptors(process);
  const [current, exitCode] = [process.cwd(), process.exitCode];
  const [out, err] = [new Collected(), new Collected()];
  process.chdir(folder);
  process.exitCode = undefined;
  Object.defineProperties(process, {
    stdout: { configurable: true, enumerable: true, value: out },
    stderr: { configurable: true, enumerable: true, value: err },
  });
  try {
    await run(args);
    return { code: exitCodeOf(process), stdout: out.text, stderr: err.text };
  } finally {
    Object.defineProperties(process, { stdout, stderr });
    process.exitCode = exitCode;
    process.chdir(current);
  }
}

/** As Node ends with it: 0 where none was set. */
function exitCodeOf({ exitCode }: { readonly exitCode?: number | string | null | undefined }): number {
  return Number(exitCode ?? 0);
}

/** What was written to it. As a pipe it is no terminal. */
class Collected extends Writable {
  readonly #parts: Buffer[] = [];

  get text(): string {
    return Buffer.concat(this.#parts).toString();
  }

  override _write(part: Buffer, _encoding: BufferEncoding, done: () => void): void {
    this.#parts.push(part);
    done();
  }
}

/** Starts the built command line in a folder, as a process of its own without a terminal. */
export async function built(folder: string, ...args: string[]): Promise<Outcome> {
  return start(process.execPath, [BUILT, ...args], folder);
}

/** Runs a line of the shell in which `plumule` is the built command line. */
export async function shell(folder: string, line: string): Promise<Outcome> {
  return start('bash', ['-c', `plumule() { ${JSON.stringify(process.execPath)} ${JSON.stringify(BUILT)} "$@"; }; ${line}`], folder);
}

/** Puts the built command line, with nothing that was installed beside it, into a folder. */
export async function copyProgram(folder: string): Promise<void> {
  for (const file of ['plumule.cjs', 'commands.cjs', 'commands.body.cjs']) {
    await copyFile(path.join(path.dirname(BUILT), file), path.join(folder, file));
  }
}

async function start(program: string, args: readonly string[], cwd: string): Promise<Outcome> {
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
