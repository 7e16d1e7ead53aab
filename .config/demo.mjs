// `npm run demo`: builds Plumule, then checks the sample journal and reports on it in the terminal.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
// The day after the last one in the samples, so that this prints the same on every day.
const TODAY = '2026-11-25';

function node(args, accepted = [0]) {
  const { status } = spawnSync(process.execPath, args, { cwd: ROOT, stdio: 'inherit' });
  if (!accepted.includes(status)) process.exit(status ?? 1);
}

function plumule(command, accepted) {
  console.log(`\n$ plumule ${command} samples --today ${TODAY}\n`);
  node(['dist/plumule.cjs', command, 'samples', '--today', TODAY], accepted);
}

node(['.config/ensure.mjs']);
node(['.config/build.mjs']);
plumule('check', [0, 1]); // 1: it found the problems that the samples hold on purpose
plumule('report');
console.log(`
The same in VS Code:

  npm run package
  code --install-extension dist/plumule.vsix
  code samples

In this terminal: node dist/plumule.cjs --help
`);
