import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { mkdir, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { VSCODE } from './setup.mjs';

const SERVER = path.join(VSCODE, 'out/server-main.js');

const SETTINGS = {
  'security.workspace.trust.enabled': false,
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.welcomePage.walkthroughs.openOnInstall': false,
  'workbench.enableExperiments': false,
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'files.autoSave': 'off', // as on the desktop
  'git.openRepositoryInParentFolders': 'never',
  'typescript.disableAutomaticTypeAcquisition': true,
};

const RESTRICTED = { 'security.workspace.trust.enabled': true, 'security.workspace.trust.startupPrompt': 'never' };

/**
 * Starts VS Code's server on a free port of 127.0.0.1 with its data in `data`, an own folder of this run.
 * `vsix` is installed by VS Code itself; without one there is no extension but the built-in ones.
 * `restricted`: no folder is trusted, and nobody is asked.
 * Gives { origin, extension: folder of the installed extension, stop }.
 */
export async function serve({ data, vsix, restricted = false }) {
  const extensions = path.join(data, 'extensions');
  await mkdir(extensions, { recursive: true });
  await mkdir(path.join(data, 'data/User'), { recursive: true });
  await writeFile(path.join(data, 'data/User/settings.json'), JSON.stringify(
    restricted ? { ...SETTINGS, ...RESTRICTED } : SETTINGS));
  const common = [SERVER, '--server-data-dir', data, '--extensions-dir', extensions,
    '--accept-server-license-terms', '--telemetry-level', 'off'];
  const env = { ...process.env, EXTENSIONS_GALLERY: '{"serviceUrl":""}' }; // no marketplace
  if (vsix) {
    await promisify(execFile)(process.execPath, [...common, '--install-extension', vsix, '--force'], { env })
      .catch(error => {
        throw new Error(`VS Code does not install ${vsix}:\n${error.stdout}${error.stderr}`);
      });
  }

  const server = spawn(process.execPath, [...common, '--host', '127.0.0.1', '--port', '0',
    '--without-connection-token', ...restricted ? [] : ['--disable-workspace-trust'], '--disable-update-check',
    '--disable-getting-started-override'], { env, detached: true, stdio: ['ignore', 'pipe', 'pipe'] });
  const port = await listening(server, path.join(data, 'server.log'));
  const [installed] = (await readdir(extensions)).filter(name => name.startsWith('plumule.'));
  return {
    origin: `http://127.0.0.1:${port}`,
    extension: installed && path.join(extensions, installed),
    stop: () => stop(server),
  };
}

/** Waits for the port that the server took. */
function listening(server, file) {
  const log = createWriteStream(file);
  let output = '';
  return new Promise((resolve, reject) => {
    const fail = why => {
      reject(new Error(`VS Code's server ${why}; its log is ${file}:\n${output}`));
      stop(server);
    };
    const late = setTimeout(fail, 60_000, 'is not ready after 60 s');
    const look = chunk => {
      log.write(chunk);
      output = (output + chunk).slice(-4000);
      const found = /Extension host agent listening on (\d+)/.exec(output);
      if (found) {
        clearTimeout(late);
        resolve(Number(found[1]));
      }
    };
    server.stdout.on('data', look);
    server.stderr.on('data', look);
    server.once('exit', () => {
      clearTimeout(late);
      fail('ended');
    });
  });
}

/** Ends the server with its helpers: it leads a process group of its own. */
async function stop(server) {
  if (server.exitCode !== null || server.signalCode !== null) return;
  const ended = once(server, 'exit');
  process.kill(-server.pid, 'SIGTERM');
  const late = setTimeout(() => process.kill(-server.pid, 'SIGKILL'), 5000);
  await ended;
  clearTimeout(late);
}
