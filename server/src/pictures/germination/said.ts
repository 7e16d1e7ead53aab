/** The numbers of a picture of germination in words and as a table. */
import { commonAge } from '../../measures/looks.ts';
import { isUndefined } from '../../measures/measured.ts';
import { dayText } from '../../measures/verdict-words.ts';
import { wilson } from '../../measures/proportion.ts';
import type { DataTable } from '../picture.ts';
import { percentText } from '../percent.ts';
import type { Envelope } from './envelope.ts';
import { remainsOf, remainsText } from './remains.ts';
import type { DrawnCurve, GerminationValues, NotDrawn } from './values.ts';

/** Example: '17 of 24 = 71 %' */
export function shareOf({ germinated, seeds }: Pick<Envelope, 'germinated' | 'seeds'>): string {
  return `${germinated} of ${seeds} = ${percentText(germinated / seeds)} %`;
}

/** Example: 'T50 day 7 to 14' */
export function halfText({ half }: Envelope): string | undefined {
  return isUndefined(half) ? undefined : `T50 ${dayText({ after: half.from, by: half.to })}`;
}

export function describe(
  { zero, compared, lanes }: GerminationValues,
  drawn: readonly DrawnCurve[],
  not: readonly NotDrawn[],
): string {
  const curves = drawn.map(curve => {
    const {
      label,
      names,
      envelope,
      envelope: { germinated, seeds, looks },
    } = curve;
    const { low, high } = wilson(germinated, seeds);
    const remains = remainsOf(curve.courses);
    const parts = [
      `${shareOf(envelope)} ${endText(looks.at(-1)!.day, commonAge(curve.courses))}, 95 % Wilson interval ${percentText(low)} to ${percentText(high)} %`,
      halfText(envelope),
      remains && `of the rest, ${remainsText(remains)}`,
    ];
    return `${label} (${names}): ${parts.filter(part => part !== undefined).join('; ')}.`;
  });
  return [
    `Share of the seed that had germinated, over the days from ${zero}. The boxes show the time between two looks in which seed may have come up.`,
    ...curves,
    ...(compared.length > 0 ? [`Compared on day ${compared.join(' and day ')}.`] : []),
    ...lanes.map(({ label, bars }) => `${label}: ${bars.map(bar => bar.text).join(', ')}.`),
    ...not.map(({ curve, why }) => `Not drawn: ${curve.label} (${curve.names}), because ${why}.`),
  ].join(' ');
}

/** Of several dishes, up to which day all of them were looked at. */
function endText(last: number, all: number): string {
  return all < last ? `by day ${last} (after day ${all} not all of it was looked at)` : `by day ${last}`;
}

export function tableOf(drawn: readonly DrawnCurve[]): DataTable {
  const rows = drawn.flatMap(({ label, names, envelope: { looks, seeds } }) =>
    looks
      .filter(({ isLook }) => isLook)
      .map(({ day, known }) => {
        const { low, high } = wilson(known, seeds);
        return [
          label,
          names,
          String(day),
          `${known} of ${seeds}`,
          percentText(known / seeds),
          `${percentText(low)} to ${percentText(high)}`,
        ];
      }),
  );
  return { head: ['Treatment', 'Batch', 'Day', 'Germinated', '%', '95 % interval'], rows };
}
