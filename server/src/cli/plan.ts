import { version } from '../../../package.json';
import { PLAN_BASIS, PLAN_HEAD, planRow } from '../features/words/plans.ts';
import { isUndefined } from '../measures/measured.ts';
import { plan, type Plan } from '../measures/plan.ts';
import { printableJson } from '../report/printable.ts';
import { textTable } from '../report/table.ts';
import { SUPPOSED_SHARES } from '../trials/split-plan.ts';
import { exits, type Exit } from './exits.ts';
import { complain, print } from './output.ts';

export const planFormats = ['text', 'json'] as const;

export interface PlanOptions {
  readonly share?: string;
  readonly format: (typeof planFormats)[number];
}

/** Version of the shape below; it grows when something in it changes its meaning or goes, not when something comes. */
const SHAPE = 1;

/** `plumule plan`: what difference so many seeds can show. */
export function planTrial(treated: string, untreated: string, { share, format }: PlanOptions): Exit {
  const sides = [treated, untreated].map(seedsIn);
  const percent = share === undefined ? undefined : percentIn(share);
  for (const [i, text] of [treated, untreated].entries()) {
    if (sides[i] === undefined) complain(`“${text}” is not a number of seeds from 1 to 1000000`);
  }
  if (share !== undefined && percent === undefined) complain(`--share: “${share}” is not a percentage from 0 to 100`);
  const [n, m] = sides;
  if (n === undefined || m === undefined || (share !== undefined && percent === undefined)) return exits.unread;
  const shares = percent === undefined ? SUPPOSED_SHARES : [percent / 100];
  const plans = shares.map(each => plan(n, m, each));
  print(format === 'json' ? planJson(plans) : planText(plans));
  return exits.clean;
}

function planText(plans: readonly Plan[]): string {
  const [{ treated, untreated, sentence, isMany }] = plans as [Plan];
  if (isMany || plans.length === 1) return `${sentence}\n`;
  const rows = plans.map(planRow);
  const table = textTable(PLAN_HEAD.map((head, at) => ({ head, kind: 'text', cells: rows.map(row => row[at] ?? '') })));
  return [`${treated} treated and ${untreated} untreated seeds`, ...table.map(line => `  ${line}`), PLAN_BASIS, ''].join('\n');
}

/** What `plumule plan --format json` prints; the README describes it. */
function planJson(plans: readonly Plan[]): string {
  const told = plans.map(({ treated, untreated, share, visible, best, sentence }) => ({
    treated, untreated, share, visible: isUndefined(visible) ? visible : visible.value,
    best: {
      treated: best.treated, untreated: best.untreated,
      visible: isUndefined(best.visible) ? best.visible : best.visible.value,
    },
    sentence,
  }));
  return printableJson({ version: SHAPE, plumule: version, plans: told });
}

/** Undefined for all but whole numbers that a bench can hold. */
function seedsIn(text: string): number | undefined {
  const seeds = /^\d{1,7}$/.test(text) ? Number(text) : 0;
  return seeds >= 1 && seeds <= 1_000_000 ? seeds : undefined;
}

/** Example: percentIn('40 %') is 40 */
function percentIn(text: string): number | undefined {
  const found = /^(\d+(?:\.\d+)?)\s*%?$/.exec(text.trim());
  const percent = Number(found?.[1] ?? NaN);
  return percent <= 100 ? percent : undefined;
}
