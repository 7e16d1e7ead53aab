/** How many seeds a batch has, and how many of them are sown and counted. */
import { halfRange } from '../model/estimate.ts';
import { factOf, factsOf, type HowMany, type JournalRecord } from '../model/record.ts';
import { partsGivenBy, type BatchDraft } from './batches.ts';
import { amountIn, opposite } from './estimates.ts';
import { accounted, type DatedEntry, type SowEvent } from './life.ts';

/** See `Batch.tested`. */
export function testedOf({ sowing, sown, kept, atSowing }: BatchDraft): number | undefined {
  if (!sowing) return kept;
  if (sown === undefined) return undefined;
  if (kept !== undefined) return Math.min(kept, sown + atSowing.germinated + atSowing.spoilt);
  // Whether those that germinated before were sown with the others, only the number of all seeds could tell.
  return atSowing.germinated > 0 ? undefined : sown + atSowing.spoilt;
}

/** Seeds that have neither germinated nor rotted nor been lost, of all or of those tested. */
export function unsorted(batch: BatchDraft, of: number | undefined): number | undefined {
  return of === undefined ? undefined : Math.max(0, of - accounted(batch.totals));
}

/** What a `sow` takes; keeps the numbers of the batch. */
export function sowSeeds(batch: BatchDraft, entry: DatedEntry): Pick<SowEvent, 'asked' | 'available' | 'again'> {
  const { record } = entry;
  const { totals, kept } = batch;
  const written = factOf(record, 'seeds');
  const asked = written && amountIn(written, batch.bound);
  const first = batch.sowing === undefined;
  if (first) batch.atSowing = { germinated: totals.germinated, spoilt: totals.rotted + totals.lost };
  const before = first ? 0 : batch.sown;
  const there = kept === undefined ? undefined : Math.max(0, kept - batch.atSowing.spoilt);
  const fresh = there === undefined || before === undefined ? undefined : Math.max(0, there - before);
  const again = !first && batch.treated && !fits(asked, fresh, before);
  const available = again && kept !== undefined ? Math.max(0, kept - totals.rotted - totals.lost) : fresh;
  // A number that could not be read, or that nobody counted, is not the same as none.
  const number = asked ?? (record.broken || written ? undefined : available);
  if (again) batch.sown = before === undefined ? undefined : Math.max(before, asked ?? before);
  else batch.sown = number === undefined || before === undefined ? undefined : before + number;
  batch.sowing ??= entry;
  // The stages of a regime are a treatment, whether or not they are written.
  batch.treated = factOf(record, 'regime') !== undefined;
  return { asked, available, again };
}

/**
 * Whether a further sowing can be another portion of the seeds. Where nobody knows how many there are, what was done
 * since the last one is taken to be done to those sown.
 */
function fits(asked: number | undefined, fresh: number | undefined, sown: number | undefined): boolean {
  if (fresh === undefined) return asked !== undefined && sown !== undefined && asked > sown;
  return asked === undefined ? fresh > 0 : asked <= fresh;
}

/** What a `split` takes; keeps the numbers of the batch, and says whether seeds already sown were given out. */
export function giveOut(
  batch: BatchDraft, { record }: DatedEntry,
): { asked: number; left: number | undefined; fromSown: boolean } {
  return take(batch, shareOut(batch, record, unsorted(batch, batch.kept)));
}

/** The same of seeds that leave for good. */
export function letGo(batch: BatchDraft, howMany: HowMany): { asked: number; left: number | undefined } {
  const known = amountIn(howMany, opposite(batch.bound));
  const asked = known ?? amountIn(howMany, 'least') ?? 1;
  return take(batch, { asked, isGuess: known === undefined, isAll: false });
}

function take(
  batch: BatchDraft, { asked, isGuess, isAll }: Shared,
): { asked: number; left: number | undefined; fromSown: boolean } {
  const { kept, totals, sown, atSowing } = batch;
  const left = unsorted(batch, kept);
  const tested = testedOf(batch);
  // What was not sown yet is given out first.
  const unsown = kept === undefined || tested === undefined ? 0 : kept - tested;
  const fromSown = batch.sowing !== undefined && asked > unsown;
  const stay = Math.min(kept ?? 0, accounted(totals));
  // Where more is given out than is there, one of the numbers is wrong, and nobody knows how many stayed.
  if (isAll) batch.kept = accounted(totals);
  else if (isGuess) batch.kept = undefined;
  else if (kept !== undefined) batch.kept = left !== undefined && asked > left ? undefined : kept - asked;
  if (fromSown && sown !== undefined) {
    batch.sown = isGuess ? undefined : Math.max(0, sown - asked, stay - atSowing.germinated - atSowing.spoilt);
  }
  if ((fromSown || !batch.sowing) && asked > 0 && totals.germinated + totals.rotted > 0) batch.thinned = true;
  return { asked, left: isGuess ? undefined : left, fromSown };
}

interface Shared {
  readonly asked: number;
  /** Nobody knows how many were given out; `asked` is the least. */
  readonly isGuess: boolean;
  /** Two halves are all that was there. */
  readonly isAll: boolean;
}

function shareOut(batch: BatchDraft, record: JournalRecord, left: number | undefined): Shared {
  const given = partsGivenBy(record, batch);
  const parts = new Map(factsOf(record, 'part').map(part => [`${batch.path}/${part.name.text}`, part]));
  const halves = given.filter(({ path }) => parts.get(path)?.estimate?.value.kind === 'half');
  for (const half of halves) {
    half.seeds = half.bound && left !== undefined ? halfRange(left)[half.bound] : undefined;
    half.kept = half.seeds;
  }
  const isAll = halves.length === 2 && given.length === 2;
  const least = ({ path, seeds }: BatchDraft) => seeds ?? amountIn(parts.get(path) ?? {}, 'least') ?? 1;
  return {
    asked: isAll && left !== undefined ? left : given.reduce((sum, part) => sum + least(part), 0),
    isGuess: isAll ? left === undefined : given.some(({ seeds }) => seeds === undefined), isAll,
  };
}
