import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { serve } from './serve.mjs';
import { setup } from './setup.mjs';

/** One server with the packed extension for the whole run; run.mjs names the package and the folder. */
export default async function start(project) {
  await setup();
  const data = await mkdtemp(path.join(tmpdir(), 'plumule-server-'));
  const vsix = process.env.PLUMULE_VSIX;
  const { origin, extension, stop } = await serve({ data, vsix });
  project.provide('editor', { origin, extension, vsix, output: process.env.PLUMULE_OUTPUT });
  return async () => {
    await stop();
    await rm(data, { recursive: true, force: true, maxRetries: 5 });
  };
}
