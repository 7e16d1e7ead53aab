/** Giving a lot, a batch, a stock, a regime or a declared agent another name, wherever it is named. */
import type { Journal } from '../journal/journal.ts';
import { rootOf } from '../journal/mentions.ts';
import { builtInAgents } from '../solutions/agents.ts';
import { shown } from '../syntax/reader.ts';
import { isBatchName, isShaped } from '../syntax/subject.ts';
import type { Position } from '../text/line-store.ts';
import { oneALine, type ActionEdit } from './actions/action.ts';
import { isNamed, occurrencesOf } from './occurrences.ts';
import type { Place } from './place.ts';
import { readsAs } from './reads-as.ts';
import { thingAt, type Named } from './thing.ts';

/** In plain words, why a thing cannot be renamed, or not so. */
export interface Refused {
  readonly refused: string;
}

export interface RenameTarget {
  readonly place: Place;
  /** The name as it is; of a batch its last part. */
  readonly text: string;
}

/** What `limit` limits beside agents. */
const limited: ReadonlySet<string> = new Set(['soak', 'stock', 'count']);

/** What would be renamed at a position; undefined where nothing has a name of its own. */
export function renameTarget(journal: Journal, file: string, position: Position): RenameTarget | Refused | undefined {
  const thing = thingAt(journal, file, position);
  if (!thing || !isNamed(thing)) return undefined;
  const place = lastPart(thing.place, thing);
  // Over what is taken of a stock stands the stock, but not its name.
  if (thing.entry.line.text.slice(place.start, place.end) !== nameOf(thing)) return undefined;
  if (thing.kind === 'agent' && builtInAgents.has(thing.id)) {
    return { refused: `${thing.id} is a built-in agent and keeps its name.` };
  }
  if (occurrencesOf(journal, thing).every(({ role }) => role !== 'definition')) {
    return { refused: `This journal does not define ${shown(idOf(thing))}.` };
  }
  return { place, text: nameOf(thing) };
}

/**
 * One edit for each line that names the thing, in the order of files and lines; a batch's children and a lot's batches
 * follow of themselves. Refused where another thing has that name, or where a line would come to say something else.
 */
export function rename(
  journal: Journal, file: string, position: Position, newName: string,
): { readonly edits: readonly ActionEdit[] } | Refused {
  const target = renameTarget(journal, file, position);
  const thing = thingAt(journal, file, position);
  if (!target || !thing || !isNamed(thing)) return { refused: 'There is no name to change here.' };
  if ('refused' in target) return target;
  if (newName === target.text) return { edits: [] };
  const clash = clashOf(journal, thing, newName);
  if (clash !== undefined) return { refused: clash };
  const named = occurrencesOf(journal, thing);
  const edits = oneALine(named.map(({ place }) => ({ ...lastPart(place, thing), text: newName })), journal);
  const path = pathOf(idOf(thing), newName);
  for (const edit of edits) {
    const line = journal.files.get(edit.file)!.text.at(edit.line);
    if (!readsAs(line, edit, { from: idOf(thing), to: path })) {
      return { refused: `“${newName}” would be read as something else in “${shown(line.text)}”.` };
    }
  }
  return { edits };
}

function clashOf(journal: Journal, thing: Named, newName: string): string | undefined {
  const isBatch = thing.kind === 'batch';
  if (isBatch ? !isBatchName(newName) : !isShaped(`new ${thing.kind}`, newName)) {
    const first = isBatch ? 'a letter or a digit' : 'a letter';
    const signs = thing.kind === 'agent' ? '“-”, “.”, “_” and “+”' : '“-”, “.” and “_”';
    return `“${shown(newName)}” cannot be a name. Begin it with ${first}, and go on with letters, digits, ${signs}.`;
  }
  if (isBatch) {
    const path = pathOf(thing.path, newName);
    if (journal.lot(rootOf(thing.path))?.batches.has(path) === true) return `There is already a batch ${path}.`;
    // Records of a batch that was never split off would silently come to be of this one.
    return occurrencesOf(journal, { ...thing, path }).length > 0 ? `Other records already name ${path}.` : undefined;
  }
  if (thing.kind === 'agent' && limited.has(newName.toLowerCase())) return `“limit ${newName}” means something else.`;
  if (builtInAgents.has(newName)) return `${newName} is the name of an agent.`;
  // A name that is used without being defined would silently come to mean this.
  return occurrencesOf(journal, { ...thing, id: newName }).length > 0
    ? `This journal already uses the name ${newName}.` : undefined;
}

/** Of a path only the last part means the batch itself. */
function lastPart(place: Place, thing: Named): Place {
  return { ...place, start: place.end - nameOf(thing).length };
}

function idOf(thing: Named): string {
  return thing.kind === 'batch' ? thing.path : thing.id;
}

function nameOf(thing: Named): string {
  const id = idOf(thing);
  return id.slice(id.lastIndexOf('/') + 1);
}

/** The id or the path with another last part. */
function pathOf(id: string, name: string): string {
  return id.slice(0, id.lastIndexOf('/') + 1) + name;
}
