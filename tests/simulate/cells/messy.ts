/** Lots in which the soak does nothing, counted as people count. */
import { NO_BAR, NO_EFFECT, type Bars, type Cell } from '../cell.ts';
import { DAY_ZERO, diaryOf, textOf, type End, type Side, type SimulatedLot } from '../diary.ts';
import { isoOf } from '../../../server/src/model/day.ts';
import { journalOf, verdictsOfLots } from '../judged.ts';
import { holiday, looksByChance, looksOf, untilQuiet, whileComing } from '../looks.ts';
import { every } from '../lots.ts';
import { between, oneOf, whole, type Random } from '../random.ts';
import { scatterOf, weakKinds, type Nature } from '../season.ts';

type Who = 'treated' | 'untreated';

/** What a kind of lot says of one dish; the rest is by chance. */
type Habits = (random: Random) => {
  readonly nature?: Partial<Nature>;
  readonly spread?: number;
  readonly chill?: number;
  /** Asked once for each dish. */
  readonly dish?: (who: Who) => Partial<Pick<Side, 'looks' | 'end' | 'later' | 'nature'>>;
  readonly sizes?: (who: Who) => readonly number[];
};

function lotOf(random: Random, habits: Habits): SimulatedLot {
  const season = lastOf(random);
  const nature: Nature = {
    share: between(random, 0.15, 0.95), median: between(random, 10, 45), rotting: between(random, 0, 0.3) };
  const { nature: own, spread, chill, dish = () => ({}), sizes } = habits(random);
  const seeds = whole(random, 15, 80);
  const shared = { nature: { ...nature, ...own }, looks: every(7, 7, season), end: endOf(random) };
  const sides = (['treated', 'untreated'] as const).flatMap(who => (sizes?.(who) ?? [seeds]).map((n): Side => (
    { soak: who === 'treated' ? 'GA3 500 ppm' : 'water', dishes: [n], ...shared, ...dish(who) })));
  return { id: 'SIM-26', sides, scatter: scatterOf(random, spread), ...(chill && { chill }) };
}

/** The last day of the season. */
function lastOf(random: Random): number {
  return 7 * whole(random, 6, 18);
}

function endOf(random: Random): End {
  return oneOf(random, ['cut', 'discard', 'open', 'open']);
}

function messyCell(name: string, habits: Habits, bars: Bars = NO_EFFECT): Cell {
  return { name: `messy, ${name}`, bars, judge: random => verdictsOfLots(journalOf(textOf(diaryOf(random, lotOf(random, habits))))) };
}

/** A habit of its own for each side. */
function apart(random: Random): (who: Who) => { looks: number[]; end: End } {
  const of = () => {
    const last = lastOf(random);
    const looks = looksOf(random, {
      gap: oneOf(random, [3, 7, 7, 10, 14, 28]), first: whole(random, 3, 20), last,
      missed: between(random, 0, 0.5), ...(random() < 0.5 && { away: holiday(random, last) }) });
    return { looks, end: endOf(random) };
  };
  const sides = { treated: of(), untreated: of() };
  return who => sides[who];
}

function earlyCell(who: Who): Cell {
  return messyCell(`the ${who} side is closed early`, random => {
    const last = whole(random, 14, 40);
    const end = oneOf<End>(random, ['cut', 'discard']);
    return { dish: side => (side === who ? { looks: every(7, 7, last), end } : {}) };
  });
}

/**
 * Both sides are thrown away as soon as one leads by as much as pleases: whoever ends a trial by what it shows will
 * find what pleases. No rule can know; the row is shown as it is.
 */
const stopsWhenPleased: Cell = {
  name: 'messy, thrown away when the treated side leads by 15 points',
  bars: NO_BAR,
  judge: random => {
    const lot = lotOf(random, () => ({ dish: () => ({ looks: every(7, 7, 84), end: 'open' }), sizes: () => [50] }));
    const lines = diaryOf(random, lot);
    const found = { A: 0, B: 0 };
    let until = DAY_ZERO + 84;
    for (let day = DAY_ZERO + 7; day <= until; day += 7) {
      for (const { text } of lines.filter(line => line.day === day)) {
        const [, side, n] = /^count SIM-26\/([AB])1 \S+ \S+ (\d+)/.exec(text) ?? [];
        if (side) found[side as 'A' | 'B'] += Number(n);
      }
      if (found.A - found.B >= 7.5) until = day;
    }
    const close = ['A1', 'B1'].map(part => `discard SIM-26/${part} ${isoOf(until)} 21:00\n`).join('');
    return verdictsOfLots(journalOf(textOf(lines, until) + close));
  },
};

