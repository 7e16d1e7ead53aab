import { readVersions, writeVersion } from '../disk/versions.ts';
import { merge, type Merged } from '../merge/merge.ts';
import { exits, type Exit } from './exits.ts';
import { nameOf, unreadOf } from './names.ts';
import { complain, print } from './output.ts';

export interface MergeFileOptions {
  readonly markerSize?: number;
  /** The file's name in the repository, for messages; git gives the versions names of its own. */
  readonly name?: string;
  readonly print?: true;
}

/** `plumule merge`: two versions of a journal file made one, in place of ours. */
export async function mergeFiles(base: string, ours: string, theirs: string, options: MergeFileOptions): Promise<Exit> {
  try {
    const { encoding, ...versions } = await readVersions(base, ours, theirs);
    const merged = merge(versions.base, versions.ours, versions.theirs, { markerSize: options.markerSize });
    if (options.print) print(Buffer.from(merged.text, encoding));
    else await writeVersion(ours, merged.text, encoding);
    for (const line of remarksOn(merged, options.name ?? nameOf(ours))) complain(line);
    return merged.conflicts.length > 0 ? exits.problems : exits.clean;
  } catch (error) {
    const { path, message } = unreadOf(error);
    complain(`${options.name ?? path}: ${message}; nothing was merged`);
    return exits.unread;
  }
}

function remarksOn({ conflicts, once, countedTwice }: Merged, name: string): string[] {
  return [
    ...conflicts.map(({ line, reason, record }) => `${name}:${line + 1}: conflict, ${reason}: ${record}`),
    ...(once.length > 0 ? [`${name}: both sides added ${few(once)}; kept once`] : []),
    ...(countedTwice.length > 0
      ? [`${name}: both sides counted ${few(countedTwice)}. A number without “=” is what is new since the last count, so check that no seedling is counted twice`]
      : []),
  ];
}

const SHOWN = 3;

/** The first few; the rest by their number. */
function few(texts: readonly string[]): string {
  const shown = texts.slice(0, SHOWN).map(text => `“${text.trim()}”`);
  const rest = texts.length - shown.length;
  return [...shown, ...(rest > 0 ? [`and ${rest} more`] : [])].join(', ');
}
