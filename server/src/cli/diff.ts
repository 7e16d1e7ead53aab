import path from 'node:path';
import { changesBetween } from '../changes/changes.ts';
import { committedJournals, topFolder } from '../disk/git.ts';
import { findJournals } from '../disk/find.ts';
import { readJournal } from '../disk/read.ts';
import { decode } from '../disk/utf8.ts';
import { printable } from '../report/printable.ts';
import { exits, type Exit } from './exits.ts';
import { unreadOf, type Unread } from './names.ts';
import { complain, print } from './output.ts';

/** `plumule diff`: what the journals of the repository say now and did not say at a commit. */
export async function diff(revision = 'HEAD'): Promise<Exit> {
  const unread: Unread[] = [];
  try {
    const top = await topFolder(process.cwd());
    const before = new Map<string, string>();
    const after = new Map<string, string>();
    const note = async (into: Map<string, string>, name: string, text: () => Promise<string> | string) => {
      try {
        into.set(name, await text());
      } catch (error) {
        unread.push(unreadOf(error));
      }
    };
    for (const { name, bytes } of await committedJournals(top, revision)) {
      if (!isPassedOver(name)) await note(before, name, () => decode(path.join(top, name), bytes));
    }
    const { files, faults } = await findJournals(top);
    unread.push(...faults.map(unreadOf));
    for (const file of files) await note(after, path.relative(top, file), () => readJournal(file));
    for (const { about, words } of changesBetween(before, after)) {
      print(`${printable(`${about === '' ? '' : `${about}: `}${words.join('; ')}`)}\n`);
    }
  } catch (error) {
    unread.push(unreadOf(error));
  }
  for (const { path: place, message } of unread) complain(`${place}: ${message}`);
  return unread.length > 0 ? exits.unread : exits.clean;
}

/** As in a folder that is searched. */
function isPassedOver(name: string): boolean {
  return name.split('/').some(part => part.startsWith('.') || part === 'node_modules');
}
