// Builds dist/: the extension and the server, each for Node and for the browser, and the command line.
//
//   node .config/build.mjs [--dev] [--watch]
//
// --dev leaves the code readable and adds source maps; --watch does so and builds again at every change.
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { chmod, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build, context } from 'esbuild';
import { licences } from './licences.mjs';
import { prime } from './prime.mjs';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const { values: options } = parseArgs({ options: { dev: { type: 'boolean' }, watch: { type: 'boolean' } } });
const readable = Boolean(options.dev || options.watch);

const node = { platform: 'node', format: 'cjs', target: 'node20' };
// esbuild refuses modules of Node on this platform; that is how the core is kept free of them.
const browser = { platform: 'browser', target: 'es2022', conditions: ['browser'] };

/** Files that are bundles of their own, beside the one that imports them: the ends of their paths, and their names. */
const besides = files => ({
  name: 'besides',
  setup(to) {
    to.onResolve({ filter: /\.ts$/, namespace: 'file' }, ({ path: imported, resolveDir, kind }) => {
      if (kind !== 'dynamic-import') return undefined;
      const found = Object.keys(files).find(end => path.join(resolveDir, imported).replaceAll('\\', '/').endsWith(`/${end}`));
      return found && { path: `./${files[found]}`, external: true };
    });
  },
});

/** Bundles that are read only by what needs them: help needs none, the server no commands. */
const apart = besides({ 'cli/commands.ts': 'commands.cjs', 'main.node.ts': 'server.node.cjs' });

const bundles = [
  { from: 'client/src/main.node.ts', to: 'client.node.cjs', ...node, external: ['vscode'] },
  { from: 'client/src/main.browser.ts', to: 'client.browser.js', ...browser, format: 'cjs', external: ['vscode'] },
  { from: 'server/src/main.node.ts', to: 'server.node.cjs', ...node, isKept: true },
  { from: 'server/src/main.browser.ts', to: 'server.browser.js', ...browser, format: 'iife' },
  {
    from: 'server/src/cli/commands.ts', to: 'commands.cjs', ...node, isKept: true,
    // Code that is kept cannot load modules in the other way.
    supported: { 'dynamic-import': false },
    // Found at run time where it is installed.
    external: ['@duckdb/node-api', '@resvg/resvg-js'],
  },
  {
    from: 'server/src/cli/main.ts', to: 'plumule.cjs', ...node, banner: { js: '#!/usr/bin/env node' },
    plugins: [apart],
    supported: { 'dynamic-import': false },
  },
];

/** A program whose compiled code is kept stands in a file of its own; the file that has its name only loads it. */
const fileOf = ({ to, isKept }) => path.join(ROOT, 'dist', isKept ? to.replace(/(\.node)?\.cjs$/, '.body.cjs') : to);

const settings = ({ from, to, isKept, ...rest }) => ({
  ...rest,
  entryPoints: [path.join(ROOT, from)],
  outfile: fileOf({ to, isKept }),
  absWorkingDir: ROOT,
  bundle: true,
  alias: { debug: path.join(ROOT, '.config/no-debug.cjs') },
  minify: !readable,
  sourcemap: readable,
  // dist/licences.txt has them in full.
  legalComments: 'none',
  metafile: true,
  logLevel: 'warning',
});

async function finish(bundle, { warnings }) {
  const { to, isKept } = bundle;
  const file = fileOf(bundle);
  if (warnings.length) throw new Error(`${to}: a warning of the bundler fails the build`);
  // esbuild leaves regular expressions alone. A program with other characters is kept with two bytes for each of them,
  // and takes twice as long to be read at every start.
  if (!readable) await writeFile(file, inAscii(await readFile(file, 'utf8')));
  if (to === 'plumule.cjs') await chmod(file, 0o755);
  if (isKept) await writeLoader(to, file);
  console.log(`dist/${path.basename(file).padEnd(20)}${((await stat(file)).size / 1024).toFixed(0).padStart(6)} KiB`);
}

/** The file that loads a program whose compiled code is kept; code that is being worked on is not. */
async function writeLoader(to, file) {
  const print = readable ? undefined : createHash('sha256').update(await readFile(file)).digest('hex').slice(0, 16);
  const contents = `
    import path from 'node:path';
    import { load } from './server/src/disk/kept-code.ts';
    module.exports = load(path.join(__dirname, '${path.basename(file)}'), ${JSON.stringify(print)});`;
  await build({
    ...node, stdin: { contents, resolveDir: ROOT }, outfile: path.join(ROOT, 'dist', to), absWorkingDir: ROOT,
    bundle: true, minify: !readable, logLevel: 'error',
  });
}

function inAscii(program) {
  return program.replace(/[^\x00-\x7f]/g, unit => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** dist/plumule.1, from the tables of the commands. */
async function writeManPage() {
  const { outputFiles: [{ text }] } = await build({
    ...settings({ from: 'server/src/cli/program/man.ts', to: 'man.cjs', ...node, plugins: [apart] }), write: false, sourcemap: false,
  });
  const written = { exports: {} };
  new Function('module', 'exports', 'require', text)(written, written.exports, createRequire(import.meta.url));
  await writeFile(path.join(ROOT, 'dist/plumule.1'), written.exports.manPage());
}

const present = bundles.filter(b => existsSync(path.join(ROOT, b.from)));
for (const b of bundles) if (!present.includes(b)) console.log(`dist/${b.to}: not built, ${b.from} does not exist`);
if (!present.length) process.exit();

if (options.watch) {
  for (const b of present) {
    const report = { name: 'report', setup: s => s.onEnd(r => (r.errors.length ? undefined : finish(b, r))) };
    await (await context({ ...settings(b), plugins: [...(b.plugins ?? []), report] })).watch();
  }
} else {
  try {
    await rm(path.join(ROOT, 'dist/compiled'), { recursive: true, force: true });
    const results = await Promise.all(present.map(b => build(settings(b))));
    for (const [i, result] of results.entries()) await finish(present[i], result);
    const inputs = results.flatMap(({ metafile }) => Object.keys(metafile.inputs));
    await writeManPage();
    await writeFile(path.join(ROOT, 'dist/licences.txt'), await licences(ROOT, inputs));
    if (!readable) await prime(ROOT);
  } catch (error) {
    // esbuild has printed its own errors already.
    if (!error.errors) console.error(error.message);
    process.exitCode = 1;
  }
}
