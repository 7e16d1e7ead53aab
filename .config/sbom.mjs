// Writes dist/sbom.cdx.json, a CycloneDX list of the packages whose code is in the bundles, from what npm knows of all
// packages and from the titles in dist/licences.txt. Run after the build; without the time and the number of the run,
// so that the same sources give the same file.
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const LICENCES = path.join(ROOT, 'dist/licences.txt');

const titles = readFileSync(LICENCES, 'utf8').matchAll(/^==== (\S+) (\S+), /gm);
const bundled = new Set([...titles].map(([, name, version]) => `${name}@${version}`));
const all = JSON.parse(execFileSync('npm', [
  'sbom', '--package-lock-only', '--sbom-format', 'cyclonedx', '--sbom-type', 'application',
], { cwd: ROOT, encoding: 'utf8', maxBuffer: 2 ** 28, shell: process.platform === 'win32' }));

const nameOf = ({ group, name, version }) => `${group ? `${group}/` : ''}${name}@${version}`;
const components = all.components.filter(component => bundled.delete(nameOf(component)));
if (bundled.size > 0) throw new Error(`not in package-lock.json: ${[...bundled].join(', ')}`);

const { bomFormat, specVersion, version, metadata: { component } } = all;
const list = { bomFormat, specVersion, version, metadata: { component }, components };
writeFileSync(path.join(ROOT, 'dist/sbom.cdx.json'), `${JSON.stringify(list, undefined, 1)}\n`);
console.log(`dist/sbom.cdx.json: ${components.length} packages`);
