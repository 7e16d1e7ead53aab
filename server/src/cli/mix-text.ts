import { printQuantity } from '../model/quantity.ts';
import type { MixAnswer, MixPlan, MixRefusal, MixRequest } from '../solutions/mix-plan.ts';
import { numberText } from '../solutions/display.ts';
import { exact } from '../solutions/amounts.ts';

/** A plan as steps at the bench, then what there is to know of it; or a refusal with what can be done instead. */
export function mixText(request: Pick<MixRequest, 'agent' | 'strength' | 'volume'>, answer: MixAnswer): string {
  const title = `${request.agent.word} ${printQuantity(request.strength)}, ${printQuantity(request.volume)}`;
  const blocks = answer.possible ? planBlocks(title, answer) : refusalBlocks(title, answer);
  return `${blocks.filter(lines => lines.length > 0).map(lines => lines.join('\n')).join('\n\n')}\n`;
}

type Lines = readonly string[];

function planBlocks(title: string, plan: MixPlan): Lines[] {
  const { steps, sameAs, result, inKitchen, alternatives, warnings, assumptions, cautions } = plan;
  return [
    [title, ...(sameAs.length > 0 ? [`= ${sameAs.map(({ text }) => text).join(' = ')}`] : [])],
    warnings.map(({ text }) => `! ${text}`),
    steps.map(({ text }, n) => `${n + 1}. ${text}`),
    [`Strength: ${result.text}${limitsText(result.limits)}.`],
    inKitchen ? [`In a kitchen: ${inKitchen.message}`, ...inKitchen.remedies.map(({ text }) => `  - ${text}`)] : [],
    alternatives.map(({ text }) => `Or: ${text}`),
    listed('Taken for granted:', assumptions),
    listed('Mind:', cautions),
  ];
}

function limitsText({ lowPpm, highPpm, counted, notCounted }: MixPlan['result']['limits']): string {
  const beside = `not counted: ${notCounted.join(', ')}`;
  if (counted.length === 0) return ` (${beside})`;
  const [low, high] = [lowPpm, highPpm].map(ppm => numberText(exact(ppm), 3).text);
  return `, with these tools from ${low!} to ${high!} ppm (${counted.join(', ')}; ${beside})`;
}

function refusalBlocks(title: string, { message, nearest }: MixRefusal): Lines[] {
  return [[`${title}: not possible`], [message], listed('The nearest that can be done:', nearest)];
}

function listed(heading: string, items: readonly { readonly text: string }[]): Lines {
  return items.length === 0 ? [] : [heading, ...items.map(({ text }) => `  - ${text}`)];
}
