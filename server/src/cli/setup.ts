import { access, constants } from 'node:fs/promises';
import path from 'node:path';
import { readRepository, writeRepository, type RepositoryOnDisk } from '../disk/repository.ts';
import { printable } from '../report/printable.ts';
import { exampleJob, planSetup, type SetupPlan } from '../setup/plan.ts';
import { exits, type Exit } from './exits.ts';
import { nameOf, unreadOf } from './names.ts';
import { complain, print } from './output.ts';

export interface SetupOptions {
  readonly yes?: true;
  readonly undo?: true;
  /** Prints an example of a job for a server, and does nothing else. */
  readonly ci?: true;
}

/** `plumule setup git`: says what it would change in the repository, and with `--yes` does it. */
export async function setUp({ yes, undo, ci }: SetupOptions): Promise<Exit> {
  if (ci) {
    print(exampleJob);
    return exits.clean;
  }
  try {
    const repository = await readRepository(process.cwd());
    const plan = planSetup(repository, undo);
    print(planText(repository, plan));
    for (const note of plan.notes) complain(note);
    if (plan.changes.length === 0) complain(undo ? 'there is nothing to remove' : 'everything is set up');
    else if (yes) {
      await writeRepository(repository, plan.after);
      complain(undo ? 'done' : 'done; commit .gitattributes, and run this command once in every other clone');
    } else complain(`nothing changed yet; to do it, run “plumule setup git${undo ? ' --undo' : ''} --yes”`);
    if (!undo && !(await isOnPath())) complain('git needs “plumule” on the path; “npm install --global” puts it there');
    return exits.clean;
  } catch (error) {
    const { path: place, message } = unreadOf(error);
    complain(`${place}: ${message}`);
    return exits.unread;
  }
}

function planText({ attributesPath, configPath, hookPath }: RepositoryOnDisk, { changes }: SetupPlan): string {
  const places = { attributes: attributesPath, settings: configPath, hook: hookPath };
  return changes.map(({ place, says }) => `${printable(nameOf(places[place]))}: ${says}\n`).join('');
}

async function isOnPath(): Promise<boolean> {
  const names = process.platform === 'win32' ? ['plumule.cmd', 'plumule.exe'] : ['plumule'];
  for (const folder of (process.env.PATH ?? '').split(path.delimiter)) {
    for (const name of names) {
      if (await access(path.join(folder, name), constants.X_OK).then(() => true, () => false)) return true;
    }
  }
  return false;
}
