/** Each substance of a soak or a drop: how it stands to its limit, or why its strength is not known. */
import type { Journal } from '../../journal/journal.ts';
import type { Dose } from '../../journal/life.ts';
import { escapeMarkdown, markdownBlocks } from '../markdown.ts';
import { limitText } from '../words/limits.ts';
import { doseText } from '../words/soaks.ts';

/** Undefined where there is nothing to say: of water, or of an agent without a limit. */
export function doseLines(doses: readonly Dose[], plant: string | undefined, journal: Journal): string | undefined {
  const lines = doses.flatMap(dose => doseLine(dose, plant, journal));
  return lines.length === 0 ? undefined : markdownBlocks(lines.map(escapeMarkdown));
}

function doseLine(dose: Dose, plant: string | undefined, journal: Journal): string[] {
  const { agent, ppm, stock } = dose;
  if (agent?.role === 'water') return [];
  const limit = agent && ppm.ok ? limitText(journal, agent, { value: ppm.value.valueOf(), unit: 'ppm' }, plant) : undefined;
  const reason = ppm.ok ? undefined : ppm.refusal.message;
  const said = [stock === undefined ? undefined : 'the strength of the stock', limit, reason].filter(text => text !== undefined);
  return said.length === 0 ? [] : [`${doseText(dose, true)}: ${said.join(', ')}`];
}
