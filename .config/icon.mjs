// Draws client/media/icon.png from icon.svg beside it: the shop of extensions takes no SVG.
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const MEDIA = fileURLToPath(new URL('../client/media/', import.meta.url));

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM || '/usr/bin/chromium', args: ['--no-sandbox'],
});
const page = await browser.newPage({ viewport: { width: 256, height: 256 } });
await page.setContent(`<style>body { margin: 0 } svg { display: block }</style>${
  await readFile(`${MEDIA}icon.svg`, 'utf8')}`);
await page.screenshot({ path: `${MEDIA}icon.png`, omitBackground: true });
await browser.close();
