import { formatLine } from '../features/format.ts';
import { readJournal } from '../disk/read.ts';
import { rewriteJournal } from '../disk/write.ts';
import { JournalFile } from '../journal/journal-file.ts';
import { exits, type Exit } from './exits.ts';
import { gather } from './gather.ts';
import { nameOf, unreadOf, type Unread } from './names.ts';
import { counted } from '../model/counted.ts';
import { complain, complainOf, print } from './output.ts';
import { printable } from '../report/printable.ts';
import type { FactOrder } from '../syntax/print.ts';

export interface FormatOptions {
  readonly check?: boolean;
  readonly write?: boolean;
  readonly factOrder?: boolean;
  readonly force?: boolean;
}

interface Named {
  readonly file: string;
  /** The folder in which it was found; undefined where it was named itself. */
  readonly below: string | undefined;
}

interface Formatted extends Named {
  readonly before: string;
  readonly after: string;
  /** Lines with a mistake, which stay as they are. */
  readonly faulty: number;
}

/** `plumule format`: prints one journal formatted, or names or rewrites those that are not. */
export async function format(paths: readonly string[], options: FormatOptions): Promise<Exit> {
  const { check, write, factOrder, force } = options;
  const { groups, faults, remarks } = await gather(paths);
  const unread = faults.map(unreadOf);
  const files = groups.flatMap(({ asked, folder, named }) =>
    asked.map(file => ({ file, below: named ? undefined : folder })));
  // What lies beside a file that was named is not looked at.
  if (groups.some(({ named }) => !named)) complainOf(remarks.map(unreadOf));
  if (!check && !write && files.length > 1) {
    complain(`${counted(files.length, 'file')} cannot be printed together: use --check or --write`);
    return exits.unread;
  }
  const all = await attempt(files, file => readFormatted(file, factOrder ? 'as listed' : 'as written'), unread);
  const changing = all.filter(({ before, after }) => before !== after);
  const done = write ? await attempt(changing, each => rewrite(each, force === true), unread) : changing;
  if (check ?? write) print(done.map(({ file }) => `${printable(nameOf(file))}\n`).join(''));
  else print(all.map(({ after }) => after).join(''));
  complainOf(unread);
  if (check ?? write) complain(summary(all, done, write ? 'formatted' : 'not formatted'));
  if (unread.length > 0) return exits.unread;
  return check && changing.length > 0 ? exits.problems : exits.clean;
}

async function readFormatted({ file, below }: Named, order: FactOrder): Promise<Formatted> {
  const before = await readJournal(file);
  const { text, faulty } = new JournalFile(file, before);
  const after = [...text].map(line => formatLine(line.text, line.content, order) + line.end).join('');
  return { file, below, before, after, faulty: faulty.size };
}

async function rewrite(formatted: Formatted, force: boolean): Promise<Formatted> {
  const { file, below, before, after } = formatted;
  await rewriteJournal(file, before, after, { below, force });
  return formatted;
}

/** Does one after the other; what fails is set down as unread. */
async function attempt<From, To>(
  all: readonly From[], work: (each: From) => Promise<To>, unread: Unread[],
): Promise<To[]> {
  const done: To[] = [];
  for (const each of all) {
    try {
      done.push(await work(each));
    } catch (error) {
      unread.push(unreadOf(error));
    }
  }
  return done;
}

function summary(all: readonly Formatted[], done: readonly Formatted[], what: string): string {
  const faulty = all.reduce((sum, each) => sum + each.faulty, 0);
  const left = faulty === 0 ? '' : `; ${counted(faulty, 'line')} with a mistake left as ${faulty === 1 ? 'it is' : 'they are'}`;
  return `${done.length} of ${counted(all.length, 'file')} ${what}${left}`;
}
