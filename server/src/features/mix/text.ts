/** An answer of the planner as plain text. */
import { printQuantity } from '../../model/quantity.ts';
import type { MixAnswer, MixPlan, MixRefusal, MixRequest } from '../../solutions/mix-plan.ts';

/** Example: 'GA3 500 ppm, 20 mL' */
export function mixTitle({ agent, strength, volume }: Pick<MixRequest, 'agent' | 'strength' | 'volume'>): string {
  return `${agent.word} ${printQuantity(strength)}, ${printQuantity(volume)}`;
}

/** A plan as steps at the bench, then what there is to know of it; or a refusal with what can be done instead. */
export function mixText(answer: MixAnswer): string {
  return mixBlocks(answer).map(lines => lines.join('\n')).join('\n\n');
}

type Lines = readonly string[];

/** The same as lines that belong together. */
export function mixBlocks(answer: MixAnswer): Lines[] {
  const blocks = answer.possible ? planBlocks(answer) : refusalBlocks(answer);
  return blocks.filter(lines => lines.length > 0);
}

function planBlocks(plan: MixPlan): Lines[] {
  const { steps, sameAs, result, inKitchen, alternatives, warnings, assumptions, cautions } = plan;
  return [
    sameAs.length > 0 ? [`= ${sameAs.map(({ text }) => text).join(' = ')}`] : [],
    warnings.map(({ text }) => `! ${text}`),
    steps.map(({ text }, n) => `${n + 1}. ${text}`),
    [`Strength: ${result.text}${limitsText(result.limits)}.`, ...moreText(plan)],
    inKitchen ? [`In a kitchen: ${inKitchen.message}`, ...inKitchen.remedies.map(({ text }) => `  - ${text}`)] : [],
    alternatives.map(({ text }) => `Or: ${text}`),
    listed('Assumed:', assumptions),
    listed('Take care:', cautions),
  ];
}

/** What is made beyond what was asked for. */
function moreText({ amounts: { leftOver, makeUpTo }, asked }: MixPlan): string[] {
  if (!leftOver) return [];
  return [`It makes ${makeUpTo.measured.text}, ${leftOver.text} more than the ${printQuantity(asked.volume)} asked for.`];
}

function limitsText({ text, counted, notCounted }: MixPlan['result']['limits']): string {
  const beside = `not counted: ${notCounted.join(', ')}`;
  if (counted.length === 0) return ` (${beside})`;
  return `, with these tools ${text} (${counted.join(', ')}; ${beside})`;
}

function refusalBlocks({ message, nearest }: MixRefusal): Lines[] {
  return [[message], listed('The nearest you can make:', nearest)];
}

function listed(heading: string, items: readonly { readonly text: string }[]): Lines {
  return items.length === 0 ? [] : [heading, ...items.map(({ text }) => `  - ${text}`)];
}
