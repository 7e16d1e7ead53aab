/** Where an axis of days has its numbers. */
import { scaleLinear } from 'd3-scale';
import { textWidth } from './text-size.ts';
import { TYPE } from './picture.ts';

/**
 * Whole days at round distances, as many as their numbers leave room for.
 *
 * @example
 * dayTicks([0, 56], 400) // [0, 10, 20, 30, 40, 50]
 */
export function dayTicks([first, last]: readonly [number, number], pixels: number): number[] {
  const scale = scaleLinear([first, last], [0, pixels]);
  for (let count = 10; count > 1; count--) {
    const ticks = scale.ticks(count).filter(Number.isInteger);
    const widest = Math.max(0, ...ticks.map(day => textWidth(String(day), TYPE.small)));
    if (ticks.length < 2 || scale(ticks[1]!) - scale(ticks[0]!) > widest + 14) return ticks;
  }
  return [first];
}
