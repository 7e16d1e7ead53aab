// Installs the packages of package-lock.json where node_modules does not hold them; else does nothing.
// The scripts of package.json run this first, so that they work straight after a clone.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));

function packages(file) {
  try {
    return JSON.parse(readFileSync(ROOT + file, 'utf8')).packages;
  } catch {
    return undefined;
  }
}

function complete() {
  const wanted = packages('package-lock.json');
  const present = packages('node_modules/.package-lock.json');
  // Dates of the files would tell less: a clone and a checkout make the lock file look new.
  return wanted && present && Object.entries(wanted).every(
    ([where, { version, optional }]) => where === '' || optional || present[where]?.version === version);
}

if (Number(process.versions.node.split('.')[0]) < 20) {
  console.error(`Plumule needs Node.js 20 or later; this is ${process.version}.`);
  process.exit(2);
}
if (!complete()) {
  console.log('Installing the packages (npm ci) ...');
  // No package needs its install script here, and none gets to run one.
  const npm = spawnSync('npm ci --ignore-scripts --no-audit --no-fund', { cwd: ROOT, stdio: 'inherit', shell: true });
  process.exit(npm.status ?? 1);
}
