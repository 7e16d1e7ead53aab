/** What a picture of germination over time is drawn from. */
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Course } from '../../measures/course.ts';
import { isUndefined } from '../../measures/measured.ts';
import { envelopeOf, type Envelope } from './envelope.ts';
import type { Shade } from './curve.ts';
import type { Lane } from './lanes.ts';

/** Batches with one treatment under the same conditions. */
export interface CurveValues {
  /** What was done. Example: 'GA3 500 ppm 24 h' */
  readonly label: string;
  /** Whose seed it is. Example: 'A and B' */
  readonly names: string;
  readonly shade: Shade;
  readonly courses: readonly Course[];
  /** The record of the first look on a day. */
  readonly lookOn?: (day: number) => JournalLine | undefined;
}

export interface GerminationValues {
  readonly title: string;
  /** The verdict, or what else there is to say. */
  readonly caption: string;
  /** What day 0 is. Example: 'the sowing' */
  readonly zero: string;
  readonly curves: readonly CurveValues[];
  readonly lanes: readonly Lane[];
  /** The last days that sides were compared on. */
  readonly compared: readonly number[];
}

export interface DrawnCurve extends CurveValues {
  readonly envelope: Envelope;
}

export interface NotDrawn {
  readonly curve: CurveValues;
  readonly why: string;
}

/** The curves that have days, and those that have none with the reason. */
export function sorted(curves: readonly CurveValues[]): { drawn: DrawnCurve[]; not: NotDrawn[] } {
  const drawn: DrawnCurve[] = [];
  const not: NotDrawn[] = [];
  for (const curve of curves) {
    const envelope = envelopeOf(curve.courses);
    if (isUndefined(envelope)) not.push({ curve, why: envelope.undefined });
    else drawn.push({ ...curve, envelope });
  }
  return { drawn, not };
}
