/** What a count and a cut test count, with how many more there can be. */
import { noTotals, type Totals } from '../../journal/life.ts';
import { countables, cutClasses, type Countable, type CountFact, type CutClass, type Span } from '../../model/record.ts';
import { countTotals } from '../../journal/counting.ts';
import type { Lived } from '../events.ts';
import { livedIn, othersOf, type Scene } from './scene.ts';
import type { Suggestion } from './suggestion.ts';

const meanings: Readonly<Record<Countable | CutClass, string>> = {
  germinated: 'the root is out', emerged: 'shoot or seed leaves are above the surface', leaf: 'the first true leaf is there',
  rotted: 'a seed rotted before it germinated', died: 'a seedling died', lost: 'eaten, dropped, washed away',
  leggy: 'a seedling drawn out and weak', abnormal: 'a seedling crippled or twisted',
  stuck: 'a seedling stuck in its seed coat', freed: 'a stuck seedling that came out of its seed coat',
  fresh: 'firm and white, could still have come', hard: 'took up no water', dead: 'soft, grey or brown inside', empty: 'nothing inside',
};

/**
 * What a number on a `count` can be of, but for what the line counts already. `number` as written: with `=` it is the
 * total so far.
 */
export function counts(number: string | undefined, segment: Span, scene: Scene): Suggestion[] {
  const isTotal = number?.startsWith('=') === true;
  const written = othersOf(scene, segment, 'count').map(({ what }) => what);
  const { before, tested } = soFar(livedIn(scene));
  const limits = limitsOf(before, tested, othersOf(scene, segment, 'count'));
  return countables.filter(what => !written.includes(what))
    .map(what => ({ what, limit: limits && (isTotal ? limits[what].total : limits[what].more) }))
    // What cannot be any more comes last, but a number by itself is always of germinated seed.
    .sort((a, b) => rank(a) - rank(b))
    .flatMap(({ what, limit }) => {
      const words = limitWords(limit, isTotal);
      if (number === '=') return [soFarTotal(what, before[what], limit)];
      const word = counted(what, number, words);
      return what === 'germinated' && number !== undefined && !/\p{L}/u.test(scene.typed) ? [bare(number, words)] : [word];
    });
}

function rank({ what, limit }: { readonly what: Countable; readonly limit: number | undefined }): number {
  return what === 'germinated' ? 0 : limit === 0 ? 2 : 1;
}

/** The number as it was typed: it needs no word. */
function bare(number: string, words: string | undefined): Suggestion {
  const detail = ['germinated', words].filter(word => word !== undefined).join(' · ');
  return { kind: 'number', label: number, detail, more: meanings.germinated };
}

/** Behind a `=` alone: the total as it stands. */
function soFarTotal(what: Countable, total: number, limit: number | undefined): Suggestion {
  return {
    kind: 'number', label: `=${total} ${what}`, detail: limit === undefined ? 'so far' : `so far; ${limitWords(limit, true)}`,
    more: meanings[what],
  };
}

function limitWords(limit: number | undefined, isTotal: boolean): string | undefined {
  if (limit === undefined) return undefined;
  if (isTotal) return `a total of ${limit} at most`;
  return limit === 0 ? 'no more possible' : `at most ${limit} more`;
}

/** The classes of a cut test that the line does not have yet, with what is left to sort. */
export function cuts(number: string | undefined, segment: Span, scene: Scene): Suggestion[] {
  const others = othersOf(scene, segment, 'cut');
  const expected = expectedIn(scene);
  const sorted = others.reduce((sum, { n }) => sum + n.value, 0);
  const left = expected === undefined ? undefined : Math.max(0, expected - sorted);
  const words = left === undefined ? undefined : `${left} left to sort`;
  return cutClasses.filter(what => !others.some(other => other.what === what))
    .map(what => counted(what, number, words));
}

/** Without a number there is a place for one: none is made up. */
function counted(what: Countable | CutClass, number: string | undefined, words: string | undefined): Suggestion {
  const suggestion = { kind: 'number', more: meanings[what], ...(words !== undefined && { detail: words }) } as const;
  if (number !== undefined) return { ...suggestion, label: `${number} ${what}` };
  return { ...suggestion, label: what, write: [{ blank: '' }, ` ${what}`], plain: what };
}

/** How many there can still be: as new ones, and as a total. */
type CountLimits = Readonly<Record<Countable, { readonly more: number; readonly total: number }>>;

/** By the seeds and what was counted before; undefined where the number of seeds is not known. */
function limitsOf(before: Totals, tested: number | undefined, others: readonly CountFact[]): CountLimits | undefined {
  if (tested === undefined) return undefined;
  const totals = countTotals(before, others);
  const { germinated, rotted, lost } = totals;
  const room: Readonly<Record<Countable, number>> = {
    germinated: tested - rotted - lost, emerged: tested - rotted - lost, leaf: tested - rotted - lost,
    rotted: tested - germinated - lost, lost: tested - germinated - rotted,
    died: germinated, leggy: germinated, abnormal: germinated, stuck: germinated, freed: totals.stuck || germinated,
  };
  return Object.fromEntries(countables.map(what =>
    [what, { more: Math.max(0, room[what] - totals[what]), total: Math.max(0, room[what]) }])) as CountLimits;
}

/** What was there when this was counted; a count without a date comes after all others. */
function soFar(lived: Lived | undefined): { readonly tested: number | undefined; readonly before: Totals } {
  if (!lived) return { tested: undefined, before: noTotals };
  const { batch, event } = lived;
  return event?.type === 'count' ? event : { tested: batch.tested, before: batch.totals };
}

function expectedIn(scene: Scene): number | undefined {
  const lived = livedIn(scene);
  if (!lived) return undefined;
  const { batch, event } = lived;
  if (event?.type === 'cut') return event.expected;
  const { totals: { germinated, rotted, lost }, tested } = batch;
  return tested === undefined ? undefined : Math.max(0, tested - germinated - rotted - lost);
}
