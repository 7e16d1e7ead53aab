/** What the journal defines: the kinds that outline and search tell apart, and how each is called there. */
import type { Journal } from '../journal/journal.ts';
import { showStrength } from '../solutions/display.ts';
import { factOf, factsOf, type JournalRecord } from '../model/record.ts';

export type SymbolKind = 'heading' | 'lot' | 'batch' | 'stock' | 'regime' | 'agent' | 'guide';

export interface SymbolText {
  readonly kind: SymbolKind;
  readonly name: string;
  /** A few words more, or none. */
  readonly detail: string;
}

/** Undefined for a record that defines nothing. Plant names stand in the name, since editors search that alone. */
export function symbolOf(journal: Journal, record: JournalRecord): SymbolText | undefined {
  const { keyword, subject, plant } = record;
  const id = subject?.text;
  if (!id) return undefined;
  switch (keyword) {
    case 'lot': return { kind: 'lot', name: plant?.text ? `${id} ${plant.text}` : id, detail: seedsText(factOf(record, 'seeds')?.n.value) };
    case 'stock': case 'dilute': return { kind: 'stock', name: id, detail: strengthText(journal, id) };
    case 'regime': return { kind: 'regime', name: id, detail: stagesText(factsOf(record, 'stage').length) };
    case 'agent': return { kind: 'agent', name: id, detail: factOf(record, 'text')?.value.text ?? '' };
    case 'guide': return { kind: 'guide', name: id, detail: factOf(record, 'source')?.value.text ?? '' };
    default: return undefined;
  }
}

export function seedsText(seeds: number | undefined): string {
  if (seeds === undefined) return '';
  return seeds === 1 ? '1 seed' : `${seeds} seeds`;
}

function stagesText(stages: number): string {
  return stages === 1 ? '1 stage' : `${stages} stages`;
}

function strengthText(journal: Journal, id: string): string {
  const solution = journal.solution(id);
  if (!solution?.agent) return '';
  return solution.ppm.ok ? `${solution.agent.word} ${showStrength(solution.ppm.value, 'ppm').text}` : solution.agent.word;
}
