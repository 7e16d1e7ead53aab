/** What had germinated at each look, a batch a line, as block characters of a terminal. */
import { isUndefined } from '../measures/measured.ts';
import { envelopeOf, type Envelope } from '../pictures/germination/envelope.ts';
import type { BatchReport } from './batch-report.ts';
import type { Column } from './columns.ts';

/** None, six parts of what is between, and all. */
const BLOCKS = Array.from('▁▂▃▄▅▆▇█');
/** A time without a look: what had germinated by then is not known. */
const NOT_SEEN = '·';
/** The most blocks in a line. */
const MOST = 40;
const WEEK = 7;

/** How the lines are to be read. */
export const COURSES_LEGEND = 'The lines of blocks show how much of the seed sown, less lost, had germinated at each count, on the '
  + `same days for all batches of a lot. ${BLOCKS[0]} is none, ${BLOCKS.at(-1)!} is all, ${NOT_SEEN} is time without a count.`;

/** Batches whose days and seeds are known; no columns where none of them was looked at twice. */
export function courseColumns(batches: readonly BatchReport[]): Column[] {
  const drawn = batches.flatMap(({ batch: { path }, course }) => {
    const envelope = isUndefined(course) ? course : envelopeOf([course]);
    return isUndefined(envelope) ? [] : [{ path, envelope }];
  });
  const days = drawn.flatMap(({ envelope }) => looksOf(envelope).map(({ day }) => day));
  if (!drawn.some(({ envelope }) => looksOf(envelope).length > 1)) return [];
  const [first, last] = [Math.min(0, ...days), Math.max(...days)];
  const span = last - first + 1;
  const each = span <= MOST ? 1 : WEEK * Math.ceil(span / (WEEK * MOST));
  const head = `Day ${first} to ${last}${each === 1 ? '' : `, ${each} days a block`}`;
  return [
    { head: 'Batch', kind: 'text', cells: drawn.map(({ path }) => path) },
    { head, kind: 'text', cells: drawn.map(({ envelope }) => blocksOf(envelope, first, each)) },
  ];
}

function looksOf({ looks }: Envelope): Envelope['looks'] {
  return looks.filter(({ isLook }) => isLook);
}

/** Of several looks within one block the last one tells. */
function blocksOf(envelope: Envelope, first: number, each: number): string {
  const blocks: string[] = [];
  for (const { day, known } of looksOf(envelope)) {
    const at = Math.floor((day - first) / each);
    while (blocks.length < at) blocks.push(NOT_SEEN);
    blocks[at] = blockOf(known / envelope.seeds);
  }
  return blocks.join('');
}

/** What is not quite none or all has not their block. */
function blockOf(share: number): string {
  const between = BLOCKS.length - 2;
  return BLOCKS[share <= 0 ? 0 : share >= 1 ? between + 1 : 1 + Math.floor(share * between)]!;
}
