import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';

/**
 * Text with name, version and licence of each package whose files went into the bundles. Packages whose licences read
 * the same share one copy.
 */
export async function licences(root, inputs) {
  const folders = new Set();
  for (const input of inputs) {
    const found = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input);
    if (found) folders.add(found[0]);
  }
  const packages = await Promise.all([...folders].sort().map(folder => about(path.join(root, folder))));
  const titles = new Map();
  for (const { title, text } of packages) titles.set(text, (titles.get(text) ?? new Set()).add(`==== ${title}`));
  const parts = [...titles].map(([text, heads]) => `${[...heads].join('\n')}\n\n${text}\n`);
  return `Plumule contains the following packages.\n\n${parts.join('\n')}`;
}

async function about(folder) {
  const { name, version, license } = JSON.parse(await readFile(path.join(folder, 'package.json'), 'utf8'));
  const files = (await readdir(folder)).sort();
  const file = files.find(f => /^licen[cs]e/i.test(f));
  if (!license && !file) throw new Error(`${name} states no licence`);
  // The Apache licence asks for the NOTICE as well.
  const wanted = [file, files.find(f => /^notice/i.test(f))].filter(f => f !== undefined);
  const texts = await Promise.all(wanted.map(f => readFile(path.join(folder, f), 'utf8')));
  return {
    title: `${name} ${version}, ${license}`,
    text: texts.map(text => text.replaceAll('\r\n', '\n').trim()).join('\n\n'),
  };
}
