// Has a real VS Code (its server and its web page) in a cache folder, built from npm packages alone.
//
//   node tests/editor/setup.mjs      installs what is missing and prints the folder
//
// EDITOR_CACHE names another folder than ~/.cache/plumule-editor. Needed on the machine: Node 20 with its
// headers, a C++ compiler, make and python3 for four native modules, and Chromium (or CHROMIUM=/path/to/it).
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createWriteStream, existsSync } from 'node:fs';
import { mkdir, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';

const CODE_SERVER = '4.100.3'; // VS Code 1.100.3, the last line that runs on Node 20
const NODE_GYP = '11.5.0';
const RIPGREP = `@vscode/ripgrep-linux-${process.arch}`; // has the program in the package: it finds files and text
const RIPGREP_VERSION = '1.18.0';
// Left out: kerberos (signing in at a proxy) and those for Windows; VS Code starts without them.
const NATIVE = ['@parcel/watcher', '@vscode/spdlog', 'native-watchdog', 'node-pty'];

const CACHE = process.env.EDITOR_CACHE || path.join(homedir(), '.cache/plumule-editor');
export const CHROMIUM = process.env.CHROMIUM || '/usr/bin/chromium';
/** The folder of VS Code's server. */
export const VSCODE = path.join(CACHE, 'node_modules/code-server/lib/vscode');
// VS Code looks here for the TextMate engine. Made as the last step, so its presence says that all is there.
const LAST = path.join(VSCODE, 'node_modules.asar');
const LOG = path.join(CACHE, 'setup.log');

async function ready() {
  const manifest = path.join(CACHE, 'node_modules/code-server/package.json');
  return existsSync(LAST) && JSON.parse(await readFile(manifest, 'utf8')).version === CODE_SERVER;
}

/** Runs a command with its output in the log; fails with the last lines of that. */
async function run(what, cwd, command, ...args) {
  console.error(`editor: ${what}`);
  let output = '';
  const child = spawn(command, args, { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
  const log = createWriteStream(LOG, { flags: 'a' });
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', chunk => {
      log.write(chunk);
      output = (output + chunk).slice(-4000);
    });
  }
  const [status] = await once(child, 'close');
  log.end();
  if (status !== 0) throw new Error(`${what} failed; all its output is in ${LOG}, which ends:\n${output}`);
}

async function npmInstall(what, cwd, ...args) {
  const install = () => run(what, cwd, 'npm', 'install', '--no-audit', '--no-fund', '--ignore-scripts', ...args);
  for (const wait of [5, 15]) {
    try {
      return await install();
    } catch (error) {
      console.error(`editor: ${error.message}\neditor: trying again in ${wait} s`);
      await pause(wait * 1000);
    }
  }
  return install();
}

/** Installs the editor where it is not there yet. */
export async function setup() {
  if (!existsSync(CHROMIUM)) {
    throw new Error(`${CHROMIUM} does not exist: install Debian's chromium, or name another in CHROMIUM`);
  }
  if (await ready()) return;
  const nodeHome = path.resolve(process.execPath, '../..');
  if (!process.version.startsWith('v20.') || !existsSync(path.join(nodeHome, 'include/node/node.h'))) {
    throw new Error(`VS Code's native modules need Node 20 with its headers; ${process.execPath} is ` +
      `${process.version}, its headers would be in ${nodeHome}/include/node`);
  }
  await mkdir(CACHE, { recursive: true });
  await rm(LAST, { force: true });
  await writeFile(path.join(CACHE, 'package.json'), '{ "name": "plumule-editor-cache", "private": true }\n');
  await npmInstall('installing VS Code', CACHE, '--save-exact', `code-server@${CODE_SERVER}`,
    `node-gyp@${NODE_GYP}`, `${RIPGREP}@${RIPGREP_VERSION}`);
  await npmInstall('installing its modules', VSCODE, '--omit=dev');
  await npmInstall("installing its extensions' modules", path.join(VSCODE, 'extensions'), '--omit=dev');
  const gyp = path.join(CACHE, 'node_modules/node-gyp/bin/node-gyp.js');
  for (const name of NATIVE) {
    const folder = path.join(VSCODE, 'node_modules', name);
    await run(`building ${name}`, folder, process.execPath, gyp, 'rebuild', `--nodedir=${nodeHome}`);
  }
  const rg = path.join(VSCODE, 'node_modules/@vscode/ripgrep/bin');
  await mkdir(rg, { recursive: true });
  await rm(path.join(rg, 'rg'), { force: true });
  await symlink(path.join(CACHE, 'node_modules', RIPGREP, 'bin/rg'), path.join(rg, 'rg'));
  await run('asking ripgrep for its version', CACHE, path.join(rg, 'rg'), '--version');
  await symlink('node_modules', LAST);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await setup();
  console.log(CACHE);
}
