import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';

/** Text with name, version and licence of each package whose files went into the bundles. */
export async function licences(root, inputs) {
  const folders = new Set();
  for (const input of inputs) {
    const found = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input);
    if (found) folders.add(found[0]);
  }
  const parts = await Promise.all([...folders].sort().map(folder => about(path.join(root, folder))));
  return `Plumule contains the following packages.\n\n${parts.join('\n')}`;
}

async function about(folder) {
  const { name, version, license } = JSON.parse(await readFile(path.join(folder, 'package.json'), 'utf8'));
  const file = (await readdir(folder)).find(f => /^licen[cs]e/i.test(f));
  if (!license && !file) throw new Error(`${name} states no licence`);
  const text = file ? await readFile(path.join(folder, file), 'utf8') : '';
  return `==== ${name} ${version}, ${license}\n\n${text.replaceAll('\r\n', '\n').trim()}\n`;
}
