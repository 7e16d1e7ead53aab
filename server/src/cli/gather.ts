/** Which journals the paths of a command line mean: a folder is one journal, as in the editor. */
import { stat } from 'node:fs/promises';
import path from 'node:path';
import { DiskFault, faultOf } from '../disk/fault.ts';
import { findJournals, isJournalName, OUTSIDE } from '../disk/find.ts';

/** The files of one journal. */
export interface Group {
  readonly folder: string;
  /** What was asked for: a folder's files, or files named one by one. */
  readonly asked: readonly string[];
  /** Read because the files asked for may name what these define. */
  readonly beside: readonly string[];
  /** Whether each file was named; else they were found in the folder. */
  readonly named: boolean;
}

export interface Gathering {
  readonly groups: readonly Group[];
  readonly faults: readonly DiskFault[];
  /** What is said, but was not asked for: it changes no exit code. */
  readonly remarks: readonly DiskFault[];
}

/**
 * Each folder is one journal with all below it. Files named one by one belong to the journal of the folder named with
 * them, else to that of the files in their own directory, no deeper. Nothing is asked for twice.
 */
export async function gather(paths: readonly string[]): Promise<Gathering> {
  const faults: DiskFault[] = [];
  const remarks: DiskFault[] = [];
  const { folders, files } = await sort(paths, faults);
  const groups: Group[] = [];
  const taken = new Set<string>();
  // The outer folder first: it has what is in the inner one.
  for (const folder of folders.sort((a, b) => a.length - b.length)) {
    const search = await findJournals(folder);
    faults.push(...search.faults);
    remarks.push(...search.outside.map(link => new DiskFault(link, OUTSIDE)));
    if (search.files.length === 0 && search.faults.length === 0) faults.push(new DiskFault(folder, 'there is no journal here (no *.germ file)'));
    const asked = search.files.filter(file => !taken.has(file));
    for (const file of asked) taken.add(file);
    if (asked.length > 0) groups.push({ folder, asked, beside: [], named: false });
  }
  const loose = [...new Set(files)].filter(file => !taken.has(file));
  for (const directory of new Set(loose.map(file => path.dirname(file)))) {
    const asked = loose.filter(file => path.dirname(file) === directory);
    const search = await findJournals(directory, false);
    remarks.push(...search.faults.filter(fault => !asked.includes(fault.path)));
    groups.push({ folder: directory, asked, beside: search.files.filter(file => !asked.includes(file)), named: true });
  }
  return { groups: groups.sort((a, b) => (a.folder < b.folder ? -1 : 1)), faults, remarks };
}

async function sort(paths: readonly string[], faults: DiskFault[]): Promise<{ folders: string[]; files: string[] }> {
  const folders: string[] = [];
  const files: string[] = [];
  for (const each of paths.map(given => path.resolve(given))) {
    try {
      if ((await stat(each)).isDirectory()) folders.push(each);
      else if (isJournalName(each)) files.push(each);
      else faults.push(new DiskFault(each, 'the name of a journal must end in .germ'));
    } catch (error) {
      faults.push(faultOf(each, error));
    }
  }
  return { folders, files };
}
