/** Where an axis of dates has its marks: at the beginnings of months, as many as their names leave room for. */
import { addMonths, dayOf, isoOf, type Day } from '../model/day.ts';

export interface DateTick {
  readonly day: Day;
  /** 'Nov', and of a January its year. */
  readonly text: string;
}

const NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const STEPS = [1, 2, 3, 6, 12, 24, 60, 120];
/** Pixels of a name with the space beside it. */
const ROOM = 40;

/**
 * @example
 * monthTicks([dayOf(2026, 11, 20), dayOf(2027, 3, 5)], 400).map(({ text }) => text) // ['Dec', '2027', 'Feb', 'Mar']
 */
export function monthTicks([first, last]: readonly [Day, Day], pixels: number): DateTick[] {
  const perMonth = pixels / Math.max(1, last - first) * 30;
  const step = STEPS.find(months => months * perMonth >= ROOM) ?? STEPS.at(-1)!;
  const [year = 0] = isoOf(first).split('-').map(Number);
  const start = dayOf(step > 12 ? Math.floor(year / 10) * 10 : year, 1, 1)!;
  const ticks: DateTick[] = [];
  for (let months = 0; ; months += step) {
    const day = addMonths(start, months);
    if (day > last) return ticks;
    const [ofYear = '', month = ''] = isoOf(day).split('-');
    if (day >= first) ticks.push({ day, text: month === '01' ? ofYear : NAMES[Number(month) - 1]! });
  }
}
