/**
 * Journals of a society of growers, each known by its number alone: as text, as strata, and as the SQL that gives the
 * tables of as many of them as a disk holds. Everybody sows half of each lot treated and half untreated, and counts
 * both each week.
 */
import { isoOf, dayOfIso } from '../../server/src/model/day.ts';

export interface World {
  /** Growers, from 1. */
  readonly journals: number;
  /** Lots of each, and counts of each batch. */
  readonly lots: number;
  readonly counts: number;
}

/** Lots in which as many seeds germinated as these. */
export interface Stratum {
  readonly species: string;
  readonly treated: number;
  readonly untreated: number;
}

/** Seeds of a batch. */
export const SEEDS = 20;
const SPECIES = 40;
const SOWN = '2026-01-11';
const FILE = 'winter.germ';
/** Lines of a lot before its first count. */
const HEAD = 6;


/**
 * How many of a batch germinate in the end; b is 0 for treated seed and 1 for untreated. The multipliers are those of
 * well-known generators, and the products stay below 2^53, so that JavaScript and SQL agree.
 */
function germinated(j: number, l: number, b: 0 | 1): number {
  const draw = ((j * 48271 + l * 69621 + b * 40692 + 12345) * 16807) % 2147483647;
  const k = speciesOf(j, l);
  return (draw % (6 + (k % 8))) + (b === 0 ? k % 6 : 0);
}

function speciesOf(j: number, l: number): number {
  return (j * 7 + l) % SPECIES;
}

function epithet(k: number): string {
  return String.fromCharCode(97 + Math.floor(k / 8)) + String.fromCharCode(97 + (k % 8));
}

export function nameOf(j: number): string {
  return `grower-${String(j).padStart(5, '0')}`;
}

/** The journal of a grower. */
export function journalText(j: number, { lots, counts }: World): string {
  const lines: string[] = [];
  for (let l = 1; l <= lots; l++) {
    lines.push(
      `lot L${l} Simula ${epithet(speciesOf(j, l))}, ${2 * SEEDS} seeds`,
      `split L${l}, T ${SEEDS} seeds, U ${SEEDS} seeds`,
      `soak L${l}/T 2026-01-10 19:00, GA3 500 ppm, 24 h`,
      `soak L${l}/U 2026-01-10 19:00, water, 24 h`,
      `sow L${l}/T ${SOWN}, ${SEEDS} seeds, 18 C`,
      `sow L${l}/U ${SOWN}, ${SEEDS} seeds, 18 C`,
    );
    const ends = ([0, 1] as const).map(b => germinated(j, l, b));
    for (let c = 1; c <= counts; c++) {
      const date = isoOf(dayOfIso(SOWN)! + 7 * c);
      for (const [b, end] of ends.entries()) {
        const fresh = Math.floor((end * c) / counts) - Math.floor((end * (c - 1)) / counts);
        lines.push(`count L${l}/${b === 0 ? 'T' : 'U'} ${date}, ${fresh}`);
      }
    }
  }
  return lines.map(line => `${line}\n`).join('');
}

/** What the report by species puts together. */
export function* strataOf({ journals, lots }: World): IterableIterator<Stratum> {
  for (let j = 1; j <= journals; j++) {
    for (let l = 1; l <= lots; l++) {
      const species = `simula ${epithet(speciesOf(j, l))}`;
      yield { species, treated: germinated(j, l, 0), untreated: germinated(j, l, 1) };
    }
  }
}

