/** Each substance of a soak or a drop: how it stands to its limit, or why its strength is not known. */
import type { Journal } from '../../journal/journal.ts';
import type { Dose, DosePart } from '../../journal/life.ts';
import { printQuantity } from '../../model/quantity.ts';
import type { Agent } from '../../solutions/agent.ts';
import type { Exact } from '../../solutions/amounts.ts';
import { comparedPpm, substanceOf } from '../../solutions/comparison.ts';
import { strengthSign } from '../../solutions/display.ts';
import { usualStrengthText } from '../../solutions/strength.ts';
import { listed } from '../../syntax/nearest.ts';
import { escapeMarkdown, markdownBlocks } from '../markdown.ts';
import { limitText } from '../../words/limits.ts';
import { doseText } from '../../words/soaks.ts';

/** Undefined where there is nothing to say: of water, or of an agent without a limit. */
export function doseLines(doses: readonly Dose[], plant: string | undefined, journal: Journal): string | undefined {
  const joint = jointly(doses);
  const lines = [
    ...doses.flatMap(dose => doseLine(dose, plant, journal, joint.some(group => group.includes(dose as Known)))),
    ...joint.flatMap(group => jointLine(group, plant, journal)),
  ];
  return lines.length === 0 ? undefined : markdownBlocks(lines.map(escapeMarkdown));
}

type Known = Dose & { readonly agent: Agent; readonly ppm: { readonly ok: true; readonly value: Exact } };

/** Doses of a salt and of its acid, which a limit counts together. */
function jointly(doses: readonly Dose[]): Known[][] {
  const groups = new Map<string, Known[]>();
  for (const dose of doses) {
    if (!dose.agent || !dose.ppm.ok) continue;
    const substance = substanceOf(dose.agent);
    groups.set(substance, [...groups.get(substance) ?? [], dose as Known]);
  }
  return [...groups.values()].filter(({ length }) => length > 1);
}

/** Example: 'GA3 250 ppm and GA3K 400 ppm count as GA3 610.4 ppm together: 61 % of the limit of 1000 ppm' */
function jointLine(group: readonly Known[], plant: string | undefined, journal: Journal): string[] {
  const acid = journal.agents.get(substanceOf(group[0]!.agent));
  if (!acid) return [];
  const ppm = group.map(dose => comparedPpm(dose.ppm.value, dose.agent)).reduce((sum, each) => sum.add(each));
  const strength = { value: ppm.valueOf(), unit: 'ppm' } as const;
  const limits = new Set(group.flatMap(({ agent }) => limitText(journal, agent, strength, plant, acid) ?? []));
  if (limits.size === 0) return [];
  const sum = `${acid.word} ${usualStrengthText(ppm, acid)}`;
  return [`${listed(group.map(dose => doseText(dose)), 'and')} count as ${sum} together: ${[...limits].join('; ')}`];
}

/** `isJoint`: how it stands to its limit is said elsewhere. */
function doseLine(dose: Dose, plant: string | undefined, journal: Journal, isJoint: boolean): string[] {
  const { agent, ppm } = dose;
  if (agent?.role === 'water') return [];
  const limit = agent && ppm.ok && !isJoint
    ? limitText(journal, agent, { value: ppm.value.valueOf(), unit: 'ppm' }, plant) : undefined;
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
