/** What seed was soaked in, from the words of a cell. */
import { builtInAgents } from '../solutions/agents.ts';
import { factsOf } from '../model/record.ts';
import { parse } from '../syntax/parse.ts';
import { withPoints } from './numbers.ts';

/** Words that say that seed had no treatment. */
const none = /^(?:no|none|nothing|control|untreated|not treated|nil|kein|keine|ohne|kontrolle|unbehandelt|aucun|sans|témoin)$/i;

export function isNoTreatment(cell: string): boolean {
  return none.test(cell);
}

/** What is longer is a story, and to look into it would take time with the square of its length. */
const LONGEST = 500;

/** Written by the sheet itself that nobody measured the dose. */
const unmeasured = /\b(?:unmeasured|not measured|a pinch|pinch|by eye|knife tip)\b/i;

/**
 * The facts of a soak, in the order written; undefined where the cell does not surely give them. A dose without its
 * strength is none, unless the cell says that it was not measured. `isStock` tells the stocks of the journal.
 *
 * Example: soakFacts('GA3 500ppm 24 hrs') is ['GA3 500 ppm', '24 h']
 */
export function soakFacts(cell: string, isStock: (id: string) => boolean = () => false): string[] | undefined {
  if (cell.length > LONGEST) return undefined;
  if (unmeasured.test(cell)) {
    const agents = [...builtInAgents.keys()].filter(key => new RegExp(`\\b${escaped(key)}(?![\\w+])`, 'i').test(agentSpelt(cell)));
    return agents.length === 1 && cell.split(/\s+/).length <= 5 ? [`${agents[0]!} unmeasured`] : undefined;
  }
  const parts = withPoints(agentSpelt(cell)).replaceAll(/\s+(?:for|während|pendant)\s+|\s*[;+&\n]\s*|\s+(?:and|und|et|plus)\s+/gi, ', ')
    .replaceAll(/(?<=\d)\s*(?:hours?|hrs?|std\.?|stunden|heures?)\b/gi, ' h')
    .replaceAll(/(?<=ppm|mg\/L|g\/L|mM|uM|%|unmeasured|water)\s+(?=\d)/gi, ', ')
    .split(/,\s+|,(?=\D)/).map(part => turned(part.trim())).filter(part => part !== '');
  const line = `soak X 2000-01-01, ${parts.join(', ')}`;
  const { record, problems } = parse(line);
  if (!record || problems.length > 0) return undefined;
  const substances = factsOf(record, 'substance');
  const isSure = substances.every(({ name: { text }, strength, mass, volume }) =>
    text === 'water' || (builtInAgents.has(text) ? strength !== undefined || mass !== undefined : isStock(text) && volume !== undefined));
  return isSure && record.facts.every(({ type }) => ['substance', 'duration', 'volume'].includes(type)) ? parts : undefined;
}

function escaped(text: string): string {
  return text.replaceAll(/[+.]/g, String.raw`\$&`);
}

/** Agents as the journal spells them: `ga-3`, `GA₃`, `Water`. */
function agentSpelt(cell: string): string {
  const plain = cell.replaceAll('₃', '3').replaceAll(/\bGA-3\b/gi, 'GA3').replaceAll(/\b(?:gibberellic acid|gibberellin)\b/gi, 'GA3');
  return [...builtInAgents.keys()].reduce((text, key) => text.replaceAll(new RegExp(`(?<![\\w+])${escaped(key)}(?![\\w+])`, 'gi'), key), plain);
}

/** `500 ppm GA3` is `GA3 500 ppm`. */
function turned(part: string): string {
  const found = /^(\d[\d.]*\s*(?:ppm|mg\/L|g\/L|mM|uM|%))\s+(\S+)$/i.exec(part);
  return found ? `${found[2]!} ${found[1]!}` : part;
}
