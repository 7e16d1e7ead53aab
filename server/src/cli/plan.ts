import { version } from '../../../package.json';
import { PLAN_HEAD, planRow, planTableBasis } from '../words/plans.ts';
import { isUndefined } from '../measures/measured.ts';
import { plan, type Plan } from '../measures/plan.ts';
import { printableJson } from '../report/printable.ts';
import { paragraph, textTable } from '../report/table.ts';
import { SUPPOSED_SHARES } from '../trials/split-plan.ts';
import { exits, type Exit } from './exits.ts';
import { complain, outputPage, print } from './output.ts';
import type { textFormats } from './program/choices.ts';

export interface PlanOptions {
  readonly share?: string;
  readonly dishes?: string;
  readonly treatments?: string;
  readonly format: (typeof textFormats)[number];
}

/** Version of the shape below; it grows when something in it changes its meaning or goes, not when something comes. */
const SHAPE = 1;

/** More dishes, or treatments, than anybody has room for. */
const MOST_PARTS = 20;

/** `plumule plan`: what difference so many seeds can show. */
export function planTrial(treated: string, untreated: string, { share, dishes = '1', treatments = '1', format }: PlanOptions): Exit {
  const sides = [treated, untreated].map(text => wholeIn(text, 1_000_000));
  const percent = share === undefined ? undefined : percentIn(share);
  const [perSide, kinds] = [wholeIn(dishes, MOST_PARTS), wholeIn(treatments, MOST_PARTS)];
  for (const [i, text] of [treated, untreated].entries()) {
    if (sides[i] === undefined) complain(`“${text}” is not a number of seeds from 1 to 1000000`);
  }
  if (share !== undefined && percent === undefined) complain(`--share: “${share}” is not a percentage from 0 to 100`);
  if (perSide === undefined) complain(`--dishes: “${dishes}” is not a number of dishes from 1 to ${MOST_PARTS}`);
  if (kinds === undefined) complain(`--treatments: “${treatments}” is not a number of treatments from 1 to ${MOST_PARTS}`);
  const [n, m] = sides;
  if (n === undefined || m === undefined || perSide === undefined || kinds === undefined) return exits.unread;
  if (share !== undefined && percent === undefined) return exits.unread;
  if (perSide > Math.min(n, m)) {
    complain(`--dishes: ${Math.min(n, m)} seeds do not fill ${perSide} dishes`);
    return exits.unread;
  }
  const shares = percent === undefined ? SUPPOSED_SHARES : [percent / 100];
  const layout = { dishes: { treated: perSide, untreated: perSide }, treatments: kinds };
  const plans = shares.map(each => plan(n, m, each, layout));
  print(format === 'json' ? planJson(plans) : planText(plans));
  return exits.clean;
}

function planText(plans: readonly Plan[]): string {
  const [first] = plans as [Plan];
  const { treated, untreated, dishes, treatments, sentence, isMany } = first;
  if (isMany || plans.length === 1) return `${sentence}\n`;
  const rows = plans.map(planRow);
  const columns = PLAN_HEAD.map((head, at) => ({ head, kind: 'text' as const, cells: rows.map(row => row[at] ?? '') }))
    .filter(({ cells }) => cells.some(cell => cell !== ''));
  const parts = [
    ...dishes.treated > 1 ? [`in ${dishes.treated} dishes each`] : [],
    ...treatments > 1 ? [`one of ${treatments} treatments`] : [],
  ];
  const seeds = [`${treated} treated and ${untreated} untreated seeds`, ...parts].join(', ');
  return [seeds, ...textTable(columns).map(line => `  ${line}`), ...planTableBasis(first).flatMap(line => paragraph(line, outputPage().width)), ''].join('\n');
}

/** What `plumule plan --format json` prints; the README describes it. */
function planJson(plans: readonly Plan[]): string {
  const told = plans.map(({ treated, untreated, dishes, treatments, share, visible, best, inDishes, sentence }) => ({
    treated, untreated, dishes, treatments, share, visible: isUndefined(visible) ? visible : visible.value,
    best: {
      treated: best.treated, untreated: best.untreated,
      visible: isUndefined(best.visible) ? best.visible : best.visible.value,
    },
    inDishes: inDishes
      ? { dishes: inDishes.dishes, visible: isUndefined(inDishes.visible) ? inDishes.visible : inDishes.visible.value }
      : null,
    sentence,
  }));
  return printableJson({ version: SHAPE, plumule: version, plans: told });
}

/** Undefined for all but whole numbers from 1 to the most. */
function wholeIn(text: string, most: number): number | undefined {
  const n = /^\d{1,7}$/.test(text) ? Number(text) : 0;
  return n >= 1 && n <= most ? n : undefined;
}

/** Example: percentIn('40 %') is 40 */
function percentIn(text: string): number | undefined {
  const found = /^(\d+(?:\.\d+)?)\s*%?$/.exec(text.trim());
  const percent = Number(found?.[1] ?? NaN);
  return percent <= 100 ? percent : undefined;
}
