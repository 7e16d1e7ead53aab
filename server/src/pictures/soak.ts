/** A soak as a bar of time: how much of it is gone, when it ends, and the limit. */
import { scaleLinear } from 'd3-scale';
import { element, type Content } from './markup.ts';
import { framed, line, text, TYPE, type Frame, type Picture } from './picture.ts';
import { fitText, textWidth } from './text-size.ts';

/** All in hours from the beginning of the soak. */
export interface SoakValues {
  readonly title: string;
  readonly now: number;
  /** Undefined where no end is known. */
  readonly end: number | undefined;
  readonly limit: number;
  /** Words for the beginning and the end: '10 Jan 19:00'. */
  readonly from: string;
  readonly to: string | undefined;
}

const BAR = 16;

export function soakPicture(values: SoakValues, frame: Frame): Picture {
  const { title, now, end, limit, from, to } = values;
  const { width, theme } = frame;
  const size = TYPE.small;
  const [left, right] = [12, width - 12];
  const longest = Math.max(now, end ?? 0, limit, 1) * 1.04;
  const scale = scaleLinear([0, longest], [left, right]);
  const x = (hours: number): number => scale(Math.max(0, hours));
  const top = 24;
  const height = top + BAR + 34;
  const until = end ?? Math.max(now, limit);
  const isOver = now > (end ?? limit);
  const caption = captionOf(values);
  const limitText = `limit ${hoursText(limit)}`;
  const body: Content[] = [
    text(left, 15, theme.ink, fitText(caption, size, right - left, 'bold'), { size, weight: 'bold' }),
    element('rect', { x: left, y: top, width: x(until) - left, height: BAR, fill: 'none', stroke: theme.soak, class: 'whole', ...end === undefined && { 'stroke-dasharray': '4 3' } }),
    element('rect', { x: left, y: top, width: x(Math.min(now, until)) - left, height: BAR, fill: theme.soak, class: 'gone' }),
    ...isOver && now > until ? [element('rect', { x: x(until), y: top, width: x(now) - x(until), height: BAR, fill: theme.alert, class: 'over' })] : [],
    line(x(now), top - 5, x(now), top + BAR + 5, theme.ink, { 'class': 'now', 'stroke-width': 2 }),
    line(x(limit), top - 3, x(limit), top + BAR + 3, theme.alert, { 'class': 'limit', 'stroke-dasharray': '2 2', 'stroke-width': 1.5 }),
    text(left, top + BAR + 16, theme.soft, from, { size }),
    ...to === undefined ? [] : [text(Math.min(right, Math.max(x(until), left + textWidth(`${from}  ${to}`, size))), top + BAR + 16, theme.soft, to, { size, anchor: 'end' })],
    text(Math.min(right, Math.max(x(limit), left + textWidth(limitText, size))), top + BAR + 29, theme.alert, limitText, { size, anchor: 'end' }),
  ];
  const description = `${caption}. Limit ${hoursText(limit)}. From ${from}${to === undefined ? ', no end recorded' : ` to ${to}`}.`;
  return {
    title, caption, description, width, height,
    table: { head: ['Gone', 'Ends after', 'Limit'], rows: [[hoursText(now), end === undefined ? '–' : hoursText(end), hoursText(limit)]] },
    svg: framed(frame, height, { title, description }, body),
  };
}

function captionOf({ now, end, limit }: SoakValues): string {
  if (now < 0) return `begins in ${hoursText(-now)}`;
  if (end === undefined) return now > limit ? `${hoursText(now)} in the soak, ${hoursText(now - limit)} over the limit` : `${hoursText(now)} in the soak, no end recorded`;
  return now > end ? `ended ${hoursText(now - end)} ago` : `${hoursText(now)} gone, ${hoursText(end - now)} to go`;
}

/** Example: '14 h', '45 min', '2.5 h' */
function hoursText(hours: number): string {
  if (hours < 1) return `${Math.round(60 * hours)} min`;
  return `${String(Math.round(10 * hours) / 10)} h`;
}
