import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
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

/**
 * Opens VS Code's page of the server at `origin` on a folder and waits until it can be used. With
 * `webExtension`, the folder of an extension, that one runs in the browser as in VS Code for the Web.
 */
export async function openPage({ origin, folder, webExtension, width = 1400, height = 900 }) {
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ARGS });
  const context = await browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce' });
  if (webExtension) await loadInPage(context, origin, webExtension);
  const page = await context.newPage();
  page.on('dialog', dialog => dialog.accept().catch(() => {})); // "leave with unsaved changes?"
  await page.goto(`${origin}/?folder=${encodeURIComponent(folder)}`);
  return page;
}

/** Serves the extension from the editor's own origin, and names it in the editor's start page. */
async function loadInPage(context, origin, extension) {
  await context.route(`${origin}/extension-in-page/**`, async route => {
    const [, , ...rest] = decodeURIComponent(new URL(route.request().url()).pathname).split('/');
    const file = path.join(extension, ...rest);
    if (!existsSync(file)) return route.fulfill({ status: 404 });
    const contentType = TYPES[path.extname(file)] ?? 'application/octet-stream';
    await route.fulfill({ body: await readFile(file), contentType });
  });
  const isStart = url => url.origin === origin && url.pathname === '/';
  await context.route(isStart, async route => {
    const response = await route.fetch();
    const place = { scheme: 'http', authority: new URL(origin).host, path: '/extension-in-page' };
    const body = (await response.text()).replace(
      /(workbench-web-configuration" data-settings=")([^"]*)/,
      (_, head, json) => {
        const config = JSON.parse(json.replaceAll('&quot;', '"'));
        config.additionalBuiltinExtensions = [place];
        return head + JSON.stringify(config).replaceAll('"', '&quot;');
      });
    await route.fulfill({ response, body });
  });
}
