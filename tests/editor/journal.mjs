import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expect, inject } from 'vitest';
import { openPage } from './browser.mjs';
import { Editor } from './editor.mjs';
import { serve } from './serve.mjs';

const SAMPLES = fileURLToPath(new URL('../../samples', import.meta.url));

/**
 * Runs `work` with the editor open on a journal that nobody else uses: a copy of the samples, or `files`
 * (name to text). `settings` are those of the folder; `committed` puts both under git, in one commit; `web` runs the
 * extension in the browser, without Node; `memory` does so with the files in memory only, in a file system of another
 * extension's; `restricted` runs the extension in a folder that is not trusted.
 * When `work` fails, a picture of the page and the browser's console stay in the run's output folder.
 */
export async function inEditor({ files, settings, committed, memory, web = memory, restricted, width, height }, work) {
  const { origin, extension, vsix } = inject('editor');
  const place = await mkdtemp(path.join(tmpdir(), 'plumule-'));
  const folder = path.join(place, 'journal');
  const own = web || restricted
    ? await serve({ data: path.join(place, 'server'), vsix: web ? undefined : vsix, restricted }) : undefined;
  let page;
  try {
    const inMemory = memory && { ...files, '.vscode/settings.json': JSON.stringify(settings ?? {}) };
    if (!memory) await fill(folder, files, settings);
    if (committed) await commitAll(folder);
    const webExtension = web ? extension : undefined;
    page = await openPage({ origin: own?.origin ?? origin, webExtension, memory: inMemory, folder, width, height });
    const editor = new Editor(page, folder);
    try {
      await editor.loaded();
      await work(editor);
    } catch (error) {
      await keep(editor);
      throw error;
    }
    await editor.close();
  } finally {
    await page?.context().browser().close();
    await own?.stop();
    await rm(place, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Commits all that is in the folder, in a repository that is made where there is none. */
export async function commitAll(folder) {
  const author = ['-c', 'user.name=Test', '-c', 'user.email=test@example.org'];
  const git = (...args) => promisify(execFile)('git', [...author, ...args], { cwd: folder });
  await git('init', '--quiet');
  await git('add', '--all');
  await git('commit', '--quiet', '--message', 'Count');
}

/** Path of a picture with this name in the run's output folder. */
export function picture(name) {
  return path.join(inject('editor').output, `${name}.png`);
}

async function fill(folder, files, settings) {
  if (files) {
    for (const [name, text] of Object.entries(files)) {
      await mkdir(path.dirname(path.join(folder, name)), { recursive: true });
      await writeFile(path.join(folder, name), text);
    }
  } else {
    await cp(SAMPLES, folder, { recursive: true });
  }
  if (settings) {
    await mkdir(path.join(folder, '.vscode'), { recursive: true });
    await writeFile(path.join(folder, '.vscode/settings.json'), JSON.stringify(settings));
  }
}

async function keep(editor) {
  const name = expect.getState().currentTestName.replace(/[^\w-]+/g, '-').slice(-80);
  const file = picture(`failed-${name}`);
  await writeFile(file.replace(/png$/, 'console.txt'), `${editor.console.join('\n')}\n`);
  await editor.page.screenshot({ path: file });
  console.error(`The page as it was, and the browser's console beside it: ${file}`);
}
