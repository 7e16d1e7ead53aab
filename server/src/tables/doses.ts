import type { Journal } from '../journal/journal.ts';
import type { Dose } from '../journal/life.ts';
import { eventColumns } from './events.ts';
import { recordsOf, type EventRecord } from './records.ts';
import { strengthOfDose, strengthOfSolution, type Strength } from './strengths.ts';
import { between, number, table, text, whole, yes } from './table.ts';

/** An agent in a liquid: of a soak, of drops, or in a bottle. */
interface DoseRow {
  readonly of: EventRecord;
  /** From 1. */
  readonly number: number;
  readonly agent: string | undefined;
  readonly name: string;
  readonly stock: string | undefined;
  readonly strength: Strength;
  readonly unmeasured: boolean;
}

export const doses = table<DoseRow>(
  {
    name: 'doses',
    says: 'A row for each agent in a soak or in drops, with its strength in the whole liquid, and for each stock.',
    key: ['file', 'line', 'dose'], references: [{ columns: ['journal', 'file', 'line'], table: 'events' }],
  },
  [
    ...eventColumns.map(({ cell, ...field }) => ({ ...field, cell: ({ of }: DoseRow) => cell(of) })),
    whole('dose', 'Its number in the record, from 1.', each => each.number),
    text('name', 'The agent or the stock as recorded.', ({ name }) => name),
    text('agent', 'The agent.', ({ agent }) => agent),
    text('stock', 'The stock that all of it came from.', ({ stock }) => stock),
    number('strength_ppm', 'Its strength in ppm, if that is known: mg in 1 L, or for a liquid by volume µL in 1 L.', ({ strength: { least, most } }) => (
      least === most ? least : undefined)),
    ...between<DoseRow>('strength_ppm', 'Its strength in ppm', ({ strength }) => strength),
    yes('is_unmeasured', 'Whether the journal says that the dose was not measured.', ({ unmeasured }) => unmeasured),
  ],
  source => recordsOf(source).events.flatMap(dosesOf),
);

function dosesOf(of: EventRecord): DoseRow[] {
  const { entry, event, journal } = of;
  switch (entry.record.keyword) {
    case 'soak': case 'apply': {
      const found = event?.type === 'soak' ? event.soak.doses
        : event?.type === 'apply' ? event.doses : journal.dosesOf(entry);
      return found.map((dose, i) => ({ ...doseOf(dose, journal), of, number: i + 1 }));
    }
    case 'stock': case 'dilute': return stockOf(of);
    default: return [];
  }
}

function doseOf(dose: Dose, journal: Journal): Omit<DoseRow, 'of' | 'number'> {
  const { agent, fact, stock, unmeasured } = dose;
  return { agent: agent?.word, name: fact.name.text, stock, strength: strengthOfDose(dose, journal), unmeasured };
}

function stockOf(of: EventRecord): DoseRow[] {
  const { journal, entry, entry: { record: { subject } } } = of;
  const solution = subject && journal.solution(subject.text);
  if (solution?.entry.line !== entry.line) return [];
  const strength = strengthOfSolution(solution, journal);
  const { id, agent } = solution;
  return [{ of, number: 1, agent: agent?.word, name: id, stock: undefined, strength, unmeasured: false }];
}
