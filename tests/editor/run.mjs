// Tests the packed extension in a real VS Code.
//
//   node tests/editor/run.mjs [--vsix FILE] [--output DIR] [TEST...]
//
// FILE is dist/plumule.vsix unless given (`npm run package` makes it). TEST is a part of a test file's name.
// Pictures, also those of failed tests, go to DIR, a new temporary folder unless given.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    vsix: { type: 'string', default: path.join(ROOT, 'dist/plumule.vsix') },
    output: { type: 'string' },
  },
});
const vsix = path.resolve(values.vsix);
if (!existsSync(vsix)) {
  console.error(`${vsix} does not exist: \`npm run package\` makes dist/plumule.vsix.`);
  process.exit(2);
}
const output = values.output ? path.resolve(values.output) : mkdtempSync(path.join(tmpdir(), 'plumule-pictures-'));
mkdirSync(output, { recursive: true });

const vitest = path.join(ROOT, 'node_modules/vitest/vitest.mjs');
const config = path.join(ROOT, '.config/vitest.editor.config.ts');
const { status } = spawnSync(process.execPath, [vitest, 'run', '--config', config, ...positionals], {
  stdio: 'inherit', env: { ...process.env, PLUMULE_VSIX: vsix, PLUMULE_OUTPUT: output },
});
if (readdirSync(output).length) console.log(`Pictures: ${output}`);
else rmdirSync(output);
process.exitCode = status ?? 1;