/** The SELECT of a table for the journals from one number to another, by ORDERS in the order of the writer. */
export function selectOf(table: 'lots' | 'batches' | 'observations', world: World, from: number, to: number): string {
  const { lots, counts } = world;
  const common = `
    WITH drawn AS (
      SELECT j, l, b, format('grower-{:05d}', j) AS journal, 'L' || l AS lot, 'L' || l || ['/T', '/U'][b + 1] AS path,
        (j * 7 + l) % ${SPECIES} AS k, (l - 1) * ${HEAD + 2 * counts} AS above,
        (((j * 48271 + l * 69621 + b * 40692 + 12345) * 16807) % 2147483647) % (6 + k % 8) + CASE WHEN b = 0 THEN k % 6 ELSE 0 END AS g,
        'Simula ' || chr((97 + k // 8)::INTEGER) || chr((97 + k % 8)::INTEGER) AS plant
      FROM range(${from}, ${to + 1}) journals(j), range(1, ${lots + 1}) lots(l), range(0, 2) batches(b)
    )`;
  switch (table) {
    case 'lots': return `${common}
      SELECT journal, lot, plant, lower(plant) AS species, 'simula' AS genus, '${FILE}' AS file, above + 1 AS line,
        ${seedsSql('seeds', 2 * SEEDS)}, NULL::DATE AS collected_first, NULL::DATE AS collected_last,
        NULL::BIGINT AS harvests, ${nullTexts('from', 'stored', 'dormancy', 'replaces', 'place', 'remark')}
      FROM drawn WHERE b = 0`;
    case 'batches': return `${common}, halves AS (
        SELECT *, b + 1 AS nth FROM drawn UNION ALL SELECT * REPLACE (lot AS path), 0 AS nth FROM drawn WHERE b = 0
      )
      SELECT journal, lot, path AS batch, CASE WHEN nth > 0 THEN lot END AS parent, NULL::DATE AS split_date,
        ['untreated', 'GA3 500 ppm 24 h', 'water 24 h'][nth + 1] AS treatment, nth = 1 AS is_treated,
        ${halved('seeds', 2 * SEEDS)}, ${halved('kept', 0)}, ${halved('sown', 'NULL')}, ${halved('tested', 0)},
        CASE WHEN nth > 0 THEN DATE '${SOWN}' END AS day_zero, CASE WHEN nth > 0 THEN 'sowing' END AS day_zero_by,
        CASE WHEN nth > 0 THEN '2025/26' END AS winter, NULL::VARCHAR AS medium,
        CASE WHEN nth > 0 THEN 18 END AS temperature_day_c, CASE WHEN nth > 0 THEN 18 END AS temperature_night_c,
        NULL::VARCHAR AS place, CASE WHEN nth > 0 THEN ${counts} ELSE 0 END AS counts,
        CASE WHEN nth > 0 THEN DATE '${SOWN}' + 7 * ${counts} END AS last_count_date,
        CASE WHEN nth > 0 THEN g END AS germinated,
        ${zeros('emerged', 'leaf', 'rotted', 'died', 'lost', 'leggy', 'abnormal', 'stuck', 'freed')},
        ${['fresh', 'hard', 'dead', 'empty'].map(what => `NULL::BIGINT AS cut_${what}`).join(', ')},
        CASE WHEN nth > 0 THEN 'sown' ELSE 'not begun' END AS state, NULL::DATE AS closed_date, false AS has_unread_records
      FROM halves`;
    case 'observations': return `${common}
      SELECT journal, '${FILE}' AS file, above + ${HEAD - 1} + 2 * c + b AS line, lot, path AS batch,
        DATE '${SOWN}' + (7 * c)::INTEGER AS date, NULL::TIME AS time, 7 * c AS day, 'germinated' AS kind,
        g * c // ${counts} - g * (c - 1) // ${counts} AS new, g * c // ${counts} AS total, 'new' AS recorded_as,
        ${seedsSql('tested', SEEDS)}
      FROM drawn, range(1, ${counts + 1}) counts(c)`;
    default: return table satisfies never;
  }
}

function seedsSql(name: string, seeds: number): string {
  return ['', '_least', '_most'].map(end => `${seeds} AS ${name}${end}`).join(', ');
}

/** Of the lot itself it is this, of its halves the seeds of a half. */
function halved(name: string, ofLot: number | 'NULL'): string {
  return ['', '_least', '_most'].map(end => `CASE WHEN nth > 0 THEN ${SEEDS} ELSE ${ofLot} END AS ${name}${end}`).join(', ');
}

function zeros(...names: string[]): string {
  return names.map(name => `CASE WHEN nth > 0 THEN 0 END AS ${name}`).join(', ');
}

function nullTexts(...names: string[]): string {
  return names.map(name => `NULL::VARCHAR AS "${name}"`).join(', ');
}

export const ORDERS = { lots: 'ORDER BY j, l', batches: 'ORDER BY j, l, nth', observations: 'ORDER BY j, l, c, b' } as const;

/** From counts to strata: what had germinated by the last count, of treated and of untreated seed of each lot. */
export function strataSql(at: (table: string) => string): string {
  return `
    WITH totals AS (
      SELECT journal, batch, max(total) AS up, any_value(tested) AS counted
      FROM ${at('observations')} AS seen WHERE kind = 'germinated' GROUP BY journal, batch
    )
    SELECT journal, lot, any_value(species) AS species, 'GA3' AS agent,
      sum(up) FILTER (is_treated) AS treated_germinated, sum(counted) FILTER (is_treated) AS treated_seeds,
      sum(up) FILTER (NOT is_treated) AS untreated_germinated, sum(counted) FILTER (NOT is_treated) AS untreated_seeds
    FROM totals JOIN ${at('batches')} AS parts USING (journal, batch) JOIN ${at('lots')} AS packets USING (journal, lot)
    GROUP BY journal, lot`;
}

/** The SQL of the page on tables, at full precision, over the strata in a file or a table. */
export function poolingSql(page: string, from: string): string {
  const [, sql = ''] = /^```sql\n(.*?)^```/ms.exec(page) ?? [];
  return sql.replaceAll(/round\((.*?), \d\) AS/g, '($1) AS').replace(/'tables\/strata\.csv'/, from)
    .replace('WHERE strata > 1', 'WHERE r > 0 AND s > 0');
}
