/** Counts that cannot be: totals that were written as what is new, or the other way round. */
import { totalMeant } from '../../../checks/count-exceeds-sown.ts';
import { testedAt } from '../../../journal/estimates.ts';
import { accounted, countsOf, hasTotal, noTotals, type Batch, type CountEvent } from '../../../journal/life.ts';
import { countTotals } from '../../../journal/counting.ts';
import type { CountFact } from '../../../model/record.ts';
import { livedAs, insert, replace, type Mend, type Mender } from './mend.ts';

/** More was counted than there is, or nearly all: the numbers may be totals so far. */
export const countExceedsSown: Mender = ({ entry }, context) => {
  const lived = livedAs('count', entry, context);
  if (!lived) return [];
  const { batch, event } = lived;
  const counts = countsOf(batch);
  if (counts.length < 2 || counts.some(hasTotal) || !fitAsTotals(counts, batch)) return asTotal(event);
  return [{
    title: `Read the counts of ${batch.path} as totals so far: put “=” before each number`,
    edits: counts.flatMap(({ entry: { line }, counts: facts }) => facts.map(({ n }) => insert(line, n.start, '='))),
    evident: true,
  }];
};

/** A number that is no less than what had been counted before. */
function asTotal(event: CountEvent): Mend[] {
  const { batch, entry: { line } } = event;
  const fact = totalMeant(event, testedAt(batch, event)?.most ?? 0);
  return fact
    ? [{ title: `Change “${fact.n.value}” to “=${fact.n.value}”: the total so far`, edits: [insert(line, fact.n.start, '=')] }]
    : [];
}

/** Read as totals, no number falls and there are seeds enough. */
function fitAsTotals(counts: readonly CountEvent[], { tested }: Batch): boolean {
  let before = noTotals;
  for (const { entry, counts: written } of counts) {
    if (entry.line.content.problems.length > 0) return false;
    const facts = written.map(fact => ({ ...fact, total: true }));
    const after = countTotals(before, facts);
    if (facts.some(({ what, n }) => n.value < before[what])) return false;
    if (facts.some(({ what, n }) => n.value < after[what])) return false;
    before = after;
  }
  return tested !== undefined && accounted(before) <= tested;
}

/** A total that falls may be what is new. */
export const totalFalls: Mender = ({ entry, problem }, context) => {
  const event = livedAs('count', entry, context)?.event;
  const fact = event?.counts.find(({ start }) => start === problem.start);
  if (!event || !fact?.total || fact.n.value >= event.before[fact.what]) return [];
  const written = event.counts.map((each): CountFact => (each === fact ? { ...each, total: false } : each));
  const after = countTotals(event.before, written);
  if (event.tested !== undefined && accounted(after) > event.tested) return [];
  return [{
    title: `Change “=${fact.n.value}” to “${fact.n.value}”: what is new`,
    edits: [replace(entry.line, { start: fact.start, end: fact.n.end }, fact.n.value)],
  }];
};

/** What died was no seedling yet where nothing had germinated; a total must hold what the later stages imply. */
export const moreThanGerminated: Mender = ({ entry, problem }, context) => {
  const event = livedAs('count', entry, context)?.event;
  const fact = event?.counts.find(({ start }) => start === problem.start);
  if (!event || !fact) return [];
  return fact.what === 'died' ? asRotted(event, fact) : asGerminated(event, fact);
};

function asRotted(event: CountEvent, fact: CountFact): Mend[] {
  const { counts, before, after, entry: { line } } = event;
  if (counts.some(({ what }) => what === 'rotted') || after.died <= after.germinated) return [];
  const written = counts.map(each => (each === fact ? { ...each, what: 'rotted' as const } : each));
  if (!fits(event, written) || (fact.total && fact.n.value < before.rotted)) return [];
  const number = `${fact.total ? '=' : ''}${fact.n.value}`;
  return [{
    title: `Change to “${number} rotted”: it had not germinated`, edits: [replace(line, fact, `${number} rotted`)],
    ...(after.germinated === 0 && { evident: true as const }),
  }];
}

function asGerminated(event: CountEvent, { what }: CountFact): Mend[] {
  const { counts, after, entry: { line } } = event;
  const stated = counts.find(each => each.what === 'germinated' && each.total);
  if (!stated || after[what] <= stated.n.value) return [];
  const n = { ...stated.n, value: after[what] };
  if (!fits(event, counts.map(each => (each === stated ? { ...each, n } : each)))) return [];
  return [{
    title: `Change “=${stated.n.value}” to “=${n.value}”: what emerged has germinated`,
    edits: [replace(line, { start: stated.start, end: stated.n.end }, `=${n.value}`)],
  }];
}

/** Whether there are seeds enough for a count that is written so. */
function fits({ before, tested }: CountEvent, written: readonly CountFact[]): boolean {
  const after = countTotals(before, written);
  return after.died <= after.germinated && (tested === undefined || accounted(after) <= tested);
}
