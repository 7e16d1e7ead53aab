/**
 * What V8 compiled of a program is kept beside it, so that the next start need not compile it again. It belongs to one
 * text of the program and one version of V8; V8 itself refuses what does not fit, and then the program is compiled.
 */
import { createHash } from 'node:crypto';
import { accessSync, constants, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { Script } from 'node:vm';
import { compileLate } from './compiler.ts';

type Wrapped = (
  exports: unknown, require: NodeJS.Require, module: { readonly exports: unknown }, file: string, folder: string,
) => void;

/** The folder of kept code, beside the programs. */
const FOLDER = 'compiled';
/** Bytes before the code that tell whether it is as it was written. */
const SUM = 32;

/**
 * Loads a program of ASCII characters as `require` does. `print` tells one text of it from all others, for V8 compares
 * nothing but lengths; without it, nothing is kept. Where nothing can be kept, nothing is said of it.
 */
export function load(file: string, print: string | undefined): unknown {
  // V8 takes code only under the flags with which it was compiled, so they are set first, and others keep nothing.
  compileLate();
  const require = createRequire(file);
  if (print === undefined || process.execArgv.length > 0 || process.env.NODE_OPTIONS) return require(file);
  const kept = path.join(path.dirname(file), FOLDER, [path.basename(file), print, process.versions.v8, builtAs()].join('-'));
  const cachedData = read(kept);
  const text = `(function (exports, require, module, __filename, __dirname) { ${readFileSync(file, 'latin1')}\n})`;
  const script = new Script(text, { filename: file, ...(cachedData && { cachedData }) });
  const module = { exports: {} };
  (script.runInThisContext() as Wrapped)(module.exports, require, module, file, path.dirname(file));
  // At the end nobody waits, and what was used is compiled.
  if (!cachedData || script.cachedDataRejected) process.once('exit', () => keep(kept, script));
  return module.exports;
}

/** Tells this Node from another that was built from the same V8 in another way. */
function builtAs(): string {
  try {
    return `${process.arch}-${statSync(process.execPath).size.toString(36)}`;
  } catch {
    return process.arch;
  }
}

/** Code as it was kept; undefined where there is none, or something happened to it: V8 would run whatever it is. */
function read(file: string): Buffer | undefined {
  try {
    const kept = readFileSync(file);
    const code = kept.subarray(SUM);
    return sumOf(code).equals(kept.subarray(0, SUM)) ? code : undefined;
  } catch {
    return undefined;
  }
}

function keep(file: string, script: Script): void {
  const folder = path.dirname(file);
  // Whoever starts meanwhile sees all of it or nothing.
  const part = `${file}.${process.pid}`;
  try {
    accessSync(path.dirname(folder), constants.W_OK);
    mkdirSync(folder, { recursive: true });
    const code = script.createCachedData();
    writeFileSync(part, Buffer.concat([sumOf(code), code]), { flag: 'wx' });
    renameSync(part, file);
  } catch {
    // A folder of others, or a full disk: the next start takes as long as this one.
    removeIfThere(part);
  }
}

function removeIfThere(file: string): void {
  try {
    rmSync(file, { force: true });
  } catch {
    // Nothing was written there.
  }
}

function sumOf(code: Buffer): Buffer {
  return createHash('sha256').update(code).digest();
}
