// `npm run demo`: builds Plumule, then checks the sample journal and reports on it in the terminal.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
// The day after the last one in the samples, so that this prints the same on every day.
const TODAY = '2026-11-25T08:00';

function node(args, accepted = [0]) {
  const { status } = spawnSync(process.execPath, args, { cwd: ROOT, stdio: 'inherit' });
  if (!accepted.includes(status)) process.exit(status ?? 1);
}

function plumule(args, accepted) {
  console.log(`$ plumule ${args.join(' ')}\n`);
  node(['dist/plumule.cjs', ...args], accepted);
}

node(['.config/ensure.mjs']);
node(['.config/build.mjs']);
console.log(`
samples/ holds the journal of an invented nursery over three winters, the first of them untidy. One of its files,
problems.germ, is wrong on purpose, so that there is something to find:
`);
plumule(['check', 'samples', '--today', TODAY], [0, 1]); // 1: it found the problems that the samples hold on purpose
console.log(`
A ladder of doses, seed that too strong a dose harmed, a comparison with too few seeds to say anything, and two
batches that lie in their soak this morning:
`);
plumule(['report', 'samples', '--today', TODAY, ...['PEN-25', 'MEC-25', 'ACO-25', 'ACO-26'].flatMap(id => ['--lot', id])]);
console.log(`
All lots: node dist/plumule.cjs report samples. What else there is: node dist/plumule.cjs --help

The same in VS Code, with colours, problems as you write, and sums where the pointer rests:

  npm run package
  code --install-extension dist/plumule.vsix
  code samples

What the records mean: syntaxes/README.md
`);
