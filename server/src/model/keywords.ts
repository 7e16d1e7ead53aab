/** The record keywords: what each is for, its subject, its facts. Parser, completion and help all read this table. */
import type { FactType } from './record.ts';

/** What stands behind the keyword. */
export type SubjectKind =
  | 'date'
  | 'new lot'
  | 'batch' // a lot or a batch of one
  | 'any' // any id that the journal knows
  | 'new stock'
  | 'new packet'
  | 'stock' // a bottle or a packet that is there
  | 'new regime'
  | 'plant'
  | 'limited' // soak, stock, count or an agent
  | 'new agent'
  | 'zone';

export interface FactUse {
  readonly type: FactType;
  /** As the reader sees it: `24 seeds`. */
  readonly shape: string;
  readonly required?: true;
  /** Not required where a fact of this type stands. */
  readonly unless?: FactType;
  /** May be written more than once on a line. */
  readonly many?: true;
}

export interface KeywordInfo {
  readonly subject: SubjectKind;
  /** Whether a record must have a date, its own or that of the `day` above; 'own' when it must be on the line. */
  readonly dated: 'yes' | 'own' | 'optional' | 'no';
  readonly facts: readonly FactUse[];
  /** One line for completion and help. */
  readonly says: string;
  readonly example: string;
}

const at: FactUse = { type: 'at', shape: 'at bag 3 slot 2' };
const duration: FactUse = { type: 'duration', shape: '24 h' };
const temperature: FactUse = { type: 'temperature', shape: '18 C' };
const text: FactUse = { type: 'text', shape: 'text' };
const substances: FactUse = { type: 'substance', shape: 'GA3 500 ppm', many: true };
const volume: FactUse = { type: 'volume', shape: '20 mL' };
const seeds: FactUse = { type: 'seeds', shape: '24 seeds' };
/** In the open or in a cold frame, at no temperature that anybody sets. */
const outdoors: FactUse = { type: 'outdoors', shape: 'outdoors' };
const look: FactUse = { type: 'look', shape: 'look again 2027-03-01' };
const source: FactUse = { type: 'source', shape: 'source "a book, p. 12"' };
const stage: FactUse = { type: 'stage', shape: 'chill 4 C 90 days', many: true };

const seedlings: FactUse = { type: 'seedlings', shape: '9 seedlings' };
const whither: FactUse = { type: 'whither', shape: 'to a friend' };
const leaving = [{ ...seeds, shape: '12 seeds' }, seedlings, whither] as const;

