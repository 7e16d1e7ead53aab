/** What a repository of git needs for journals, and how it is taken out again. */
import { ATTRIBUTES, withAttributes, withoutAttributes } from './attributes.ts';
import { takesPart, withoutPart, withPart } from './hook.ts';

/** Settings of the repository itself, in its `.git/config`. */
const settings = {
  'merge.plumule.name': 'journals, merged by their records',
  'merge.plumule.driver': 'plumule merge %O %A %B --marker-size %L --name %P',
  // The head of a change names the day or the lot above it, or the record above where that has a date of its own.
  'diff.plumule.xfuncname': '^((day|lot)[[:space:]].*|[a-z]+[[:space:]]+[^[:space:],]+[[:space:]]+[0-9]{4}-[0-9]{2}-[0-9]{2}).*$',
} as const;

export type SettingName = keyof typeof settings;
export const settingNames = Object.keys(settings) as SettingName[];

/** How a repository is; a file that is not there is undefined. Texts of files may be any bytes as Latin-1. */
export interface Repository {
  readonly attributes: string | undefined;
  readonly settings: Readonly<Partial<Record<SettingName, string | undefined>>>;
  readonly hook: string | undefined;
  /** Why the hook may not be touched. */
  readonly hookIsFixed?: string | undefined;
}

export interface SetupPlan {
  readonly after: Repository;
  /** What is changed, one sentence each; none where all is as it should be. */
  readonly changes: readonly { readonly place: 'attributes' | 'settings' | 'hook'; readonly says: string }[];
  /** What is left as it is, though it is not as it should be. */
  readonly notes: readonly string[];
}

/** What to change in a repository so that git knows journals; with `undo`, so that it does no longer. */
export function planSetup(before: Repository, undo = false): SetupPlan {
  const changes: SetupPlan['changes'][number][] = [];
  const notes: string[] = [];
  const attributes = undo ? withoutAttributes(before.attributes) : withAttributes(before.attributes);
  if (attributes !== before.attributes) {
    changes.push({ place: 'attributes', says: `${undo ? 'takes out' : 'adds'} “${ATTRIBUTES}”` });
  }
  const after: Partial<Record<SettingName, string | undefined>> = { ...before.settings };
  for (const name of settingNames) {
    const [value, own] = [before.settings[name], settings[name]];
    if (value !== undefined && value !== own) notes.push(`${name} is already set to something else and stays: ${value}`);
    else if (undo && value !== undefined) {
      after[name] = undefined;
      changes.push({ place: 'settings', says: `removes ${name}` });
    } else if (!undo && value === undefined) {
      after[name] = own;
      changes.push({ place: 'settings', says: `sets ${name} to “${own}”` });
    }
  }
  const hook = hookAfter(before, undo, notes);
  if (hook !== before.hook) changes.push({ place: 'hook', says: hookWords(before.hook, hook, undo) });
  return { after: { attributes, settings: after, hook }, changes, notes };
}

function hookAfter({ hook, hookIsFixed }: Repository, undo: boolean, notes: string[]): string | undefined {
  const after = undo ? withoutPart(hook) : withPart(hook);
  if (after === hook) return hook;
  const reason = hookIsFixed ?? (hook !== undefined && !takesPart(hook) ? 'it is not a shell script' : undefined);
  if (reason === undefined) return after;
  const advice = undo ? 'remove Plumule’s part by hand' : 'let it run “plumule check --staged --severity error”';
  notes.push(`the pre-commit hook stays as it is, because ${reason}; ${advice}`);
  return hook;
}

function hookWords(before: string | undefined, after: string | undefined, undo: boolean): string {
  if (undo) return after === undefined ? 'is deleted, because nothing else is in it' : 'loses the part that checks journals';
  const what = 'checks the journals that are staged, and stops the commit at an error';
  return before === undefined ? `is new: it ${what}` : `gets a part that ${what}; the rest of it stays`;
}

/** A job for GitHub Actions, to be fitted to the repository. */
export const exampleJob = `# .github/workflows/journals.yml
name: Journals
on: [push, pull_request]
jobs:
  check:
    runs-on: ubuntu-latest
    steps:
      - uses: actions/checkout@v4
      - uses: actions/setup-node@v4
        with:
          node-version: 20
      # The package that “npm pack” makes of Plumule, wherever you keep it.
      - run: npm install --global ./tools/plumule.tgz
      - run: plumule check --format github --severity warning
`;
