/** What is left, in words: the same in text, in Markdown and on the page. */
import { printMoment } from '../../journal/moment.ts';
import { isoOf } from '../../model/day.ts';
import { printQuantity } from '../../model/quantity.ts';
import { factOf } from '../../model/record.ts';
import { cautionsFor } from '../../solutions/cautions.ts';
import { foundText, leftText, showAmount } from '../../solutions/left-text.ts';
import { powderHeld } from '../../words/held.ts';
import type { Column } from '../columns.ts';
import type { Passage } from '../passages.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { StockList, StockRow } from './list.ts';

export function stockSheet({ name, now, rows }: StockList): Sheet {
  const there = rows.filter(({ state }) => state !== 'gone');
  const past = there.filter(({ state }) => state === 'expired');
  const good = there.filter(({ state }) => state !== 'expired');
  const isPacket = ({ solution }: StockRow) => solution.form === 'powder';
  const passages = [
    passageOf('Bottles', good.filter(row => !isPacket(row)), []),
    passageOf('Packets of powder', good.filter(isPacket), powderCautions(there)),
    passageOf('Past their date', past, ['A solution past its date is weaker than its label. Replace it, and write a note when you throw it away.']),
  ];
  return {
    title: `What is left${name === undefined ? '' : ` in ${name}`} as of ${printMoment(now)}`,
    lead: there.length === 0 ? ['No bottle and no packet has anything left.'] : [],
    passages: passages.filter(({ columns }) => columns.length > 0),
    notes: notesOf(rows),
  };
}

/** Example: 'GA3 1000 ppm', 'GA3 about 250 ppm', 'GA3 powder, purity 90 %' */
export function holdsText({ solution, content }: StockRow): string {
  const { form, agent, entry: { record } } = solution;
  if (!agent) return 'agent unknown';
  const label = form === 'bought' ? factOf(record, 'substance')?.strength?.value : undefined;
  if (label) return `${agent.word} ${printQuantity(label)}`;
  return form === 'powder' ? powderHeld(solution) : content;
}

/** Example: '8 mL', 'at most 300 mg', 'not known' */
export function restText({ solution: { form }, left }: StockRow): string {
  return left ? leftText(form, left) : 'unknown';
}

function passageOf(heading: string, rows: readonly StockRow[], texts: readonly string[]): Passage {
  const column = (head: string, cell: (row: StockRow) => string, kind: Column['kind'] = 'text'): Column =>
    ({ head, kind, cells: rows.map(cell) });
  if (rows.length === 0) return { heading, columns: [], items: [], texts: [] };
  const remarks = rows.flatMap(row => {
    const remark = remarkOf(row);
    return remark === '' ? [] : [`${row.solution.id}: ${remark}.`];
  });
  return {
    heading, items: [], texts: [...remarks, ...texts],
    columns: [
      column('Name', ({ solution }) => solution.id),
      column('Holds', holdsText),
      column('Left', restText),
      column('Of', ({ solution: { form, made } }) => (made ? showAmount(form, made).text : '–'), 'number'),
      column('Good until', ({ solution: { keeps } }) => (keeps ? isoOf(keeps.until) : '–')),
      column('At', ({ place }) => place ?? '–'),
    ],
  };
}

function remarkOf({ solution: { form }, state, found, notMeasured, overdrawn }: StockRow): string {
  const amount = form === 'powder' ? 'mass' : 'volume';
  return [
    state === 'near' ? 'use it up soon' : undefined,
    found?.moment ? `${foundText(form, found.amount)} on ${isoOf(found.moment.day)}` : undefined,
    notMeasured > 0 ? `taken ${notMeasured === 1 ? 'once' : `${notMeasured} times`} ${found ? 'since ' : ''}without a ${amount}` : undefined,
    overdrawn ? 'more was taken than it held' : undefined,
  ].filter(text => text !== undefined).join(', ');
}

/** What anybody has to know who opens a packet. */
function powderCautions(rows: readonly StockRow[]): string[] {
  const agents = rows.flatMap(({ solution: { form, agent } }) => (form === 'powder' && agent ? [agent] : []));
  return agents.length === 0 ? [] : [cautionsFor('powder', [...new Set(agents)]).map(({ text }) => text).join(' ')];
}

function notesOf(rows: readonly StockRow[]): string[] {
  const gone = rows.filter(({ state }) => state === 'gone').map(({ solution: { id } }) => id);
  const isLimited = rows.some(({ left }) => left && !left.least.equals(left.most));
  return [
    ...(gone.length > 0 ? [`Used up or thrown away: ${gone.join(', ')}.`] : []),
    ...(isLimited ? ['“At most”: some was taken without an amount, so less may be left, or none. “About”: powder was halved by eye; a half holds 45 to 55 % (common practice, no source).'] : []),
  ];
}