/** Typed as written, so that other tables can be keyed by what stands in it; see `keywords`. */
const keywordTable = {
  day: {
    subject: 'date', dated: 'no', facts: [],
    says: 'the date of the undated records below',
    example: 'day 2026-01-19',
  },
  lot: {
    subject: 'new lot', dated: 'optional',
    facts: [
      { ...seeds, shape: '60 seeds' },
      { type: 'collected', shape: 'collected 2025-09-14' },
      { type: 'from', shape: 'from own garden' },
      { type: 'stored', shape: 'stored dry in the fridge' },
      { type: 'dormancy', shape: 'dormancy PD' },
      { type: 'replaces', shape: 'replaces VER-22', many: true },
      at,
    ],
    says: 'a packet or harvest of seed',
    example: 'lot VER-24 Veratrum nigrum, 60 seeds, collected 2025-09-14, from own garden',
  },
  split: {
    subject: 'batch', dated: 'optional',
    facts: [{ type: 'part', shape: 'A 24 seeds', required: true, many: true }],
    says: 'divides a lot or a batch; the rest of the seed stays in it',
    example: 'split VER-24, A 24 seeds, B 24 seeds',
  },
  soak: {
    subject: 'batch', dated: 'yes',
    facts: [{ ...substances, required: true }, duration, { type: 'until', shape: 'until 2026-01-11 19:00' }, volume, at],
    says: 'seed goes into a liquid, or onto a damp towel with unmeasured powder',
    example: 'soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h, at bag 1 slot 2',
  },
  lift: {
    subject: 'batch', dated: 'yes', facts: [],
    says: 'the seed comes out of the soak now',
    example: 'lift VER-24/A 2026-01-11 18:45',
  },
  scarify: {
    subject: 'batch', dated: 'yes', facts: [text],
    says: 'nicked, sanded, or treated with hot water',
    example: 'scarify GLE-25, nicked with a file',
  },
  sow: {
    subject: 'batch', dated: 'yes',
    facts: [
      seeds, temperature, at, { type: 'in', shape: 'in seed compost and grit' },
      { type: 'regime', shape: 'regime twowinters' }, outdoors, look,
    ],
    says: 'seed goes into its medium; this is day 0',
    example: 'sow VER-24/A 2026-01-11 19:10, 24 seeds, 18 C, at bag 4',
  },
  chill: {
    subject: 'batch', dated: 'yes', facts: [{ ...temperature, shape: '4 C' }, { ...duration, shape: '90 days' }, at],
    says: 'a cold stage begins',
    example: 'chill VER-24/A 2026-02-01, 4 C, 90 days, at fridge',
  },
  warm: {
    subject: 'batch', dated: 'yes', facts: [{ ...temperature, shape: '20/10 C' }, { ...duration, shape: '60 days' }, at],
    says: 'a warm stage begins',
    example: 'warm VER-24/A 2026-05-02, 20/10 C, 60 days',
  },
  move: {
    subject: 'batch', dated: 'yes', facts: [{ ...at, required: true }, outdoors, look],
    says: 'the batch goes to another place',
    example: 'move VER-24/A 2026-03-01, at cold frame',
  },
  apply: {
    subject: 'batch', dated: 'yes',
    facts: [{ ...substances, required: true }, { type: 'drops', shape: '2 drops' }, volume, { type: 'seedlings', shape: '4 seedlings' }],
    says: 'a dose on seedlings that are already up',
    example: 'apply VER-24/B 2026-04-02, GA3 100 ppm, 2 drops, 4 seedlings',
  },
  count: {
    subject: 'batch', dated: 'yes',
    facts: [{ type: 'count', shape: '3 germinated', required: true, many: true }, look],
    says: 'what you saw; a number is what is new, with = it is the total so far',
    example: 'count VER-24/A 2026-01-19, 3 germinated, 1 rotted',
  },
  cut: {
    subject: 'batch', dated: 'yes',
    facts: [{ type: 'cut', shape: '2 fresh', required: true, many: true }],
    says: 'cut test of the seed that has not germinated; closes the batch',
    example: 'cut VER-24/B 2026-06-01, 8 fresh, 2 dead, 1 empty',
  },
  pot: {
    subject: 'batch', dated: 'yes', facts: [{ type: 'seedlings', shape: '9 seedlings' }, at],
    says: 'seedlings pricked out',
    example: 'pot VER-24/A 2026-05-10, 9 seedlings',
  },
  plant: {
    subject: 'batch', dated: 'yes', facts: [{ ...seedlings }, { ...whither, shape: 'in the long border' }],
    says: 'seedlings planted out, some or all',
    example: 'plant VER-24/A 2026-06-14, 9 seedlings, in the long border',
  },
  give: {
    subject: 'batch', dated: 'yes', facts: leaving,
    says: 'seed or seedlings given away, some or all',
    example: 'give VER-24/A 2026-06-14, 4 seedlings, to the garden club',
  },
  sell: {
    subject: 'batch', dated: 'yes', facts: leaving,
    says: 'seed or seedlings sold, some or all',
    example: 'sell VER-24/A 2026-06-14, 6 seedlings, to the plant fair',
  },
  send: {
    subject: 'batch', dated: 'yes', facts: leaving,
    says: 'seed or seedlings sent to somebody, some or all',
    example: 'send VER-24 2026-06-14, 12 seeds, to a friend in the north',
  },
  lose: {
    subject: 'batch', dated: 'yes', facts: [{ ...seedlings }, { ...whither, shape: 'to slugs' }],
    says: 'seedlings lost after they had germinated: spilled, eaten, stolen',
    example: 'lose VER-24/A 2026-06-14, 3 seedlings, to a spill',
  },
  discard: {
    subject: 'batch', dated: 'yes', facts: [text],
    says: 'closes the batch',
    example: 'discard VER-24/B 2026-06-01, all soft',
  },
  judge: {
    subject: 'batch', dated: 'yes', facts: [{ type: 'on', shape: 'on day 120', required: true }],
    says: 'says beforehand on which day you will judge a trial',
    example: 'judge VER-24 2026-01-11, on day 120',
  },
  note: {
    subject: 'any', dated: 'yes', facts: [{ ...text, required: true }],
    says: 'a remark that you can search for',
    example: 'note VER-24 2026-02-01, seed coats very hard this year',
  },
  photo: {
    subject: 'any', dated: 'yes', facts: [{ type: 'path', shape: 'photos/ver-24.jpg', required: true }],
    says: 'a picture, by its path from this file',
    example: 'photo VER-24/A 2026-01-19, photos/radicles.jpg',
  },
  due: {
    subject: 'any', dated: 'own', facts: [{ ...text, required: true }],
    says: 'your own reminder',
    example: 'due VER-24/A 2026-03-15, look for shoots',
  },
  stock: {
    subject: 'new stock', dated: 'yes',
    facts: [
      { ...substances, shape: 'GA3 20 mg', required: true, unless: 'draw' },
      { type: 'draw', shape: 'from P1 20 mg' },
      { type: 'purity', shape: 'purity 90 %' },
      { type: 'bought', shape: 'bought 2025-03' },
      volume,
      { type: 'keeps', shape: 'keeps 4 years' },
      at,
    ],
    says: 'a solution made up from powder',
    example: 'stock G1 2026-01-09, GA3 20 mg, purity 90 %, 18 mL, at fridge door',
  },
  powder: {
    subject: 'new packet', dated: 'yes',
    facts: [
      { type: 'substance', shape: 'GA3 1 g', required: true },
      { type: 'purity', shape: 'purity 90 %' },
      { type: 'bought', shape: 'bought 2025-03' },
      { type: 'keeps', shape: 'keeps 4 years' },
      at,
    ],
    says: 'a packet of powder, from which stocks are made',
    example: 'powder P1 2025-11-02, GA3 1 g, purity 90 %, at freezer',
  },
  dilute: {
    subject: 'new stock', dated: 'yes',
    facts: [
      { type: 'draw', shape: 'from G1 10 mL', required: true },
      { type: 'to', shape: 'to 20 mL', required: true },
      { type: 'keeps', shape: 'keeps 4 years' },
      at,
    ],
    says: 'a weaker solution from a stock',
    example: 'dilute G2 2026-01-09, from G1 10 mL, to 20 mL',
  },
  left: {
    subject: 'stock', dated: 'yes',
    facts: [{ ...volume, shape: '12 mL', required: true, unless: 'mass' }, { type: 'mass', shape: '640 mg' }],
    says: 'what is left in a bottle or a packet, measured again',
    example: 'left P1 2026-03-01, 640 mg',
  },
  regime: {
    subject: 'new regime', dated: 'no', facts: [{ ...stage, required: true }],
    says: 'a sequence of warm and cold stages',
    example: 'regime twowinters, warm 20 C 60 days, chill 4 C 90 days, warm 15 C 30 days',
  },
  guide: {
    subject: 'plant', dated: 'no', facts: [substances, duration, stage, source],
    says: 'what your books say about a plant or a genus',
    example: 'guide Veratrum, GA3 500 ppm, 24 h, source "a seed list, 2019"',
  },
  limit: {
    subject: 'limited', dated: 'no', facts: [duration, { type: 'strength', shape: '1000 ppm' }, { type: 'for', shape: 'for Primula' }],
    says: 'your own limit for soaks, stocks, counts or an agent',
    example: 'limit GA3, 500 ppm, for Primula',
  },
  agent: {
    subject: 'new agent', dated: 'no',
    facts: [{ type: 'molarMass', shape: '76.117 g/mol' }, { type: 'solubility', shape: 'solubility 100 g/L' }, text],
    says: 'your own word for a substance',
    example: 'agent kelp, seaweed extract of the garden shop',
  },
  zone: {
    subject: 'zone', dated: 'no', facts: [],
    says: 'your time zone: keeps hours right when summer time begins or ends, and tells when your winter is',
    example: 'zone Europe/Vienna',
  },
} as const satisfies Record<string, KeywordInfo>;

export type KeywordTable = typeof keywordTable;
export type Keyword = keyof KeywordTable;

/** All that is known of each keyword, in the order in which help shows them. */
export const keywords: Readonly<Record<Keyword, KeywordInfo>> = keywordTable;

export function isKeyword(word: string): word is Keyword {
  return Object.hasOwn(keywordTable, word);
}
