import path from 'node:path';
import { version } from '../../../package.json';
import { changesBetween, type Change } from '../changes/changes.ts';
import { changeData, CHANGES_SHAPE } from '../changes/data.ts';
import { committedJournals, topFolder } from '../disk/git.ts';
import { findJournals } from '../disk/find.ts';
import { readJournal } from '../disk/read.ts';
import { decode } from '../disk/utf8.ts';
import { printable, printableJson } from '../report/printable.ts';
import { paragraph } from '../report/table.ts';
import { exits, type Exit } from './exits.ts';
import { unreadOf, type Unread } from './names.ts';
import { complainOf, outputPage, print } from './output.ts';
import type { textFormats } from './program/choices.ts';

export interface DiffOptions {
  readonly format: (typeof textFormats)[number];
}

/** `plumule diff`: what the journals of the repository say now and did not say at a commit. */
export async function diff(revision = 'HEAD', { format }: DiffOptions): Promise<Exit> {
  const unread: Unread[] = [];
  let changes: readonly Change[] = [];
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
    changes = changesBetween(before, after);
  } catch (error) {
    unread.push(unreadOf(error));
  }
  if (format === 'text') print(changes.map(textOf).join(''));
  else {
    const told = changes.map(changeData);
    print(printableJson({ version: CHANGES_SHAPE, plumule: version, since: revision, changes: told, unread }));
  }
  complainOf(unread);
  return unread.length > 0 ? exits.unread : exits.clean;
}

/** A paragraph, what goes on in it behind a margin. */
function textOf({ about, words }: Change): string {
  const text = printable(`${about === '' ? '' : `${about}: `}${words.join('; ')}`);
  return paragraph(text, outputPage().width - MARGIN.length).map((line, n) => `${n === 0 ? '' : MARGIN}${line}\n`).join('');
}

const MARGIN = '  ';

/** As in a folder that is searched. */
function isPassedOver(name: string): boolean {
  return name.split('/').some(part => part.startsWith('.') || part === 'node_modules');
}
