/** `plumule publish`: a folder of pages that anybody may see. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { version } from '../../../package.json';
import { ProblemBook } from '../checks/problem-book.ts';
import { LIST, writeFolder, type FileInFolder } from '../disk/own-folder.ts';
import { isBelow, plainFileBelow } from '../disk/plain-file.ts';
import { picturePath } from '../features/links.ts';
import type { Moment } from '../journal/moment.ts';
import type { Private } from '../model/privates.ts';
import { entriesOf, type Entry } from '../publish/diary.ts';
import { barePhoto } from '../publish/photos/bare.ts';
import { publicName, redacted } from '../publish/redact.ts';
import { severalPage, type PublishedJournal } from '../publish/several.ts';
import { INDEX, sitePages, type Site } from '../publish/site.ts';
import { FileNames, fileWord } from '../report/file-names.ts';
import { reportOf, type Report } from '../report/report.ts';
import { filledTables } from '../tables/tables.ts';
import { exits, type Exit } from './exits.ts';
import { unreadOf } from './names.ts';
import { openJournals, type OpenJournal } from './open.ts';
import { counted } from '../model/counted.ts';
import { complain, complainOf } from './output.ts';
import { tableFiles } from './tables.ts';

export interface PublishOptions {
  readonly output: string;
  /** What is shown although it is private. */
  readonly with?: readonly Private[];
  readonly title: string;
  readonly today?: Moment;
}

export async function publish(paths: readonly string[], options: PublishOptions): Promise<Exit> {
  const { journals, unread } = await openJournals(paths, options.today);
  complainOf(unread);
  const exit = unread.length > 0 ? exits.unread : exits.clean;
  if (journals.length === 0) return exit;
  try {
    const files = await filesOf(journals, options);
    await writeFolder(options.output, 'pages', files);
    const pages = files.filter(({ name }) => name.endsWith('.html')).length;
    complain(`wrote ${counted(pages, 'page')} to ${options.output}; open ${path.join(options.output, INDEX)}`);
  } catch (error) {
    complainOf([unreadOf(error)]);
    return exits.unread;
  }
  return exit;
}

/** Of several journals each in a folder of its own, with a page above them. */
async function filesOf(journals: readonly OpenJournal[], options: PublishOptions): Promise<readonly FileInFolder[]> {
  const [only] = journals;
  if (journals.length === 1) return (await publishedSite(only!, options)).files;
  const names = new FileNames();
  for (const taken of [INDEX, LIST]) names.of(taken);
  const sites: (PublishedJournal & { readonly files: readonly FileInFolder[] })[] = [];
  for (const journal of journals) {
    // Of `..` too, and the root of a disk has no name.
    const title = path.basename(path.resolve(journal.folder)) || 'journal';
    const own = await publishedSite(journal, { ...options, title, above: options.title });
    sites.push({ ...own, title, folder: names.of(fileWord(title)) });
  }
  return [
    severalPage(options.title, sites),
    ...sites.flatMap(({ folder, files }) => files.map(file => ({ ...file, name: `${folder}/${file.name}` }))),
  ];
}

/** Everything that is written of a journal; no more than may be shown. */
export async function publishedSite(
  { journal, now, folder }: Pick<OpenJournal, 'journal' | 'now' | 'folder'>,
  { title, above, ...options }: Pick<PublishOptions, 'title' | 'with'> & Pick<Site, 'above'>,
): Promise<{ readonly report: Report; readonly files: readonly FileInFolder[] }> {
  const shown = new Set(options.with);
  const names = [...journal.files.keys()].sort();
  const safe = redacted(journal, names, shown);
  const book = new ProblemBook(safe);
  book.update(now);
  const files = [...safe.files.keys()];
  // What was left out or could not be read is in no table, and says nothing to others.
  const tables = filledTables([{ name: 'journal', journal: safe, files, now }])
    .filter(({ table }) => table.name !== 'left_out');
  const entries = entriesOf(safe);
  const written = new Map(names.map((name, i) => [publicName(i, names.length), name]));
  const photos = await photosOf(entries, entry => path.dirname(written.get(entry.file)!), folder);
  const report = reportOf(safe, book, { now, by: 'species' });
  const pages = sitePages({
    title, above, report, entries,
    tables: tables.map(({ table }) => table),
    photoAt: (file, line) => photos.get(`${file}:${line}`)?.name,
  });
  const downloads = tableFiles(tables, { now, plumule: version, parquet: false })
    .map(({ name, content }) => ({ name: `tables/${name}`, content }));
  return { report, files: [...pages, ...downloads, ...photos.values()] };
}

const PICTURES = /\.(?:jpe?g|png|gif|webp)$/i;

/** The photos in the folder of the journal, called by numbers, as pictures alone; what is left out is told. */
async function photosOf(
  entries: readonly Entry[], folderOf: (entry: Entry) => string, root: string,
): Promise<ReadonlyMap<string, FileInFolder>> {
  const copies = new Map<string, FileInFolder>();
  for (const entry of entries) {
    if (entry.photo === undefined) continue;
    const way = picturePath(entry.photo);
    const from = way && path.join(folderOf(entry), way);
    const end = PICTURES.exec(entry.photo)?.[0].toLowerCase();
    if (!from || !end || !await isPlainBelow(path.resolve(root), path.resolve(from))) {
      complain(`${entry.photo}: left out, because it is not a picture in the folder of the journal`);
      continue;
    }
    const content = barePhoto(await readFile(from));
    if (content) copies.set(`${entry.file}:${entry.line}`, { name: `photos/${copies.size + 1}${end}`, content });
    else complain(`${entry.photo}: left out, because it is damaged or no ${end.slice(1)} file`);
  }
  return copies;
}

/** A file in the folder, to which no link leads. */
async function isPlainBelow(root: string, file: string): Promise<boolean> {
  return isBelow(root, file) && await plainFileBelow(root, file) === 'file';
}
