/** The germination of all lots of a plant in one frame, winter beside winter, as values of a picture. */
import type { Lot } from '../../journal/life.ts';
import { winterOf } from '../../model/winter.ts';
import type { Shade } from '../../pictures/germination/curve.ts';
import { germinationPicture } from '../../pictures/germination/picture.ts';
import type { CurveValues, GerminationValues } from '../../pictures/germination/values.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import { listed } from '../../syntax/nearest.ts';
import type { Group } from '../../trials/groups.ts';
import type { PlantTrial } from '../../trials/plant-trial.ts';
import { groupNames } from '../../words/trials.ts';
import { curveOf, shadesOf, zeroOf } from './germination.ts';
import { lanesOf } from './lanes.ts';
import { missingText } from './missing.ts';

/** More curves than this nobody can follow: the last ones are drawn. */
const MOST_CURVES = 16;

interface InWinter {
  readonly lot: Lot;
  readonly group: Group;
  /** Of its day 0: '2025/26' */
  readonly winter: string;
}

/** Undefined where no lot of the plant was counted on a known day. */
export function wintersPicture({ plant, trials }: PlantTrial, frame: Frame): Picture | undefined {
  const all = trials.flatMap(({ lot, groups }) => groups.map((group): InWinter => (
    { lot, group, winter: winterOf(group.batches[0]!.conditions.dayZero, lot.zone) })));
  const inOrder = all.sort((a, b) => (a.winter < b.winter ? -1 : a.winter > b.winter ? 1 : 0));
  const early = inOrder.slice(0, -MOST_CURVES);
  const shown = inOrder.slice(-MOST_CURVES);
  const drawn = shown.map(({ group }) => group);
  const values: GerminationValues = {
    title: `${plant}, winter by winter`,
    caption: [
      'Each winter has marks of one shape. Untreated seed is dashed, with open marks.', earlyText(early), missingText(trials.flatMap(({ leftOut }) => leftOut)),
    ].filter(text => text !== '').join(' '),
    zero: zeroOf(drawn),
    curves: curvesOf(shown),
    lanes: lanesOf(drawn.flatMap(({ batches }) => batches), ({ path }) => path),
    compared: [],
  };
  return germinationPicture(values, frame);
}

/** The shape of the marks tells the winter; dashes set apart what else is alike in it. */
function curvesOf(shown: readonly InWinter[]): CurveValues[] {
  const winters = [...new Set(shown.map(({ winter }) => winter))];
  const seen = new Map<string, number>();
  return shadesOf(shown.map(({ group }) => group)).map((shade, i): CurveValues => {
    const { lot, group, winter } = shown[i]!;
    const kind = `${winter} ${shade.kind}`;
    const dash = seen.get(kind) ?? 0;
    seen.set(kind, dash + 1);
    const own: Shade = { ...shade, number: winters.indexOf(winter), dash };
    const curve = curveOf(group, own);
    return { ...curve, label: `${winter} ${curve.label}`, names: namesOf(lot, group) };
  });
}

/** Example: 'VER-24/A', 'VER-24 A and B' */
function namesOf({ id }: Lot, group: Group): string {
  const [only] = group.batches;
  return group.batches.length === 1 ? only!.batch.path : `${id} ${groupNames(group)}`;
}

function earlyText(early: readonly InWinter[]): string {
  if (early.length === 0) return '';
  const winters = [...new Set(early.map(({ winter }) => winter))];
  return `Not drawn: ${early.length} earlier ${early.length === 1 ? 'curve' : 'curves'} (${listed(winters, 'and')}).`;
}
