/** What is left as plain data for other programs; syntaxes/json.md describes the shape. */
import { isoMoment } from '../../calendar/ask.ts';
import { isoOf } from '../../model/day.ts';
import { factOf } from '../../model/record.ts';
import { toNumber } from '../../solutions/display.ts';
import type { StockList, StockRow } from './list.ts';

/** Version of the shape; it grows when something in it changes its meaning or goes, not when something comes. */
export const STOCKS_SHAPE = 1;

const kinds = { powder: 'packet', stock: 'stock', bought: 'bought', dilution: 'dilution' } as const;

export function stocksData({ now, rows }: StockList): object {
  return { now: isoMoment(now), stocks: rows.map(rowData) };
}

function rowData({ solution, left, found, notMeasured, overdrawn, emptied, state, place, isAbout }: StockRow): object {
  const { id, form, agent, ppm, made, keeps, from, packet, entry: { record, moment, line } } = solution;
  const purity = factOf(record, 'purity');
  return {
    id, kind: kinds[form],
    agent: agent?.word ?? null,
    ppm: ppm.ok ? toNumber(ppm.value) : null,
    about: isAbout,
    atMost: solution.staleSource !== undefined,
    purity: purity ? { percent: purity.percent, of: purity.form ?? null } : null,
    from: from ?? packet ?? null,
    date: moment ? isoMoment(moment) : null,
    unit: form === 'powder' ? 'mg' : 'mL',
    made: made ? toNumber(made) : null,
    left: left ? {
      least: toNumber(left.least), most: toNumber(left.most), likely: left.likely ? toNumber(left.likely) : null,
    } : null,
    measured: found ? { on: found.moment ? isoMoment(found.moment) : null, amount: toNumber(found.amount) } : null,
    takenWithoutAmount: notMeasured,
    overdrawn,
    goodUntil: keeps ? isoOf(keeps.until) : null,
    state,
    goneSince: emptied ? isoMoment(emptied) : null,
    place: place ?? null,
    file: line.store.name, line: line.number + 1,
  };
}
