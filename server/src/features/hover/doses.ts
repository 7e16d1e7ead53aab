/** Each substance of a soak or a drop: how it stands to its limit, or why its strength is not known. */
import type { Journal } from '../../journal/journal.ts';
import type { Dose, DosePart } from '../../journal/life.ts';
import { printQuantity } from '../../model/quantity.ts';
import type { Agent } from '../../solutions/agent.ts';
import { strengthSign } from '../../solutions/display.ts';
import { usualStrengthText } from '../../solutions/strength.ts';
import { listed } from '../../syntax/nearest.ts';
import { escapeMarkdown, markdownBlocks } from '../markdown.ts';
import { limitText } from '../../words/limits.ts';
import { doseText } from '../../words/soaks.ts';

/** Undefined where there is nothing to say: of water, or of an agent without a limit. */
export function doseLines(doses: readonly Dose[], plant: string | undefined, journal: Journal): string | undefined {
  const lines = doses.flatMap(dose => doseLine(dose, plant, journal));
  return lines.length === 0 ? undefined : markdownBlocks(lines.map(escapeMarkdown));
}

function doseLine(dose: Dose, plant: string | undefined, journal: Journal): string[] {
  const { agent, ppm } = dose;
  if (agent?.role === 'water') return [];
  const limit = agent && ppm.ok ? limitText(journal, agent, { value: ppm.value.valueOf(), unit: 'ppm' }, plant) : undefined;
  const reason = ppm.ok ? undefined : ppm.refusal.message;
  const said = [originText(dose), limit, reason].filter(text => text !== undefined);
  return said.length === 0 ? [] : [`${doseText(dose, true)}: ${said.join(', ')}`];
}

/** Where the strength comes from: 'the strength of the stock', or what was mixed; undefined where it is written. */
function originText({ agent, parts, ppm }: Dose): string | undefined {
  const added = parts.filter(({ adds }) => adds);
  const [first] = added;
  if (!agent || !first || !ppm.ok) return undefined;
  const isPure = parts.length === 1 && first.isPoured && first.held.ok && first.held.value.equals(ppm.value);
  if (isPure) return first.stock === undefined ? undefined : 'the strength of the stock';
  return `in the dish, from ${listed(added.map(part => partText(part, agent)), 'and')}`;
}

/** Example: '5 mL of G2 (500 ppm)', '10 mg of P1' */
function partText({ fact: { name, volume, mass }, isPowder, held, byEye, stale }: DosePart, agent: Agent): string {
  if (isPowder) return `${printQuantity(mass!.value)} of ${name.text}`;
  const sign = strengthSign({ isAtMost: stale !== undefined, isAbout: byEye });
  const strength = held.ok ? `${sign}${usualStrengthText(held.value, agent)}` : 'strength unknown';
  return `${volume ? `${printQuantity(volume.value)} of ` : ''}${name.text} (${strength})`;
}
