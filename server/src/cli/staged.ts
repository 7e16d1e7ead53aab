import path from 'node:path';
import { ProblemBook } from '../checks/problem-book.ts';
import { namesStaged, stagedJournals, topFolder } from '../disk/git.ts';
import { decode } from '../disk/utf8.ts';
import { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import { present } from '../lsp/clock.ts';
import { nameOf, unreadOf, type Unread } from './names.ts';
import type { Opening } from './open.ts';

/**
 * The journals of the repository that the current folder is in, as they are staged: what is in the work tree alone is
 * not part of the commit. Asked for are those that the commit would change; the others say what these may name.
 */
export async function openStaged(today: Moment | undefined): Promise<Opening> {
  const unread: Unread[] = [];
  try {
    const top = await topFolder(process.cwd());
    const changed = new Set(await namesStaged(top));
    if (changed.size === 0) return { journals: [], unread };
    const journal = new Journal();
    const asked: string[] = [];
    for (const { name, bytes } of await stagedJournals(top)) {
      const file = path.join(top, name);
      try {
        journal.set(nameOf(file), decode(file, bytes));
        if (changed.has(name)) asked.push(nameOf(file));
      } catch (error) {
        unread.push(unreadOf(error));
      }
    }
    const now = today ?? present(journal.zone);
    const book = new ProblemBook(journal);
    book.update(now);
    return { journals: [{ journal, book, folder: nameOf(top), asked: asked.sort(), now }], unread };
  } catch (error) {
    return { journals: [], unread: [...unread, unreadOf(error)] };
  }
}
