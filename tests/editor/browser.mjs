import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { CHROMIUM } from './setup.mjs';

const ARGS = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync',
  // Nothing outside this machine is looked up.
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost',
  // Else a page changed by `loadInPage` may not open sockets to 127.0.0.1.
  '--disable-features=LocalNetworkAccessChecks,LocalNetworkAccessChecksWebSockets',
];
const TYPES = {
  '.js': 'text/javascript', '.json': 'application/json', '.svg': 'image/svg+xml', '.css': 'text/css', '.html': 'text/html',
};

const MEMORY = fileURLToPath(new URL('memory-files', import.meta.url));

/**
 * Opens VS Code's page of the server at `origin` on a folder. With `webExtension`, the folder of an extension, that one
 * runs in the browser as in VS Code for the Web. With `memory`, files by name and text, those are the workspace instead
 * of a folder on the disk.
 */
export async function openPage({ origin, folder, webExtension, memory, width = 1400, height = 900 }) {
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ARGS });
  const context = await browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce' });
  if (webExtension) {
    await loadInPage(context, origin, memory ? [webExtension, MEMORY] : [webExtension], memory);
  }
  const page = await context.newPage();
  page.on('dialog', dialog => dialog.accept().catch(() => {})); // "leave with unsaved changes?"
  await page.goto(memory ? `${origin}/` : `${origin}/?folder=${encodeURIComponent(folder)}`);
  return page;
}

/** Serves the extensions from the editor's own origin, and names them in the editor's start page. */
async function loadInPage(context, origin, extensions, memory) {
  await context.route(`${origin}/extension-in-page/**`, async route => {
    const [, , number, ...rest] = decodeURIComponent(new URL(route.request().url()).pathname).split('/');
    const file = path.join(extensions[number], ...rest);
    if (file === path.join(MEMORY, 'files.json')) return route.fulfill({ json: memory });
    if (!existsSync(file)) return route.fulfill({ status: 404 });
    const contentType = TYPES[path.extname(file)] ?? 'application/octet-stream';
    await route.fulfill({ body: await readFile(file), contentType });
  });
  const isStart = url => url.origin === origin && url.pathname === '/';
  await context.route(isStart, async route => {
    const response = await route.fetch();
    const places = extensions.map((_, number) => (
      { scheme: 'http', authority: new URL(origin).host, path: `/extension-in-page/${number}` }));
    const body = (await response.text()).replace(
      /(workbench-web-configuration" data-settings=")([^"]*)/,
      (_, head, json) => {
        const config = JSON.parse(json.replaceAll('&quot;', '"'));
        config.additionalBuiltinExtensions = places;
        if (memory) config.folderUri = { scheme: 'memory', authority: '', path: '/journal' };
        return head + JSON.stringify(config).replaceAll('"', '&quot;');
      });
    await route.fulfill({ response, body });
  });
}
