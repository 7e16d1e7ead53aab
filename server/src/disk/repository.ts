/** What `plumule setup git` changes in a repository. Texts of files are bytes as Latin-1: none is lost. */
import { chmod, mkdir, readFile, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { settingNames, type Repository, type SettingName } from '../setup/plan.ts';
import { faultOf } from './fault.ts';
import { askGit, git, topFolder } from './git.ts';
import { putFile } from './write.ts';

export interface RepositoryOnDisk extends Repository {
  readonly top: string;
  readonly attributesPath: string;
  readonly configPath: string;
  readonly hookPath: string;
}

/** Rejects with a DiskFault, among others outside a work tree. */
export async function readRepository(folder: string): Promise<RepositoryOnDisk> {
  const top = await topFolder(folder);
  const pathOf = async (name: string) =>
    path.resolve(top, (await git(top, 'rev-parse', '--git-path', name)).replace(/\r?\n$/, ''));
  const attributesPath = path.join(top, '.gitattributes');
  const hookPath = path.join(await pathOf('hooks'), 'pre-commit');
  const settings: Partial<Record<SettingName, string>> = {};
  for (const name of settingNames) {
    const value = await askGit(top, 'config', '--local', '--get', name);
    if (value !== undefined) settings[name] = value.replace(/\r?\n$/, '');
  }
  return {
    top, attributesPath, hookPath, configPath: await pathOf('config'), settings,
    attributes: await textOf(attributesPath), hook: await textOf(hookPath), hookIsFixed: await whyFixed(top, hookPath),
  };
}

/** Makes a repository what a plan says. Rejects with a DiskFault. */
export async function writeRepository(before: RepositoryOnDisk, after: Repository): Promise<void> {
  if (after.attributes !== before.attributes) await putText(before.attributesPath, after.attributes);
  for (const name of settingNames) {
    const value = after.settings[name];
    if (value === before.settings[name]) continue;
    if (value === undefined) await git(before.top, 'config', '--local', '--unset', name);
    else await git(before.top, 'config', '--local', name, value);
  }
  if (after.hook === before.hook) return;
  await putText(before.hookPath, after.hook);
  if (before.hook === undefined) await chmod(before.hookPath, 0o755);
}

async function textOf(file: string): Promise<string | undefined> {
  try {
    return await readFile(file, 'latin1');
  } catch (error) {
    const fault = faultOf(file, error);
    if (fault.gone) return undefined;
    throw fault;
  }
}

async function putText(file: string, text: string | undefined): Promise<void> {
  try {
    if (text === undefined) await rm(file);
    else await mkdir(path.dirname(file), { recursive: true });
  } catch (error) {
    throw faultOf(file, error, 'written');
  }
  if (text !== undefined) await putFile(file, Buffer.from(text, 'latin1'));
}

async function whyFixed(top: string, hook: string): Promise<string | undefined> {
  const gitFolder = path.resolve(top, (await git(top, 'rev-parse', '--git-common-dir')).replace(/\r?\n$/, ''));
  const isWithin = (folder: string) => {
    const way = path.relative(folder, hook);
    return !way.startsWith('..') && !path.isAbsolute(way);
  };
  if (!isWithin(top) && !isWithin(gitFolder)) return `other repositories use it too (${hook})`;
  const found = await stat(hook).catch(() => undefined);
  return found && process.platform !== 'win32' && (found.mode & 0o100) === 0 ? 'it is switched off (not executable)' : undefined;
}