export const messy: readonly Cell[] = [
  messyCell('missed Sundays and a holiday, both sides on one day', random => {
    const last = lastOf(random);
    const missed = between(random, 0.1, 0.6);
    const looks = looksOf(random, { gap: 7, first: 7, last, missed, away: holiday(random, last) });
    return { dish: () => ({ looks }) };
  }),
  messyCell('each side missed on days of its own', random => {
    const last = lastOf(random);
    const looks = () => looksOf(random, { gap: 7, first: 7, last, missed: between(random, 0.1, 0.6) });
    return { dish: () => ({ looks: looks() }) };
  }),
  messyCell('each side by chance', random => {
    const last = lastOf(random);
    return { dish: () => ({ looks: looksByChance(random, between(random, 4, 14), last) }) };
  }),
  messyCell('each side by a habit of its own', random => ({ dish: apart(random) })),
  messyCell('all seed comes within days, each side by a habit of its own', random => ({ spread: 0.05, dish: apart(random) })),
  messyCell('one look a side, days apart', random => ({
    dish: () => ({ looks: [whole(random, 20, 60)], end: oneOf<End>(random, ['cut', 'discard', 'open']) }) })),
  messyCell('treated weekly, untreated monthly', random => ({
    dish: who => ({ looks: who === 'treated' ? every(7, 7, 84) : every(28, whole(random, 10, 28), 90) }) })),
  messyCell('untreated weekly, treated monthly', random => ({
    dish: who => ({ looks: who === 'untreated' ? every(7, 7, 84) : every(28, whole(random, 10, 28), 90) }) })),
  earlyCell('treated'),
  earlyCell('untreated'),
  messyCell('a dish is given up when it is quiet', random => ({
    dish: () => ({ looks: untilQuiet(every(7, 7, 84), whole(random, 2, 4)), end: oneOf<End>(random, ['discard', 'open']) }) })),
  messyCell('looked at more often while it comes up', random => ({
    dish: () => ({ looks: whileComing(98, whole(random, 5, 14)) }) })),
  messyCell('sown up to 3 days apart', random => ({ dish: who => ({ later: who === 'treated' ? whole(random, 0, 3) : 0 }) })),
  messyCell('three times the seed untreated', random => {
    const n = whole(random, 8, 30);
    return { sizes: who => [who === 'treated' ? n : 3 * n], dish: apart(random) };
  }),
  messyCell('three times the seed treated', random => {
    const n = whole(random, 8, 30);
    return { sizes: who => [who === 'treated' ? 3 * n : n], dish: apart(random) };
  }),
  messyCell('dishes of unlike size, each on days of its own', random => ({
    sizes: () => Array.from({ length: whole(random, 2, 4) }, () => whole(random, 6, 30)),
    dish: () => ({ looks: looksByChance(random, between(random, 4, 10), 84) }) })),
  messyCell('dishes of unlike size, rho 0.05', random => ({
    nature: { rho: 0.05 },
    sizes: () => Array.from({ length: whole(random, 2, 4) }, () => whole(random, 6, 30)) })),
  messyCell('mice at the treated side', () => ({
    dish: who => (who === 'treated' ? { nature: { share: 0.5, median: 24, losing: 0.3 } } : { nature: { share: 0.5, median: 24 } }) })),
  messyCell('seed is lost, each side on days of its own', random => ({ nature: { losing: 0.2 }, dish: apart(random) })),
  messyCell('some comes up in the cold, where one side is looked at', random => {
    const who = oneOf<Who>(random, ['treated', 'untreated']);
    return {
      chill: 56, nature: { inCold: { share: 0.3, days: 56 } },
      dish: side => ({ looks: [...(side === who ? [-21, -7] : []), ...every(7, 7, 84)] }) };
  }),
  messyCell('weak seedlings, each side by a habit of its own', random => ({
    nature: { share: 0.85, weak: { share: 0.25, kind: oneOf(random, weakKinds) } }, dish: apart(random) })),
  messyCell('weak seedlings, treated weekly, untreated monthly', random => ({
    nature: { share: 0.85, weak: { share: 0.25, kind: oneOf(random, weakKinds) } },
    dish: who => ({ looks: who === 'treated' ? every(7, 7, 84) : every(28, 28, 84) }) })),
  messyCell('everything at once', random => ({
    nature: { losing: 0.1, weak: { share: 0.15, kind: oneOf(random, weakKinds) } },
    sizes: () => Array.from({ length: whole(random, 1, 3) }, () => whole(random, 6, 40)),
    dish: apart(random) })),
  stopsWhenPleased,
];
