/** Names that are given twice, and batches that were never split off. */
import type { Journal } from '../../../journal/journal.ts';
import { rootOf } from '../../../journal/mentions.ts';
import type { Batch, Entry, Lot } from '../../../journal/life.ts';
import { parentOf } from '../../../journal/strays.ts';
import { factOf, factsOf } from '../../../model/record.ts';
import { shown } from '../../../syntax/reader.ts';
import { lifeOf } from '../../events.ts';
import { freeId } from '../../mix/ids.ts';
import { editBelow, withoutLines } from '../below.ts';
import { freeNames } from '../free-names.ts';
import { replace, type Mend, type Mender } from './mend.ts';

/** One of two is called otherwise; what says the very same again is taken out. */
export const duplicateDefinition: Mender = ({ entry }, { journal }) => {
  const { record: { keyword, subject } } = entry;
  if (!subject) return [];
  if (keyword === 'zone') return [...withoutLine(entry)];
  if (keyword === 'split') return [...sameAgain(entry, firstSplit(entry, journal)), ...otherParts(entry, journal)];
  const first = journal.definitionsOf(subject.text)[0];
  const name = freeId(journal, subject.text);
  return [
    ...(first && first.line !== entry.line ? sameAgain(entry, first) : []),
    ...(name === subject.text ? [] : [{ title: `Call this one “${shown(name)}”`, edits: [replace(entry.line, subject, name)] }]),
  ];
};

/** The record that gave out a name which this one gives out once more. */
function firstSplit(entry: Entry, journal: Journal): Entry | undefined {
  return lifeOf(journal, entry)?.lot.twice.find(each => each.entry.line === entry.line)?.first;
}

function otherParts(entry: Entry, journal: Journal): Mend[] {
  const lived = lifeOf(journal, entry);
  if (!lived) return [];
  const { lot, batch: { path } } = lived;
  const twice = lot.twice.filter(each => each.entry.line === entry.line);
  const parts = factsOf(entry.record, 'part').filter(({ name }) => twice.some(each => each.path === `${path}/${name.text}`));
  const names = freeNames(journal, lot, path, parts.length);
  const called = parts.map(({ name }, n) => `“${name.text}” “${names[n]!}”`).join(' and ');
  return parts.length === 0 ? [] : [{ title: `Call ${called}`, edits: parts.map(({ name }, n) => replace(entry.line, name, names[n]!)) }];
}

function sameAgain(entry: Entry, first: Entry | undefined): Mend[] {
  const isSame = first?.line.text.trim() === entry.line.text.trim() && first.moment?.day === entry.moment?.day;
  return isSame ? withoutLine(entry).map(mend => ({ ...mend, evident: true })) : [];
}

/** Not where a remark hangs on it, which would come to stand below another record. */
function withoutLine({ line: { store, number } }: Entry): Mend[] {
  const below = number + 1 < store.lineCount ? store.at(number + 1) : undefined;
  if (below?.content.kind === 'remark') return [];
  return [{ title: 'Delete this line', edits: [withoutLines(store, number, number)] }];
}

/** The batch is split off with as many seeds as were sown of it. */
export const unknownBatch: Mender = ({ entry: { record: { subject } } }, { journal }) => {
  const path = subject?.text ?? '';
  const slash = path.lastIndexOf('/');
  const lot = slash < 0 ? undefined : journal.lot(rootOf(path));
  if (!lot || lot.batches.has(path)) return [];
  const parent = lot.batches.get(path.slice(0, slash));
  const strays = lot.strays.filter(({ record }) => record.subject?.text === path);
  const seeds = sownOf(strays);
  if (!parent || seeds === undefined || parent.closed || (parent.kept ?? Infinity) < seeds) return [];
  const below = parent.events.findLast(({ type }) => type === 'split')?.entry ?? parent.made;
  // Below a `day` line the split is of that day, and must not come after what was done to the batch.
  const day = journal.files.get(below.line.store.name)?.dayAbove(below.line.number);
  if (day !== undefined && strays.some(({ moment }) => moment && moment.day < day)) return [];
  const split = `split ${parent.path}, ${path.slice(slash + 1)} ${seeds} seeds`;
  return [{ title: `Write “${shown(split)}”`, edits: [editBelow(below.line, [split])] }];
};

/** So many batches are few enough to choose from. */
const NEAREST = 3;

/**
 * Another batch of the same seed may be meant: those next to it in the order of names first, open ones before closed;
 * where there are none, the seed itself.
 */
export const nearestBatches: Mender = ({ entry: { line, record: { subject } }, problem }, { journal }) => {
  const path = line.text.slice(problem.start, problem.end);
  const lot = journal.lot(rootOf(path));
  if (!lot || !subject || problem.fixes.length > 0) return [];
  // What the record names may be a part of the batch that is missing.
  const rest = subject.text.slice(path.length);
  const from = parentOf(path);
  const parts = [...lot.batches.values()].filter(other => other.path.includes('/') && parentOf(other.path) === from);
  const names = [...parts.map(other => other.path), path].sort();
  const ranks = new Map(names.map((name, n) => [name, n]));
  const distance = (other: Batch) => Math.abs(ranks.get(other.path)! - ranks.get(path)!);
  const isClosed = ({ closed }: Batch) => Number(closed !== undefined);
  const near = parts.sort((a, b) => isClosed(a) - isClosed(b) || distance(a) - distance(b));
  const meant = near.length > 0 ? near.map(other => other.path) : [from];
  return meant.filter(other => lot.batches.has(other + rest)).slice(0, NEAREST)
    .map(other => ({ title: `Change to “${shown(other)}”`, edits: [replace(line, problem, other)] }));
};

function sownOf(strays: Lot['strays']): number | undefined {
  const sown = strays.flatMap(({ record }) => (record.keyword === 'sow' ? [factOf(record, 'seeds')?.n?.value] : []));
  return sown.length === 1 ? sown[0] : undefined;
}
